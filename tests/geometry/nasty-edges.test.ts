/** The rolling foot on edges at and beside the limits: each case states by elementary geometry what must come out. */

import { describe, expect, test } from 'vitest';
import { findEdgeFault } from '../../src/geometry/edge-fault.ts';
import { mirror } from '../../src/geometry/motion.ts';
import {
  closedPath,
  movePath,
  openPath,
  type Path,
  pathBox,
  polyline,
  reversePath,
} from '../../src/geometry/path.ts';
import { type Arc, arc, arcBetween, line, type Piece } from '../../src/geometry/piece.ts';
import { type Point, point } from '../../src/geometry/point.ts';
import { rollFoot, rollFootRound, type StitchedEdge } from '../../src/geometry/rolling-foot.ts';
import { pointOn } from './curve-helpers.ts';
import { coverage, deviation, selfCrossing, totalLength, widestGap } from './foot-checks.ts';

const C = 6.35;
const PI = Math.PI;

const way = (edge: Path, c = C): StitchedEdge => {
  const r = rollFoot(edge, c);
  if (!r.ok) throw new Error(`no way: ${JSON.stringify(r.fault)}`);
  return r.value;
};

/** What must hold whatever the edge: distance, order, no crossing, and all that the foot can reach. */
const expectSound = (s: StitchedEdge, edge: Path, c = C): void => {
  const { pieces } = s.path;
  expect(deviation(pieces, edge.pieces, c)).toBeLessThan(1e-6);
  expect(widestGap(pieces)).toBeLessThan(1e-6);
  expect(selfCrossing(pieces)).toBeUndefined();
  let last = 0;
  for (const contact of s.contacts) {
    expect(contact.from).toBeGreaterThanOrEqual(last - 1e-6);
    expect(contact.to).toBeGreaterThanOrEqual(contact.from);
    last = contact.to;
  }
  expect(last).toBeLessThanOrEqual(s.edgeLength + 1e-9);
  const seen = coverage(pieces, edge.pieces, c);
  expect(seen.checked).toBeGreaterThan(10);
  expect(seen.missing).toBeLessThan(1e-5);
  expect(seen.extra).toBe(0);
};

/** A run-up, a quarter turn to the left of the given radius, and a run-out. */
const quarterBend = (radius: number, run = 20): Path => {
  const bend = arc(point(run, radius), radius, -PI / 2, PI / 2);
  return openPath([line(point(0, 0), bend.from), bend, line(bend.to, point(bend.to.x, bend.to.y + run))]);
};

describe('a concave bend about as tight as the foot', () => {
  const radii = [C - 1e-6, C - 1e-9, C, C + 1e-9, C + 1e-6];
  test.each(radii)('radius %d', (radius) => {
    const edge = quarterBend(radius);
    const s = way(edge);
    expectSound(s, edge);
    // The run-ups lose c − r each where the bend is too tight; else the parallel is all there.
    const short = Math.max(0, C - radius);
    const bend = Math.max(0, radius - C) * (PI / 2);
    expect(totalLength(s.path.pieces)).toBeCloseTo(40 - 2 * short + bend, 6);
    expect(s.path.pieces).toHaveLength(radius > C ? 3 : 2);
    // From its centre all of the bend is as near as can be told.
    expect(s.unreached).toEqual([]);
  });
  test('all radii ran', () => expect(radii).toHaveLength(5));
});

/** Two walls `width` apart and 30 long, joined by a flat bottom; the foot comes from above. */
const slot = (width: number): Path =>
  polyline([
    point(-40, 30),
    point(0, 30),
    point(0, 0),
    point(width, 0),
    point(width, 30),
    point(width + 40, 30),
  ]);

