/**
 * What is drawn on a page, as the text of a PDF content stream. Callers draw in mm, y up; this is the only place
 * where mm become points. Sheets, covers, cards and contact sheets all draw through it.
 */

import type { LayerId, Stroke } from '../../drawing/index.ts';
import { type Box, type Motion, mover, type Path, type Point, polar } from '../../geometry/index.ts';
import { POINTS_PER_MM, pdfNumber } from './numbers.ts';
import { pathOperators, type ToPage, xy } from './paths.ts';
import type { Typefaces } from './typeface.ts';

interface Lettering {
  readonly text: string;
  /** On the base line, mm. */
  readonly at: Point;
  /** mm */
  readonly size: number;
  readonly color: string;
  readonly align?: 'start' | 'middle' | 'end' | undefined;
  /** Radians, counterclockwise. */
  readonly angle?: number | undefined;
  readonly bold?: boolean | undefined;
  /** A white rim of this width (mm) round the letters, so that they can be read on top of lines. */
  readonly halo?: number | undefined;
}

/** Something drawn once and shown at many places. */
export interface Form {
  readonly name: string;
}

/** How lengths on paper become lengths in the file: factors that make up for a printer's error, round a fixed point. */
export interface Correction {
  readonly fixed: Point;
  readonly x: number;
  readonly y: number;
}

export const NO_CORRECTION: Correction = { fixed: { x: 0, y: 0 }, x: 1, y: 1 };

/** Text in a font's own codes, as a PDF hex string. */
export type Encode = (text: string, bold: boolean) => string;

export interface PageContent {
  readonly faces: Typefaces;
  readonly path: (path: Path, stroke: Stroke) => void;
  /** Separate straight lines in one stroke. */
  readonly lines: (segments: readonly { from: Point; to: Point }[], stroke: Stroke) => void;
  /** Closed paths, filled even-odd. */
  readonly area: (loops: readonly Path[], color: string) => void;
  readonly box: (box: Box, look: { stroke?: Stroke | undefined; fill?: string | undefined }) => void;
  readonly text: (lettering: Lettering) => void;
  /** The width of a text (mm), as `text` sets it. */
  readonly width: (text: string, size: number, bold?: boolean) => number;
  readonly form: (form: Form, at: Point) => void;
  /** Draws only inside a box. */
  readonly clipped: (box: Box, draw: () => void) => void;
  /** Draws in other coordinates: scaled first, then moved. Strokes and letters keep the widths they are given. */
  readonly placed: (motion: Motion, draw: () => void, scale?: number) => void;
  /** Draws on a layer that a viewer can switch. */
  readonly layer: (id: LayerId, draw: () => void) => void;
}

export interface OpenContent extends PageContent {
  /** The content stream so far. */
  readonly operators: () => string;
  readonly layers: ReadonlySet<LayerId>;
  readonly forms: ReadonlySet<string>;
}

/** The names under which a page's resources hold the fonts. */
export const FONT_NAMES = { regular: 'F1', bold: 'F2' } as const;

interface Pen {
  stroke: string;
  fill: string;
}

