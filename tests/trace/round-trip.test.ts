/**
 * What the program prints, seen through a scanner or a camera, comes back as the same template: the whole way by the
 * commands that people use. pdf.js and a canvas stand in for the printer and the scanner.
 */

import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import { drawSilhouette } from '../../src/drawing/index.ts';
import { flatten, type Path, type Point, pathLength, pieceLength } from '../../src/geometry/index.ts';
import { readTemplate, sectionsOf, type Template } from '../../src/template/index.ts';
import { applyHomography, findHomography } from '../../src/trace/homography.ts';
import type { Picture } from '../../src/trace/index.ts';
import { emptyFolder, run } from '../cli/run.ts';
import { few, long } from '../support/runs.ts';
import { apart, noisy, pngOf, rasterise, resampled, turned } from './printed.ts';

const DPI = 300;
const PER_MM = DPI / 25.4;
/** Pictures of millions of pixels, on a busy computer. */
const SLOW = 300_000;

/** Three arcs, the last a hollow that comes back up to the level of the heel. */
const OWN = `title: Corbel
units: in
edge:
  - start: [0, 0]
  - arc: { to: [4, 0], rise: 1 }
  - arc: { to: [6 1/2, 1/8], rise: 5/16 }
  - arc: { to: [8 1/2, 0], rise: -1/4 }
`;

const templateIn = async (file: string): Promise<Template> => {
  const reading = readTemplate(await readFile(file, 'utf8'), file);
  if (!reading.ok) throw new Error(reading.problems.map((p) => p.message).join('; '));
  return reading.template;
};

const profile = (name: string): Promise<Template> =>
  templateIn(join(import.meta.dirname, `../../profiles/${name}.yaml`));

const sectionCount = (t: Template): number => sectionsOf(t, pathLength(t.edge)).length;