describe('a slot about as wide as the foot', () => {
  // Closed: along the top, over the mouth by the arcs round its two corners. Open: down and up again.
  const overTheMouth = (width: number): number => 2 * C * Math.asin(width / 2 / C);
  const widths = [2 * C - 1e-6, 2 * C, 2 * C + 1e-6, 2 * C + 1];
  test.each(widths)('width %d', (width) => {
    const edge = slot(width);
    const s = way(edge);
    expectSound(s, edge);
    if (width > 2 * C) {
      // Down the wall from its top corner to c above the bottom, across, and up.
      const down = 30 - C;
      expect(totalLength(s.path.pieces)).toBeCloseTo(80 + PI * C + 2 * down + (width - 2 * C), 6);
      expect(s.unreached).toHaveLength(2);
    } else {
      expect(Math.abs(totalLength(s.path.pieces) - (80 + overTheMouth(width)))).toBeLessThan(1e-2);
      expect(s.unreached).toHaveLength(1);
      const { turn, away } = s.unreached[0]!;
      expect(turn.x).toBeCloseTo(width / 2, 4);
      // The bottom's corners are the farthest: from there to where the foot hangs in the mouth.
      expect(away).toBeCloseTo(Math.hypot(width / 2, turn.y), 4);
    }
  });
  test('all widths ran', () => expect(widths).toHaveLength(4));

  test('a wide pocket behind a narrow mouth stays empty', () => {
    const edge = polyline([
      point(-40, 30),
      point(0, 30),
      point(0, 26),
      point(-20, 26),
      point(-20, -20),
      point(30, -20),
      point(30, 26),
      point(10, 26),
      point(10, 30),
      point(50, 30),
    ]);
    const s = way(edge);
    expectSound(s, edge);
    expect(pathBox(s.path).minY).toBeGreaterThan(30);
    expect(s.unreached).toHaveLength(1);
  });
});

describe('notches', () => {
  const notched = (...corners: readonly (readonly [number, number])[]): Path =>
    polyline([point(-60, 0), ...corners.map(([x, y]) => point(x, y)), point(80, 0)]);

  test('a lobe shorter than the trim vanishes', () => {
    // Between two notches 1 mm apart a ridge rises 2 mm less than its surroundings: the foot never touches it.
    const edge = notched([-5, 0], [-0.5, -10], [0, -9], [0.5, -10], [5, 0]);
    const s = way(edge);
    expectSound(s, edge);
    expect(s.unreached).toHaveLength(1);
    // It hangs between the two top corners, 10 mm apart.
    expect(s.unreached[0]!.turn.y).toBeCloseTo(Math.sqrt(C * C - 25), 9);
  });

  test('two notches nearer than the clearance', () => {
    const edge = notched([-9, 0], [-3, -8], [0, 0], [3, -8], [9, 0]);
    const s = way(edge);
    expectSound(s, edge);
    expect(s.unreached).toHaveLength(2);
    // Between corners 9 mm apart the foot hangs at √(c² − 4.5²), as far as the corners go.
    for (const u of s.unreached) expect(u.turn.y).toBeCloseTo(Math.sqrt(C * C - 4.5 * 4.5), 9);
  });

  test('three offset pieces through one point', () => {
    // Three sides of a square of 2c: their parallels meet in its centre, which is on a fourth corner's arc too.
    const edge = polyline([
      point(-30, 0),
      point(0, 0),
      point(0, -C),
      point(2 * C, -C),
      point(2 * C, 0),
      point(2 * C + 30, 0),
    ]);
    const s = way(edge);
    expectSound(s, edge);
    expect(totalLength(s.path.pieces)).toBeCloseTo(60 + PI * C, 4);
  });

  test.each([0.9, 0.1, 0.01])('a notch of %d degrees', (degrees) => {
    const beta = (degrees * PI) / 180;
    const deep = 40;
    const half = deep * Math.tan(beta / 2);
    const edge = polyline([point(-50, 0), point(-half, 0), point(0, -deep), point(half, 0), point(50, 0)]);
    const s = way(edge);
    expectSound(s, edge);
    // Too narrow by far: the foot hangs between the corners of the mouth.
    expect(s.unreached[0]!.turn.y).toBeCloseTo(Math.sqrt(C * C - half * half), 9);
    expect(s.unreached[0]!.away).toBeCloseTo(deep + Math.sqrt(C * C - half * half), 9);
  });

  test('a hairpin: two lines a degree apart, the foot round the outside of their point', () => {
    const edge = polyline([point(0, 0), point(50, 0.5), point(0, 1)].map((p) => point(p.x, -p.y)));
    const right = reversePath(edge);
    for (const e of [edge, right]) {
      const r = rollFoot(e, C);
      if (e === right) {
        // From within, the two sides are nearer than the foot anywhere.
        expect(r).toMatchObject({ ok: false, fault: { kind: 'trapped' } });
      } else {
        if (!r.ok) throw new Error('no way');
        expectSound(r.value, e);
        const turn = PI - 2 * Math.atan(0.5 / 50);
        expect(totalLength(r.value.path.pieces)).toBeCloseTo(2 * Math.hypot(50, 0.5) + C * turn, 6);
      }
    }
  });
});

