/** A line that wanders as a stipple does, wider, with something set on it first on one side and then on the other. */

import {
  directionAlong,
  distance,
  flatten,
  leftOf,
  locate,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pointAlong,
  probeRegion,
  type Region,
  regionArea,
  regionParts,
  scale,
  subtract,
  trimPiece,
  unit,
} from '../geometry/index.ts';
import { barePlaces } from './bare-places.ts';
import { type Fill, type FillContext, ofParts } from './fill.ts';
import { gridOf } from './point-grid.ts';
import { type Random, randomOf } from './random.ts';
import { resample, withoutCorners } from './smooth-path.ts';
import { BAND_SMOOTHING, spineOf } from './spine.ts';
import { meandersIn } from './stipple.ts';
import { axisOf } from './symmetry.ts';

/** One trimming: a way from a point of the line and back to it. */
export interface Trimming {
  readonly pieces: readonly Piece[];
  /** Points that it reaches, which must stay clear of the line and of each other: the first is farthest from its foot. */
  readonly reaches: readonly Point[];
}

interface TrimmingWish {
  /** mm along the line from one to the next. */
  readonly every: number;
  /** So far (mm) along the line from its foot a trimming may be near it: it was made beside it. */
  readonly own: number;
  /** What is reached stays this far (mm) from what lies beside, and from the edge. */
  readonly clear: number;
  readonly fromEdge: number;
  /** At a point of the line, in its direction; `side` is 1 for its left. */
  readonly make: (at: Point, along: Point, side: 1 | -1) => Trimming;
}

/** The same in spacings, and how far apart the line wanders. */
interface Trimmed extends Omit<TrimmingWish, 'make'> {
  readonly apart: number;
  readonly make: (at: Point, along: Point, side: 1 | -1, spacing: number) => Trimming;
}

/** What makes such a line for each part of a region; `called` is what one of them is. */
export const trimmedVines =
  (called: string, { apart, every, own, clear, fromEdge, make }: Trimmed): Fill['fill'] =>
  (region, { spacing, seed }, context) => {
    const random = randomOf(seed);
    const parts = regionParts(region);
    const wish: TrimmingWish = {
      every: every * spacing,
      own: own * spacing,
      clear: clear * spacing,
      fromEdge: fromEdge * spacing,
      make: (at, along, side) => make(at, along, side, spacing),
    };
    return ofParts(
      parts.map((part) =>
        vinesIn(part, spacing, apart, random, parts.length === 1 ? context : undefined).map((vine) =>
          trimmed(vine, part, wish),
        ),
      ),
      'area',
      called,
    );
  };

/** What wanders all over a part of a region; in a band that is too narrow for that, the line along its middle. */
const vinesIn = (
  region: Region,
  spacing: number,
  apart: number,
  random: Random,
  context: FillContext | undefined,
): readonly Path[] => {
  const width = (2 * regionArea(region)) / region.loops.reduce((sum, l) => sum + pathLength(l), 0);
  if (width > NARROW * spacing) return meandersIn(region, apart * spacing, random);
  const spine =
    context?.spine ?? spineOf(region, END_GAP * spacing, axisOf(region, context), undefined, BAND_SMOOTHING);
  // Where the band is nearly parted there is no middle to follow all along it.
  if (!spine) return meandersIn(region, apart * spacing, random);
  const vine = withoutCorners(spine, spacing);
  // Narrow on the whole it may be wide in places.
  const isBare = barePlaces(region, probeRegion(region), [vine], BARE * spacing).length > 0;
  return isBare ? meandersIn(region, apart * spacing, random) : [vine];
};

/** A band of this width (spacings) or less is narrow; its vine ends so far before it does. */
const NARROW = 2.6;
const END_GAP = 0.2;

/** A disc of this many spacings in radius that no line enters is bare. */
const BARE = 1.2;

