/**
 * Round frames. Their sizes are checked against the regular-polygon table of Machinery's Handbook, 31st ed., p. 82,
 * and the law of cosines; that they close and keep their circles, by looking at the placed lines.
 */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import {
  distance,
  norm,
  type Point,
  pathEnd,
  pathLength,
  pathStart,
  pointAlong,
  regionArea,
} from '../../src/geometry/index.ts';
import { MM_TENTH } from '../../src/length/index.ts';
import {
  type Design,
  designFromPlan,
  designOf,
  marksOf,
  placedChannels,
  placedPath,
  type Ranked,
  type RoundFrame,
  regionsOf,
  ringMeasures,
  roundFrame,
} from '../../src/swag/index.ts';
import type { Template } from '../../src/template/index.ts';
import { PROFILES, planOf, pointsAlong, search, templateOf } from './fit-helpers.ts';

const CLEARANCE = 6.35;
const LINE = templateOf(
  'title: Rail\nunits: mm\nedge:\n  - start: [0, 0]\n  - line: { to: [60, 0] }\n',
  'rail',
);
const ARC = templateOf(
  'title: Bow\nunits: mm\nedge:\n  - start: [0, 0]\n  - arc: { to: [60, 0], rise: 9 }\n',
  'bow',
);

const frame = (text: string, more = '') => planOf(`layout: { frame: { ${text} } }\n${more}`);

const ringOf = (ranked: Ranked): RoundFrame => {
  const ring = roundFrame(ranked);
  if (!ring) throw new Error('Not a frame');
  return ring;
};

const partOf = ({ fit }: Ranked): string =>
  `${fit.way.shape.stitching.template.name} ${fit.way.shape.from.label} ${fit.way.setting.kind}`;

const onCrown = 'swag: { setting: crown-on-centre }';

/** S/R and r/R of regular polygons: Machinery's Handbook, 31st ed., p. 82. */
const TABLE = [
  { n: 3, sideOverRadius: 1.7321, apothemOverRadius: 0.5 },
  { n: 5, sideOverRadius: 1.1756, apothemOverRadius: 0.809 },
  { n: 6, sideOverRadius: 1, apothemOverRadius: 0.866 },
  { n: 8, sideOverRadius: 0.7654, apothemOverRadius: 0.9239 },
  { n: 12, sideOverRadius: 0.5176, apothemOverRadius: 0.9659 },
  { n: 16, sideOverRadius: 0.3902, apothemOverRadius: 0.9808 },
  { n: 24, sideOverRadius: 0.2611, apothemOverRadius: 0.9914 },
  { n: 64, sideOverRadius: 0.0981, apothemOverRadius: 0.9988 },
] as const;
/** Half a unit of the table's last digit. */
const LAST_DIGIT = 0.00005;

const starts = (design: Design): readonly Point[] =>
  design.halves.filter((h) => h.half === 'first').map((h) => pathStart(placedPath(h))!);

