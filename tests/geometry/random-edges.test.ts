/** Properties of the stitched edge on random edges, biased to the nearly degenerate. Seeded: the same edges every time. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endAlong, startAlong } from '../../src/geometry/contact.ts';
import { findEdgeFault } from '../../src/geometry/edge-fault.ts';
import { type Motion, mirror, shift, turn } from '../../src/geometry/motion.ts';
import {
  closedPath,
  movePath,
  openPath,
  type Path,
  pathLength,
  pointAlong,
  reversePath,
} from '../../src/geometry/path.ts';
import { line, type Piece, pieceAt, pieceLength, trimPiece } from '../../src/geometry/piece.ts';
import { type Point, point } from '../../src/geometry/point.ts';
import { rollFoot, rollFootRound, type StitchedEdge } from '../../src/geometry/rolling-foot.ts';
import { runs } from '../support/runs.ts';
import { distanceTo, pointOn } from './curve-helpers.ts';
import { C, exactSteps, type Step, walk } from './exact-figures.ts';
import {
  coverage,
  deviation,
  distanceToPieces,
  samplesOf,
  selfCrossing,
  totalLength,
  widestGap,
} from './foot-checks.ts';

const SEED = 20240517;

const size = (max: number) => fc.double({ min: 1, max, noNaN: true });
const hair = fc.constantFrom(0, 1e-9, -1e-9, 1e-6, -1e-6, 1e-3, -1e-3);

const turns = fc.oneof(
  fc.constant(0),
  fc.constantFrom(1e-9, 1e-6, -1e-6, 1e-5, -1e-5, 1e-3, -1e-3),
  fc.constantFrom(Math.PI / 2, -Math.PI / 2, 3.13, -3.13, Math.PI - 0.01),
  fc.double({ min: -3, max: 3, noNaN: true }),
);

const steps: fc.Arbitrary<Step> = fc.oneof(
  fc.record({
    turn: turns,
    length: fc.oneof(
      size(40),
      hair.map((h) => 2 * C + h),
      fc.constantFrom(1e-9, 1e-6, 1e-3, 3, 20),
    ),
    radius: fc.constant(0),
  }),
  fc.record({
    turn: turns,
    length: fc.oneof(size(60), fc.constantFrom(1e-3, 0.1)),
    radius: fc
      .tuple(
        fc.oneof(
          size(30),
          hair.map((h) => C + h),
          fc.constantFrom(3, 12, 1000, 1e5, 1e7),
        ),
        fc.boolean(),
      )
      .map(([r, left]) => (left ? r : -r)),
  }),
);

const edges = fc.array(steps, { minLength: 1, maxLength: 8 }).map((list) => openPath(walk(list)));

/** Runs a property on the edges that a foot can roll along, and says how many those were. */
const onEdges = (times: number, seed: number, check: (s: StitchedEdge, edge: Path) => void): number => {
  let rolled = 0;
  fc.assert(
    fc.property(edges, (edge) => {
      const r = rollFoot(edge, C);
      // An edge that crosses itself, or has no side that the foot can get to, is told so; nothing else may fail.
      if (!r.ok) {
        expect(['crosses-itself', 'trapped', 'empty']).toContain(r.fault.kind);
        if (r.fault.kind === 'crosses-itself') {
          // The place is on both of the pieces that it names.
          for (const i of r.fault.pieces)
            expect(distanceTo(r.fault.at, edge.pieces[i]!)).toBeLessThan(1e-6 + slowNoise(edge));
        }
        return;
      }
      rolled++;
      check(r.value, edge);
    }),
    runs(times, seed),
  );
  return rolled;
};

/** Centres a million times as far as the piece is long cost the slow checks some digits, not the program. */
const slowNoise = (edge: Path): number =>
  Math.max(0, ...edge.pieces.map((p) => (p.kind === 'arc' ? p.radius : 0))) * 1e-15;

