/**
 * The working edge from points that were measured off a mat's grid: a fair curve through each stretch between
 * corners, as lines and arcs, no farther from any point than a tolerance.
 *
 * Two points make a line, three the arc through them, more a fair curve that is as fair as the tolerance lets it
 * be. What a point is worth is seen by leaving it out (cross-validation; Stone, "Cross-validatory choice and
 * assessment of statistical predictions", J. Royal Statistical Society B 36, 1974): a curve through the others
 * that misses it by far says either that the point is wrong (the others agree once it is gone) or that there are
 * too few (they do not). A stretch seen at twice the distance between points is worse by 2⁴ at least for a fair
 * curve; five is reckoned with here, because the places between are no better than the points.
 */

import {
  arcByRise,
  arcSpline,
  chordLengths,
  distance,
  distanceToPiece,
  fairCurve,
  line,
  nearnessOf,
  openPath,
  type Piece,
  type Point,
  polyline,
  riseThrough,
  subtract,
  turnBetween,
} from '../geometry/index.ts';
import {
  formatLength,
  INCH_SIXTYFOURTH,
  type LengthStyle,
  lengthsApart,
  MM_TENTH,
  numberApart,
  type Units,
} from '../length/index.ts';
import type { EdgeReading, EdgeStepFault } from './edge.ts';

export interface MeasuredPoint {
  readonly at: Point;
  /** Whether the edge has a corner here; otherwise it runs on smoothly. */
  readonly corner: boolean;
}

/** 1/64 in: what a good eye reads off a ruler marked in 1/32. */
export const MEASURED_TOLERANCE = 25.4 / 64;

/** Points nearer than this (mm) are one. */
const CLOSEST = 0.5;
/** A smooth edge that turns by more than this (radians) at a point is seen too coarsely there. */
const MOST_TURN = (50 * Math.PI) / 180;
/** Three points by themselves mean an arc, however far it turns; half as much as this is what the middle one sees. */
const MOST_ARC_TURN = (100 * Math.PI) / 180;
/** A point is wrong when the others miss it by this many tolerances, and by this many times less without it. */
const OUTLIER_MISS = 4;
const OUTLIER_GAIN = 3;
/** Half the distance between points makes the miss smaller by this much at least. */
const HALVING_GAIN = 5;
/** Fewer points than this do not tell a wrong one from a curve. */
const LEAST_FOR_OUTLIERS = 6;

/** Faults name points by their index, and say lengths in the file's units. Tolerance in mm. */
export const edgeFromPoints = (
  points: readonly MeasuredPoint[],
  tolerance: number = MEASURED_TOLERANCE,
  units: Units = 'mm',
): EdgeReading => {
  if (points.length < 3)
    return {
      ok: false,
      faults: [
        {
          step: undefined,
          message: 'too few points',
          expected: 'at least three; a curve wants one every inch, and more where it bends',
          hint: 'a straight edge is a line: start, then line',
        },
      ],
    };
  const twins = points.flatMap((p, i): EdgeStepFault[] => {
    const before = points[i - 1];
    if (!before || distance(before.at, p.at) >= CLOSEST) return [];
    return [
      { step: i, message: 'this point lies on the one before', expected: 'points at least 0.5 mm apart' },
    ];
  });
  if (twins.length > 0) return { ok: false, faults: twins };
  const faults: EdgeStepFault[] = [];
  const pieces: Piece[] = [];
  const stepOfPiece: number[] = [];
  const last = points.length - 1;
  for (let from = 0; from < last; ) {
    let to = from + 1;
    while (to < last && !points[to]!.corner) to++;
    const run = points.slice(from, to + 1).map((p) => p.at);
    const made = fitRun(run, tolerance, units);
    if (made.ok) {
      for (const piece of made.pieces) {
        pieces.push(piece);
        stepOfPiece.push(from + nearestChord(run, piece));
      }
    } else for (const f of made.faults) faults.push({ ...f, step: from + (f.step ?? 0) });
    from = to;
  }
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, edge: { path: openPath(pieces), stepOfPiece, named: [] } };
};

type Say = (mm: number) => string;

/** As fine as points are measured. */
const STYLES: Readonly<Record<Units, LengthStyle>> = {
  in: INCH_SIXTYFOURTH,
  cm: { unit: 'cm', step: 0.1 },
  mm: MM_TENTH,
};

/** Points are quoted, so that nobody has to know whether counting starts at 0 or at 1. */
const sayIn =
  (units: Units): Say =>
  (mm) =>
    formatLength(mm, STYLES[units]);

const pointWords = ({ x, y }: Point, say: Say): string => `[${say(x)}, ${say(y)}]`;

/** The chord of the run that a piece belongs to, by its middle. */
const nearestChord = (run: readonly Point[], piece: Piece): number =>
  Math.max(0, nearnessOf(polyline(run).pieces).nearest(piece.from));