/** The line with trimmings wherever there is room, by turns on its left and right. */
const trimmed = (line: Path, region: Region, wish: TrimmingWish): Path => {
  const probe = probeRegion(region);
  const length = pathLength(line);
  const step = wish.clear / 3;
  const count = Math.max(12, Math.ceil(length / step));
  const points = resample(flatten(line, step / 20), count + 1);
  const grid = gridOf<{ readonly p: Point; readonly s: number }>(Math.max(wish.every, 2 * wish.clear));
  points.forEach((p, i) => {
    grid.add(p, { p, s: (i * length) / count });
  });
  const taken = gridOf<Point>(2 * wish.clear);
  const isClear = ({ reaches }: Trimming, at: number): boolean =>
    reaches.every(
      (p, k) =>
        probe.depth(p) >= wish.fromEdge &&
        taken.near(p, wish.clear).every((q) => distance(p, q) >= wish.clear) &&
        grid.near(p, wish.clear).every(({ p: q, s }) => {
          const apart = Math.abs(s - at);
          const own = Math.min(apart, length - apart) < wish.own;
          return distance(p, q) >= wish.clear * (own && k > 0 ? BESIDE_FOOT : 1);
        }),
    );
  const set: { readonly at: number; readonly trimming: Trimming }[] = [];
  let side: 1 | -1 = 1;
  // Looked for on the points; only where there is room is the place on the line itself asked for, which takes longer.
  const pointNear = (at: number): Point =>
    points[Math.min(count, Math.max(0, Math.round((at * count) / length)))]!;
  for (let at = wish.every / 2; at < length - wish.every / 2; ) {
    const here = pointNear(at);
    const along = unit(subtract(pointNear(at + step), pointNear(at - step)));
    const way: 1 | -1 | undefined = ([side, -side] as (1 | -1)[]).find(
      (w) => bendsAway(here, along, pointNear, at, w, wish.every) && isClear(wish.make(here, along, w), at),
    );
    if (way) {
      const trimming = wish.make(pointAlong(line, at)!, directionAlong(line, at)!, way);
      set.push({ at, trimming });
      for (const q of trimming.reaches) taken.add(q, q);
      side = way === 1 ? -1 : 1;
      at += wish.every;
    } else at += step;
  }
  return withTrimmings(line, set);
};

/** Beside its foot a trimming may come this much nearer to its line. */
const BESIDE_FOOT = 0.4;

/** Whether the line beside a place does not bend towards that side. */
const bendsAway = (
  p: Point,
  along: Point,
  pointNear: (at: number) => Point,
  at: number,
  side: 1 | -1,
  over: number,
): boolean => {
  const across = scale(leftOf(along), side);
  return [-0.35, 0.35].every((t) => {
    const q = pointNear(at + t * over);
    return (q.x - p.x) * across.x + (q.y - p.y) * across.y < 0.08 * over;
  });
};

const withTrimmings = (
  line: Path,
  set: readonly { readonly at: number; readonly trimming: Trimming }[],
): Path => {
  const byPiece = new Map<number, { readonly share: number; readonly trimming: Trimming }[]>();
  for (const { at, trimming } of set) {
    const { index, share } = locate(line, at)!;
    byPiece.set(index, [...(byPiece.get(index) ?? []), { share, trimming }]);
  }
  const pieces = line.pieces.flatMap((piece, i): readonly Piece[] => {
    const here = byPiece.get(i);
    if (!here) return [piece];
    const made: Piece[] = [];
    let [done, from] = [0, piece.from];
    for (const { share, trimming } of here) {
      const [first, last] = [trimming.pieces[0]!, trimming.pieces.at(-1)!];
      if (share > done) made.push({ ...trimPiece(piece, done, share), from, to: first.from });
      made.push(...trimming.pieces.slice(0, -1), { ...last, to: first.from });
      [done, from] = [share, first.from];
    }
    if (done < 1) made.push({ ...trimPiece(piece, done, 1), from, to: piece.to });
    return made;
  });
  return { ...line, pieces };
};