describe('a scan of the printed template', () => {
  long.each([
    ['baluster', 3],
    ['finial', -2.4],
    ['newel', 1.3],
  ])(
    'of %s, turned by %s°, comes back within 0.1 mm and with its sections',
    async (name, degrees) => {
      const folder = emptyFolder();
      expect(await run(folder, ['template', name, '--solid', '-o', 'solid.pdf'])).toMatchObject({ code: 0 });
      const page = await rasterise(await readFile(join(folder, 'solid.pdf')), 2, DPI);
      const scan = noisy(turned(page, (degrees * Math.PI) / 180), 8, 0.0005, 11);
      await writeFile(join(folder, 'scan.png'), pngOf(scan, PER_MM));
      const ran = await run(folder, ['template', 'trace', 'scan.png', '--json']);
      expect(ran).toMatchObject({ code: 0 });
      const told = JSON.parse(ran.out);
      const before = await profile(name);
      const after = await templateIn(join(folder, 'scan.yaml'));
      const off = apart(before.edge, after.edge);
      expect(off).toBeLessThan(0.1);
      expect(sectionCount(after)).toBe(sectionCount(before));
      // The picture was turned to the left by as much; half a degree of a hundredth is what pixels tell.
      expect(Math.abs(told.skew)).toBeCloseTo(Math.abs(degrees), 1);
      expect(ran.left).toEqual(['scan-outline.png', 'scan.png', 'scan.yaml', 'solid.pdf']);
    },
    SLOW,
  );

  long(
    'of a template of the user’s own ends at its corners, without a crumb, and its picture lies beside it',
    async () => {
      const folder = emptyFolder();
      await mkdir(join(folder, 'found'));
      await writeFile(join(folder, 'own.yaml'), OWN);
      expect(await run(folder, ['template', 'own.yaml', '--solid', '-o', 'solid.pdf'])).toMatchObject({
        code: 0,
      });
      const page = await rasterise(await readFile(join(folder, 'solid.pdf')), 2, DPI);
      const scan = noisy(turned(page, (2 * Math.PI) / 180), 8, 0.0005, 5);
      await writeFile(join(folder, 'scan.png'), pngOf(scan, PER_MM));
      const ran = await run(folder, ['template', 'trace', 'scan.png', '-o', 'found/back.yaml']);
      expect(ran).toMatchObject({ code: 0, left: ['found', 'own.yaml', 'scan.png', 'solid.pdf'] });
      expect((await readdir(join(folder, 'found'))).sort()).toEqual(['back-outline.png', 'back.yaml']);
      const after = await templateIn(join(folder, 'found/back.yaml'));
      const before = await templateIn(join(folder, 'own.yaml'));
      expect(apart(before.edge, after.edge)).toBeLessThan(0.1);
      // Beside a corner three pixels are not believed; what is no longer than twice that tells nothing of the edge.
      const { pieces } = after.edge;
      expect(Math.min(pieceLength(pieces[0]!), pieceLength(pieces.at(-1)!))).toBeGreaterThan(6 / PER_MM);
    },
    SLOW,
  );

  it.each(
    few(
      [
        ['middle', 0],
        ['inner', -0.3],
        ['outer', 0.3],
      ] as const,
      ([side]) => side === 'inner',
    ),
  )(
    'of a pencil line round it: its %s lies %s mm outside the template',
    async (side, outside) => {
      const folder = emptyFolder();
      const before = await profile('newel');
      const drawn = drawSilhouette(before, '');
      if (!drawn.ok) throw new Error('no silhouette');
      const [width, height] = [Math.ceil(190 * PER_MM), Math.ceil(110 * PER_MM)];
      const line = strokeOf(drawn.outline, width, height, 0.6);
      await writeFile(join(folder, 'line.png'), pngOf(noisy(line, 8, 0.0002, 3), PER_MM));
      const ran = await run(folder, ['template', 'trace', 'line.png', '--line', side]);
      expect(ran).toMatchObject({ code: 0 });
      expect(ran.lines[0]).toBe(
        'found a drawn line 0.6 mm wide with 4 corners in a scan of 300 dots per inch',
      );
      const { edge } = await templateIn(join(folder, 'line.yaml'));
      // Heights over the back: the edge's lowest and highest place stand outside by the same.
      const level = flatten(edge, 0.001).map((p) => p.y);
      const rise = Math.max(...level) - Math.min(...level);
      expect(Math.abs(rise - 57.15)).toBeLessThan(0.1);
      const reach = flatten(edge, 0.001).at(-1)!.x - flatten(edge, 0.001)[0]!.x;
      // The sides are upright, so each moves out by what the line's side does.
      expect(Math.abs(reach - (158.75 + 2 * outside))).toBeLessThan(0.15);
    },
    SLOW,
  );
});

/** A closed line drawn on white, y up, 10 mm from the left and 60 mm from the bottom. */
const strokeOf = (path: Path, width: number, height: number, wide: number): Picture => {
  const canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  context.lineWidth = wide * PER_MM;
  context.lineJoin = 'miter';
  context.strokeStyle = '#333';
  outlineOn(context, path, (p) => ({ x: (p.x + 10) * PER_MM, y: height - (p.y + 40) * PER_MM }));
  context.stroke();
  return greyOfCanvas(context, width, height);
};

type Context = ReturnType<ReturnType<typeof createCanvas>['getContext']>;

const outlineOn = (context: Context, path: Path, place: (p: Point) => Point): void => {
  context.beginPath();
  for (const p of flatten(path, 0.001)) {
    const q = place(p);
    context.lineTo(q.x, q.y);
  }
  context.closePath();
};

const greyOfCanvas = (context: Context, width: number, height: number): Picture => {
  const { data } = context.getImageData(0, 0, width, height);
  return { width, height, grey: Uint8Array.from({ length: width * height }, (_, i) => data[4 * i]!) };
};

