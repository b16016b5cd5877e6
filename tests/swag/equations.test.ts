/**
 * What every result of the fit search must satisfy, checked on the laid-out design: the equations of runs and
 * corners (h² + d² = C², L = n·(2h + g) + 2a), joins and crowns that meet, margins, and the needle's distance
 * from the template. The points are sampled here; nothing of the search's own checks is used.
 */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CornerFit } from '../../src/swag/fit.ts';
import { cornerSwag, designOf, type Ranked, repeatMarks } from '../../src/swag/index.ts';
import { patience, runs } from '../support/runs.ts';
import { planOf, pointsAlong, search } from './fit-helpers.ts';
import { distanceToPiece, move, type Point, pathEnd, pathStart, placedPath } from './laid.ts';

const EXACT = 1e-6;
const near = (a: number, b: number, what: string): void => {
  if (!(Math.abs(a - b) <= EXACT)) throw new Error(`${what}: ${a} is not ${b}`);
};
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** From the corner to a corner swag's start: h ∓ d on each side, or both ends of its chord √2·h from the corner. */
const startOf = ({ kind, seat: { pose } }: CornerFit, sign: number): number =>
  kind === 'across' ? Math.SQRT2 * pose.halfSpan : pose.halfSpan + sign * pose.depth;

/** Throws where a result breaks an equation; `outward` is the channels' reach in mm. */
const checkResult = ({ field, fit }: Ranked, outward: number, sampled: boolean): void => {
  const design = designOf(field, fit);
  const sign = field.from === 'inner' ? -1 : 1;
  const corner = cornerSwag(fit);
  const second = fit.pattern.kind === 'in turn' ? fit.pattern.sides : [];
  const seats = [...[...fit.sides, ...second].map((s) => s.seat), ...(corner ? [corner.seat] : [])];
  for (const { shape, pose, way } of seats) {
    near(Math.hypot(pose.halfSpan, pose.depth), shape.chord, 'h² + d² = C²');
    if (!(pose.halfSpan > 0 && pose.depth > 0)) throw new Error('a swag has span and depth');
    if (way.tilt !== undefined) near(pose.tilt, way.tilt, 'a fixed tilt is kept');
  }
  for (const [i, { run, repeats, seat }] of fit.sides.entries()) {
    if (!(seat.gap >= 0)) throw new Error('no gap is negative');
    const other = second[i];
    if (other) {
      expect([other.run, other.repeats, other.seat.gap]).toEqual([run, repeats, seat.gap]);
      // A B A: one more of the first kind; of halves at both ends two are one of it.
      const b = Math.floor(repeats / 2);
      const a = field.corners === 'half' ? b : b + 1;
      expect([a + b, b > 0]).toEqual([repeats, true]);
      const share = (of: typeof seat): number => 2 * of.pose.halfSpan + of.gap;
      near(a * share(seat) + b * share(other.seat), run.length, `L = a(2h + g) + b(2h' + g), ${run.name}`);
      near(
        seat.span - other.seat.span,
        fit.sides[0]!.seat.span - second[0]!.seat.span,
        'the first kind is wider by as much on every side',
      );
      continue;
    }
    const a = corner ? startOf(corner, sign) + seat.gap / 2 : 0;
    near(
      repeats * (2 * seat.pose.halfSpan + seat.gap) + 2 * a,
      run.length,
      `L = n(2h + g) + 2a, ${run.name}`,
    );
  }
  if (corner) {
    const { toCorner, offset } = corner;
    near(toCorner, startOf(corner, sign), 'the corner’s start');
    near(offset, toCorner + fit.sides[0]!.seat.gap / 2, 'a = h ∓ d + g/2, or √2·h + g/2');
    expect(corner.kind).toBe(field.corners);
    if (!(toCorner >= -EXACT)) throw new Error('the corner swag starts before its corner');
  }
  for (const cell of design.cells) {
    const start = pathStart(cell.path)!;
    const end = pathEnd(cell.path)!;
    near(apart(start, { x: 0, y: 0 }), 0, 'a half starts at its start mark');
    near(apart(end, cell.crown), 0, 'a half ends at its crown');
    const { edge, clearance } = cell.seat.shape.stitching.stitched;
    if (!sampled) continue;
    const mirror = { x: Math.sin(cell.mirror), y: -Math.cos(cell.mirror) };
    for (const p of pointsAlong(cell.path, 1)) {
      if (p.y < -EXACT) throw new Error(`below the start line by ${-p.y}`);
      // On the chord of a corner, the side's start line runs down at 45° from its end.
      const across = cornerSwag(design)?.kind === 'across';
      const isCorner = across && cell === cornerSwag(design)?.cell;
      const level = isCorner ? (p.x + p.y) * Math.SQRT1_2 : p.y;
      if (level > field.room - outward + EXACT)
        throw new Error(`into the far margin by ${level - field.room + outward}`);
      if (!isCorner && p.x < cell.join - EXACT) throw new Error(`past the join by ${cell.join - p.x}`);
      const past = (p.x - cell.crown.x) * mirror.x + (p.y - cell.crown.y) * mirror.y;
      if (past > EXACT) throw new Error(`past the centre mirror by ${past}`);
      const back = move(cell.motion, p);
      near(
        Math.min(...edge.pieces.map((e) => distanceToPiece(e, back))),
        clearance,
        'one clearance from the edge',
      );
    }
  }
  for (const side of second.length > 0 ? design.sides : []) {
    // A side is the same from its middle to either end.
    const whole = { ...side, tear: undefined };
    for (let i = 0; i < side.places; i++) {
      const [a, b] = [repeatMarks(whole, i), repeatMarks(whole, side.places - 1 - i)];
      near(a.start + b.stop, side.run.length, 'marks are the same from either end');
      near(a.centre + b.centre, side.run.length, 'centres are the same from either end');
      if (field.corners !== 'meet' || field.from !== 'outer' || !sampled || i > 2) continue;
      // Where they lean over the corner, each stays on its own side of the mitre at 45°.
      const { cell } = design.halves.find((h) => h.repeat === `${side.run.name} ${i + 1}`)!;
      for (const p of pointsAlong(cell.path, 1))
        if (p.y > a.start + p.x + EXACT) throw new Error(`over the mitre by ${p.y - a.start - p.x}`);
    }
  }
  // Halves that follow on one another: crowns meet, and joins meet or stand a gap apart.
  for (const side of design.sides) {
    const halves = design.halves.filter((h) => side.cells.includes(h.cell) && h.side === side.run.name);
    expect(halves.length).toBe(2 * side.fit.repeats);
    // Where a side begins with the second half of a swag its first has no other, nor has its last.
    const alone = field.corners === 'half' ? 1 : 0;
    expect(halves[0]!.half).toBe(alone ? 'second' : 'first');
    for (let i = -alone; i < halves.length; i += 2) {
      const [before, after] = [halves[i], halves[i + 1]];
      if (before && after)
        near(apart(pathEnd(placedPath(before))!, pathEnd(placedPath(after))!), 0, 'crowns meet');
      else expect((after ?? before)!.half).toBe(after ? 'second' : 'first');
      if (!after) continue;
      const next = halves[i + 2];
      const torn = side.tear && side.tear.after === (i + alone) / 2 + 1 ? side.tear.by : 0;
      if (next)
        near(
          apart(pathStart(placedPath(after))!, pathStart(placedPath(next))!),
          side.fit.seat.gap + torn,
          'neighbours stand a gap apart',
        );
    }
  }
  const laid = cornerSwag(design);
  if (laid) {
    const halves = design.halves.filter((h) => h.cell === laid.cell);
    expect(halves.length).toBe(8);
    for (const name of new Set(halves.map((h) => h.repeat))) {
      const [a, b] = halves.filter((h) => h.repeat === name);
      const end = pathEnd(placedPath(a!))!;
      near(apart(end, pathEnd(placedPath(b!))!), 0, 'corner halves meet');
      // On the 45° line through the corner of the two start lines, which is as far from both of them.
      const starts = [pathStart(placedPath(a!))!, pathStart(placedPath(b!))!];
      const at = cornerOf(starts as [Point, Point], end, laid.kind);
      if (laid.kind === 'across') {
        const { halfSpan, depth } = laid.fit.seat.pose;
        near(apart(end, at), halfSpan + depth, 'its crown lies h + d from the corner, along the mitre');
        near(apart(starts[0]!, starts[1]!), 2 * halfSpan, 'its chord is a span');
      }
      near(Math.abs(end.x - at.x), Math.abs(end.y - at.y), 'on the mitre');
      near(apart(starts[0]!, at), laid.fit.toCorner, 'the corner swag starts at a − g/2');
    }
  }
};