describe('joints', () => {
  test.each([1e-6, -1e-6, 1e-9, -1e-9])('a kink of %d rad adds no join', (turn) => {
    const edge = polyline([point(0, 0), point(20, 0), point(20 + 20 * Math.cos(turn), 20 * Math.sin(turn))]);
    const s = way(edge);
    expect(s.path.pieces).toHaveLength(2);
    expectSound(s, edge);
  });

  test.each([1e-4, 1e-5, 6e-6, -6e-6, -1e-5, -1e-4])('a kink of %d rad is a corner', (turn) => {
    const edge = polyline([point(0, 0), point(20, 0), point(20 + 20 * Math.cos(turn), 20 * Math.sin(turn))]);
    const s = way(edge);
    expect(s.path.pieces).toHaveLength(turn < 0 ? 3 : 2);
    expectSound(s, edge);
    expect(totalLength(s.path.pieces)).toBeCloseTo(40 - C * turn, 7);
  });

  test('tangent pieces meet without a join', () => {
    const edge = openPath([
      line(point(0, 0), point(20, 0)),
      arcBetween(point(20, -15), point(20, 0), point(35, -15), false),
      arcBetween(point(47, -15), point(35, -15), point(47, -27), true),
      line(point(47, -27), point(70, -27)),
    ]);
    const s = way(edge);
    expect(s.path.pieces).toHaveLength(4);
    expectSound(s, edge);
    expect(totalLength(s.path.pieces)).toBeCloseTo(43 + ((15 + C) * PI) / 2 + ((12 - C) * PI) / 2, 9);
  });

  test('arcs of one circle, split anywhere, give one arc’s parallel', () => {
    const whole = arc(point(0, 0), 20, 0, 3);
    const parts = [0, 0.3, 0.30000001, 0.9, 1].map((t) => whole.start + whole.sweep * t);
    const pieces: Arc[] = [];
    for (let i = 1; i < parts.length; i++) {
      const a = parts[i - 1]!;
      const part = arc(point(0, 0), 20, a, parts[i]! - a);
      pieces.push({ ...part, from: pieces.at(-1)?.to ?? part.from });
    }
    const s = way(openPath(pieces));
    expectSound(s, openPath(pieces));
    expect(totalLength(s.path.pieces)).toBeCloseTo(3 * (20 - C), 9);
  });

  test('an arc beyond 180°, from outside and from within', () => {
    const almost = arc(point(0, 0), 20, 0, -5.5);
    const outside = way(openPath([almost]));
    expect(totalLength(outside.path.pieces)).toBeCloseTo(5.5 * (20 + C), 9);
    expectSound(outside, openPath([almost]));
    // The mouth is 2·20·sin(0.39) = 15.2 wide: the foot gets in.
    const within = way(reversePath(openPath([almost])));
    expect(totalLength(within.path.pieces)).toBeCloseTo(5.5 * (20 - C), 9);
    // A mouth of 2·20·sin(0.19) = 7.6 is too narrow.
    const shut = reversePath(openPath([arc(point(0, 0), 20, 0, -5.9)]));
    expect(rollFoot(shut, C)).toMatchObject({ ok: false, fault: { kind: 'trapped' } });
  });

  test('a U whose ends come within 2c traps the foot inside, not outside', () => {
    const u = openPath([
      line(point(0, 30), point(0, 0)),
      arcBetween(point(8, 0), point(0, 0), point(16, 0), true),
      line(point(16, 0), point(10, 30)),
    ]);
    expect(rollFoot(u, C)).toMatchObject({ ok: false, fault: { kind: 'trapped' } });
    const s = way(reversePath(u));
    expectSound(s, reversePath(u));
    expect(s.unreached).toEqual([]);
  });

  test('an end that curls up to the edge is left out, and said to be', () => {
    // A hook: the crown end comes back to 4 mm from the first stretch.
    const edge = polyline([point(0, 0), point(100, 0), point(100, 40), point(50, 40), point(50, 4)]);
    const s = way(edge);
    expectSound(s, edge);
    expect(s.unreached).toHaveLength(1);
    expect(s.unreached[0]!.to).toBeCloseTo(s.edgeLength, 9);
    expect(s.unreached[0]!.from).toBeLessThan(50);
  });
});

