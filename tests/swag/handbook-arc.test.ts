/**
 * Borders that a person can check by hand: the template is one circular arc, taken from a handbook's rules for
 * circular segments, so the needle runs on a circle that is one clearance larger, and span and depth follow
 * from the chord of that circle.
 *
 * c = 16, h = 6 gives r = 8 1/3 and chord angle 147.47959°: Machinery's Handbook, 31st ed., p. 79 (the angle from
 * a = 4·atan(2h/c), p. 83). c = 21, h = 6 gives r = 12.1875 and 118.97953°: MatheAss, "Circular Sections".
 */

import { expect, test } from 'vitest';
import { cornerSwag, designOf } from '../../src/swag/index.ts';
import { planOf, search, templateOf } from './fit-helpers.ts';

const arc = (chord: number, height: number) =>
  templateOf(
    `title: Arc\nunits: mm\nedge:\n  - start: [0, 0]\n  - arc: { to: [${chord}, 0], rise: ${height} }\n`,
    'arc',
  );

// In millimetres, tenfold, so that a foot of 5 mm is a likely one.
const CASES = [
  { chord: 160, height: 60, radius: 250 / 3, degrees: 147.47959 },
  { chord: 210, height: 60, radius: 121.875, degrees: 118.97953 },
];
const CLEARANCE = 5;

test.each(CASES)(
  'a strip of arcs of chord $chord and height $height',
  ({ chord, height, radius, degrees }) => {
    const plan = planOf(
      `units: mm\nfoot: { clearance: ${CLEARANCE} }
layout: { strip: { length: 1000, width: 400 } }
swag: { from: 1, to: crown, side: inside, direction: heel-first, setting: crown-on-centre, gap: auto, repeats: 4 }`,
    );
    const best = search(plan, [arc(chord, height)]).results[0]!;
    const [side] = best.fit.sides;
    const { shape, pose, gap } = side!.seat;
    // The whole stitched edge is one arc, round the same centre.
    for (const piece of shape.path.pieces)
      if (piece.kind === 'arc') expect(piece.radius).toBeCloseTo(radius + CLEARANCE, 9);
    // Its chord stands to the template's as the radii do.
    const C = (chord * (radius + CLEARANCE)) / radius;
    expect(shape.chord).toBeCloseTo(C, 9);
    const turned = shape.path.pieces.reduce((sum, p) => sum + (p.kind === 'arc' ? Math.abs(p.sweep) : 0), 0);
    // Seven printed figures of the angle.
    expect((turned * 180) / Math.PI).toBeCloseTo(degrees, 4);
    // 4 (2h + g) = 1000, d = √(C² − h²), and the tangent at the start leans back by half the angle over the chord:
    // the arc bulges by the part of its circle that lies behind the start.
    const h = (250 - gap) / 2;
    expect(pose.halfSpan).toBeCloseTo(h, 9);
    expect(pose.depth).toBeCloseTo(Math.sqrt(C * C - h * h), 9);
    const lean = Math.acos(h / C) + (degrees * Math.PI) / 360 - Math.PI / 2;
    const bulge = lean > 0 ? (radius + CLEARANCE) * (1 - Math.cos(lean)) : 0;
    // The gap is twice the bulge and the sixteenth of an inch of cloth between neighbours.
    expect(gap).toBeCloseTo(bulge > 0 ? 2 * bulge + 25.4 / 16 : 0, 4);
    expect(designOf(best.field, best.fit).halves).toHaveLength(8);
  },
);

test('a turned border of arcs on a square: the corner’s equation by hand', () => {
  // Five swags a side and a corner, all 40 mm deep: C² = h² + d², L = n·2h + 2(h − d), so a border of that length
  // has swags of that depth, and no spread.
  const { chord, height, radius } = CASES[0]!;
  const C = (chord * (radius + CLEARANCE)) / radius;
  const n = 5;
  const d = 40;
  const h = Math.sqrt(C * C - d * d);
  const length = n * 2 * h + 2 * (h - d);
  const plan = planOf(
    `units: mm\nfoot: { clearance: ${CLEARANCE} }
layout: { border: { width: 400, inner: ${length.toFixed(6)}, corners: turn } }
swag: { from: 1, to: crown, side: inside, direction: heel-first, setting: crown-on-centre, gap: 0, repeats: ${n} }`,
  );
  const best = search(plan, [arc(chord, height)]).results[0]!;
  expect(best.score.spread).toBeLessThan(1e-3);
  expect(cornerSwag(best.fit)!.seat.pose.depth).toBeCloseTo(d, 3);
  expect(cornerSwag(best.fit)!.offset).toBeCloseTo(h - d, 3);
  for (const side of best.fit.sides) expect(side.seat.pose.depth).toBeCloseTo(d, 3);
});
