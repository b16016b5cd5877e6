/** Acrylic that lies on the capture sheet: its upper edge is nearer to the lens, and looks larger (central projection). */

import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { boxHeight, boxWidth, pathBox } from '../../src/geometry/index.ts';
import { raisedDoubt, tracePicture } from '../../src/trace/index.ts';
import { emptyFolder, run } from '../cli/run.ts';
import { photograph, sheetWith } from './camera.ts';
import { pngOf } from './printed.ts';

/** Seen from 400 mm, acrylic 6.35 mm thick and 150 mm by 80 mm large looks on the sheet as one so much larger. */
const [HEIGHT, THICKNESS] = [400, 6.35];
const LARGER = HEIGHT / (HEIGHT - THICKNESS);

const SHOT = {
  ...{ away: HEIGHT, width: 1500, height: 2000, focal: 1900, tilt: 0, axis: 0, turn: 0.05, k1: -0.05 },
};

test('is traced at its own size by its thickness and the height of the lens, and said to be too large without', () => {
  const sheet = sheetWith(8, (context) => {
    context.fillStyle = '#222';
    context.fillRect(-40 * LARGER, -75 * LARGER, 80 * LARGER, 150 * LARGER);
  });
  const picture = photograph(sheet, SHOT, { light: 0.8, blur: 0.7, noise: 3, seed: 9 });
  const sizes = (raised: { thickness: number; height: number } | undefined) => {
    const options = {
      tolerance: 0.03,
      side: 'middle',
      pixelsPerMm: undefined,
      sheetScale: { x: 1, y: 1 },
    } as const;
    const result = tracePicture(picture, { ...options, raised });
    if (!result.ok) throw new Error(result.problem.message);
    const box = pathBox(result.traced.outline.path);
    return { traced: result.traced, width: boxWidth(box), height: boxHeight(box) };
  };
  const plain = sizes(undefined);
  expect(plain.height - 150 * LARGER).toBeLessThan(0.3);
  expect(plain.height - 150).toBeGreaterThan(2);
  expect(raisedDoubt(plain.traced, THICKNESS)).toMatch(/1\.6 % too large/);
  const lowered = sizes({ thickness: THICKNESS, height: HEIGHT });
  expect(Math.abs(lowered.height - 150)).toBeLessThan(0.3);
  expect(Math.abs(lowered.width - 80)).toBeLessThan(0.3);
  expect(raisedDoubt(lowered.traced, THICKNESS)).toBeUndefined();
  // What is pointed at in the picture is the same place either way.
  const p = { x: 640, y: 870 };
  const q = lowered.traced.toPixels(lowered.traced.toMm(p));
  expect(Math.hypot(q.x - p.x, q.y - p.y)).toBeLessThan(1e-3);
}, 120_000);

test('is traced at its own size on the terminal, by --thickness and --camera', async () => {
  const sheet = sheetWith(8, (context) => {
    context.fillStyle = '#222';
    context.fillRect(-40 * LARGER, -75 * LARGER, 80 * LARGER, 150 * LARGER);
  });
  const folder = emptyFolder();
  const picture = photograph(sheet, SHOT, { light: 0.8, blur: 0.7, noise: 3, seed: 9 });
  await writeFile(join(folder, 'acrylic.png'), pngOf(picture, undefined));
  const told = ['--thickness', '6.35 mm', '--camera', '400 mm', '--heel', '1', '--crown', '2'];
  const ran = await run(folder, ['template', 'trace', 'acrylic.png', ...told]);
  expect(ran).toMatchObject({ code: 0 });
  expect(ran.lines).toContain('taken for the upper edge of the acrylic, and made 1.6 % smaller');
  const [, ...sizes] = /^size: ([\d.]+) mm .* by ([\d.]+) mm/.exec(
    ran.lines.find((l) => l.startsWith('size:'))!,
  )!;
  const [short, long] = sizes.map(Number).sort((a, b) => a - b) as [number, number];
  expect(Math.abs(short - 80)).toBeLessThan(0.3);
  expect(Math.abs(long - 150)).toBeLessThan(0.3);
}, 120_000);