describe('specks and repeated points', () => {
  const corners = [point(0, 0), point(30, 0), point(30, 20), point(60, 20), point(70, -10)];
  const plain = way(polyline(corners));

  // What may differ: a step of δ, followed exactly, makes arcs of radius c part √(2cδ) sooner.
  const dirty: readonly (readonly [string, number, (at: Point) => Point])[] = [
    ['repeated', 1e-9, (p) => p],
    ['1e-9 ahead', 1e-7, (p) => point(p.x + 1e-9, p.y)],
    ['1e-9 aside', 1e-7, (p) => point(p.x, p.y - 1e-9)],
    ['1e-12 anywhere', 1e-9, (p) => point(p.x - 1e-12, p.y + 1e-12)],
    ['1e-8 anywhere', 1e-6, (p) => point(p.x - 1e-8, p.y + 1e-8)],
    ['1e-6 ahead', 0.004, (p) => point(p.x + 1e-6, p.y)],
  ];
  test.each(dirty)('%s: the same way as without', (_, slack, off) => {
    const edge = polyline(corners.flatMap((p) => [p, off(p)]));
    const s = way(edge);
    expect(Math.abs(totalLength(s.path.pieces) - totalLength(plain.path.pieces))).toBeLessThan(slack);
    // A piece of length zero has no side for the slow check; what is left is the edge all the same.
    const seen = openPath(edge.pieces.filter((p) => totalLength([p]) > 1e-7));
    expect(deviation(s.path.pieces, seen.pieces, C)).toBeLessThan(1e-6);
    expect(selfCrossing(s.path.pieces)).toBeUndefined();
    expect(coverage(s.path.pieces, seen.pieces, C).missing).toBeLessThan(1e-4);
  });
  test('all cases ran', () => expect(dirty).toHaveLength(6));

  test('nearly straight arcs of any radius', () => {
    for (const radius of [1e4, 1e6, 1e8, 1e10]) {
      for (const sense of [1, -1]) {
        const sweep = (sense * 80) / radius;
        const to = point(radius * Math.sin(80 / radius), 2 * sense * radius * Math.sin(40 / radius) ** 2);
        const start = (-sense * PI) / 2;
        const flat: Arc = {
          kind: 'arc',
          center: point(0, sense * radius),
          radius,
          start,
          sweep,
          from: point(0, 0),
          to,
        };
        const edge = openPath([flat, line(to, point(80, 40)), line(point(80, 40), point(140, 40))]);
        const s = way(edge);
        expect(s.path.pieces).toHaveLength(4);
        expect(s.unreached).toHaveLength(1);
        expect(s.unreached[0]!.away).toBeCloseTo(C * Math.SQRT2, 1);
        // By the parabola y = x²/2r, which is the arc to 1e-5 mm here and less for larger radii.
        for (const q of s.path.pieces.slice(0, 1).flatMap((p) => [0.1, 0.5, 0.9].map((t) => pointOn(p, t))))
          expect(Math.abs(q.y - C - (sense * q.x * q.x) / radius / 2)).toBeLessThan(1e-3);
      }
    }
  });
});

describe('a speck of a line between two arcs, with a turn to the left too small for a corner', () => {
  // Found by a random edge: a speck shorter than what the turn leaves doubled made the way go back and forth.
  const cases = [1e-7, 1e-6, 1.7e-6, 3e-6, 4.9e-6].flatMap((turn) =>
    [2e-7, 1e-6, 5e-6, 2e-5].map((length) => [turn, length] as const),
  );
  test.each(cases)('a turn of %d rad beside %d mm', (turn, length) => {
    const first = arc(point(0, 0), 18, 0.4, -PI);
    const along = 0.4 - PI - PI / 2;
    const tip = point(first.to.x + length * Math.cos(along), first.to.y + length * Math.sin(along));
    const spoke = along + turn + PI / 2;
    const center = point(tip.x - 12 * Math.cos(spoke), tip.y - 12 * Math.sin(spoke));
    const second: Arc = { ...arc(center, 12, spoke, -1.9), from: tip };
    const edge = openPath([first, line(first.to, tip), second]);
    for (const e of [edge, reversePath(movePath(edge, mirror(point(0, 0), 1)))]) {
      const s = way(e);
      expect(deviation(s.path.pieces, e.pieces, C)).toBeLessThan(1e-6);
      expect(widestGap(s.path.pieces)).toBeLessThan(1e-6);
      expect(selfCrossing(s.path.pieces)).toBeUndefined();
      // Half a turn and 1.9 rad at c more than their radii, less what the turn takes away.
      const whole = PI * (18 + C) + 1.9 * (12 + C) + length - C * turn;
      expect(Math.abs(totalLength(s.path.pieces) - whole)).toBeLessThan(1e-6);
    }
  });
  test('all cases ran', () => expect(cases).toHaveLength(20));
});