type Fitted =
  | { readonly ok: true; readonly pieces: readonly Piece[] }
  | { readonly ok: false; readonly faults: readonly EdgeStepFault[] };

const fitRun = (run: readonly Point[], tolerance: number, units: Units): Fitted => {
  const say = sayIn(units);
  const [a, b, c] = run as [Point, Point, Point];
  if (run.length === 2) return { ok: true, pieces: [line(a, b)] };
  const misses = missesWithout(run, TEST_FAIRNESS);
  const uneven = findUneven(run, misses);
  if (uneven) return { ok: false, faults: [uneven] };
  const wrong = findOutlier(run, misses, tolerance, say);
  if (wrong) return { ok: false, faults: [wrong] };
  const coarse = findCoarse(run, say);
  if (coarse.length > 0) return { ok: false, faults: coarse };
  if (run.length === 3) {
    return { ok: true, pieces: [arcByRise(a, c, riseThrough(a, b, c))] };
  }
  const thin = findThin(run, misses, tolerance, units);
  if (thin.length > 0) return { ok: false, faults: thin };
  return { ok: true, pieces: fairest(run, tolerance) };
};

/** Grid points of the curve to the mean distance between two points. */
const STEPS = 16;
/** Rounds in which the points' lengths along the curve are measured on it, and not on the chords. */
const ROUNDS = 3;

/** The curve for one fairness (a share of the mean distance between points), as dense points. */
const curveAt = (run: readonly Point[], share: number, rounds = ROUNDS): readonly Point[] => {
  let lengths = chordLengths(run);
  const spacing = lengths.at(-1)! / (run.length - 1);
  const shortest = Math.min(...lengths.slice(1).map((l, i) => l - lengths[i]!));
  const step = Math.max(Math.min(spacing / STEPS, shortest / 4), spacing / (4 * STEPS));
  let curve: Point[] = [];
  for (let round = 0; round < rounds; round++) {
    curve = fairCurve(run, { step, fairness: share * spacing, heldEnds: true, lengths });
    const next = lengthsOn(curve, run, lengths);
    if (!next) break;
    lengths = next;
  }
  return curve;
};

/** Where the points lie along a curve; undefined where they would change order. */
const lengthsOn = (
  curve: readonly Point[],
  run: readonly Point[],
  before: readonly number[],
): number[] | undefined => {
  const along = chordLengths(curve);
  const whole = along.at(-1)!;
  const scale = whole / before.at(-1)!;
  const found = run.map((_, i) => {
    if (i === 0) return 0;
    if (i === run.length - 1) return whole;
    const at = (before[i]! / before.at(-1)!) * (curve.length - 1);
    const k = Math.min(curve.length - 2, Math.floor(at));
    return along[k]! + (along[k + 1]! - along[k]!) * (at - k);
  });
  const isOrdered = found.every((l, i) => i === 0 || l > found[i - 1]!);
  return isOrdered && scale > 0.5 && scale < 2 ? found : undefined;
};

/** Asked once of each curve, so a walk along it is quicker than a tree over it. */
const missOf = (curve: readonly Point[], p: Point): number => {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < curve.length; i++)
    least = Math.min(least, distanceToPiece(line(curve[i - 1]!, curve[i]!), p));
  return least;
};

/** How far the curve through all the others misses each inner point (mm); ends count as hit. */
const missesWithout = (run: readonly Point[], share: number): number[] =>
  run.map((p, i) => {
    if (i === 0 || i === run.length - 1) return 0;
    const others = run.filter((_, k) => k !== i);
    if (others.length === 2) return distanceToPiece(line(others[0]!, others[1]!), p);
    return missOf(curveAt(others, share, 1), p);
  });

const squares = (misses: readonly number[]): number => misses.reduce((sum, m) => sum + m * m, 0);

/** Nearly through every point: what a wrong point does to the curve is then seen at its full size. */
const TEST_FAIRNESS = 0.2;
/** Points that are looked at more closely: a wrong one makes its neighbours look wrong too. */
const SUSPECTS = 5;

/**
 * Points half a millimetre apart in one place and a metre in another leave no digits for a fair curve, whose
 * equations hold the sixth power of the distances.
 */
const findUneven = (run: readonly Point[], misses: readonly number[]): EdgeStepFault | undefined => {
  if (misses.every(Number.isFinite)) return undefined;
  const gaps = run.slice(1).map((p, i) => distance(run[i]!, p));
  const widest = gaps.indexOf(Math.max(...gaps));
  return {
    step: widest + 1,
    message: 'the points stand too unevenly for a curve',
    found: `${gaps[widest]!.toFixed(1)} mm from the one before, and ${Math.min(...gaps).toFixed(1)} mm elsewhere`,
    hint: 'measure some between; a straight stretch ends in points that say corner',
  };
};

