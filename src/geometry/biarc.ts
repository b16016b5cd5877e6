/**
 * A cubic Bézier curve as lines and circular arcs: the one approximation in the program, made once, when a
 * curve is read.
 *
 * Method: the curve is cut at its cusps and inflections, so that each stretch bends one way. Along a stretch
 * the longest biarc within the tolerance is found by bisection, again and again until the end. A biarc is two
 * arcs that share a tangent at their joint; the joints possible for given ends form a circle, and the joint
 * is taken where the curve itself crosses that circle, which keeps the error near the least possible (Meek
 * and Walton, "Approximating smooth planar curves by arc splines", J. Comput. Appl. Math. 59, 1995; Šír,
 * Feichtinger and Jüttler, "Approximating curves and their offsets using biarcs and Pythagorean hodograph
 * quintics", Computer-Aided Design 38, 2006). The error of a biarc falls with the third power of its length.
 *
 * The result starts and ends at the curve's end points to the last bit and has one tangent throughout, but
 * for cusps, and for stretches too small to be seen (below), which become lines.
 */

import {
  type Cubic,
  cubicAt,
  cubicStretch,
  endDirections,
  extremesAlong,
  hullLength,
  hullTurning,
  inflections,
} from './cubic.ts';
import { line, type Piece, pieceDirection, pieceLength } from './piece.ts';
import {
  add,
  angleOf,
  cross,
  distance,
  dot,
  isFinitePoint,
  leftOf,
  type Point,
  scale,
  subtract,
  turnBetween,
  unit,
} from './point.ts';

/** The largest distance between a curve and its arcs (mm), unless the caller says otherwise. */
export const CURVE_TOLERANCE = 0.002;

/**
 * The curve p0 p1 p2 p3 as lines and arcs no farther from it, nor it from them, than `tolerance` (mm). A
 * curve without length gives no pieces. Throws a RangeError for coordinates that are not finite.
 */
export const cubicToArcs = (
  p0: Point,
  p1: Point,
  p2: Point,
  p3: Point,
  tolerance: number = CURVE_TOLERANCE,
): Piece[] => {
  const curve: Cubic = { p0, p1, p2, p3 };
  if (![p0, p1, p2, p3].every(isFinitePoint)) throw new RangeError('A curve needs finite coordinates.');
  const size = hullLength(curve);
  if (!(size > 0)) return [];
  const farthest = Math.max(...[p0, p1, p2, p3].map((p) => Math.max(Math.abs(p.x), Math.abs(p.y))));
  if (!(tolerance >= 0)) throw new RangeError('A tolerance is a length of 0 mm or more.');
  // Asking for more than the numbers can carry would never end.
  const within = Math.max(tolerance, farthest * LEAST_RELATIVE);
  const straight = straightRuns(curve, size, farthest);
  if (straight) return straight;

  const pieces: Piece[] = [];
  const cuts = [0, ...inflections(curve), 1];
  for (let i = 1; i < cuts.length; i++) fitStretch(curve, cuts[i - 1]!, cuts[i]!, within, pieces);
  return pieces.filter((p) => pieceLength(p) > 0);
};

/** No tolerance below this share of the coordinates is honoured: rounding alone comes near it. */
const LEAST_RELATIVE = 1e-11;

/** A curve whose control points lie on one line, as the lines it runs, back and forth. */
const straightRuns = (curve: Cubic, size: number, farthest: number): Piece[] | undefined => {
  const { p0, p1, p2, p3 } = curve;
  const far = [p1, p2, p3].reduce((a, b) => (distance(p0, b) > distance(p0, a) ? b : a));
  const along = unit(subtract(far, p0));
  const off = Math.max(...[p1, p2, p3].map((p) => Math.abs(cross(along, subtract(p, p0)))));
  if (off > Math.max(size * COLLINEAR, farthest * Number.EPSILON * 4)) return undefined;
  const stops = [p0, ...extremesAlong(curve, along).map((t) => cubicAt(curve, t)), p3];
  const runs: Piece[] = [];
  for (let i = 1; i < stops.length; i++) runs.push(line(stops[i - 1]!, stops[i]!));
  return runs.filter((r) => pieceLength(r) > 0);
};

/** Control points off one line by less than this share of the curve's size lie on it, but for rounding. */
const COLLINEAR = 1e-12;

