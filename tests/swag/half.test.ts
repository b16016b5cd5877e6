/** Sides that begin and end with half a swag, by hand: their crowns lie at the side's ends, and the corner square is free. */

import { describe, expect, test } from 'vitest';
import { drawPlan, scopeOf } from '../../src/drawing/index.ts';
import { designOf, marksOf, placedPath } from '../../src/swag/index.ts';
import { planOf, pointsAlong, search, templateOf } from './fit-helpers.ts';
import { pathEnd, pathStart } from './laid.ts';

/** An arc of radius 125 over a chord of 100: with the foot of 5 mm the needle's is 130, and its chord 100·130/125 = 104. */
const arc = templateOf(
  `units: mm\nedge:\n  - start: [0, 0]\n  - arc: { to: [100, 0], rise: ${125 - Math.sqrt(125 ** 2 - 50 ** 2)} }\n`,
  'arc',
);

const border = (from: string, inner: number, more: string) => {
  const plan = planOf(
    `units: mm\nfoot: { clearance: 5 }\nmarks: { round: 0.1 }\nlayout: { border: { width: 120, inner: ${inner}, from: ${from}, corners: half } }\nswag: { from: 1, to: crown, side: inside, direction: heel-first, setting: crown-on-centre, ${more} }`,
  );
  const [best] = search(plan, [arc]).results;
  if (!best) throw new Error('nothing fits');
  return { plan, design: designOf(best.field, best.fit) };
};

// h = 96, d = 40: 96² + 40² = 9216 + 1600 = 10816 = 104². L = 4·192 = 768, the inner side's own length.
describe.each([
  // The top runs to the right, from the inner seam up and from the outer one, 120 mm out, down to it.
  ['inner', { begin: 0, end: 768, seam: 768, crown: 808 }],
  ['outer', { begin: 768, end: 0, seam: 888, crown: 848 }],
] as const)('from the %s seam, four swags a side of which two are halves', (from, at) => {
  const made = () => border(from, 768, 'repeats: 4, gap: 0');

  test('each is as wide and deep as the side’s length says', () => {
    const { design } = made();
    for (const { seat, run } of design.fit.sides) {
      expect(run.length).toBeCloseTo(768, 9);
      expect(seat.span).toBeCloseTo(192, 6);
      expect(seat.depth).toBeCloseTo(40, 6);
    }
  });

  test('begins at a crown with the second half, and ends at one with the first', () => {
    const { design } = made();
    const halves = design.halves.filter((h) => h.side === 'top');
    // Three whole ones and two halves.
    expect(halves.map((h) => h.half)).toEqual([
      'second',
      ...Array(3).fill(['first', 'second']).flat(),
      'first',
    ]);
    const [first, last] = [placedPath(halves[0]!), placedPath(halves.at(-1)!)];
    const sense = Math.sign(at.end - at.begin);
    expect(pathEnd(first)!.x).toBeCloseTo(at.begin, 6);
    expect(pathEnd(first)!.y).toBeCloseTo(at.crown, 6);
    expect(pathStart(first)!.x).toBeCloseTo(at.begin + sense * 96, 6);
    expect(pathStart(first)!.y).toBeCloseTo(at.seam, 6);
    expect(pathEnd(last)!.x).toBeCloseTo(at.end, 6);
    expect(pathEnd(last)!.y).toBeCloseTo(at.crown, 6);
    expect(pathStart(last)!.x).toBeCloseTo(at.end - sense * 96, 6);
  });

  test('nothing is stitched in a corner square', () => {
    const { design } = made();
    const inBand = (v: number): boolean => v > -1e-6 && v < 768 + 1e-6;
    for (const half of design.halves)
      for (const p of pointsAlong(placedPath(half), 1)) expect(inBand(p.x) || inBand(p.y)).toBe(true);
  });

  test('marks go from crown to crown', () => {
    const { plan, design } = made();
    const [top] = marksOf(design, plan.marks.style);
    expect(top!.marks.map((m) => `${m.kind} ${Math.round(m.at)}`)).toEqual([
      'centre 0',
      'stop 96',
      'start 96',
      'centre 192',
      'stop 288',
      'start 288',
      'centre 384',
      'stop 480',
      'start 480',
      'centre 576',
      'stop 672',
      'start 672',
      'centre 768',
      'end 768',
    ]);
  });
});

test('with a gap there are as many gaps as swags', () => {
  // h = 100.8, d = 25.6: 100.8² + 25.6² = 10160.64 + 655.36 = 10816. L = 3·(201.6 + 12) = 640.8.
  const { design } = border('inner', 640.8, 'repeats: 3, gap: 12');
  for (const { seat } of design.fit.sides) {
    expect(seat.span).toBeCloseTo(201.6, 6);
    expect(seat.depth).toBeCloseTo(25.6, 5);
  }
  const [first, second] = design.halves.filter((h) => h.side === 'top').map((h) => pathStart(placedPath(h))!);
  expect(first!.x).toBeCloseTo(100.8, 6);
  expect(second!.x).toBeCloseTo(112.8, 6);
});

test('a fill stays on its side of the crown', () => {
  const { plan, design } = border('inner', 768, 'repeats: 4, gap: 0');
  const filled = { ...plan, fills: { ...plan.fills, background: { kind: 'lines', spacing: 8 } } };
  const scoped = scopeOf(design, 'all');
  if (!scoped.ok) throw new Error('nothing to show');
  const { drawing } = drawPlan(scoped.design, filled, scoped.scope);
  // The top side lies above the quilt, from 768 up.
  const lines = drawing.layers.fill
    .flatMap((item) => (item.kind === 'path' ? pointsAlong(item.path, 2) : []))
    .filter((p) => p.y > 768 + 1e-6);
  expect(lines.length).toBeGreaterThan(100);
  for (const p of lines) {
    expect(p.x).toBeGreaterThan(-1e-6);
    expect(p.x).toBeLessThan(768 + 1e-6);
  }
  // Both ends are filled, up to a spacing.
  expect(Math.min(...lines.map((p) => p.x))).toBeLessThan(12);
  expect(Math.max(...lines.map((p) => p.x))).toBeGreaterThan(756);
});

test('a search that is left the corners finds the same beside free squares with whole swags and with halves', () => {
  const found = search(
    planOf('layout: { border: { width: 6, inner: { top: 60, right: 72, bottom: 61, left: 72 } } }'),
  ).results;
  const of = (corners: string) => found.filter((r) => r.field.corners === corners);
  const figures = (corners: string) =>
    of(corners).map(({ fit }) =>
      fit.sides.map(({ repeats, seat }) => [repeats, seat.span, seat.depth, seat.gap]),
    );
  expect(of('half').length).toBeGreaterThan(20);
  expect(figures('half')).toEqual(figures('open'));
  for (const { fit } of of('half'))
    expect(designOf(of('half')[0]!.field, fit).sides[0]!.places).toBe(fit.sides[0]!.repeats + 1);
  // Asked for by name, they are found as well.
  const named = search(
    planOf(
      'layout: { border: { width: 6, inner: { top: 60, right: 72, bottom: 61, left: 72 }, corners: half } }',
    ),
  ).results;
  expect(named.map(({ fit }) => fit.sides.map((s) => s.seat.span))).toEqual(
    of('half').map(({ fit }) => fit.sides.map((s) => s.seat.span)),
  );
});
