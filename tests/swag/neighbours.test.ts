/** From the outer seam the swags of two sides hang towards each other: near a corner both would want the same cloth. */

import { describe, expect, it } from 'vitest';
import { distance, nearnessOf, pathLength, pathStart, pointAlong } from '../../src/geometry/index.ts';
import { overNeighbour } from '../../src/swag/corner.ts';
import { fieldsOf } from '../../src/swag/field.ts';
import { cornerSwag, designOf, placedPath, type SideFit } from '../../src/swag/index.ts';
import { planOf, search } from './fit-helpers.ts';

const OUTER = planOf(
  'layout: { border: { width: 9, inner: { top: 24, right: 30, bottom: 24, left: 30 }, margin: 1/2, from: outer, corners: turn } }\n',
);

describe('sides that meet at a turned corner', () => {
  const { field, fit } = search(OUTER).results[0]!;
  const deep = (side: SideFit, top: number): SideFit => ({
    ...side,
    seat: { ...side.seat, pose: { ...side.seat.pose, top } },
  });

  it('keep apart in all that the search finds', () => {
    for (const { fit: found, field: ground } of search(OUTER).results)
      expect(overNeighbour(found.sides, cornerSwag(found)!.toCorner, ground)).toBeLessThanOrEqual(1e-7);
  });

  it('come over each other where both are deeper than they stand from the corner', () => {
    const at = 50;
    const [top, right, bottom, left] = fit.sides.map((s) => deep(s, 30)) as [
      SideFit,
      SideFit,
      SideFit,
      SideFit,
    ];
    expect(overNeighbour([top, right, bottom, left], at, field)).toBe(-20);
    expect(overNeighbour([deep(top, 70), right, bottom, left], at, field)).toBe(-20);
    expect(overNeighbour([deep(top, 70), right, deep(bottom, 70), left], at, field)).toBe(-20);
    // Two next to each other: as far as the shallower of them passes.
    expect(overNeighbour([deep(top, 70), right, bottom, deep(left, 62)], at, field)).toBe(12);
  });

  it('lean away from each other from the inner seam', () => {
    const layout = OUTER.layout.kind === 'border' ? OUTER.layout : undefined;
    const inner = fieldsOf({ ...layout!, from: 'inner' })[0]!;
    expect(
      overNeighbour(
        fit.sides.map((s) => deep(s, 900)),
        1,
        inner,
      ),
    ).toBe(0);
  });
});

describe('runs that meet at a corner of the outer seam', () => {
  /** Neighbouring swags nearer than this read as one thick line (common practice, no source): 1/16 in. */
  const THICK = 25.4 / 16;
  const INCH = 25.4;

  it('part within an inch in all that the search finds', () => {
    let looked = 0;
    for (const width of [6, 9]) {
      const plan = planOf(
        `layout: { border: { width: ${width}, inner: { top: 24, right: 30, bottom: 24, left: 30 }, margin: 1/2, from: outer, corners: meet } }`,
      );
      for (const { field, fit } of search(plan).results) {
        const design = designOf(field, fit);
        for (const half of design.halves) {
          if (half.half !== 'first' || half.repeat !== `${half.side} 1`) continue;
          const own = placedPath(half);
          const start = pathStart(own)!;
          // The half of the side before it that stops where this one starts.
          const before = design.halves.find(
            (h) => h.side !== half.side && distance(pathStart(placedPath(h))!, start) < 1e-6,
          );
          if (!before) continue;
          looked++;
          const other = nearnessOf(placedPath(before).pieces);
          const past = Array.from({ length: 8 }, (_, i) => pointAlong(own, (1.02 + i / 4) * INCH));
          const parted = past.some((p) => p === undefined || other.distance(p) > THICK);
          expect(parted || pathLength(own) < INCH).toBe(true);
        }
      }
    }
    expect(looked).toBeGreaterThan(50);
  });
});
