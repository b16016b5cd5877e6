/** A picture to show, from the command line: her fabric and thread to the pixel, true size in mm, and what is refused. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, test } from 'vitest';
import { emptyFolder, run } from './run.ts';

const BORDER = `title: Guild quilt
template: baluster
layout: { border: { width: 6, inner: 36, margin: 1/2 } }
colours: { fabric: "#16324f", middle: "#F4EFE6", thread: "#ffcc00" }
`;

const folderWith = (plan: string): string => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), plan);
  return folder;
};

const pixelsOf = async (path: string) => {
  const image = await loadImage(path);
  const context = createCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  const at = (x: number, y: number): string =>
    `#${[0, 1, 2].map((i) => data[4 * (Math.round(y) * image.width + Math.round(x)) + i]!.toString(16).padStart(2, '0')).join('')}`;
  const all = new Set<string>();
  for (let i = 0; i < data.length; i += 4)
    all.add(
      `#${[data[i]!, data[i + 1]!, data[i + 2]!].map((v) => v.toString(16).padStart(2, '0')).join('')}`,
    );
  return { width: image.width, height: image.height, at, all };
};

test('a PNG has the colours of the plan, each where its cloth is', async () => {
  const folder = folderWith(BORDER);
  const ran = await run(folder, ['draw', 'plan.yaml', '--colours', '-o', 'p.png', '--width', '1000']);
  expect(ran.code, ran.err).toBe(0);
  expect(ran.lines.at(-1)).toBe(
    'p.png: the whole border, in its colours of fabric and thread, a picture of 1000 by 1000 pixels',
  );
  const { at, all } = await pixelsOf(join(folder, 'p.png'));
  const [mid, edge] = [500, 1000 * (1.2 / 48.5)];
  expect(at(mid, mid)).toBe('#f4efe6');
  // A seam's allowance inside the outer edge, at the ends of both sides: nothing is quilted in the margin.
  for (const [x, y] of [
    [edge / 3, mid],
    [mid, 1000 - edge / 3],
  ] as const)
    expect(at(x, y)).toBe('#16324f');
  // Of the quilting; and nothing of the marks, which are of no such colour.
  expect(all).toContain('#ffcc00');
});

test('an SVG opens, is as large as the quilt in mm, and has her thread and no marks', async () => {
  const folder = folderWith(BORDER);
  const ran = await run(folder, ['draw', 'plan.yaml', '--colours']);
  expect(ran.lines.at(-1)).toBe(
    'plan-colours.svg: the whole border, in its colours of fabric and thread, a drawing at true size',
  );
  const text = readFileSync(join(folder, 'plan-colours.svg'), 'utf8');
  const svg = new DOMParser({
    onError: (_, message) => {
      throw new Error(message);
    },
  }).parseFromString(text, 'image/svg+xml').documentElement!;
  // 36 in and twice 6 in are 48 in, 1219.2 mm; half the outer seam's line and 5 mm of ground lie beyond on either side.
  const width = Number(/^([\d.]+)mm$/.exec(svg.getAttribute('width')!)![1]);
  expect(width).toBeGreaterThan(1219.2 + 10);
  expect(width).toBeLessThan(1219.2 + 10 + 1);
  const [, , across, up] = svg.getAttribute('viewBox')!.split(' ').map(Number);
  expect([across, up]).toEqual([width, width]);
  expect(svg.getAttribute('style')).toBe('background: #16324f');
  const strokes = [...text.matchAll(/<g id="(\w+)">([\s\S]*?)<\/g>/g)].map(
    ([, id, inner]) => [id, new Set([...inner!.matchAll(/stroke="(#\w+)"/g)].map((m) => m[1]))] as const,
  );
  expect(Object.fromEntries(strokes.map(([id, colours]) => [id, [...colours]]))).toMatchObject({
    stitch: ['#ffcc00'],
    marks: [],
    notes: [],
    template: [],
    way: [],
  });
  expect(text.match(/fill="#16324f"|fill="#f4efe6"/g)).toEqual(['fill="#16324f"', 'fill="#f4efe6"']);
});

test('what --without names is left out, and no more', async () => {
  const folder = folderWith(BORDER);
  const ran = await run(folder, [
    'draw',
    'plan.yaml',
    '--colours',
    '--without',
    'template,notes',
    '-o',
    'm.svg',
  ]);
  expect(ran.code).toBe(0);
  const text = readFileSync(join(folder, 'm.svg'), 'utf8');
  expect(/<g id="marks">\n {4}<path/.test(text)).toBe(true);
  expect(/<g id="template">\n {2}<\/g>/.test(text)).toBe(true);
});

test('thread that can hardly be told from the fabric is told', async () => {
  const folder = folderWith(BORDER.replace('#ffcc00', '#20405f'));
  const ran = await run(folder, ['draw', 'plan.yaml', '--colours']);
  expect(ran.err + ran.out).toContain(
    'the thread can hardly be told from the fabric in the picture: their contrast is 1.2 to 1',
  );
  const plain = await run(folder, ['draw', 'plan.yaml']);
  expect(plain.err + plain.out).not.toContain('contrast');
});

test('in a quilt of parts an inner border is of the fabric, and what lies on the middle is told of', async () => {
  const folder = folderWith(`title: Two borders
template: baluster
parts:
  inner: { layout: { border: { width: 5, inner: 36, margin: 1/2 } } }
  outer: { layout: { border: { width: 6, inner: 46, margin: 1/2 } } }
  wreath: { layout: { frame: { count: 8, around: 9, clearance: 1/2, within: 16 } }, template: finial }
colours: { fabric: "#16324f", middle: "#f4efe6", thread: "#ffffff" }
`);
  const ran = await run(folder, ['draw', 'plan.yaml', '--colours', '-o', 'q.png', '--width', '1160']);
  expect(ran.code, ran.err).toBe(0);
  expect(ran.lines.at(-1)).toMatch(/^q\.png: the whole quilt, in its colours of fabric and thread, /);
  expect(ran.err + ran.out).toContain('the thread can hardly be told from the middle');
  const { width, at } = await pixelsOf(join(folder, 'q.png'));
  // 58 in across; 0.25 in inside each seam nothing is quilted.
  const x = (inches: number): number => (width * (inches + 0.2)) / 58.4;
  for (const inches of [0.25, 5.75, 6.25, 10.75])
    expect(at(x(inches), width / 2), `${inches}`).toBe('#16324f');
  expect(at(x(11.25), width / 2)).toBe('#f4efe6');
  expect(at(width / 2, width / 2)).toBe('#f4efe6');
});

describe('what does not go together is refused in a line', () => {
  test.each([
    [['-o', 'p.dxf'], '--colours: lines for a cutting machine have none; write a PDF, PNG or SVG'],
    [['--as', 'clean'], '--colours: it is for a picture to show, and --as for one that goes onto cloth'],
    [['--measured', '2,2', '-o', 'p.pdf'], '--measured: a picture to show is not printed to measure'],
  ])('%j', async (more, line) => {
    const ran = await run(folderWith(BORDER), ['draw', 'plan.yaml', '--colours', ...more]);
    expect(ran.code).not.toBe(0);
    expect(ran.err).toContain(line);
    expect(ran.err.trim().split('\n')[0]).toContain(line);
  });
});