describe('every stitched edge', () => {
  test('stays at c from the edge, in one piece, without crossing itself', () => {
    const rolled = onEdges(600, SEED, (s, edge) => {
      expect(deviation(s.path.pieces, edge.pieces, C)).toBeLessThan(1e-6 + slowNoise(edge));
      expect(widestGap(s.path.pieces)).toBeLessThan(1e-6 + slowNoise(edge));
      expect(selfCrossing(s.path.pieces)).toBeUndefined();
    });
    expect(rolled).toBeGreaterThan(200);
  });

  test('holds all that the foot can reach, and nothing else', () => {
    const rolled = onEdges(80, SEED + 1, (s, edge) => {
      const seen = coverage(s.path.pieces, edge.pieces, C);
      expect(seen.missing).toBeLessThan(1e-4);
      expect(seen.extra).toBe(0);
    });
    expect(rolled).toBeGreaterThan(25);
  });

  test('touches the edge where its contacts say, in the edge’s order', () => {
    const rolled = onEdges(400, SEED + 2, (s, edge) => {
      let last = 0;
      let worst = 0;
      s.contacts.forEach((contact, i) => {
        expect(contact.from).toBeGreaterThanOrEqual(last - 1e-6);
        expect(contact.to).toBeGreaterThanOrEqual(contact.from);
        last = contact.to;
        for (const t of [0, 0.21, 0.5, 0.83, 1]) {
          const q = pieceAt(s.path.pieces[i]!, t);
          const touched = pointAlong(edge, contact.from + t * (contact.to - contact.from))!;
          worst = Math.max(worst, Math.abs(Math.hypot(q.x - touched.x, q.y - touched.y) - C));
        }
      });
      expect(last).toBeLessThanOrEqual(s.edgeLength + 1e-9);
      expect(worst).toBeLessThan(2e-6);
    });
    expect(rolled).toBeGreaterThan(130);
  });

  test('says of unreached places how far the stitching stays from them', () => {
    let places = 0;
    onEdges(400, SEED + 3, (s, edge) => {
      for (const u of s.unreached) {
        places++;
        expect(distanceToPieces(u.deepest, s.path.pieces)).toBeCloseTo(u.away, 5);
        expect(distanceToPieces(u.deepest, edge.pieces)).toBeLessThan(1e-6 + slowNoise(edge));
        expect(distanceToPieces(u.turn, s.path.pieces)).toBeLessThan(1e-6);
        // No sampled place of the stretch stays farther.
        for (let k = 0; k <= 20; k++) {
          const at = pointAlong(edge, u.from + ((u.to - u.from) * k) / 20)!;
          expect(distanceToPieces(at, s.path.pieces)).toBeLessThan(u.away + 0.01 + slowNoise(edge));
        }
      }
    });
    expect(places).toBeGreaterThan(50);
  });

  test('has a start and a stop for every place on the edge, in order', () => {
    onEdges(200, SEED + 4, (s) => {
      const length = pathLength(s.path);
      let last = 0;
      for (let k = 0; k <= 20; k++) {
        const place = (s.edgeLength * k) / 20;
        const [stop, start] = [endAlong(s, place), startAlong(s, place)];
        expect(stop).toBeGreaterThanOrEqual(last - 1e-6);
        expect(start).toBeGreaterThanOrEqual(stop - 1e-6);
        expect(start).toBeLessThanOrEqual(length + 1e-9);
        last = stop;
      }
    });
  });
});