describe('against the regular polygons of a handbook', () => {
  test.each([
    ['one straight line', LINE],
    ['one circular arc', ARC],
  ])('%s, outward and inward', (_, template: Template) => {
    let checked = 0;
    for (const { n, sideOverRadius, apothemOverRadius } of TABLE) {
      for (const from of ['inner', 'outer']) {
        // A motif for which the template reaches well round: its chord is about two thirds of a share.
        const around = Math.max(8, Math.round((45 * n) / Math.PI));
        const results = search(frame(`count: ${n}, around: ${around} mm, from: ${from}`, onCrown), [
          template,
        ]).results;
        for (const ranked of results.filter((r) => r.score.gap === 0)) {
          const ring = ringOf(ranked);
          const design = designOf(ranked.field, ranked.fit);
          const marks = starts(design);
          const side = distance(marks[0]!, marks[1]!);
          const middle = { x: (marks[0]!.x + marks[1]!.x) / 2, y: (marks[0]!.y + marks[1]!.y) / 2 };
          expect(Math.abs(side / ring.startRadius - sideOverRadius)).toBeLessThan(LAST_DIGIT);
          expect(Math.abs(norm(middle) / ring.startRadius - apothemOverRadius)).toBeLessThan(LAST_DIGIT);
          expect(ring.span).toBeCloseTo(side, 9);
          checked++;
        }
      }
    }
    expect(checked).toBeGreaterThanOrEqual(8);
  });

  test('a straight line or a shallow arc starts on the clear circle, and the law of cosines gives the crown', () => {
    let checked = 0;
    for (const template of [LINE, ARC])
      for (const n of [4, 6, 8, 12]) {
        const clear = Math.round((22 * n) / Math.PI);
        const plan = frame(`count: ${n}, around: ${2 * clear - 10} mm, clearance: 5 mm`, onCrown);
        for (const ranked of search(plan, [template]).results) {
          const ring = ringOf(ranked);
          const { chord } = ranked.fit.way.shape;
          if (ranked.score.gap > 0 || Math.abs(ring.startRadius - clear) > 1e-6) continue;
          const w = Math.PI / n;
          const crown = clear * Math.cos(w) + Math.sqrt(chord ** 2 - (clear * Math.sin(w)) ** 2);
          expect(Math.abs(ring.crownRadius - crown)).toBeLessThan(1e-6);
          checked++;
        }
      }
    expect(checked).toBeGreaterThanOrEqual(6);
  });

  test('swags of straight lines whose starts and crowns are equally far make the polygon of twice as many sides', () => {
    // The stitched line is as long as the template, 60 mm. A motif a hair inside the polygon's inner circle.
    for (const { n, apothem } of [
      // r/S: Machinery's Handbook, p. 82, for 6, 8, 12, 16 and 24 sides.
      { n: 3, apothem: 0.866 },
      { n: 4, apothem: 1.2071 },
      { n: 6, apothem: 1.866 },
      { n: 8, apothem: 2.5137 },
      { n: 12, apothem: 3.7979 },
    ]) {
      const plan = (r: number) => frame(`count: ${n}, around: ${(2 * r).toFixed(4)} mm`, onCrown);
      expect(search(plan(60 * (apothem - 0.001)), [LINE]).results.length, `${n}`).toBeGreaterThan(0);
      expect(search(plan(60 * (apothem + 0.001)), [LINE]).results, `${n}`).toEqual([]);
    }
  });
});

/** Everything that must hold of a placed frame. */
const checkFrame = (ranked: Ranked, outward: number, inward = 0): void => {
  const ring = ringOf(ranked);
  const { count, clear, within, from } = ring;
  const design = designOf(ranked.field, ranked.fit);
  const { gap } = ranked.fit.sides[0]!.seat;
  expect(design.halves).toHaveLength(2 * count);
  const firsts = design.halves.filter((h) => h.half === 'first').map(placedPath);
  const seconds = design.halves.filter((h) => h.half === 'second').map(placedPath);
  let turned = 0;
  firsts.forEach((first, i) => {
    const second = seconds[i]!;
    const next = firsts[(i + 1) % count]!;
    // Two halves meet at the crown, and every swag starts a gap after the one before it, all the way round.
    expect(distance(pathEnd(first)!, pathEnd(second)!)).toBeLessThan(1e-6);
    expect(Math.abs(distance(pathStart(second)!, pathStart(next)!) - gap)).toBeLessThan(1e-6);
    const [a, b] = [pathStart(first)!, pathStart(next)!];
    turned += Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
  });
  expect(Math.abs(turned - (from === 'inner' ? -1 : 1) * 2 * Math.PI)).toBeLessThan(1e-9);
  // Crowns are straight above the centre first, and point the way that the plan says.
  const crown = pathEnd(firsts[0]!)!;
  expect(Math.abs(crown.x)).toBeLessThan(1e-6);
  expect(crown.y).toBeGreaterThan(0);
  expect(ring.crownRadius > ring.startRadius).toBe(from === 'inner');
  // Nothing comes nearer than the clear circle, nor farther out than the limit, and the frame is tight.
  const radii = [...firsts, ...seconds].flatMap((p) => pointsAlong(p, 0.5).map(norm));
  const nearest = Math.min(...radii);
  const kept = clear + (from === 'outer' ? outward : inward);
  expect(nearest).toBeGreaterThan(kept - 1e-6);
  expect(Math.abs(ring.nearest - kept)).toBeLessThan(1e-6);
  expect(Math.max(...radii)).toBeLessThan(ring.farthest + 1e-6);
  expect(ring.farthest + (from === 'inner' ? outward : inward)).toBeLessThan(within + 1e-6);
};

