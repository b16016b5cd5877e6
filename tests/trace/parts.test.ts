/** The parts of a trace, each against a closed form or a slow independent way. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CORNER_TURN } from '../../src/template/breaks.ts';
import { blobsOf, isInked } from '../../src/trace/blobs.ts';
import { contourFrom, ringArea } from '../../src/trace/contour.ts';
import { findCorners, ringOf } from '../../src/trace/corners.ts';
import { applyHomography, findHomography, inverseHomography } from '../../src/trace/homography.ts';
import type { Picture } from '../../src/trace/index.ts';
import { lineMiddle } from '../../src/trace/line-middle.ts';
import { otsu, type Tone, toneOf } from '../../src/trace/tone.ts';
import { OUTLINE_CORNER } from '../../src/trace/working-edge.ts';
import { runs } from '../support/runs.ts';
import { chance } from './printed.ts';

/** A picture from a function of places; each pixel is the mean of 4 by 4 samples, as a scanner's sensor sees it. */
const seen = (width: number, height: number, isDark: (x: number, y: number) => boolean): Picture => {
  const grey = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let light = 0;
      for (let k = 0; k < 16; k++)
        if (!isDark(x + (k % 4) / 4 + 0.125, y + Math.floor(k / 4) / 4 + 0.125)) light++;
      grey[y * width + x] = Math.round((255 * light) / 16);
    }
  return { width, height, grey };
};

const DARK: Tone = { level: 127.5, dark: true };

describe("Otsu's threshold", () => {
  test('parts as the least variance within the parts does, tried one by one', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 256, maxLength: 256 }),
        (histogram) => {
          const within = (t: number): number => {
            let sum = 0;
            for (const [from, to] of [
              [0, t],
              [t + 1, 255],
            ] as const) {
              let n = 0;
              let mean = 0;
              for (let g = from; g <= to; g++) {
                n += histogram[g]!;
                mean += g * histogram[g]!;
              }
              if (n === 0) continue;
              mean /= n;
              for (let g = from; g <= to; g++) sum += histogram[g]! * (g - mean) ** 2;
            }
            return sum;
          };
          const found = otsu(histogram);
          if (found === undefined) return;
          const best = Math.min(...Array.from({ length: 255 }, (_, t) => within(t)));
          expect(within(found)).toBeLessThanOrEqual(best * (1 + 1e-9) + 1e-6);
        },
      ),
      runs(60, 5),
    );
  });

  test('a blank page has no tone, a thin faint line on a grainy one has', () => {
    const random = chance(3);
    const grain = (): number => 225 + Math.round(16 * (random() + random() - 1));
    const page = { width: 400, height: 400, grey: Uint8Array.from({ length: 160_000 }, grain) };
    expect(toneOf(page)).toBeUndefined();
    for (let x = 50; x < 350; x++) page.grey[200 * 400 + x] = 120;
    const tone = toneOf(page);
    expect(tone?.dark).toBe(true);
    expect(Math.abs(tone!.level - (225 + 120) / 2)).toBeLessThan(8);
  });
});

describe('patches and outlines', () => {
  test('a ring has a hole, and a dot in the hole', () => {
    const picture = seen(100, 100, (x, y) => {
      const r = Math.hypot(x - 50, y - 50);
      return r < 10 || (r > 20 && r < 40);
    });
    const blobs = blobsOf(picture, DARK)!;
    expect(blobs.map((b) => [b.inked, b.around])).toEqual([
      [false, -1],
      [true, 0],
      [false, 1],
      [true, 2],
    ]);
    // Areas of circles: π(40² − 20²) and π·10².
    expect(Math.abs(blobs[1]!.area - Math.PI * 1200)).toBeLessThan(40);
    expect(Math.abs(blobs[3]!.area - Math.PI * 100)).toBeLessThan(12);
  });

  test('patches are those that a flood from pixel to pixel finds', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const random = chance(seed);
        const [width, height] = [17, 13];
        const grey = Uint8Array.from({ length: width * height }, () => (random() < 0.5 ? 0 : 255));
        const blobs = blobsOf({ width, height, grey }, DARK)!;
        const done = new Uint8Array(grey.length);
        const areas: number[] = [];
        for (let i = 0; i < grey.length; i++) {
          if (done[i]) continue;
          const inked = isInked(grey[i]!, DARK);
          const stack = [i];
          done[i] = 1;
          let area = 0;
          while (stack.length > 0) {
            const k = stack.pop()!;
            area++;
            for (let dy = -1; dy <= 1; dy++)
              for (let dx = -1; dx <= 1; dx++) {
                if (!inked && dx !== 0 && dy !== 0) continue;
                const [x, y] = [(k % width) + dx, Math.floor(k / width) + dy];
                if (x < 0 || y < 0 || x >= width || y >= height) continue;
                const n = y * width + x;
                if (done[n] || isInked(grey[n]!, DARK) !== inked) continue;
                done[n] = 1;
                stack.push(n);
              }
          }
          areas.push(area);
        }
        const ascending = (a: number, b: number): number => a - b;
        expect(blobs.map((b) => b.area).sort(ascending)).toEqual(areas.sort(ascending));
      }),
      runs(200, 9),
    );
  });

  test('the outline of a disc is a circle to a fraction of a pixel', () => {
    const picture = seen(100, 100, (x, y) => Math.hypot(x - 50.3, y - 49.6) < 30.2);
    const blob = blobsOf(picture, DARK)!.find((b) => b.inked)!;
    const ring = contourFrom(picture, DARK, blob.startX, blob.startY)!;
    for (const p of ring) expect(Math.abs(Math.hypot(p.x - 50.3, p.y - 49.6) - 30.2)).toBeLessThan(0.2);
    // With y down the ink lies on the right of the way as one sees it; its area is that of the circle.
    expect(ringArea(ring)).toBeCloseTo(Math.PI * 30.2 ** 2, -0.5);
  });

  test('the middle of a drawn ring is the circle between its sides', () => {
    const circle = (r: number) =>
      Array.from({ length: 720 }, (_, i) => ({ x: r * Math.cos(i / 114.6), y: r * Math.sin(i / 114.6) }));
    const { points, width } = lineMiddle(circle(30.5), circle(30));
    expect(width).toBeCloseTo(0.5, 2);
    for (const p of points) expect(Math.hypot(p.x, p.y)).toBeCloseTo(30.25, 2);
  });
});