/** Where the start lines of two sides cross: each runs along x or y through its start. */
const cornerOf = ([a, b]: [Point, Point], end: Point, kind: CornerFit['kind']): Point => {
  const first = { x: a.x, y: b.y };
  const second = { x: b.x, y: a.y };
  // Beyond the chord of a swag that stands across, and so farther from its crown.
  if (kind === 'across') return apart(first, end) > apart(second, end) ? first : second;
  // Of the two, the one that the crown is as far from in x as in y.
  const off = (p: Point): number => Math.abs(Math.abs(end.x - p.x) - Math.abs(end.y - p.y));
  return off(first) <= off(second) ? first : second;
};

const layout = fc.record({
  kind: fc.constantFrom('strip', 'border', 'border', 'border'),
  // Opposite sides differ by up to a tenth, which is as much as a plan may say.
  sides: fc
    .tuple(
      fc.integer({ min: 320, max: 1600 }),
      fc.integer({ min: 320, max: 1600 }),
      fc.double({ min: 0.91, max: 1, noNaN: true }),
      fc.double({ min: 0.91, max: 1, noNaN: true }),
    )
    .map(([a, b, c, d]) => [a, b, Math.ceil(a * c), Math.ceil(b * d)]),
  width: fc.integer({ min: 40, max: 140 }),
  inner: fc.integer({ min: 0, max: 10 }),
  outer: fc.integer({ min: 0, max: 10 }),
  from: fc.constantFrom('inner', 'outer'),
  corners: fc.constantFrom('turn', 'turn', 'meet', 'open', 'half', 'across', 'auto'),
  gap: fc.constantFrom('auto', 'auto', '0', '1/4 in', '12.7 mm'),
  channels: fc.constantFrom('[]', '[1/4]', '[1/8, 1/4]'),
  clearance: fc.constantFrom('1/4', '1/8', '5/16'),
});

