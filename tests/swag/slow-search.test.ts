/** The fast search against a slow and plain one (slow-search.ts): nothing better that it missed, nothing valid where it says none. */

import fc from 'fast-check';
import { expect } from 'vitest';
import {
  depthsOf,
  endStops,
  fieldsOf,
  seatsOf,
  shapeOf,
  spansOf,
  startStops,
  stitchTemplate,
} from '../../src/swag/index.ts';
import { long, patience, runs } from '../support/runs.ts';
import { PROFILES, planOf, search, spreadOfFit } from './fit-helpers.ts';
import { type SlowFigures, type SlowGround, slowLeast, slowSpread, slowWay } from './slow-search.ts';

/** Radians between tilts: a twentieth of a degree. */
const STEP = Math.PI / 3600;
/** What the grid's step can add to a spread it finds (mm), for chords up to 200 mm: the slow one is not exact. */
const GRID = 1e-3;

interface Ground {
  readonly from: 'inner' | 'outer';
  readonly corners: 'turn' | 'across' | 'open' | 'half';
}

const GROUNDS: readonly Ground[] = [
  { from: 'inner', corners: 'turn' },
  { from: 'outer', corners: 'turn' },
  { from: 'outer', corners: 'across' },
  { from: 'inner', corners: 'open' },
  { from: 'outer', corners: 'open' },
  { from: 'inner', corners: 'half' },
  { from: 'outer', corners: 'half' },
];

const isOver = (corners: Ground['corners']): corners is 'turn' | 'across' =>
  corners === 'turn' || corners === 'across';

const question = fc.record({
  template: fc.integer({ min: 0, max: 2 }),
  start: fc.nat(),
  end: fc.nat(),
  side: fc.constantFrom('inside' as const, 'inside' as const, 'outside' as const),
  direction: fc.constantFrom('heel-first' as const, 'crown-first' as const),
  // Opposite sides differ by up to a tenth, which is as much as a plan may say.
  sides: fc
    .tuple(
      fc.integer({ min: 400, max: 1300 }),
      fc.integer({ min: 400, max: 1300 }),
      fc.double({ min: 0.91, max: 1, noNaN: true }),
      fc.double({ min: 0.91, max: 1, noNaN: true }),
    )
    .map(([a, b, c, d]) => [a, b, Math.ceil(a * c), Math.ceil(b * d)]),
  width: fc.integer({ min: 50, max: 160 }),
  // What goes over the corners has the most to be found.
  ground: fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...GROUNDS.filter(({ corners }) => isOver(corners))) },
    { weight: 1, arbitrary: fc.constantFrom(...GROUNDS.filter(({ corners }) => !isOver(corners))) },
  ),
  gap: fc.constantFrom(0, 0, 8, 25),
  unequal: fc.boolean(),
  share: fc.double({ min: 0.3, max: 1.1, noNaN: true }),
});

type Question = typeof question extends fc.Arbitrary<infer Q> ? Q : never;

/** A question's plan, with what is asked of its swags besides, and the slow search's way and ground; undefined for a stretch that makes no swag. */
const caseOf = (q: Question, asked: (chord: number, span: number) => string = () => '') => {
  const { from: seam, corners } = q.ground;
  const template = PROFILES[q.template]!;
  const stitched = stitchTemplate(template, 6.35);
  if (!stitched.ok) throw new Error('the profiles can be stitched');
  const starts = startStops(stitched.stitching);
  const first = q.start % starts.length;
  const from = starts[first]!;
  const to = endStops(stitched.stitching)[first + (q.end % (starts.length - first))]!;
  const shape = shapeOf(stitched.stitching, from, to, q.side, q.direction);
  if (!shape) return undefined;
  const sides = q.unequal ? q.sides : q.sides.map(() => q.sides[0]!);
  const spans = q.share * 2 * shape.chord;
  const counts = sides.map((s) => Math.max(1, Math.round(s / (spans + q.gap))));
  const [top, right, bottom, left] = sides;
  const plan = planOf(
    `layout: { border: { width: ${q.width} mm, inner: { top: ${top} mm, right: ${right} mm, bottom: ${bottom} mm, left: ${left} mm }, from: ${seam}, corners: ${corners} } }
swag: { from: ${from.section}, to: ${to.section}, side: ${q.side}, direction: ${q.direction}, setting: crown-on-centre, gap: ${q.gap} mm, repeats: [${counts}]${asked(shape.chord, spans)} }`,
  );
  if (plan.layout.kind !== 'border') throw new Error('a border');
  const field = fieldsOf(plan.layout)[0]!;
  const ground: SlowGround = {
    lengths: field.runs.map((r) => r.length),
    // Half swags at a side's ends take its whole length as whole ones do.
    corner: isOver(corners) ? corners : 'none',
    from: seam,
    room: field.room,
    gap: q.gap,
  };
  return {
    plan,
    template,
    ground,
    counts,
    corners,
    way: slowWay(shape.path, 6.35),
    chord: shape.chord,
    spans,
  };
};