describe('every frame', () => {
  test('closes, is tight, and keeps to its circles', () => {
    let checked = 0;
    fc.assert(
      fc.property(
        fc.record({
          count: fc.integer({ min: 3, max: 20 }),
          around: fc.integer({ min: 3, max: 30 }),
          clearance: fc.constantFrom('0', '1/2', '1 1/4'),
          from: fc.constantFrom('inner', 'outer'),
          within: fc.constantFrom(1.3, 1.8, 3, undefined),
          outward: fc.constantFrom(0, 6.35),
          inward: fc.constantFrom(0, 9),
          template: fc.constantFrom(...PROFILES, LINE, ARC),
          gap: fc.constantFrom('auto', '0', '1/2'),
        }),
        ({ count, around, clearance, from, within, outward, inward, template, gap }) => {
          const limit = within === undefined ? '' : `, within: ${(within * (around + 3)).toFixed(2)}`;
          const plan = frame(
            `count: ${count}, around: ${around}, clearance: ${clearance}, from: ${from}${limit}`,
            `swag: { gap: ${gap} }\nchannels: { outward: [${outward} mm], inward: [${inward} mm] }`.replaceAll(
              '[0 mm]',
              '[]',
            ),
          );
          for (const ranked of search(plan, [template]).results.slice(0, 3)) {
            checkFrame(ranked, outward, inward);
            checked++;
          }
        },
      ),
      { numRuns: 40, seed: 6 },
    );
    expect(checked).toBeGreaterThan(40);
  });

  test.each([3, 4, 7, 11, 16, 25, 40, 64])('of %i swags can be made', (count) => {
    const plan = frame(`count: ${count}, around: ${Math.round(1.1 * count + 1)}`);
    const [best] = search(plan, PROFILES).results;
    expect(best && ringOf(best).count).toBe(count);
    checkFrame(best!, 0);
  });
});

