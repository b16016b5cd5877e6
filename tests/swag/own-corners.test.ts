/** A corner whose swag has a template of its own, by hand: where it starts, and what the sides' length is then. */

import { describe, expect, test } from 'vitest';
import { cornerSwag, type Design, designOf, placedPath } from '../../src/swag/index.ts';
import { planOf, search, templateOf } from './fit-helpers.ts';
import { type Point, pathEnd, pathStart } from './laid.ts';

/** With the foot of 5 mm the needle's arc is 5 mm larger, and its chord in proportion. */
const arc = (name: string, radius: number, chord: number) =>
  templateOf(
    `units: mm\nedge:\n  - start: [0, 0]\n  - arc: { to: [${chord}, 0], rise: ${radius - Math.sqrt(radius ** 2 - (chord / 2) ** 2)} }\n`,
    name,
  );
/** Of the sides: the needle's chord is 100·130/125 = 104. */
const SIDES = arc('baluster', 125, 100);
/** Of the corners: 82.5·170/165 = 85. */
const CORNERS = arc('bracket', 165, 82.5);

const WIDTH = 160;
const MADE = 'from: 1, to: crown, side: inside, direction: heel-first';

/** On a border whose sides are so long along the seam that the swags leave. */
const border = (length: number, from: string, corners: string, more: string): Design => {
  const inner = from === 'inner' ? length : length - 2 * WIDTH;
  const plan = planOf(
    `units: mm\nfoot: { clearance: 5 }\nlayout: { border: { width: ${WIDTH}, inner: ${inner.toFixed(9)}, from: ${from}, corners: ${corners} } }\nswag: { ${MADE}, ${more} }\ncorner: { template: bracket, ${MADE} }`,
  );
  const [best] = search(plan, [SIDES, CORNERS]).results;
  if (!best) throw new Error('nothing fits');
  return designOf(best.field, best.fit);
};

/**
 * Sides: 96² + 40² = 9216 + 1600 = 104². Corners: 75² + 40² = 5625 + 1600 = 85². All are 40 deep where four of the one
 * and the halves of two of the other make up the side: L = 4·2·96 + 2a, with a = 75 − 40 = 35 from the inner seam,
 * 75 + 40 = 115 from the outer one, and √2·75 = 106.066017 across.
 */
describe.each([
  ['inner', 'turn', 35, 838],
  ['outer', 'turn', 115, 998],
  ['outer', 'across', 106.066017, 980.132034],
] as const)('from the %s seam, %s', (from, corners, start, length) => {
  const design = border(768 + 2 * start, from, corners, 'repeats: 4, gap: 0');
  const corner = cornerSwag(design)!;

  test('four swags a side and one of its own over each corner, all as deep', () => {
    expect(768 + 2 * start).toBeCloseTo(length, 5);
    for (const { seat } of design.fit.sides) {
      expect(seat.span).toBeCloseTo(192, 3);
      expect(seat.depth).toBeCloseTo(40, 3);
      expect(seat.shape.stitching.template.name).toBe('baluster');
    }
    expect(corner.fit.seat.span).toBeCloseTo(150, 3);
    expect(corner.fit.seat.depth).toBeCloseTo(40, 3);
    expect(corner.fit.toCorner).toBeCloseTo(start, 3);
    expect(corner.fit.offset).toBeCloseTo(start, 3);
    expect(corner.cell.seat.shape.stitching.template.name).toBe('bracket');
  });

  test('its halves start there, end on the mitre together, and follow its own edge', () => {
    const halves = design.halves.filter((h) => h.repeat === 'corner top right');
    expect(halves).toHaveLength(2);
    const out = from === 'inner' ? 0 : WIDTH;
    const side = 768 + 2 * start - 2 * out;
    // The corner of the two start lines, and away from it into the quilt or out of it.
    const at: Point = { x: side + out, y: side + out };
    const sense = from === 'inner' ? 1 : -1;
    const crown = corners === 'across' ? (75 + 40) * Math.SQRT1_2 : 40;
    for (const half of halves) {
      const path = placedPath(half);
      const [first, last] = [pathStart(path)!, pathEnd(path)!];
      expect(Math.hypot(first.x - at.x, first.y - at.y)).toBeCloseTo(start, 3);
      expect(sense * (last.x - at.x)).toBeCloseTo(crown, 3);
      expect(sense * (last.y - at.y)).toBeCloseTo(crown, 3);
      for (const piece of path.pieces) expect(piece.kind === 'arc' && piece.radius).toBeCloseTo(170, 6);
    }
  });
});

test('with a gap there is one at each end of a side’s swags', () => {
  // h = 100.8, d = 25.6: 100.8² + 25.6² = 10160.64 + 655.36 = 104². Of the corner √(85² − 25.6²) = 81.053316, and 55.453316
  // from the corner of the start lines. L = 3·201.6 + 4·12 + 2·55.453316 = 763.706632.
  const start = Math.sqrt(85 ** 2 - 25.6 ** 2) - 25.6;
  expect(start).toBeCloseTo(55.453316, 5);
  const design = border(3 * 201.6 + 4 * 12 + 2 * start, 'inner', 'turn', 'repeats: 3, gap: 12');
  const corner = cornerSwag(design)!;
  for (const { seat } of design.fit.sides)
    expect([seat.span, seat.gap]).toEqual([expect.closeTo(201.6, 3), 12]);
  expect(corner.fit.seat.depth).toBeCloseTo(25.6, 3);
  expect(corner.fit.toCorner).toBeCloseTo(start, 3);
  expect(corner.fit.offset).toBeCloseTo(start + 6, 3);
});