long(
  'for given counts no tilt of a fine grid is better than what the search found',
  () => {
    let valid = 0;
    let invalid = 0;
    const tried = new Set<string>();
    fc.assert(
      fc.property(question, (q) => {
        const made = caseOf(q);
        if (!made) return;
        const { plan, template, ground, counts, corners, way } = made;
        const slow = slowSpread(way, ground, counts, STEP);
        const fast = search(plan, [template]).results.map(spreadOfFit);
        if (slow === undefined) {
          invalid++;
          return;
        }
        valid++;
        tried.add(`${corners}, from ${ground.from}`);
        if (fast.length === 0) throw new Error(`nothing found, but the grid has a spread of ${slow}`);
        expect(Math.min(...fast)).toBeLessThanOrEqual(slow + GRID);
      }),
      runs(120, 4711),
    );
    // Both answers must have been asked for.
    expect(valid).toBeGreaterThan(12);
    expect(invalid).toBeGreaterThan(12);
    expect([...tried].sort()).toEqual(GROUNDS.map(({ from, corners }) => `${corners}, from ${from}`).sort());
  },
  patience(120_000),
);

/** How far the worst figure is beyond a twentieth beside what is asked about. */
const beyond = (figures: readonly number[], about: number): number =>
  Math.max(...figures.map((n) => Math.max(0, Math.abs(n / about - 1) - 0.05)));

/** What is asked, in shares of the span that is likely and of the chord, in words and as the grid goes by it. */
const asks = fc.oneof(
  fc.double({ min: 0.8, max: 1.25, noNaN: true }).map((k) => ({
    asksDepth: false,
    words: (_: number, span: number) => `, span: about ${(k * span).toFixed(3)} mm`,
    missed: (_: number, span: number) => (f: SlowFigures) => beyond(f.spans, Number((k * span).toFixed(3))),
  })),
  fc.double({ min: 0.15, max: 0.8, noNaN: true }).map((k) => ({
    asksDepth: true,
    words: (chord: number) => `, depth: about ${(k * chord).toFixed(3)} mm`,
    missed: (chord: number) => (f: SlowFigures) => beyond(f.depths, Number((k * chord).toFixed(3))),
  })),
  fc
    .tuple(fc.double({ min: 0.1, max: 0.6, noNaN: true }), fc.double({ min: 0.05, max: 0.3, noNaN: true }))
    .map(([k, w]) => {
      const ends = (chord: number) => [k, k + w].map((share) => Number((share * chord).toFixed(3)));
      return {
        asksDepth: true,
        words: (chord: number) => `, depth: ${ends(chord)[0]} mm to ${ends(chord)[1]} mm`,
        missed: (chord: number) => (f: SlowFigures) =>
          f.depths.every((d) => d >= ends(chord)[0]! && d <= ends(chord)[1]!) ? 0 : undefined,
      };
    }),
  fc.integer({ min: 30, max: 85 }).map((percent) => ({
    asksDepth: true,
    words: () => `, use: at least ${percent}%`,
    missed: () => (f: SlowFigures) => (f.uses.every((use) => use >= percent / 100) ? 0 : undefined),
  })),
);

long(
  'nor is any nearer to what is asked, or as near and more alike',
  () => {
    let valid = 0;
    let missing = 0;
    fc.assert(
      fc.property(question, asks, (q, { asksDepth, words, missed }) => {
        const made = caseOf(q, words);
        if (!made) return;
        const { plan, template, ground, counts, way, chord, spans } = made;
        const miss = missed(chord, spans);
        const slow = slowLeast(way, { ...ground, asks: true, asksDepth }, counts, STEP, miss);
        if (!slow) return;
        valid++;
        const fast = search(plan, [template]).results.map((ranked) => {
          const uses = seatsOf(ranked.fit).map(({ pose }) => pose.top / ranked.field.room);
          const figures = { spans: spansOf(ranked.fit), depths: depthsOf(ranked.fit), uses };
          return { missed: miss(figures) ?? 0, spread: spreadOfFit(ranked) };
        });
        // What is not to be had unasked either, another test tells of.
        if (fast.length === 0 && search(caseOf(q)!.plan, [template]).results.length === 0) return;
        if (fast.length === 0) throw new Error(`nothing found, but the grid has ${JSON.stringify(slow)}`);
        const nearest = Math.min(...fast.map((one) => one.missed));
        expect(nearest).toBeLessThanOrEqual(slow.missed + MISSED_BY_GRID);
        if (slow.missed > 0) missing++;
        else
          expect(
            Math.min(...fast.filter((one) => one.missed === 0).map((one) => one.spread)),
          ).toBeLessThanOrEqual(slow.spread + GRID);
      }),
      runs(200, 20261129),
    );
    expect(valid).toBeGreaterThan(25);
    expect(missing).toBeGreaterThan(8);
  },
  patience(180_000),
);

/** What the search's last step in a corner's rise can add to what is missed, as a share. */
const MISSED_BY_GRID = 1e-6;