describe('every stitched edge with coves, slots and beads of just the foot’s size', () => {
  const rolledAlong = (times: number, seed: number, check: (s: StitchedEdge, edge: Path) => void): number => {
    let rolled = 0;
    fc.assert(
      fc.property(exactSteps, (list) => {
        const edge = openPath(walk(list));
        const r = rollFoot(edge, C);
        if (!r.ok) {
          expect(['crosses-itself', 'trapped', 'empty']).toContain(r.fault.kind);
          return;
        }
        rolled++;
        check(r.value, edge);
      }),
      runs(times, seed),
    );
    return rolled;
  };

  test('stays at c from the edge, in one piece, without crossing or touching itself', () => {
    const rolled = rolledAlong(300, SEED + 13, (s, edge) => {
      expect(deviation(s.path.pieces, edge.pieces, C)).toBeLessThan(1e-6);
      expect(widestGap(s.path.pieces)).toBeLessThan(1e-6);
      expect(selfCrossing(s.path.pieces)).toBeUndefined();
      // The way round a spiral ends where it comes back to itself; neighbours touch only where they join.
      const fault = findEdgeFault(s.path);
      if (fault?.kind === 'crosses-itself') expect(fault.pieces[1] - fault.pieces[0]).toBeGreaterThan(1);
    });
    expect(rolled).toBeGreaterThan(250);
  });

  test('holds all that the foot can reach, and nothing else', () => {
    const rolled = rolledAlong(30, SEED + 12, (s, edge) => {
      const seen = coverage(s.path.pieces, edge.pieces, C);
      // What a hair of 1e-8 mm across a slot of 2c is along its wall.
      expect(seen.missing).toBeLessThan(Math.sqrt(4e-8 * C));
      expect(seen.extra).toBe(0);
    });
    expect(rolled).toBeGreaterThan(20);
  });
});

/** That two paths run the same way: every sampled point of either lies on the other. */
const expectSameWay = (a: readonly Piece[], b: readonly Piece[], slack: number): void => {
  for (const q of samplesOf(a, 2)) expect(distanceToPieces(q, b)).toBeLessThan(slack);
  for (const q of samplesOf(b, 2)) expect(distanceToPieces(q, a)).toBeLessThan(slack);
};

/**
 * At the very limit (a slot of exactly 2c, an arc of radius exactly c) rounding decides, and a turned edge may
 * be decided the other way; these edges keep away from it.
 */
const plainSteps = fc.record({
  turn: fc.oneof(
    fc.constant(0),
    fc.double({ min: -2.5, max: 2.5, noNaN: true }),
    fc.constantFrom(1e-6, -1e-3),
  ),
  length: fc.oneof(size(40), fc.constantFrom(0.01, 1)),
  radius: fc.oneof(
    fc.constant(0),
    fc
      .tuple(fc.oneof(size(5), fc.double({ min: 7, max: 40, noNaN: true })), fc.boolean())
      .map(([r, left]) => (left ? r : -r)),
  ),
});
const plainEdges = fc.array(plainSteps, { minLength: 1, maxLength: 7 }).map((list) => openPath(walk(list)));

const enlarge = (path: Path, by: number): Path => {
  const f = (p: Point): Point => point(p.x * by, p.y * by);
  return openPath(
    path.pieces.map((p) =>
      p.kind === 'line'
        ? line(f(p.from), f(p.to))
        : { ...p, center: f(p.center), radius: p.radius * by, from: f(p.from), to: f(p.to) },
    ),
  );
};