/** The paper as a camera sees it, `mm` of distance away, turned and tilted (radians) about an axis through its middle. */
const photographed = (paper: Picture, tilt: number, axis: number, turn: number): Picture => {
  const away = 450;
  const focus = away * 7.5;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [width, height] = [2500, 2600];
  const seen = (x: number, y: number): Point => {
    const [u, v] = [c * x - s * y, s * x + c * y];
    const along = Math.cos(axis) * u + Math.sin(axis) * v;
    const across = -Math.sin(axis) * u + Math.cos(axis) * v;
    const z = away + across * Math.sin(tilt);
    const flat = across * Math.cos(tilt);
    const px = Math.cos(axis) * along - Math.sin(axis) * flat;
    const py = Math.sin(axis) * along + Math.cos(axis) * flat;
    return { x: (focus * px) / z + width / 2, y: (focus * py) / z + height / 2 };
  };
  const corners = [
    [-90, -120],
    [90, -120],
    [90, 120],
    [-90, 120],
  ] as const;
  const back = findHomography(
    corners.map(([x, y]) => seen(x, y)),
    corners.map(([x, y]) => ({ x: paper.width / 2 + x * PER_MM, y: paper.height / 2 + y * PER_MM })),
  )!;
  const table = 120;
  const flat = resampled(
    paper,
    width,
    height,
    (x, y, into) => {
      const q = applyHomography(back, { x, y });
      into.x = q.x;
      into.y = q.y;
    },
    table,
  );
  // A lamp from the right: the left is two thirds as bright.
  const grey = flat.grey.map((g, i) => g * (0.66 + (0.34 * (i % width)) / width));
  return noisy({ width, height, grey }, 6, 0.0002, 7);
};

describe('a photograph of the capture sheet', () => {
  it.each(
    few(
      [
        ['baluster', 'letter', 25, 0.6, 0],
        ['finial', 'a4', 25, 2.1, 0.3],
        ['newel', 'letter', 18, -1.2, Math.PI],
      ] as const,
      ([name]) => name === 'newel',
    ),
  )(
    'with %s on %s paper, tilted by %s°, comes back within 0.5 mm',
    async (name, paper, degrees, axis, turn) => {
      const folder = emptyFolder();
      expect(await run(folder, ['template', 'sheet', '--paper', paper])).toMatchObject({ code: 0 });
      const sheet = await rasterise(await readFile(join(folder, 'capture-sheet.pdf')), 1, DPI);
      const before = await profile(name);
      const drawn = drawSilhouette(before, '');
      if (!drawn.ok) throw new Error('no silhouette');
      const { width, height } = sheet;
      const canvas = createCanvas(width, height);
      const context = canvas.getContext('2d');
      context.fillStyle = '#fff';
      context.fillRect(0, 0, width, height);
      context.fillStyle = '#222';
      const [c, s] = [Math.cos(1.4), Math.sin(1.4)];
      outlineOn(context, drawn.outline, ({ x, y }) => ({
        x: width / 2 + PER_MM * (c * (x - 80) - s * (y - 10)),
        y: height / 2 - PER_MM * (s * (x - 80) + c * (y - 10)),
      }));
      context.fill();
      const shape = greyOfCanvas(context, width, height);
      const laid = { width, height, grey: sheet.grey.map((g, i) => Math.min(g, shape.grey[i]!)) };
      const photo = photographed(laid, (degrees * Math.PI) / 180, axis, turn);
      // A camera's file says 72 dots per inch and means nothing by it.
      await writeFile(join(folder, 'photo.png'), pngOf(photo, 72 / 25.4));
      const ran = await run(folder, ['template', 'trace', 'photo.png', '--json']);
      expect(ran).toMatchObject({
        code: 0,
        lines: expect.arrayContaining([expect.stringContaining('photo.yaml')]),
      });
      const told = JSON.parse(ran.out);
      expect(told.source).toBe('capture-sheet');
      const after = await templateIn(join(folder, 'photo.yaml'));
      const off = apart(before.edge, after.edge);
      expect(off).toBeLessThan(0.5);
    },
    SLOW,
  );
});
