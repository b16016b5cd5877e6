/** A swag that stands across the corner, by hand: where its chord and crown lie, and what the side's length is then. */

import { expect, test } from 'vitest';
import { describeDesign } from '../../src/output/mockup/index.ts';
import { cornerSwag, type Design, designOf, placedPath } from '../../src/swag/index.ts';
import { planOf, pointsAlong, search, templateOf } from './fit-helpers.ts';
import { type Point, pathEnd, pathStart } from './laid.ts';

/** An arc of radius 125 over a chord of 100: with the foot of 5 mm the needle's is 130, and its chord 100·130/125 = 104. */
const arc = templateOf(
  `units: mm\nedge:\n  - start: [0, 0]\n  - arc: { to: [100, 0], rise: ${125 - Math.sqrt(125 ** 2 - 50 ** 2)} }\n`,
  'arc',
);

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

const border = (inner: string, width: number, more: string): Design => {
  const plan = planOf(
    `units: mm\nfoot: { clearance: 5 }\nlayout: { border: { width: ${width}, inner: ${inner}, from: outer, corners: across } }\nswag: { from: 1, to: crown, side: inside, direction: heel-first, setting: crown-on-centre, ${more} }`,
  );
  const [best] = search(plan, [arc]).results;
  if (!best) throw new Error('nothing fits');
  return designOf(best.field, best.fit);
};

test('four swags a side and one across each corner, all alike, touching', () => {
  // C = 104, h = 96 and d = 40: 96² + 40² = 9216 + 1600 = 10816 = 104². L = 4·2·96 + 2√2·96 = 768 + 271.529004 =
  // 1039.529004 along the outer seam, and two widths of 160 less along the inner one: 719.529004.
  const design = border((768 + 192 * Math.SQRT2 - 320).toFixed(9), 160, 'repeats: 4, gap: 0');
  const corner = cornerSwag(design)!;
  for (const seat of [...design.fit.sides.map((s) => s.seat), corner.fit.seat]) {
    expect(seat.span).toBeCloseTo(192, 4);
    expect(seat.depth).toBeCloseTo(40, 4);
  }
  expect(corner.fit.toCorner).toBeCloseTo(135.764502, 4);
  expect(corner.fit.offset).toBeCloseTo(135.764502, 4);
  // Seen from the outer corner of the top right: the marks 135.76 along both seams, the crown (96 + 40)/√2 = 96.17 in
  // from both of them.
  const halves = design.halves.filter((h) => h.repeat === 'corner top right');
  expect(halves).toHaveLength(2);
  const long = 719.529004 + 160;
  const at = { x: long, y: long };
  for (const half of halves) {
    const path = placedPath(half);
    const [start, crown] = [pathStart(path)!, pathEnd(path)!];
    expect(apart(start, at)).toBeCloseTo(135.764502, 3);
    expect(Math.min(at.x - start.x, at.y - start.y)).toBeCloseTo(0, 3);
    expect(at.x - crown.x).toBeCloseTo(96.166522, 3);
    expect(at.y - crown.y).toBeCloseTo(96.166522, 3);
  }
});

test('its depth is told as it is measured there', () => {
  const design = border((768 + 192 * Math.SQRT2 - 320).toFixed(9), 160, 'repeats: 4, gap: 0');
  expect(describeDesign(design, { unit: 'mm', step: 0.5 })).toContain(
    'corners: 40 mm deep, along the mitre, from a line between its marks',
  );
});

test('with a gap there is one at each end of a side’s swags', () => {
  // h = 100.8, d = 25.6: 100.8² + 25.6² = 10160.64 + 655.36 = 10816. L = 3·201.6 + 4·12 + 2√2·100.8 = 604.8 + 48 +
  // 285.105454 = 937.905454, and 617.905454 inside.
  const design = border((604.8 + 48 + 201.6 * Math.SQRT2 - 320).toFixed(9), 160, 'repeats: 3, gap: 12');
  const corner = cornerSwag(design)!;
  for (const seat of [...design.fit.sides.map((s) => s.seat), corner.fit.seat]) {
    expect(seat.span).toBeCloseTo(201.6, 4);
    expect(seat.depth).toBeCloseTo(25.6, 4);
  }
  expect(corner.fit.toCorner).toBeCloseTo(142.552727, 4);
  expect(corner.fit.offset).toBeCloseTo(148.552727, 4);
});

test('leans over its neighbour as far as the line between them, and no farther', () => {
  // The chord rises by r, and the arc sets out asin(52/130) = 23.578° above it. The side's last swag and the corner's
  // are mirror images in the line at 67.5° to both chords, so they touch no more than in their common start up to
  // r = 43.922°: h = 104·cos r = 74.91.
  const sides = (h: number): string => (5 * 2 * h + 2 * Math.SQRT2 * h - 2 * 220).toFixed(9);
  const flatter = border(sides(75.2), 220, 'repeats: 5, gap: 0');
  expect(flatter.fit.sides[0]!.seat.span).toBeCloseTo(150.4, 4);
  expect(() => border(sides(74.6), 220, 'repeats: 5, gap: 0')).toThrow('nothing fits');
  // A gap that is made to suit holds the two 1/16 in apart.
  const roomy = border(sides(74.6), 220, 'repeats: 5, gap: auto');
  const { gap } = roomy.fit.sides[0]!.seat;
  expect(gap).toBeGreaterThan(1);
  const cell = cornerSwag(roomy)!.cell;
  const corner = roomy.halves.find((h) => h.cell === cell && h.half === 'first')!;
  const last = roomy.halves.find((h) => h.repeat === `${corner.side} 5` && h.half === 'second')!;
  const others = pointsAlong(placedPath(last), 0.2);
  const away = pointsAlong(placedPath(corner), 0.2).map((p) => Math.min(...others.map((o) => apart(p, o))));
  expect(Math.min(...away)).toBeGreaterThan(1.5);
});