describe('the way does not depend on', () => {
  const unchanged = (
    seed: number,
    change: (edge: Path, s: number) => { edge: Path; c?: number; back: (p: Path) => Path },
  ): void => {
    let rolled = 0;
    fc.assert(
      fc.property(plainEdges, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (edge, share) => {
        const plain = rollFoot(edge, C);
        const { edge: other, c = C, back } = change(edge, share);
        const changed = rollFoot(other, c);
        expect(changed.ok).toBe(plain.ok);
        if (!plain.ok || !changed.ok) return;
        rolled++;
        expectSameWay(plain.value.path.pieces, back(changed.value.path).pieces, 1e-5);
        // Tiny ones come and go with rounding and scale.
        const deep = (s: StitchedEdge): number =>
          s.unreached.filter((u) => u.away > s.clearance * 1.01).length;
        expect(deep(changed.value)).toBe(deep(plain.value));
      }),
      runs(200, seed),
    );
    expect(rolled).toBeGreaterThan(60);
  };
  const undo = (m: Motion, n: Motion) => (edge: Path) => ({
    edge: movePath(edge, m),
    back: (p: Path) => movePath(p, n),
  });

  test('where the edge lies', () =>
    unchanged(SEED + 5, (edge, s) => undo(shift(900 * s, -700), shift(-900 * s, 700))(edge)));
  test('how it is turned', () => unchanged(SEED + 6, (edge, s) => undo(turn(6 * s), turn(-6 * s))(edge)));
  test('mirroring, with the side swapped by reversing', () =>
    unchanged(SEED + 7, (edge, s) => {
      const m = mirror(point(10 * s, 3), s);
      return { edge: reversePath(movePath(edge, m)), back: (p) => movePath(reversePath(p), m) };
    }));
  test('splitting its pieces', () =>
    unchanged(SEED + 8, (edge, s) => ({
      edge: openPath(edge.pieces.flatMap((p) => [trimPiece(p, 0, s), trimPiece(p, s, 1)])),
      back: (p) => p,
    })));
  test('the scale, with the clearance', () =>
    unchanged(SEED + 9, (edge, s) => {
      const by = 0.3 + 4 * s;
      return { edge: enlarge(edge, by), c: C * by, back: (p) => enlarge(p, 1 / by) };
    }));
});

test('the two sides of an edge together are the way round it', () => {
  // The edge as a closed outline that goes out and a hair aside back: an outline from outside, foot all round.
  let rolled = 0;
  fc.assert(
    fc.property(fc.array(plainSteps, { minLength: 3, maxLength: 6 }), (list) => {
      const out = walk(list);
      const outline = closedPath([...out, line(out.at(-1)!.to, out[0]!.from)]);
      const r = rollFootRound(outline, C);
      if (!r.ok) return;
      rolled++;
      for (const way of r.value) {
        expect(deviation(way.path.pieces, outline.pieces, C)).toBeLessThan(1e-6);
        expect(widestGap(way.path.pieces, true)).toBeLessThan(1e-6);
        expect(selfCrossing(way.path.pieces, true)).toBeUndefined();
      }
    }),
    runs(400, SEED + 10),
  );
  expect(rolled).toBeGreaterThan(80);
});

test('the slow checks themselves notice what is wrong', () => {
  const edge = openPath([line(point(0, 0), point(40, 0)), line(point(40, 0), point(40, -30))]);
  const r = rollFoot(edge, C);
  if (!r.ok) throw new Error(r.fault.kind);
  const { pieces } = r.value.path;
  expect(pieces.map((p) => p.kind)).toEqual(['line', 'arc', 'line']);
  expect(coverage(pieces, edge.pieces, C)).toMatchObject({ extra: 0 });
  // A join left out; a clearance off by 0.01 mm; a way that turns inside out.
  expect(coverage([pieces[0]!, pieces[2]!], edge.pieces, C).missing).toBeGreaterThan(1);
  const off = rollFoot(edge, C + 0.01);
  expect(off.ok && deviation(off.value.path.pieces, edge.pieces, C)).toBeCloseTo(0.01, 9);
  expect(
    selfCrossing([
      line(point(0, 0), point(9, 0)),
      line(point(9, 0), point(9, 9)),
      line(point(9, 9), point(5, -8)),
    ]),
  ).toBeDefined();
  expect(widestGap([pieces[0]!, pieces[2]!])).toBeGreaterThan(1);
  expect(totalLength(pieces)).toBeCloseTo(70 + (C * Math.PI) / 2, 9);
  expect(distanceTo(pointOn(pieces[1]!, 0.5), edge.pieces[0]!)).toBeCloseTo(C, 9);
  expect(pieces.every((p) => pieceLength(p) > 0)).toBe(true);
});
