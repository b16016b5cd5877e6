/** Lines that are not closed, by rings that are made here: what is open in them is known. */

import { describe, expect, test } from 'vitest';
import { openLine } from '../../src/trace/open-line.ts';

/** The rim of a line of a width along a circle of radius 60 that leaves out a piece so long, at its right. */
const rim = (width: number, gap: number, step = 0.1) => {
  const half = gap / 2 / 60;
  const n = Math.round((60 * (2 * Math.PI - 2 * half)) / step);
  const at = (i: number, r: number) => {
    const angle = half + ((2 * Math.PI - 2 * half) * i) / n;
    return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
  };
  const side = Array.from({ length: n + 1 }, (_, i) => i);
  return [...side.map((i) => at(i, 60 + width / 2)), ...side.reverse().map((i) => at(i, 60 - width / 2))];
};

describe('a line that is not closed', () => {
  test.each([
    [0.5, 4],
    [0.7, 8],
    [2, 25],
  ])('%s mm wide with a gap of %s mm is told, with the place', (width, gap) => {
    const found = openLine(rim(width, gap))!;
    expect(Math.abs(found.wide - gap)).toBeLessThan(width);
    expect(Math.hypot(found.gap.x - 60, found.gap.y)).toBeLessThan(width + gap ** 2 / 400);
  });

  test('is none where the ring holds a shape', () => {
    const strip = [
      [0, 0],
      [184, 0],
      [184, 8],
      [0, 8],
    ].map(([x, y]) => ({ x: x!, y: y! }));
    expect(openLine(strip)).toBeUndefined();
    expect(openLine(rim(8, 20))).toBeUndefined();
  });
});
