/**
 * A fair row of points as the fewest lines and arcs within a tolerance, and of those few the closest.
 *
 * Method: from one joint the farthest point is sought to which one line or arc runs within the tolerance, and
 * from there again. Joints are points of the row. Because a shorter stretch is never harder to fit than a longer
 * one, taking the longest each time gives the least number (Drysdale, Rote and Sturm, "Approximation of an open
 * polygonal curve with a minimum number of circular arcs and biarcs", Computational Geometry 41, 2008). Then the
 * tolerance is made smaller for as long as the number stays, so that the error is shared out.
 *
 * A piece also keeps to the row's direction at its ends, so that a joint turns by so little that no finger feels
 * it. Straight stretches long enough to be laid along a drawn line are found first, and stay lines: an arc would
 * swallow a part of them within the tolerance.
 *
 * Requires points in order, dense against the curvature (a dozen to a quarter turn). Two points give a line.
 */

import { arcByRise, line, type Piece } from './piece.ts';
import { distance, type Point, subtract, turnBetween } from './point.ts';

export interface ArcSplineOptions {
  /** The farthest that any point may lie from its line or arc, mm. */
  readonly tolerance: number;
  /** The most that a piece's end may turn from the row's direction, radians. */
  readonly kink?: number;
  /** Straight stretches at least this long (mm) stay lines. */
  readonly flat?: number;
}

export interface ArcSpline {
  readonly pieces: readonly Piece[];
  /** The farthest of the points from its piece, mm. */
  readonly deviation: number;
}

/** One degree: two pieces then meet within two. */
const DEFAULT_KINK = Math.PI / 180;

/** Shorter straight stretches (mm) are as likely the middle of a reverse curve, which is straight for a while too. */
const DEFAULT_FLAT = 15;

/** However loose the tolerance, a flat is straight to this (mm), or it would reach into the curves beside it. */
const FLAT_TOLERANCE = 0.02;

export const arcSpline = (points: readonly Point[], options: ArcSplineOptions): ArcSpline => {
  if (points.length < 2) return { pieces: [], deviation: 0 };
  const row: Row = { points, directions: directionsOf(points), kink: options.kink ?? DEFAULT_KINK };
  const flats = findFlats(row, Math.min(options.tolerance / 2, FLAT_TOLERANCE), options.flat ?? DEFAULT_FLAT);
  const pieces: Piece[] = [];
  let deviation = 0;
  let at = 0;
  const bend = (to: number): void => {
    if (!(to > at)) return;
    const found = fewest(row, at, to, options.tolerance);
    for (const s of found) {
      pieces.push(s.piece);
      deviation = Math.max(deviation, s.deviation);
    }
  };
  for (const flat of flats) {
    bend(flat.from);
    pieces.push(line(points[flat.from]!, points[flat.to]!));
    deviation = Math.max(deviation, lineDeviation(points, flat.from, flat.to));
    at = flat.to;
  }
  bend(points.length - 1);
  return { pieces, deviation };
};

interface Row {
  readonly points: readonly Point[];
  readonly directions: readonly Point[];
  readonly kink: number;
}

const directionsOf = (points: readonly Point[]): Point[] => {
  const last = points.length - 1;
  return points.map((p, i) => {
    if (last < 2) return subtract(points[last]!, points[0]!);
    if (i > 0 && i < last) return subtract(points[i + 1]!, points[i - 1]!);
    // By the parabola through three points: 4(p₁ − p₀) − (p₂ − p₀).
    const [near, far] = i === 0 ? [points[1]!, points[2]!] : [points[last - 1]!, points[last - 2]!];
    const d = { x: 4 * (near.x - p.x) - (far.x - p.x), y: 4 * (near.y - p.y) - (far.y - p.y) };
    return i === 0 ? d : { x: -d.x, y: -d.y };
  });
};

interface Stretch {
  readonly piece: Piece;
  readonly to: number;
  readonly deviation: number;
}

/** Rounds of halving the tolerance's range: beyond them the error moves by less than a hundredth. */
const ROUNDS = 7;

const fewest = (row: Row, from: number, to: number, tolerance: number): readonly Stretch[] => {
  let best = greedy(row, from, to, tolerance);
  let low = 0;
  let high = tolerance;
  for (let i = 0; i < ROUNDS; i++) {
    const within = (low + high) / 2;
    const tried = greedy(row, from, to, within);
    if (tried.length <= best.length) {
      best = tried;
      high = within;
    } else low = within;
  }
  return best;
};

const greedy = (row: Row, from: number, to: number, tolerance: number): Stretch[] => {
  const found: Stretch[] = [];
  for (let at = from; at < to; ) {
    const next = farthest(at, to, (end) => fitArc(row, at, end, tolerance)) ?? {
      piece: line(row.points[at]!, row.points[at + 1]!),
      to: at + 1,
      deviation: 0,
    };
    found.push(next);
    at = next.to;
  }
  return found;
};

/** The fit to the farthest end, found by doubling the step and then halving it. */
const farthest = <T>(from: number, to: number, reach: (end: number) => T | undefined): T | undefined => {
  let best: T | undefined;
  let good = from;
  let bad = to + 1;
  for (let step = 1; ; step *= 2) {
    const end = Math.min(to, from + step);
    const f = reach(end);
    if (f) {
      best = f;
      good = end;
      if (end === to) return best;
    } else if (step >= LEAST_RUN) {
      bad = end;
      break;
    }
  }
  while (bad - good > 1) {
    const end = (good + bad) >> 1;
    const f = reach(end);
    if (f) {
      best = f;
      good = end;
    } else bad = end;
  }
  return best;
};