const findOutlier = (
  run: readonly Point[],
  misses: readonly number[],
  tolerance: number,
  say: Say,
): EdgeStepFault | undefined => {
  if (run.length < LEAST_FOR_OUTLIERS) return undefined;
  const all = squares(misses);
  const suspects = misses
    .map((miss, index) => ({ miss, index }))
    .filter(({ miss }) => miss > OUTLIER_MISS * tolerance)
    .sort((a, b) => b.miss - a.miss)
    .slice(0, SUSPECTS)
    .map(({ miss, index }) => {
      const others = run.filter((_, i) => i !== index);
      return { miss, index, rest: squares(missesWithout(others, TEST_FAIRNESS)) };
    });
  const worst = suspects.reduce((a, s) => (s.rest < a.rest ? s : a), suspects[0]!);
  // Without a wrong point the others agree; without a needed one they do not.
  if (!worst || !(worst.rest * OUTLIER_GAIN ** 2 <= all)) return undefined;
  return {
    step: worst.index,
    message: `the curve through the other points misses this one by ${say(worst.miss)}`,
    found: pointWords(run[worst.index]!, say),
    hint: 'measure it again or leave it out; if the edge has a corner here write [x, y, corner]',
  };
};

const inDegrees = (radians: number): number => (radians * 180) / Math.PI;

/** Hints count points from 1, as people do. */
const COARSE = 'too few points to tell how the edge bends';

const findCoarse = (run: readonly Point[], say: Say): readonly EdgeStepFault[] =>
  run.flatMap((p, i): EdgeStepFault[] => {
    const before = run[i - 1];
    const after = run[i + 1];
    if (!before || !after) return [];
    const turned = Math.abs(turnBetween(subtract(p, before), subtract(after, p)));
    const most = run.length === 3 ? MOST_ARC_TURN : MOST_TURN;
    if (turned <= most) return [];
    return [
      {
        step: i,
        message: COARSE,
        found: `a turn of ${numberApart(inDegrees(turned), inDegrees(most), 0)}° at ${pointWords(p, say)}`,
        expected: `at most ${Math.round(inDegrees(most))}°`,
        hint: 'measure one more on each side of it; if the edge has a corner here write [x, y, corner]',
      },
    ];
  });

const findThin = (
  run: readonly Point[],
  misses: readonly number[],
  tolerance: number,
  units: Units,
): readonly EdgeStepFault[] => {
  const isAfter = (i: number): boolean => distance(run[i - 1]!, run[i]!) <= distance(run[i]!, run[i + 1]!);
  const unsure = misses.flatMap((m, index) => {
    const miss = m / HALVING_GAIN;
    return miss > tolerance ? { index, miss, gap: isAfter(index) ? index : index - 1 } : [];
  });
  // Two points may ask for one between them.
  const worst = unsure.filter(({ gap, miss }) => unsure.every((o) => o.gap !== gap || o.miss <= miss));
  return worst.map(({ index, miss, gap }): EdgeStepFault => {
    const [doubt, most] = lengthsApart(miss, tolerance, STYLES[units]);
    return {
      step: index,
      message: COARSE,
      found: `a doubt of ${doubt} at ${pointWords(run[index]!, sayIn(units))}`,
      expected: `at most ${most}`,
      hint: `measure one more between this point and the one ${gap === index ? 'after' : 'before'} it`,
    };
  });
};

/** What of the tolerance goes to smoothing the points, and what to the arcs. */
const SMOOTHING_SHARE = 0.75;
const ARC_SHARE = 0.2;
/** Joints of measured curves turn by less than twice this (radians). */
const MOST_KINK = Math.PI / 360;
/** Fairness in mean distances between points: from through every point to as fair as four make. */
const FAIRNESSES = [0.02, 0.1, 0.2, 0.3, 0.45, 0.65, 0.9];

/** Of the curves that stay within the tolerance the one that foretells left-out points best. */
const fairest = (run: readonly Point[], tolerance: number): readonly Piece[] => {
  let best = curveAt(run, FAIRNESSES[0]!);
  let least = squares(missesWithout(run, FAIRNESSES[0]!));
  for (const share of FAIRNESSES.slice(1)) {
    const curve = curveAt(run, share);
    const near = nearnessOf(polyline(curve).pieces);
    if (!run.every((p) => near.distance(p) <= SMOOTHING_SHARE * tolerance)) break;
    const missed = squares(missesWithout(run, share));
    if (!(missed <= least)) continue;
    best = curve;
    least = missed;
  }
  return arcSpline(best, { tolerance: ARC_SHARE * tolerance, kink: MOST_KINK }).pieces;
};
