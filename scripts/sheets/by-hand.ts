/**
 * What one would write by hand instead: the same curves on the same sheets as a PDF of plain strings and zlib, with
 * no library. It is told where the sheets lie. It has the map on a first page, as ours has, and a label a sheet; it
 * has none of what helps to tape: no crosses, rules, check squares, embedded fonts, layers or bookmarks.
 */

import { deflateSync } from 'node:zlib';
import type { StyledDrawing, StyledPath } from '../../src/drawing/index.ts';

interface SheetPlace {
  readonly label: string;
  /** mm in the drawing. */
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface Places {
  readonly width: number;
  readonly height: number;
  readonly margin: number;
  readonly sheets: readonly SheetPlace[];
}

const POINTS = 72 / 25.4;

export const writeByHand = (drawing: StyledDrawing, places: Places): Uint8Array => {
  const items = drawing.layers.fill.filter((item) => item.kind === 'path');
  const boxes = items.map(boxOf);
  const { width, height, margin, sheets } = places;
  const size = `[0 0 ${number(width * POINTS)} ${number(height * POINTS)}]`;
  const contents: string[] = [];

  const whole = {
    maxX: Math.max(...sheets.map((s) => s.maxX)),
    maxY: Math.max(...sheets.map((s) => s.maxY)),
  };
  const scale = Math.min(0.8 * (width / whole.maxX), 0.4 * (height / whole.maxY));
  const map = [`BT /F1 14 Tf 40 740 Td (${drawing.title}) Tj ET`, '1 j 1 J 0.12 G 0.283 w'];
  for (const item of items) map.push(curves(item, scale * POINTS, 100, 400));
  contents.push(map.join('\n'));

  for (const s of sheets) {
    const inside = `${number(margin * POINTS)} ${number(margin * POINTS)} ${number((s.maxX - s.minX) * POINTS)} ${number((s.maxY - s.minY) * POINTS)}`;
    const parts = ['q', `${inside} re W n`, '1 j 1 J 0.12 G 0.992 w'];
    const [x, y] = [(margin - s.minX) * POINTS, (margin - s.minY) * POINTS];
    items.forEach((item, i) => {
      const [minX, minY, maxX, maxY] = boxes[i]!;
      if (maxX < s.minX || minX > s.maxX || maxY < s.minY || minY > s.maxY) return;
      parts.push(curves(item, POINTS, x, y));
    });
    parts.push('Q', `BT /F1 10 Tf 20 8 Td (${s.label}) Tj ET`);
    contents.push(parts.join('\n'));
  }

  const objects: (string | [string, Uint8Array])[] = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    `<< /Type /Pages /Count ${contents.length} /Kids [${contents.map((_, i) => `${4 + 2 * i} 0 R`).join(' ')}] >>`,
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>',
  ];
  contents.forEach((text, i) => {
    const bytes = deflateSync(text);
    objects.push(
      `<< /Type /Page /Parent 2 0 R /MediaBox ${size} /Resources << /Font << /F1 3 0 R >> >> /Contents ${5 + 2 * i} 0 R >>`,
    );
    objects.push([`<< /Filter /FlateDecode /Length ${bytes.length} >>`, bytes]);
  });
  return fileOf(objects);
};

const fileOf = (objects: readonly (string | [string, Uint8Array])[]): Uint8Array => {
  const parts: Uint8Array[] = [];
  let at = 0;
  const put = (part: string | Uint8Array): void => {
    const bytes = typeof part === 'string' ? Buffer.from(part, 'latin1') : part;
    parts.push(bytes);
    at += bytes.length;
  };
  const offsets: number[] = [];
  put('%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n');
  objects.forEach((object, i) => {
    offsets.push(at);
    put(`${i + 1} 0 obj\n`);
    if (typeof object === 'string') put(object);
    else {
      put(`${object[0]}\nstream\n`);
      put(object[1]);
      put('\nendstream');
    }
    put('\nendobj\n');
  });
  const start = at;
  const entries = offsets.map((o) => `${String(o).padStart(10, '0')} 00000 n \n`).join('');
  put(`xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${entries}`);
  put(`trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${start}\n%%EOF\n`);
  return Buffer.concat(parts);
};

/** Thousandths, as ours. */
const number = (value: number): string => String(Math.round(value * 1000) / 1000);

/** Every arc here turns less than 45°: one cubic. */
const curves = (item: StyledPath, scale: number, x: number, y: number): string => {
  let text = '';
  for (const p of item.path.pieces) {
    if (p.kind === 'line') throw new Error('The drawing is of arcs.');
    const { from, to, radius, start, sweep } = p;
    if (text === '') text = `${number(from.x * scale + x)} ${number(from.y * scale + y)} m\n`;
    const handle = (4 / 3) * Math.tan(sweep / 4) * radius;
    const end = start + sweep;
    const ax = (from.x - handle * Math.sin(start)) * scale + x;
    const ay = (from.y + handle * Math.cos(start)) * scale + y;
    const bx = (to.x + handle * Math.sin(end)) * scale + x;
    const by = (to.y - handle * Math.cos(end)) * scale + y;
    text += `${number(ax)} ${number(ay)} ${number(bx)} ${number(by)} ${number(to.x * scale + x)} ${number(to.y * scale + y)} c\n`;
  }
  return `${text}S`;
};

/** Round the curves' ends and handles, with half the pen's width: no curve leaves it. */
const boxOf = (item: StyledPath): readonly [number, number, number, number] => {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  const half = item.stroke.width / 2;
  for (const p of item.path.pieces) {
    for (const q of [p.from, p.to]) {
      const rise = p.kind === 'arc' ? p.radius * (1 - Math.cos(p.sweep / 2)) : 0;
      minX = Math.min(minX, q.x - half - rise);
      minY = Math.min(minY, q.y - half - rise);
      maxX = Math.max(maxX, q.x + half + rise);
      maxY = Math.max(maxY, q.y + half + rise);
    }
  }
  return [minX, minY, maxX, maxY];
};