describe('corners', () => {
  test('of a noisy triangle are found where its sides meet, and nowhere else', () => {
    const random = chance(8);
    const corners = [
      { x: 0, y: 0 },
      { x: 20, y: 50 },
      { x: 70, y: 10 },
    ];
    const points = corners.flatMap((a, i) => {
      const b = corners[(i + 1) % 3]!;
      const n = Math.round(Math.hypot(b.x - a.x, b.y - a.y) / 0.08);
      return Array.from({ length: n }, (_, k) => ({
        x: a.x + ((b.x - a.x) * k) / n + 0.02 * (random() - 0.5),
        y: a.y + ((b.y - a.y) * k) / n + 0.02 * (random() - 0.5),
      }));
    });
    const found = findCorners(ringOf(points), { gap: 0.35, steps: 0, noise: 0.06 });
    expect(found.length).toBe(3);
    for (const c of corners)
      expect(Math.min(...found.map((f) => Math.hypot(f.point.x - c.x, f.point.y - c.y)))).toBeLessThan(0.02);
  });

  test('a circle of 2 mm has none', () => {
    const points = Array.from({ length: 160 }, (_, i) => ({
      x: 2 * Math.cos((i * Math.PI) / 80),
      y: 2 * Math.sin((i * Math.PI) / 80),
    }));
    expect(findCorners(ringOf(points), { gap: 0.35, steps: 0, noise: 0.06 })).toEqual([]);
  });

  test('are told from smooth joints as template files do', () => {
    expect(OUTLINE_CORNER).toBe(CORNER_TURN);
  });
});

describe('the map from a photograph', () => {
  const square = [
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 100, y: 150 },
    { x: 0, y: 150 },
  ];

  test('is found again from the places it maps to, and turned round', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (v) => {
          const h = [
            1 + 0.3 * v[0]!,
            0.3 * v[1]!,
            50 * v[2]!,
            0.3 * v[3]!,
            1 + 0.3 * v[4]!,
            50 * v[5]!,
            2e-3 * v[6]!,
            2e-3 * v[7]!,
            1,
          ];
          const to = [...square, { x: 40, y: 150 }, { x: 20, y: 0 }];
          const from = to.map((p) => applyHomography(h, p));
          const found = findHomography(from, to)!;
          for (const p of [
            { x: 33, y: 71 },
            { x: 90, y: 10 },
          ]) {
            const back = applyHomography(found, applyHomography(h, p));
            expect(Math.hypot(back.x - p.x, back.y - p.y)).toBeLessThan(1e-5);
            const forth = applyHomography(inverseHomography(found)!, p);
            const wanted = applyHomography(h, p);
            expect(Math.hypot(forth.x - wanted.x, forth.y - wanted.y)).toBeLessThan(1e-4);
          }
        },
      ),
      runs(100, 2),
    );
  });

  test('is not found from points on one line, or from too few', () => {
    expect(findHomography(square.slice(0, 3), square.slice(0, 3))).toBeUndefined();
    const flat = [0, 1, 2, 3].map((x) => ({ x, y: 0 }));
    expect(findHomography(flat, square)).toBeUndefined();
  });
});