describe('channels and regions of a frame', () => {
  const cases = [
    ['outward swags', 'count: 8, around: 9, clearance: 1/2, within: 16'],
    ['inward swags', 'count: 8, around: 9, clearance: 1/2, within: 18, from: outer'],
  ] as const;
  const channels = 'channels: { outward: [1/4], inward: [1/4] }';
  test.each(cases)('%s keep the circles, channels included', (_, text) => {
    const plan = frame(text, channels);
    const [best] = search(plan, PROFILES).results;
    const ring = ringOf(best!);
    const { farthest } = ring;
    const design = designOf(best!.field, best!.fit);
    let lines = 0;
    for (const list of placedChannels(design, plan.channels).values())
      for (const channel of list) {
        for (const path of channel.paths) {
          lines++;
          const half = design.halves[0]!;
          const placed = pointsAlong(path, 0.5).map((p) =>
            norm({ x: p.x - ring.centre.x, y: p.y - ring.centre.y }),
          );
          expect(Math.min(...placed)).toBeGreaterThan(ring.clear - 1e-6);
          expect(Math.max(...placed)).toBeLessThan(Math.min(ring.within, farthest + CLEARANCE) + 1e-6);
          // A parallel's own distance from its swag, at its middle.
          const mid = pointAlong(path, pathLength(path) / 2)!;
          const near = Math.min(...pointsAlong(half.cell.path, 0.02).map((p) => distance(p, mid)));
          expect(near).toBeGreaterThan(channel.distance - 0.01);
        }
      }
    expect(lines).toBeGreaterThanOrEqual(2 * design.halves.length);
  });

  test.each([
    ['outward', 'count: 8, around: 9, clearance: 1/2'],
    ['inward', 'count: 8, around: 9, clearance: 1/2, from: outer'],
    // A cusp at every start, which the channel rounds.
    ['outward', 'count: 12, around: 9, clearance: 1/2'],
  ])('where %s swags touch, every channel is whole, from join to crown line (%s)', (_, text) => {
    const plan = frame(text, 'channels: { outward: [1/4], inward: [1/4, 1/8] }');
    const touching = search(plan, PROFILES).results.filter((r) => r.score.gap === 0);
    expect(touching.length).toBeGreaterThan(0);
    for (const ranked of touching.slice(0, 5)) {
      const ring = ringOf(ranked);
      const design = designOf(ranked.field, ranked.fit);
      const [half] = design.halves;
      const channels = placedChannels(design, plan.channels, [half!]).get(half!)!;
      for (const { side, paths } of channels.filter((c) => c.side === 'inward')) {
        expect(paths, `${side} of ${partOf(ranked)}`).toHaveLength(1);
        // Both mirrors go through the centre: the join's upright, the crown's through the crown.
        const { centre } = ring;
        const from = pathStart(paths[0]!)!;
        const to = pathEnd(paths[0]!)!;
        expect(Math.abs(from.x - centre.x)).toBeLessThan(1e-6);
        const crown = half!.cell.crown;
        const off = (to.x - centre.x) * (crown.y - centre.y) - (to.y - centre.y) * (crown.x - centre.x);
        expect(Math.abs(off) / distance(centre, crown)).toBeLessThan(1e-6);
      }
    }
  });

  test('where there is a gap, a channel ends beside its own start, on the ray through it', () => {
    const plan = frame('count: 8, around: 9, clearance: 1/2', `swag: { gap: 1 }\n${channels}`);
    const gapped = search(plan, PROFILES).results.filter((r) => r.score.gap > 25);
    expect(gapped.length).toBeGreaterThan(0);
    for (const ranked of gapped.slice(0, 5)) {
      const { centre } = ringOf(ranked);
      const design = designOf(ranked.field, ranked.fit);
      const [half] = design.halves;
      for (const { paths } of placedChannels(design, plan.channels, [half!]).get(half!)!) {
        expect(paths.length).toBeGreaterThan(0);
        const from = pathStart(paths[0]!)!;
        // The start is the origin, and the channel's end lies a quarter inch from it, towards the centre.
        expect(Math.abs(from.x * centre.y - from.y * centre.x) / norm(centre)).toBeLessThan(1e-6);
        expect(norm(from)).toBeCloseTo(6.35, 6);
      }
    }
  });

  test('where the gap is narrower than the channels, they run on over it', () => {
    const plan = frame('count: 8, around: 9, clearance: 1/2', `swag: { gap: 1/4 }\n${channels}`);
    const gapped = search(plan, PROFILES).results.filter((r) => Math.abs(r.score.gap - 6.35) < 1e-6);
    expect(gapped.length).toBeGreaterThan(0);
    for (const ranked of gapped.slice(0, 5)) {
      const design = designOf(ranked.field, ranked.fit);
      const [half] = design.halves;
      for (const { paths } of placedChannels(design, plan.channels, [half!]).get(half!)!) {
        expect(paths).toHaveLength(1);
        expect(Math.abs(pathStart(paths[0]!)!.x - half!.cell.join)).toBeLessThan(1e-6);
      }
    }
  });

  test.each(cases)('the regions of %s make up the ring that they share', (_, text) => {
    const plan = frame(text, channels);
    const [best] = search(plan, PROFILES).results;
    const ring = ringOf(best!);
    const { farthest } = ring;
    const design = designOf(best!.field, best!.fit);
    const regions = regionsOf(design.cells[0]!, design, plan.channels);
    const all = ring.count * regions.reduce((sum, r) => sum + regionArea(r.region), 0);
    // Inward channels of swags that point inward lie beyond the stitching.
    const outer = ring.from === 'inner' ? ring.within : farthest + CLEARANCE;
    // The area of a ring between two circles, π(R² − r²).
    expect(Math.abs(all - Math.PI * (outer ** 2 - ring.clear ** 2))).toBeLessThan(1e-3 * all);
  });

  test('outside a frame without a limit there is nothing to fill', () => {
    const plan = frame('count: 8, around: 9, clearance: 1/2', channels);
    const [best] = search(plan, PROFILES).results;
    const design = designOf(best!.field, best!.fit);
    const regions = regionsOf(design.cells[0]!, design, plan.channels);
    const area = (kind: string) =>
      regions.filter((r) => r.kind === kind).reduce((sum, r) => sum + regionArea(r.region), 0);
    expect(area('background')).toBe(0);
    expect(area('swag')).toBeGreaterThan(100);
    expect(area('channel')).toBeGreaterThan(100);
  });
});