describe('faults name the place', () => {
  const faultOf = (...n: readonly number[]) =>
    findEdgeFault(polyline(Array.from({ length: n.length / 2 }, (_, i) => point(n[2 * i]!, n[2 * i + 1]!))));

  test('crossing itself', () => {
    const fault = faultOf(0, 0, 10, 0, 10, 10, 5, -5);
    expect(fault).toMatchObject({ kind: 'crosses-itself', pieces: [0, 2], at: { y: 0 } });
    // The line from (10, 10) to (5, −5) comes to y = 0 after two thirds of its way.
    if (fault?.kind === 'crosses-itself') expect(fault.at.x).toBeCloseTo(20 / 3, 12);
  });
  test('touching itself with a corner, and with an end', () => {
    expect(faultOf(0, 0, 10, 0, 10, 10, 5, 0, 0, 10)).toMatchObject({
      kind: 'crosses-itself',
      at: { x: 5, y: 0 },
    });
    expect(faultOf(0, 0, 10, 0, 10, 10, 5, 0)).toMatchObject({ kind: 'crosses-itself', at: { x: 5, y: 0 } });
  });
  test('touching itself tangentially', () => {
    const edge = openPath([
      line(point(0, 0), point(20, 0)),
      line(point(20, 0), point(20, 10)),
      arcBetween(point(10, 10), point(20, 10), point(0, 10), false),
    ]);
    expect(findEdgeFault(edge)).toMatchObject({ kind: 'crosses-itself', at: { x: 10, y: 0 } });
  });
  test('doubling back on itself', () => {
    expect(faultOf(0, 0, 10, 0, 4, 0)).toMatchObject({ kind: 'crosses-itself', pieces: [0, 1] });
  });
  test('crossing itself a hair after a corner with a speck in it', () => {
    // Found by a random edge: the speck between the two pieces hid their crossing 0.06 mm away.
    const bend = arc(point(0, 3), 3, PI / 2, -PI);
    const tip = point(bend.to.x + 1e-9, bend.to.y);
    const back = line(tip, point(tip.x + 20 * Math.cos(0.01), tip.y + 20 * Math.sin(0.01)));
    const fault = findEdgeFault(openPath([bend, line(bend.to, tip), back]));
    expect(fault).toMatchObject({ kind: 'crosses-itself', pieces: [0, 2] });
  });
  test('broken, empty, not finite', () => {
    const broken: Piece[] = [line(point(0, 0), point(1, 0)), line(point(1, 0.1), point(2, 0))];
    expect(findEdgeFault(openPath(broken))).toMatchObject({ kind: 'broken', piece: 1, at: { x: 1, y: 0.1 } });
    expect(findEdgeFault(closedPath([broken[0]!]))).toMatchObject({ kind: 'broken', piece: 0 });
    expect(findEdgeFault(openPath([]))).toEqual({ kind: 'empty' });
    expect(faultOf(5, 5, 5, 5)).toEqual({ kind: 'empty' });
    expect(faultOf(0, 0, Number.NaN, 0)).toEqual({ kind: 'not-finite', piece: 0 });
    expect(faultOf(0, 0, 1, 0, Number.POSITIVE_INFINITY, 0)).toEqual({ kind: 'not-finite', piece: 1 });
  });
  test('a clearance that is none is a mistake of the program', () => {
    for (const c of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => rollFoot(slot(30), c)).toThrow(RangeError);
      expect(() => rollFootRound(slot(30), c)).toThrow(RangeError);
    }
  });
});