/** Longest biarcs within the tolerance from t = from to t = to, where the curve bends one way. */
const fitStretch = (curve: Cubic, from: number, to: number, tolerance: number, into: Piece[]): void => {
  let at = from;
  let step = to - from;
  for (let count = 0; at < to && count < MOST_PIECES; count++) {
    const found = longestBiarc(curve, at, to, step, tolerance);
    into.push(...found.pieces);
    // A step that worked is a good first guess for the next one.
    step = found.end - at;
    at = found.end;
  }
  if (at < to) into.push(line(pointAt(curve, at), pointAt(curve, to)));
};

interface Stretch {
  readonly end: number;
  readonly pieces: Piece[];
}

/** The longest biarc from t = at, but not beyond t = to: double the step while it serves, then bisect. */
const longestBiarc = (curve: Cubic, at: number, to: number, step: number, tolerance: number): Stretch => {
  let good: Stretch | undefined;
  let high: number | undefined;
  let end = Math.min(to, at + step);
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const pieces = tryBiarc(curve, at, end, tolerance);
    if (pieces) good = { end, pieces };
    else high = end;
    const low = good?.end ?? at;
    if (low >= to) break;
    if (high === undefined) {
      end = Math.min(to, at + 2 * (low - at));
      continue;
    }
    if (high - low <= (low - at) * ENOUGH) break;
    end = (low + high) / 2;
    if (!(end > low && end < high)) break;
  }
  if (good) return good;
  // Nothing bends so sharply but a cusp seen from too near; a line over it is shorter than can be seen.
  const past = Math.min(to, Math.max(high ?? to, at + LEAST_STEP));
  return { end: past, pieces: [line(pointAt(curve, at), pointAt(curve, past))] };
};

/** Steps in t below this are rounding; going on by it keeps every curve's count of pieces bounded. */
const LEAST_STEP = 1e-9;

/** Bisections for the longest biarc: the 40th is 1e-12 of the stretch. */
const MOST_TRIES = 40;

/** The end of the longest biarc is found to this share of its length. */
const ENOUGH = 0.02;

/** More biarcs than this for one bend are past all use; the least relative tolerance keeps below it. */
const MOST_PIECES = 20_000;

const pointAt = (curve: Cubic, t: number): Point =>
  t === 0 ? curve.p0 : t === 1 ? curve.p3 : cubicAt(curve, t);

/** The biarc over a stretch that bends one way, or undefined where it strays farther than the tolerance. */
const tryBiarc = (curve: Cubic, from: number, to: number, tolerance: number): Piece[] | undefined => {
  const part = cubicStretch(curve, from, to);
  const a = pointAt(curve, from);
  const b = pointAt(curve, to);
  if (hullLength(part) <= Math.min(tolerance / 2, TOO_SMALL)) return [line(a, b)];
  if (!(hullTurning(part) <= MOST_TURNING)) return undefined;
  const { start, end } = endDirections(part);
  const chord = subtract(b, a);
  const atStart = turnBetween(start, chord);
  const atEnd = turnBetween(chord, end);
  if (Math.abs(atStart - atEnd) <= SAME_ANGLE) {
    const only = tangentArc(a, start, b);
    return staysNear(part, 0, 1, only, tolerance) ? [only] : undefined;
  }
  const share = jointOf(part, a, b, start, end, atStart, atEnd);
  const joint = onJointCircle(cubicAt(part, share), a, b, atStart + atEnd);
  const first = tangentArc(a, start, joint);
  const second = tangentArcBack(joint, b, end);
  const near = staysNear(part, 0, share, first, tolerance) && staysNear(part, share, 1, second, tolerance);
  return near ? [first, second] : undefined;
};

/**
 * A stretch shorter than this (mm), or than half the tolerance, becomes a line: no needle could follow it.
 */
const TOO_SMALL = 1e-3;

/** A biarc spans a quarter turn at most: beyond that its radial error says too little about its distance. */
const MOST_TURNING = Math.PI / 2 + 1e-9;

/** Chord angles nearer than this (radians) at both ends make one arc, as good as two. */
const SAME_ANGLE = 1e-10;

/**
 * Where the curve crosses the circle of possible joints. With a the angle from the start's tangent to the
 * joint and b the angle from there to the end's tangent, a joint needs 2a + 2b = the whole turn. The left
 * side less the right is β − α at one end of the curve and α − β at the other, so that a zero lies between:
 * found by regula falsi with the Illinois rule.
 */