describe('marks', () => {
  test('rays are whole shares of a turn, in the order of the swags', () => {
    const plan = frame('count: 8, around: 9, clearance: 1/2');
    const best = search(plan, PROFILES).results.find((r) => r.score.gap === 0)!;
    const [marked] = marksOf(designOf(best.field, best.fit), plan.marks.style);
    const { marks, curvature } = marked!;
    expect(marks).toHaveLength(24);
    const of = (kind: string): number[] =>
      marks
        .filter((m) => m.kind === kind)
        .map((m) => Math.round((m.at * Math.abs(curvature) * 180e6) / Math.PI) / 1e6);
    expect(of('centre')).toEqual([0, 45, 90, 135, 180, 225, 270, 315]);
    expect(of('stop')).toEqual([22.5, 67.5, 112.5, 157.5, 202.5, 247.5, 292.5, 337.5]);
    expect(of('start')).toEqual([337.5, 22.5, 67.5, 112.5, 157.5, 202.5, 247.5, 292.5]);
  });

  test('chords are those of the handbook', () => {
    const plan = frame('count: 12, around: 200 mm', 'units: mm');
    const best = search(plan, PROFILES).results.find((r) => r.score.gap === 0)!;
    const measures = ringMeasures(designOf(best.field, best.fit), MM_TENTH)!;
    // S/R for 12 sides: Machinery's Handbook, p. 82.
    expect(Math.abs(measures.startChord - 0.5176 * ringOf(best).startRadius)).toBeLessThan(0.06);
    expect(Math.abs(measures.crownChord - 0.5176 * ringOf(best).crownRadius)).toBeLessThan(0.06);
    expect(measures.gapChord).toBe(0);
  });
});

describe('what cannot be framed is refused, with what would fit', () => {
  const refused = (text: string, more = ''): string => {
    const made = designFromPlan(frame(text, more), [PROFILES[0]!]);
    expect(made.ok).toBe(false);
    return made.ok ? '' : made.problems.map(describeProblem).join('\n');
  };
  test.each([
    ['a motif too large for its count', 'count: 4, around: 60', /\d+ swags instead of 4/],
    [
      'too many swags for so small a motif',
      'count: 40, around: 1',
      /swags instead of 40|motif .* instead of 1 in|leave out/,
    ],
    [
      'a limit too narrow',
      'count: 8, around: 9, within: 9 1/8',
      /swags instead of 8|a limit of .* instead of 9 1\/8 in/,
    ],
  ])('%s', (_, text, hint) => {
    expect(refused(text)).toMatch(hint);
  });

  test('a template too long for its share of the circle', () => {
    const text = refused(
      'count: 30, around: 6',
      'swag: { from: 1, to: crown, side: inside, direction: heel-first, setting: crown-on-centre }',
    );
    expect(text).toMatch(/passes its centre line|too long for its share|bulges/);
    expect(text).toMatch(/swags instead of 30/);
  });

  test('a motif too large for any frame of the template', () => {
    // 64 swags of two lines of 60 mm are at most a polygon of 128 sides: no wider than 128·60 mm/π, 96 1/4 in.
    const made = designFromPlan(frame('around: 110', onCrown), [LINE]);
    expect(made.ok ? [] : made.problems.map((p) => p.hint)).toEqual([
      expect.stringMatching(/^a motif 9[56].* in across instead of 110 in$/),
    ]);
  });

  test('two swags make no frame', () => {
    expect(() => frame('count: 2, around: 9')).toThrow(/too small; |at least 3|too-small/);
  });
});
