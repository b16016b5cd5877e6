/** One shape as an open drawing, as a closed one, and as a scan, with the foot on either side: the same template. */

import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import { expect, test } from 'vitest';
import { pathLength } from '../../src/geometry/index.ts';
import { readTemplate, type Template } from '../../src/template/index.ts';
import { emptyFolder, run } from '../cli/run.ts';
import { apart } from './printed.ts';

/** An edge of a straight side and an arc, then a side, a back and a side: in mm, y down; the first two are the edge. */
const EDGE = 'M 20 60 L 70 40 A 60 60 0 0 1 150 45';
const BODY = `${EDGE} L 158 80 L 22 80`;
const PER_MM = 300 / 25.4;

/** The foot is outside: where it runs on the right, the same edge is walked from its other end. */
const made = async (
  folder: string,
  args: readonly string[],
  foot: string,
  ends: readonly [string, string],
): Promise<Template> => {
  const [heel, crown] = foot === 'left' ? ends : [ends[1], ends[0]];
  const said = ['--foot', foot, '--heel', heel, '--crown', crown, '-o', 'made.yaml'];
  const ran = await run(folder, ['template', ...args, ...said]);
  expect(ran.code, ran.err).toBe(0);
  const reading = readTemplate(await readFile(join(folder, 'made.yaml'), 'utf8'), 'made.yaml');
  if (!reading.ok) throw new Error(reading.problems.map((p) => p.message).join('; '));
  return reading.template;
};

const drawing = async (d: string, foot: string): Promise<Template> => {
  const folder = emptyFolder();
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100"><path d="${d}"/></svg>`;
  await writeFile(join(folder, 'a.svg'), svg);
  return made(folder, ['import', 'a.svg'], foot, ['1', '3']);
};

const scan = async (foot: string): Promise<Template> => {
  const folder = emptyFolder();
  const canvas = createCanvas(Math.round(200 * PER_MM), Math.round(100 * PER_MM));
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.scale(PER_MM, PER_MM);
  context.fillStyle = '#222';
  context.beginPath();
  context.moveTo(20, 60);
  context.lineTo(70, 40);
  // The arc's middle lies on the perpendicular of its chord, by Pythagoras.
  const [cx, cy] = [110, 42.5];
  const half = Math.hypot(80, 5) / 2;
  const deep = Math.sqrt(60 * 60 - half * half);
  const [mx, my] = [cx - (5 / (2 * half)) * deep, cy + (80 / (2 * half)) * deep];
  context.arc(mx, my, 60, Math.atan2(40 - my, 70 - mx), Math.atan2(45 - my, 150 - mx));
  context.lineTo(158, 80);
  context.lineTo(22, 80);
  context.fill();
  await writeFile(join(folder, 'a.png'), canvas.toBuffer('image/png'));
  // Corners are numbered clockwise from the first that is met, so the ends are said by their places.
  const at = (x: number, y: number): string => `${(x * PER_MM).toFixed(1)},${(y * PER_MM).toFixed(1)}`;
  return made(folder, ['trace', 'a.png', '--dpi', '300'], foot, [at(20, 60), at(150, 45)]);
};

test.each(['left', 'right'])(
  'drawn open, drawn closed and scanned, the foot on the %s',
  async (foot) => {
    const [open, closed, scanned] = [
      await drawing(BODY, foot),
      await drawing(`${BODY} Z`, foot),
      await scan(foot),
    ];
    // The straight side by Pythagoras, and the arc over a chord of √(80² + 5²) by its radius.
    const length = Math.hypot(50, 20) + 2 * 60 * Math.asin(Math.hypot(80, 5) / 2 / 60);
    for (const { edge } of [open, closed, scanned])
      expect(Math.abs(pathLength(edge) - length)).toBeLessThan(0.1);
    expect(apart(open.edge, closed.edge)).toBeLessThan(0.001);
    expect(apart(scanned.edge, closed.edge)).toBeLessThan(0.1);
    for (const { breaks } of [open, closed, scanned]) expect(breaks).toHaveLength(1);
  },
  120_000,
);