const jointOf = (
  part: Cubic,
  a: Point,
  b: Point,
  start: Point,
  end: Point,
  atStart: number,
  atEnd: number,
): number => {
  const turn = atStart + atEnd;
  const miss = (t: number): number => {
    const p = cubicAt(part, t);
    return 2 * turnBetween(start, subtract(p, a)) + 2 * turnBetween(subtract(b, p), end) - turn;
  };
  let low = 0;
  let high = 1;
  let missLow = atEnd - atStart;
  let missHigh = atStart - atEnd;
  let t = 0.5;
  for (let i = 0; i < 60 && high - low > 1e-15; i++) {
    const m = miss(t);
    if (Math.abs(m) <= 1e-15) break;
    if (m < 0 === missLow < 0) {
      low = t;
      missLow = m;
      missHigh /= 2;
    } else {
      high = t;
      missHigh = m;
      missLow /= 2;
    }
    const next = (low * missHigh - high * missLow) / (missHigh - missLow);
    t = next > low && next < high ? next : (low + high) / 2;
  }
  return t;
};

/**
 * The nearest point on the circle of joints: the circle about the centre that turns one end into the other.
 */
const onJointCircle = (p: Point, a: Point, b: Point, turn: number): Point => {
  const chord = subtract(b, a);
  const rise = 1 / (2 * Math.tan(turn / 2));
  if (!(Math.abs(rise) < FAR_CENTRE)) return p;
  const center = add({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, scale(leftOf(chord), rise));
  return add(center, scale(unit(subtract(p, center)), distance(center, a)));
};

/** Beyond this many chords the centre is too far away to correct anything by; the found joint stands. */
const FAR_CENTRE = 1e5;

/** The arc that leaves `from` along the unit vector `direction` and ends at `to`. */
export const tangentArc = (from: Point, direction: Point, to: Point): Piece => {
  const chord = subtract(to, from);
  const half = turnBetween(direction, chord);
  const length = distance(from, to);
  if (!(Math.abs(Math.tan(half / 2) * length) / 2 > FLAT) || !(Math.abs(half) > FLAT_ANGLE))
    return line(from, to);
  const radius = length / (2 * Math.sin(half));
  if (Math.abs(radius) > FAR && Math.abs(half) < FAR_ANGLE) return line(from, to);
  const center = add(from, scale(leftOf(direction), radius));
  return {
    kind: 'arc',
    center,
    radius: Math.abs(radius),
    start: angleOf(subtract(from, center)),
    sweep: 2 * half,
    from,
    to,
  };
};

/** The arc from `from` that reaches `to` along the unit vector `direction`. */
const tangentArcBack = (from: Point, to: Point, direction: Point): Piece => {
  const back = tangentArc(to, scale(direction, -1), from);
  if (back.kind === 'line') return line(from, to);
  return { ...back, start: angleOf(subtract(from, back.center)), sweep: -back.sweep, from, to };
};

/**
 * An arc that rises less than this (mm) over its chord is a line: a tighter bound would keep arcs whose
 * centre is so far away that rounding moves their points by as much. The kink that a line leaves is four
 * times this over its length.
 */
const FLAT = 1e-7;

/** An arc that turns less than this (radians) is a line: its centre would be lost in rounding. */
const FLAT_ANGLE = 1e-9;

/**
 * An arc about a centre farther away than this (mm) that turns less than this (radians, half its sweep) is a line:
 * the last digit of an angle, 4e-16, moves a point at that distance by half of `FLAT`. A line over 300 mm is then
 * 1e-4 mm off at most, and where that is more than the tolerance there will be two.
 */
const FAR = 1e8;
const FAR_ANGLE = 1e-4;

/** Whether a stretch of curve runs along a piece, in step with it, and no farther off than the tolerance. */
const staysNear = (part: Cubic, from: number, to: number, piece: Piece, tolerance: number): boolean => {
  const stretch = from === 0 && to === 1 ? part : cubicStretch(part, from, to);
  return staysWithin(stretch, piece, tolerance * HEADROOM) && keepsStep(stretch, piece, tolerance);
};

/**
 * What rounding may add, with room to spare: the circle of an arc of 1e8 mm is known to 2e-8 mm, a hundredth of this
 * share of the usual tolerance. Between the ends nothing is left out, so that nothing else needs room.
 */
const HEADROOM = 0.999;

/**
 * Whether all of a curve lies within a distance of a piece's line or circle. For a circle of radius r through f,
 * with n the unit vector from its centre to f and q = p − f, the power of a point p over the diameter is
 * q·(q/2r + n): of degree 6 along a cubic, and a curve within d of the circle has it between −d(1 − d/2r) and
 * d(1 + d/2r). A line is the circle without bend, of which n is the normal. A polynomial lies between the least
 * and the greatest of its Bernstein coefficients (G. Farin, "Curves and Surfaces for CAGD", the convex hull
 * property; cited from memory).
 */
const staysWithin = ({ p0, p1, p2, p3 }: Cubic, piece: Piece, within: number): boolean => {
  const q = [p0, p1, p2, p3].map((p) => subtract(p, piece.from));
  const isLine = piece.kind === 'line';
  const bend = isLine ? 0 : 1 / (2 * piece.radius);
  const n = isLine
    ? leftOf(unit(subtract(piece.to, piece.from)))
    : scale(subtract(piece.from, piece.center), 2 * bend);
  const power = [0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i <= 3; i++)
    for (let j = 0; j <= 3; j++) {
      const [u, v] = [q[i]!, q[j]!];
      const share = (CHOOSE_3[i]! * CHOOSE_3[j]!) / CHOOSE_6[i + j]!;
      power[i + j]! += share * (u.x * (v.x * bend + n.x) + u.y * (v.y * bend + n.y));
    }
  // No point is farther inside a circle than its centre.
  const least = within * 2 * bend < 1 ? -within * (1 - within * bend) : Number.NEGATIVE_INFINITY;
  return liesBetween(power, least, within * (1 + within * bend), MOST_HALVINGS);
};

const CHOOSE_3 = [1, 3, 3, 1];
const CHOOSE_6 = [1, 6, 15, 20, 15, 6, 1];

/**
 * Whether a polynomial, given by its Bernstein coefficients, surely lies between two values over all of its
 * range: where its coefficients do not say so, those of its halves may.
 */
const liesBetween = (b: readonly number[], least: number, most: number, halvings: number): boolean => {
  const isIn = (v: number): boolean => v >= least && v <= most;
  if (b.every(isIn)) return true;
  if (halvings === 0 || !isIn(b[0]!) || !isIn(b.at(-1)!)) return false;
  const left: number[] = [];
  const right = [...b];
  for (let last = b.length - 1; last >= 0; last--) {
    left.push(right[0]!);
    for (let i = 0; i < last; i++) right[i] = (right[i]! + right[i + 1]!) / 2;
  }
  return liesBetween(left, least, most, halvings - 1) && liesBetween(right, least, most, halvings - 1);
};

/** The coefficients come four times nearer with each halving: after six they are a part in a thousand off, if that. */
const MOST_HALVINGS = 6;

/**
 * Whether a curve that starts and ends with a piece goes the piece's way, and back by no more than the tolerance.
 * Surely so, where each leg of its control polygon goes forward at both ends of the piece: the curve's directions
 * lie between those of the legs, and an arc's up to a half turn between those of its ends. Elsewhere by samples.
 */
const keepsStep = (c: Cubic, piece: Piece, tolerance: number): boolean => {
  const legs = [subtract(c.p1, c.p0), subtract(c.p2, c.p1), subtract(c.p3, c.p2)];
  const [first, last] = [pieceDirection(piece, 0), pieceDirection(piece, 1)];
  const isSimple = piece.kind === 'line' || Math.abs(piece.sweep) < Math.PI;
  if (isSimple && legs.every((leg) => dot(leg, first) >= 0 && dot(leg, last) >= 0)) return true;
  let before = piece.from;
  for (let i = 1; i <= SAMPLES; i++) {
    const p = cubicAt(c, i / SAMPLES);
    if (piece.kind === 'line') {
      if (!(dot(first, subtract(p, before)) >= -tolerance)) return false;
    } else {
      const step = cross(subtract(before, piece.center), subtract(p, piece.center));
      if (!(step * Math.sign(piece.sweep) >= -tolerance * piece.radius)) return false;
    }
    before = p;
  }
  return true;
};

/** A curve that turns a quarter at most goes back once, if it does: this many samples see it. */
const SAMPLES = 8;
