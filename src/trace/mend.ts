/**
 * What a hand sets right in an outline: a stretch becomes a straight line, or is taken again through points that she
 * points at. The ends of the stretch are on the outline; of a closed one it is the shorter way between them.
 */

import type { Problem } from '../document/index.ts';
import {
  arcByRise,
  arcSpline,
  chordLengths,
  closedPath,
  distance,
  fairCurve,
  line,
  nearnessOf,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pointAlong,
  riseThrough,
  slicePath,
} from '../geometry/index.ts';
import type { Outline } from './fit-outline.ts';
import { alongNearest, cornersOf, type MarkedCorner } from './working-edge.ts';

export interface Mend {
  readonly from: Point;
  readonly to: Point;
  /** Where the edge runs between them, in any order; none where it is straight. */
  readonly through: readonly Point[];
}

export type Mended =
  | { readonly ok: true; readonly outline: Outline }
  | { readonly ok: false; readonly problem: Problem };

/** A stretch shorter than this (mm) is a place. */
const SHORTEST = 0.5;
/** Corners nearer than this (mm) are one. */
const SAME = 0.3;
/** Lines and arcs stay this near (mm) to the curve through the points. */
const TOLERANCE = 0.02;
/** Of the mean distance between points: what of a wave is a finger's trembling. */
const FAIRNESS = 0.1;
const STEPS = 16;

/** One after the other, in mm of the outline's own frame. */
export const mendOutline = (outline: Outline, mends: readonly Mend[]): Mended => {
  let now = outline;
  for (const mend of mends) {
    const next = mendOnce(now, mend);
    if (!next) return { ok: false, problem: TOO_SHORT };
    now = next;
  }
  return { ok: true, outline: now };
};

const TOO_SHORT: Problem = {
  code: 'no-stretch',
  message: 'the two ends of the stretch that is set right are the same place',
  expected: 'two places of the outline, half a millimetre apart or more',
};

const mendOnce = (outline: Outline, { from, to, through }: Mend): Outline | undefined => {
  const { path } = outline;
  const cut = cutOut(path, alongNearest(path, from), alongNearest(path, to));
  if (!cut) return undefined;
  const { before, old, after } = cut;
  const [first, last] = [old.pieces[0]!.from, old.pieces.at(-1)!.to];
  const way = wayThrough(first, last, inOrder(old, through));
  const rest = [...before.pieces, ...after.pieces];
  const pieces = [...before.pieces, ...way, ...after.pieces];
  const mended = path.closed ? closedPath(pieces) : openPath(pieces);
  const isOnOld = (p: Point): boolean => nearnessOf(old.pieces).distance(p) < nearnessOf(rest).distance(p);
  return {
    ...outline,
    path: mended,
    corners: path.closed ? cornersIn(mended, before, outline.corners) : cornersOf(mended),
    // What was seen to be off there is so no longer.
    farthest: outline.farthest && isOnOld(outline.farthest) ? undefined : outline.farthest,
  };
};

/** A path without a stretch between two lengths along it; of a closed one all the rest lies before the stretch. */
const cutOut = (
  path: Path,
  a: number,
  b: number,
): { readonly before: Path; readonly old: Path; readonly after: Path } | undefined => {
  const whole = pathLength(path);
  if (!path.closed) {
    const [start, end] = [Math.min(a, b), Math.max(a, b)];
    if (!(end - start >= SHORTEST)) return undefined;
    const old = slicePath(path, start, end);
    return { before: slicePath(path, 0, start), old, after: slicePath(path, end, whole) };
  }
  const forward = (((b - a) % whole) + whole) % whole;
  const [start, length] = forward <= whole / 2 ? [a, forward] : [b, whole - forward];
  if (!(length >= SHORTEST)) return undefined;
  const twice = openPath([...path.pieces, ...path.pieces]);
  const before = slicePath(twice, start + length, start + whole);
  return { before, old: slicePath(twice, start, start + length), after: openPath([]) };
};

const inOrder = (old: Path, through: readonly Point[]): readonly Point[] =>
  through
    .map((point) => ({ point, at: alongNearest(old, point) }))
    .sort((p, q) => p.at - q.at)
    .map(({ point }) => point);

const wayThrough = (from: Point, to: Point, through: readonly Point[]): readonly Piece[] => {
  const apart = [from, ...through].filter(
    (p, i, all) => distance(p, to) >= SHORTEST && (i === 0 || distance(p, all[i - 1]!) >= SHORTEST),
  );
  const points = [...apart, to];
  if (points.length <= 2) return [line(from, to)];
  if (points.length === 3) return [arcByRise(from, to, riseThrough(from, points[1]!, to))];
  const lengths = chordLengths(points);
  const spacing = lengths.at(-1)! / (points.length - 1);
  const shortest = Math.min(...lengths.slice(1).map((l, i) => l - lengths[i]!));
  const step = Math.max(Math.min(spacing / STEPS, shortest / 4), spacing / (4 * STEPS));
  const curve = fairCurve(points, { step, fairness: FAIRNESS * spacing, heldEnds: true, lengths });
  return arcSpline(curve, { tolerance: TOLERANCE }).pieces;
};

/** Those that the trace found and that are left, and what the new stretch adds where it begins and ends. */
const cornersIn = (path: Path, rest: Path, before: readonly MarkedCorner[]): readonly MarkedCorner[] => {
  const length = pathLength(rest);
  const near = nearnessOf(rest.pieces);
  const kept = before.flatMap(({ point }) => {
    const at = alongNearest(rest, point);
    const isInside = at > SAME && at < length - SAME && near.distance(point) < SAME;
    return isInside ? [{ at, point }] : [];
  });
  const added = cornersOf(path).filter(
    ({ at }) => at <= SAME || at >= length - SAME || kept.every((c) => Math.abs(c.at - at) > SAME),
  );
  return [...kept, ...added]
    .sort((p, q) => p.at - q.at)
    .map(({ at }) => ({ at, point: pointAlong(path, at) ?? path.pieces[0]!.from }));
};