/** Over a very short run the direction's noise may refuse what a longer one allows; so many steps are always tried. */
const LEAST_RUN = 8;

const fitArc = (row: Row, from: number, to: number, tolerance: number): Stretch | undefined => {
  const { points, directions, kink } = row;
  const a = points[from]!;
  const b = points[to]!;
  const chord = subtract(b, a);
  const c = distance(a, b);
  if (!(c > 0)) return undefined;
  const ux = chord.x / c;
  const uy = chord.y / c;
  // The range of deviation (above and below) for a rise; both grow or shrink with it, so halving finds the best.
  const range = (rise: number, stride: number): { up: number; down: number } => {
    let up = 0;
    let down = 0;
    const q = rise * rise - (c * c) / 4;
    const reach = (rise * rise + (c * c) / 4) / 2;
    for (let i = from + stride; i < to; i += stride) {
      const px = points[i]!.x - a.x;
      const py = points[i]!.y - a.y;
      const x = px * ux + py * uy;
      const y = py * ux - px * uy;
      // The power of the point over (its distance from the centre plus the radius), both times the rise.
      const top = rise * (x * x + y * y - c * x) - q * y;
      const dx = rise * (x - c / 2);
      const dy = rise * y - q / 2;
      const d = top / (Math.sqrt(dx * dx + dy * dy) + reach);
      if (d > up) up = d;
      else if (-d > down) down = -d;
    }
    return { up, down };
  };
  const stride = Math.max(1, Math.floor((to - from) / MOST_PROBES));
  let low = -c / 2;
  let high = c / 2;
  for (let i = 0; i < HALVINGS; i++) {
    const rise = (low + high) / 2;
    const { up, down } = range(rise, stride);
    if (up > down) low = rise;
    else high = rise;
  }
  const rise = (low + high) / 2;
  const { up, down } = range(rise, 1);
  const deviation = Math.max(up, down);
  if (!(deviation <= tolerance)) return undefined;
  const lean = 2 * Math.atan((2 * rise) / c);
  const off = Math.max(
    Math.abs(turnBetween(chord, directions[from]!) - lean),
    Math.abs(turnBetween(chord, directions[to]!) + lean),
  );
  if (!(off <= kink || to - from === 1)) return undefined;
  return { piece: arcByRise(a, b, Math.abs(rise) < STRAIGHT ? 0 : rise), to, deviation };
};

/** Points looked at while the rise is sought; all are looked at in the end. */
const MOST_PROBES = 60;
/** Halvings of the rise: from a chord of 300 mm down to a millionth of a millimetre. */
const HALVINGS = 30;
/** An arc that rises less than this (mm) over its chord is a line. */
const STRAIGHT = 1e-4;

interface Flat {
  readonly from: number;
  readonly to: number;
}

/**
 * A long arc of a large radius is no flat. The ends of a stretch may reach into the bends beside it, so its middle
 * is looked at, without this share at either end: over a flat's the best arc rises by less than that share of the
 * tolerance, over an arc's by half of it and more.
 */
const END_SHARE = 0.12;
const STRAIGHT_SHARE = 0.35;

const findFlats = ({ points }: Row, tolerance: number, shortest: number): readonly Flat[] => {
  const found: Flat[] = [];
  const last = points.length - 1;
  const seek = (from: number, to: number, depth: number): void => {
    let best: Flat | undefined;
    const stride = Math.max(1, Math.floor((to - from) / MOST_STARTS));
    for (let i = from; i < to; i += stride) {
      const end = farthest(i, to, (e) => (lineDeviation(points, i, e) <= tolerance ? e : undefined));
      if (end === undefined) continue;
      if (!best || distance(points[i]!, points[end]!) > distance(points[best.from]!, points[best.to]!))
        best = { from: i, to: end };
    }
    if (!best || !(distance(points[best.from]!, points[best.to]!) >= shortest)) return;
    const { from: a, to: b } = best;
    if (depth < MOST_FLATS) seek(from, a, depth + 1);
    if (isStraight(points, a, b, tolerance)) found.push(best);
    if (depth < MOST_FLATS) seek(b, to, depth + 1);
  };
  seek(0, last, 0);
  return found;
};

/** Starts that are tried for a straight stretch; a finer search moves its ends by less than a step in two hundred. */
const MOST_STARTS = 200;
/** A template with more straight stretches than two to this power does not exist. */
const MOST_FLATS = 6;

const isStraight = (points: readonly Point[], first: number, last: number, tolerance: number): boolean => {
  const from = first + Math.floor((last - first) * END_SHARE);
  const to = last - Math.floor((last - first) * END_SHARE);
  const a = points[from]!;
  const c = distance(a, points[to]!);
  const u = subtract(points[to]!, a);
  // The rise of the parabola of least squares with the ends held: y = rise·4x(c − x)/c².
  let top = 0;
  let bottom = 0;
  for (let i = from + 1; i < to; i++) {
    const x = ((points[i]!.x - a.x) * u.x + (points[i]!.y - a.y) * u.y) / c;
    const y = (u.x * (points[i]!.y - a.y) - u.y * (points[i]!.x - a.x)) / c;
    const f = (4 * x * (c - x)) / (c * c);
    top += f * y;
    bottom += f * f;
  }
  return !(bottom > 0) || Math.abs(top / bottom) <= STRAIGHT_SHARE * tolerance;
};

const lineDeviation = (points: readonly Point[], from: number, to: number): number => {
  const a = points[from]!;
  const b = points[to]!;
  const c = distance(a, b);
  if (!(c > 0)) return Number.POSITIVE_INFINITY;
  let most = 0;
  for (let i = from + 1; i < to; i++) {
    const p = points[i]!;
    most = Math.max(most, Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / c);
  }
  return most;
};