export const openContent = (faces: Typefaces, encode: Encode, correction: Correction): OpenContent => {
  const parts: string[] = ['1 j'];
  const layers = new Set<LayerId>();
  const forms = new Set<string>();
  const base: ToPage = (p) => ({
    x: (correction.fixed.x + (p.x - correction.fixed.x) * correction.x) * POINTS_PER_MM,
    y: (correction.fixed.y + (p.y - correction.fixed.y) * correction.y) * POINTS_PER_MM,
  });
  let toPage = base;
  /** What the stream has set, so that it is set again only when it changes. */
  let pen: Pen = { stroke: '', fill: '' };

  const useStroke = (stroke: Stroke): void => {
    const wanted = strokeOperators(stroke);
    if (wanted !== pen.stroke) parts.push(wanted);
    pen.stroke = wanted;
  };
  const useFill = (color: string): void => {
    const wanted = colorOperator(color, 'fill');
    if (wanted !== pen.fill) parts.push(wanted);
    pen.fill = wanted;
  };
  const saved = (draw: () => void): void => {
    parts.push('q');
    const before = { ...pen };
    draw();
    pen = before;
    parts.push('Q');
  };
  const corners = (box: Box): Point[] => [
    toPage({ x: box.minX, y: box.minY }),
    toPage({ x: box.maxX, y: box.minY }),
    toPage({ x: box.maxX, y: box.maxY }),
    toPage({ x: box.minX, y: box.maxY }),
  ];
  const outline = (box: Box): string => {
    const [a, b, c, d] = corners(box);
    return `${xy(a!)} m ${xy(b!)} l ${xy(c!)} l ${xy(d!)} l h`;
  };
  const width = (text: string, size: number, bold = false): number =>
    (bold ? faces.bold : faces.regular).width(text, size);

  const letter = (t: Lettering): void => {
    const bold = t.bold ?? false;
    const shown = (bold ? faces.bold : faces.regular).shown(t.text);
    if (shown.trim() === '') return;
    const angle = t.angle ?? 0;
    const back = t.align === 'middle' ? 0.5 : t.align === 'end' ? 1 : 0;
    const along = polar(angle, back * width(t.text, t.size, bold));
    const at = { x: t.at.x - along.x, y: t.at.y - along.y };
    const origin = toPage(at);
    const tipX = toPage({ x: at.x + Math.cos(angle), y: at.y + Math.sin(angle) });
    const tipY = toPage({ x: at.x - Math.sin(angle), y: at.y + Math.cos(angle) });
    // A size is a size whatever the scale of the coordinates that the text is placed in.
    const scale = (t.size * POINTS_PER_MM) / Math.hypot(tipX.x - origin.x, tipX.y - origin.y);
    const stretch = Math.hypot(correction.x, correction.y) / Math.SQRT2;
    const matrix = [tipX.x - origin.x, tipX.y - origin.y, tipY.x - origin.x, tipY.y - origin.y]
      .map((v) => pdfNumber(v * scale * stretch))
      .join(' ');
    const font = bold ? FONT_NAMES.bold : FONT_NAMES.regular;
    const show = (mode: string): string =>
      `BT /${font} 1 Tf ${mode}${matrix} ${xy(origin)} Tm ${encode(shown, bold)} Tj ET`;
    if (t.halo !== undefined)
      saved(() => parts.push(`1 J 1 G ${pdfNumber(2 * t.halo! * POINTS_PER_MM)} w [] 0 d ${show('1 Tr ')}`));
    useFill(t.color);
    parts.push(show(''));
  };

  return {
    faces,
    layers,
    forms,
    width,
    operators: () => `${parts.join('\n')}\n`,
    path: (path, stroke) => {
      if (path.pieces.length === 0) return;
      useStroke(stroke);
      parts.push(pathOperators(path, toPage), 'S');
    },
    lines: (segments, stroke) => {
      if (segments.length === 0) return;
      useStroke(stroke);
      for (const s of segments) parts.push(`${xy(toPage(s.from))} m ${xy(toPage(s.to))} l`);
      parts.push('S');
    },
    area: (loops, color) => {
      const outlines = loops.map((loop) => pathOperators({ ...loop, closed: true }, toPage));
      if (outlines.every((o) => o === '')) return;
      useFill(color);
      parts.push(...outlines.filter((o) => o !== ''), 'f*');
    },
    box: (box, look) => {
      if (look.fill !== undefined) useFill(look.fill);
      if (look.stroke) useStroke(look.stroke);
      const paint = look.fill === undefined ? 'S' : look.stroke ? 'B' : 'f';
      if (look.fill !== undefined || look.stroke) parts.push(outline(box), paint);
    },
    text: letter,
    form: (form, at) => {
      forms.add(form.name);
      saved(() => parts.push(`1 0 0 1 ${xy(toPage(at))} cm`, `/${form.name} Do`));
    },
    clipped: (box, draw) =>
      saved(() => {
        parts.push(`${outline(box)} W n`);
        draw();
      }),
    placed: (motion, draw, scale = 1) => {
      const outer = toPage;
      const move = mover(motion);
      toPage = (p) => outer(move({ x: p.x * scale, y: p.y * scale }));
      draw();
      toPage = outer;
    },
    layer: (id, draw) => {
      layers.add(id);
      parts.push(`/OC /${id} BDC`);
      draw();
      parts.push('EMC');
    },
  };
};

/** Round ends where the line is drawn through; dashes are cut square, so that they keep their length. */
const strokeOperators = (stroke: Stroke): string => {
  const dash = (stroke.dash ?? []).map((mm) => pdfNumber(mm * POINTS_PER_MM));
  // A pattern of nothing but zeros would be an error in a viewer (ISO 32000-1, 8.4.3.6): it is a solid line.
  const dashed = dash.some((length) => length !== '0');
  const width = pdfNumber(stroke.width * POINTS_PER_MM);
  return `${colorOperator(stroke.color, 'stroke')} ${width} w ${dashed ? 0 : 1} J [${dashed ? dash.join(' ') : ''}] 0 d`;
};

const colorOperator = (color: string, use: 'stroke' | 'fill'): string => {
  const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(color);
  if (!match) throw new Error(`A page was given the colour ${color}.`);
  const shares = match.slice(1).map((hex) => pdfNumber(Number.parseInt(hex, 16) / 255));
  const gray = shares[0] === shares[1] && shares[1] === shares[2];
  if (gray) return `${shares[0]} ${use === 'stroke' ? 'G' : 'g'}`;
  return `${shares.join(' ')} ${use === 'stroke' ? 'RG' : 'rg'}`;
};
