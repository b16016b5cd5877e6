/** A printer's correction: it belongs to the edges of the paper, and the sheets that were measured come out again. */

import { describe, expect, it } from 'vitest';
import { distance, type Motion, move, type Point, point } from '../../src/geometry/index.ts';
import {
  type LayOutOptions,
  layOut,
  PAPER_IDS,
  type PerEdge,
  type SheetPlan,
} from '../../src/pagination/index.ts';
import { DEFAULT_OVERLAP } from '../../src/pagination/margins.ts';
import { few } from '../support/runs.ts';
import { inkPoints } from './ink-points.ts';
import { onFile } from './on-file.ts';
import { scatter, seeded, swagBorder, swagStrip } from './sample-drawings.ts';

/** What a printer that is out by `error` makes of a page: it knows only the edges of the paper that it pulls in. */
const printed = (plan: SheetPlan, error: PerEdge, place: Motion, p: Point): Point => {
  const file = onFile(plan, move(place, p));
  const isUpright = plan.width < plan.height;
  return {
    x: file.x * (isUpright ? error.short : error.long),
    y: file.y * (isUpright ? error.long : error.short),
  };
};

const labels = (plan: SheetPlan): string[] => plan.sheets.map((s) => s.label);
const held = (plan: SheetPlan) => ({ orientation: plan.orientation, turned: plan.turned });

describe('a correction does not turn the sheets', () => {
  // A strip of 36 in, whose four sheets went from landscape to portrait when 1.98 for 2 in was measured across.
  const strip = swagStrip(3, 304.8, 70);
  const errors: readonly PerEdge[] = [
    { short: 0.99, long: 1 },
    { short: 1, long: 0.99 },
    { short: 1.02, long: 0.98 },
    { short: 0.995, long: 1.002 },
  ];

  it.each(errors)('of a strip for a printer of %j', (measured) => {
    for (const paper of ['letter', 'a4'] as const) {
      const before = layOut(strip, { paper });
      const after = layOut(strip, { paper, measured });
      expect(held(after)).toEqual(held(before));
      expect(labels(after)).toEqual(labels(before));
    }
  });

  it('and keeps which part of a border each sheet shows', () => {
    const border = swagBorder(900, 140, 4);
    const before = layOut(border, { paper: 'letter' });
    const after = layOut(border, { paper: 'letter', measured: { short: 0.985, long: 1.01 } });
    expect(labels(after)).toEqual(labels(before));
    for (const [i, { window }] of after.sheets.entries()) {
      const was = before.sheets[i]!.window;
      // The windows grow and shrink about their middles: 1 1/2 % of 7 1/2 in, 1 % of 10 in, half on each side.
      for (const side of ['minX', 'maxX', 'minY', 'maxY'] as const)
        expect(Math.abs(window[side] - was[side])).toBeLessThan(3);
    }
  });

  it('but lays them anew, held as they were, where a band would be too narrow to tape or ink would be lost', () => {
    // Two sheets of letter reach 2 · 254 − 12.7 = 495.3 mm; of a printer that makes 0.97, 2 · 246.38 − 6.35 = 486.41.
    const wide = swagStrip(1, 490, 60);
    const measured = { short: 0.97, long: 0.97 };
    const options: LayOutOptions = { paper: 'letter', orientation: 'portrait' };
    const after = layOut(wide, { ...options, measured });
    expect([layOut(wide, options).sheets.length, after.sheets.length]).toEqual([2, 3]);
    expect(held(after)).toEqual(held(layOut(wide, options)));
    const points = inkPoints(wide, 0.5);
    expect(points.filter((p) => !isShown(after, p))).toEqual([]);
  });
});

const isShown = (plan: SheetPlan, { x, y }: Point): boolean =>
  plan.sheets.some(
    ({ window: w }) => x >= w.minX - 1e-3 && x <= w.maxX + 1e-3 && y >= w.minY - 1e-3 && y <= w.maxY + 1e-3,
  );

describe('of random drawings, papers and printers', () => {
  const all = Array.from({ length: 60 }, (_, i) => i + 1);
  const seeds = few(all, (seed) => seed <= 15);
  let kept = 0;
  it('sheets are held as before, show all ink, can be taped, and come out true', () => {
    for (const seed of seeds) {
      const random = seeded(seed + 7000);
      const between = (a: number, b: number): number => a + random() * (b - a);
      const drawing =
        random() < 0.4
          ? scatter(seed, between(80, 600), between(80, 500), Math.round(between(2, 14)))
          : random() < 0.6
            ? swagStrip(Math.round(between(1, 4)), between(80, 300), between(30, 120))
            : swagBorder(between(400, 900), between(80, 150), 3);
      const paper = PAPER_IDS[Math.floor(random() * PAPER_IDS.length)]!;
      const error = { short: between(0.97, 1.03), long: between(0.97, 1.03) };
      const before = layOut(drawing, { paper });
      const after = layOut(drawing, { paper, measured: error });
      expect(held(after), `seed ${seed}`).toEqual(held(before));
      if (labels(after).join() === labels(before).join()) kept++;
      expect(inkPoints(drawing, 0.5).filter((p) => !isShown(after, p))).toEqual([]);
      for (const sheet of after.sheets)
        for (const { band, side } of sheet.edges) {
          const deep = side === 'left' || side === 'right' ? band.maxX - band.minX : band.maxY - band.minY;
          expect(deep).toBeGreaterThan(6.35 - 1e-9);
          expect(deep).toBeLessThan(2 * DEFAULT_OVERLAP + 1e-9);
        }
      const [{ place, window }] = after.sheets as [SheetPlan['sheets'][number]];
      const a = point(between(window.minX, window.maxX), between(window.minY, window.maxY));
      const b = point(between(window.minX, window.maxX), between(window.minY, window.maxY));
      expect(distance(printed(after, error, place, a), printed(after, error, place, b))).toBeCloseTo(
        distance(a, b),
        9,
      );
    }
  }, 60_000);

  it('nearly always are the same sheets', () => {
    expect(kept).toBeGreaterThan(0.9 * seeds.length);
  });
});