const textOf = (l: typeof layout extends fc.Arbitrary<infer T> ? T : never): string => {
  const [top, right, bottom, left] = l.sides.map((s) => `${s / 16} in`);
  const margin = `margin: { inner: ${l.inner} mm, outer: ${l.outer} mm }`;
  const ground =
    l.kind === 'strip'
      ? `strip: { length: ${top}, width: ${l.width + 20} mm, ${margin} }`
      : `border: { width: ${l.width + 20} mm, inner: { top: ${top}, right: ${right}, bottom: ${bottom}, left: ${left} }, ${margin}, from: ${l.corners === 'across' ? 'outer' : l.from}, corners: ${l.corners} }`;
  return `layout: { ${ground} }\nfoot: { clearance: ${l.clearance} }\nswag: { gap: ${l.gap} }\nchannels: { outward: ${l.channels} }`;
};

describe('every result of the fit search', () => {
  test(
    'satisfies the equations to 1e-6 mm and keeps its cell and margins',
    () => {
      const seen = new Map<string, number>();
      fc.assert(
        fc.property(layout, (l) => {
          const plan = planOf(textOf(l));
          const { results } = search(plan);
          const outward = plan.channels.outward.reduce((a, b) => a + b, 0);
          results.forEach((r, i) => {
            if (i < 20 || i % 7 === 0) checkResult(r, outward, i < 3 || i % 70 === 0);
            const { way } = r.fit;
            for (const k of [
              r.field.corners,
              r.field.from,
              way.setting.kind,
              way.shape.side,
              way.shape.direction,
            ])
              seen.set(k, (seen.get(k) ?? 0) + 1);
          });
        }),
        runs(16, 20250801),
      );
      // A check that never met a kind of result says nothing about it.
      for (const kind of [
        'none',
        'turn',
        'meet',
        'open',
        'across',
        'half',
        'inner',
        'outer',
        'crown-on-centre',
        'alignment-line',
        'flat-on-guide',
        'inside',
        'outside',
        'heel-first',
        'crown-first',
      ])
        expect(seen.get(kind) ?? 0, kind).toBeGreaterThan(20);
    },
    patience(120_000),
  );

  test(
    'of two kinds that take turns too',
    () => {
      const seen = new Map<string, number>();
      fc.assert(
        fc.property(layout, (l) => {
          const corners = l.corners === 'turn' || l.corners === 'across' ? 'meet' : l.corners;
          // Kinds that take turns refuse a gap that is to suit.
          const gap = l.gap === 'auto' ? '0' : l.gap;
          const words = textOf({ ...l, corners, gap, channels: '[]' }).replace(
            'gap',
            'alternate: [{}, {}], gap',
          );
          const { results } = search(planOf(words));
          results.forEach((r, i) => {
            checkResult(r, 0, i < 6 || i % 20 === 0);
            const { gap } = r.fit.sides[0]!.seat;
            for (const k of [r.field.corners, r.field.from, gap > 0 ? 'apart' : 'touching'])
              seen.set(k, (seen.get(k) ?? 0) + 1);
          });
        }),
        runs(30, 20261129),
      );
      for (const kind of ['none', 'meet', 'open', 'half', 'inner', 'outer', 'apart', 'touching'])
        expect(seen.get(kind) ?? 0, kind).toBeGreaterThan(10);
    },
    patience(120_000),
  );
});
