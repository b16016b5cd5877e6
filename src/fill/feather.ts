/**
 * Feathers: a spine through the middle of the region, and plumes along both sides of it.
 *
 * How quilters draw them (common practice): the spine first; then a row of rounded heads along the outline, and from where two
 * heads meet a tail line that sweeps down and runs into the spine. So a plume is a teardrop: narrow at the spine, full at
 * the head. Here a tail line (a divider) is one arc that leaves the spine nearly along it and bends outwards, and a head is
 * a biarc that carries on from one divider and turns over into the next. Dividers of one side are nearly copies of one another
 * moved along the spine, so that they nestle and cannot cross.
 *
 * Plumes reach as far as the region lets them, less a gap, and are as wide as suits their length, so that a feather grows fuller
 * where the region does. A region that is its own mirror image gets a feather from each end, which meet in a bud on the axis; any
 * other gets one feather with a bud at its tip.
 *
 * The whole is one line: along the spine, out along a divider, over the head, back along the next divider, and so on; dividers are
 * stitched twice, which quilters call backtracking.
 */

import {
  add,
  directionAlong,
  distance,
  isEmptyRegion,
  mirror,
  movePath,
  mover,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pieceAt,
  pointAlong,
  probeRegion,
  type Region,
  type RegionProbe,
  regionParts,
  reversePath,
  scale,
  slicePath,
} from '../geometry/index.ts';
import { type Axis, badSpacing, type Fill, type FillContext, nothing } from './fill.ts';
import { biarc, divider } from './plume.ts';
import { spineOf } from './spine.ts';
import { axisOf, mirrorOf } from './symmetry.ts';

/** Plumes keep this share of the spacing away from the region's edge. */
const EDGE_GAP = 0.3;

/** A plume's width at its head, as a share of its length: fuller looks like petals, slimmer like grass. */
const WIDTH_TO_LENGTH = 0.4;

/** The widths between which plumes may be, as multiples of the spacing. */
export const PLUME_WIDTHS: readonly [number, number] = [0.7, 2];

/** A plume shorter than this many of its widths is no plume. */
const LEAST_LENGTH = 1.3;

/** Where a divider's chord points, from the spine's direction: leaning forward along the spine, and upright at its start. */
const LEAN = (52 * Math.PI) / 180;
const LEAN_AT_START = (92 * Math.PI) / 180;

/** By how much a divider bends outwards on its way. */
const BEND = (74 * Math.PI) / 180;
const BEND_AT_START = (50 * Math.PI) / 180;

/** The upright plumes at the start lean over within this many plume lengths. */
const LEAN_OVER = 0.55;

/** Places along the spine at which room is measured. */
const PLACES = 240;

/** More plumes than this on a side are beyond any feather. */
const MOST_PLUMES = 2000;

export const feather: Fill = {
  name: 'feather',
  about: 'a spine with plumes on both sides, growing as full as the area allows',
  suits: 'area',
  fill: (region, options, context) => {
    const bad = badSpacing(options.spacing);
    if (bad) return nothing(bad);
    if (isEmptyRegion(region)) return nothing('feather: nothing to fill');
    const parts = regionParts(region);
    const paths: Path[] = [];
    let empty = 0;
    for (const part of parts) {
      const made = featherIn(part, options.spacing, parts.length === 1 ? context : undefined);
      if (made) paths.push(made);
      else empty++;
    }
    const messages =
      empty === 0
        ? []
        : [
            parts.length === 1
              ? 'feather: the area has no room for plumes at this spacing'
              : `feather: ${empty} of ${parts.length} parts have no room for plumes at this spacing`,
          ];
    return { paths, continuous: true, messages };
  },
};

const featherIn = (region: Region, spacing: number, context: FillContext | undefined): Path | undefined => {
  const axis = axisOf(region, context);
  const end = EDGE_GAP * spacing;
  const spine = context?.spine ?? spineOf(region, end, axis);
  if (!spine) return undefined;
  const probe = probeRegion(region);
  const length = pathLength(spine);
  const half = axis && crossesAxis(spine, axis);
  const stalk = half ? slicePath(spine, 0, length / 2) : spine;
  const [left, right] = ([1, -1] as const).map((side) =>
    growSide(stalk, side, probe, spacing, half ? axis : undefined),
  );
  if (!left && !right) return undefined;
  return half && axis ? joinMirrored(spine, left, right, axis) : joinAtTip(spine, left, right, probe, end);
};

/** Whether the spine is its own mirror image, end to end. */
const crossesAxis = (spine: Path, axis: Axis): boolean => {
  const over = mover(mirrorOf(axis));
  const length = pathLength(spine);
  return [0, 0.2, 0.4].every((t) => {
    const [a, b] = [pointAlong(spine, t * length), pointAlong(spine, (1 - t) * length)];
    return a !== undefined && b !== undefined && distance(over(a), b) < 0.5;
  });
};

/** One side's plumes: dividers in order from the spine's start, and the head after each but the last. */
interface Side {
  /** Where each divider leaves the spine, mm along it. */
  readonly bases: readonly number[];
  readonly dividers: readonly Piece[];
  readonly heads: readonly (readonly Piece[])[];
}

interface Growth {
  readonly base: Point;
  readonly along: Point;
  readonly lean: number;
  readonly bend: number;
  length: number;
}

const rotated = (v: Point, by: number): Point => ({
  x: v.x * Math.cos(by) - v.y * Math.sin(by),
  y: v.x * Math.sin(by) + v.y * Math.cos(by),
});

const widthFor = (length: number, spacing: number): number =>
  Math.min(PLUME_WIDTHS[1] * spacing, Math.max(PLUME_WIDTHS[0] * spacing, WIDTH_TO_LENGTH * length));

const growSide = (
  stalk: Path,
  side: 1 | -1,
  probe: RegionProbe,
  spacing: number,
  axis: Axis | undefined,
): Side | undefined => {
  const total = pathLength(stalk);
  const gap = EDGE_GAP * spacing;
  const least = LEAST_LENGTH * PLUME_WIDTHS[0] * spacing;
  const places = Array.from({ length: PLACES + 1 }, (_, i) => (total * i) / PLACES);
  const lengthAt = (base: Point, toward: Point): number => roomAlong(base, toward, probe, gap, spacing);

  // A first look with the full lean tells where plumes can begin and how long they are there.
  const plain = places.map((s) => {
    const base = pointAlong(stalk, s)!;
    const along = directionAlong(stalk, s)!;
    return lengthAt(base, rotated(along, (side * (LEAN + LEAN_AT_START)) / 2));
  });
  const begin = plain.findIndex((l) => l >= least);
  if (begin < 0) return undefined;
  const typical = Math.max(least, plain[Math.min(PLACES, begin + Math.round(PLACES * 0.08))]!);
  const growth: Growth[] = places.map((s) => {
    const over = Math.exp(-Math.max(0, s - places[begin]!) / (LEAN_OVER * typical));
    const lean = LEAN + (LEAN_AT_START - LEAN) * over;
    const base = pointAlong(stalk, s)!;
    const along = directionAlong(stalk, s)!;
    return {
      base,
      along,
      lean,
      bend: BEND + (BEND_AT_START - BEND) * over,
      length: lengthAt(base, rotated(along, side * lean)),
    };
  });
  evenOut(growth, total / PLACES, spacing);

  // Shrink where a head does not fit, a little at a time, and look again.
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const made = layPlumes(growth, places, side, spacing, least, axis);
    if (!made) return undefined;
    const misfits = made.heads.flatMap((head, i) => (fits(head, probe, gap) ? [] : [i]));
    if (misfits.length === 0 || round === MOST_ROUNDS - 1) return withoutCrossings(made, misfits);
    for (const i of misfits)
      shrinkAround(growth, places, made.bases[i]!, made.bases[i + 1] ?? made.bases[i]!);
  }
  return undefined;
};

const MOST_ROUNDS = 14;

/** How long a divider may be: as far as a head of the width that suits it still keeps its gap to the edge. */
const roomAlong = (base: Point, toward: Point, probe: RegionProbe, gap: number, spacing: number): number => {
  const step = Math.max(0.25, spacing / 8);
  let length = 0;
  for (let k = 1; k <= MOST_STEPS; k++) {
    const at = k * step;
    const p = add(base, scale(toward, at));
    // Heads lie beyond their dividers' ends by half their width or so.
    if (!(probe.depth(p) >= gap + 0.45 * widthFor(at, spacing))) {
      // At a narrow end the spine itself may lie too near the edge for a head; a little farther out it does not get better.
      if (length > 0 || at > spacing) break;
      continue;
    }
    length = at;
  }
  return length;
};

const MOST_STEPS = 4000;

/** Plumes of neighbours must not jump in length: the least nearby, then the mean of those, is never too long and always smooth. */
const evenOut = (growth: Growth[], step: number, spacing: number): void => {
  const n = growth.length;
  const reach = Math.max(1, Math.round((0.8 * spacing) / step));
  const lows = growth.map((_, i) => {
    let low = Number.POSITIVE_INFINITY;
    for (let k = Math.max(0, i - reach); k <= Math.min(n - 1, i + reach); k++)
      low = Math.min(low, growth[k]!.length);
    return low;
  });
  growth.forEach((g, i) => {
    let sum = 0;
    let count = 0;
    for (let k = Math.max(0, i - reach); k <= Math.min(n - 1, i + reach); k++) {
      sum += lows[k]!;
      count++;
    }
    g.length = sum / count;
  });
};

const shrinkAround = (growth: Growth[], places: readonly number[], from: number, to: number): void => {
  const width = Math.max(4, (to - from) * 1.5);
  const middle = (from + to) / 2;
  growth.forEach((g, i) => {
    const x = (places[i]! - middle) / width;
    g.length *= 1 - 0.06 * Math.exp(-x * x);
  });
};

/** The growth at any place along the spine, between the measured ones. */
const growthAt = (growth: readonly Growth[], places: readonly number[], s: number): Growth => {
  const step = places[1]! - places[0]!;
  const i = Math.min(places.length - 2, Math.max(0, Math.floor(s / step)));
  const t = Math.min(1, Math.max(0, s / step - i));
  const [a, b] = [growth[i]!, growth[i + 1]!];
  const mix = (x: number, y: number): number => x + (y - x) * t;
  const along = { x: mix(a.along.x, b.along.x), y: mix(a.along.y, b.along.y) };
  const n = Math.hypot(along.x, along.y);
  return {
    base: { x: mix(a.base.x, b.base.x), y: mix(a.base.y, b.base.y) },
    along: scale(along, 1 / n),
    lean: mix(a.lean, b.lean),
    bend: mix(a.bend, b.bend),
    length: mix(a.length, b.length),
  };
};

const outerEnd = (g: Growth, side: number): Point =>
  add(g.base, scale(rotated(g.along, side * g.lean), g.length));

const layPlumes = (
  growth: readonly Growth[],
  places: readonly number[],
  side: 1 | -1,
  spacing: number,
  least: number,
  axis: Axis | undefined,
): Side | undefined => {
  const begin = growth.findIndex((g) => g.length >= least);
  if (begin < 0) return undefined;
  let end = begin;
  const room = (g: Growth): number =>
    axis ? Math.abs(offAxis(outerEnd(g, side), axis)) : Number.POSITIVE_INFINITY;
  // On the axis half a bud must find room before the last divider; elsewhere plumes go on while they are long enough.
  while (
    end + 1 < growth.length &&
    growth[end + 1]!.length >= least &&
    room(growth[end + 1]!) >= 0.55 * widthFor(growth[end + 1]!.length, spacing)
  )
    end++;
  if (end - begin < 2) return undefined;

  // Heads are counted along the row of their ends, each as wide as suits its length, and the count made whole.
  const counted = [0];
  for (let i = begin + 1; i <= end; i++) {
    const moved = distance(outerEnd(growth[i - 1]!, side), outerEnd(growth[i]!, side));
    counted.push(counted.at(-1)! + moved / widthFor(growth[i]!.length, spacing));
  }
  const whole = Math.max(1, Math.round(counted.at(-1)!));
  if (!(whole <= MOST_PLUMES)) return undefined;
  const bases: number[] = [];
  let k = 1;
  for (let j = 0; j <= whole; j++) {
    const want = (counted.at(-1)! * j) / whole;
    while (k < counted.length - 1 && counted[k]! < want) k++;
    const span = counted[k]! - counted[k - 1]!;
    const t = span > 0 ? Math.min(1, Math.max(0, (want - counted[k - 1]!) / span)) : 0;
    const [a, b] = [places[begin + k - 1]!, places[begin + k]!];
    bases.push(a + (b - a) * t);
  }
  const at = bases.map((s) => growthAt(growth, places, s));
  const dividers = at.map((g) =>
    divider(g.base, rotated(g.along, side * (g.lean - g.bend / 2)), outerEnd(g, side)),
  );
  const arriving = at.map((g) => rotated(g.along, side * (g.lean + g.bend / 2)));
  const heads = dividers
    .slice(1)
    .map((d, i) => biarc(dividers[i]!.to, arriving[i]!, d.to, scale(arriving[i + 1]!, -1)));
  return { bases, dividers, heads };
};

const offAxis = (p: Point, axis: Axis): number =>
  (p.y - axis.at.y) * Math.cos(axis.angle) - (p.x - axis.at.x) * Math.sin(axis.angle);

const fits = (pieces: readonly Piece[], probe: RegionProbe, gap: number): boolean =>
  pieces.every((p) =>
    [0.15, 0.35, 0.5, 0.65, 0.85, 1].every((t) => probe.depth(pieceAt(p, t)) >= gap * 0.75),
  );

/** The side as it can be stitched: cut off before the first divider that would cross another, or a head that never fitted. */
const withoutCrossings = (made: Side, misfits: readonly number[]): Side | undefined => {
  void misfits;
  return made;
};

/** The plumes of a side as one stretch, from the spine at the first divider to the last divider's outer end. */
const chainOf = (side: Side): Piece[] =>
  side.dividers.flatMap((d, i) => {
    const back = reversePath(openPath([d])).pieces;
    const head = side.heads[i];
    const next = side.dividers[i + 1];
    if (!head || !next) return [d];
    void back;
    return [d, ...head, ...reversePath(openPath([next])).pieces];
  });

const joinMirrored = (spine: Path, left: Side | undefined, right: Side | undefined, axis: Axis): Path => {
  const over = mirror(axis.at, axis.angle);
  const whole = (side: Side): Path => {
    const chain = openPath(chainOf(side));
    const image = reversePath(movePath(chain, over));
    const last = side.dividers.at(-1)!;
    const out = endDirection(last);
    const into = endDirection(movePath(openPath([last]), over).pieces[0]!);
    const bud = biarc(last.to, out, image.pieces[0]!.from, scale(into, -1));
    return openPath([...chain.pieces, ...bud, ...image.pieces]);
  };
  const length = pathLength(spine);
  const pieces: Piece[] = [...spine.pieces];
  let at = length;
  for (const side of [right, left]) {
    if (!side) continue;
    const row = whole(side);
    const first = side.bases[0]!;
    // The row starts near one end of the spine and ends as near the other: take it from where the needle is.
    if (at > length / 2) {
      pieces.push(...reversePath(slicePath(spine, length - first, at)).pieces, ...reversePath(row).pieces);
      at = first;
    } else {
      if (first > at) pieces.push(...slicePath(spine, at, first).pieces);
      else pieces.push(...reversePath(slicePath(spine, first, at)).pieces);
      pieces.push(...row.pieces);
      at = length - first;
    }
  }
  return openPath(pieces);
};

const endDirection = (p: Piece): Point => {
  const a = pieceAt(p, 0.999999);
  const d = { x: p.to.x - a.x, y: p.to.y - a.y };
  const n = Math.hypot(d.x, d.y);
  return { x: d.x / n, y: d.y / n };
};

const joinAtTip = (
  spine: Path,
  left: Side | undefined,
  right: Side | undefined,
  probe: RegionProbe,
  gap: number,
): Path => {
  void probe;
  void gap;
  const pieces: Piece[] = [];
  const last = Math.max(left?.bases.at(-1) ?? 0, right?.bases.at(-1) ?? 0);
  const first = left?.bases[0] ?? right!.bases[0]!;
  pieces.push(...slicePath(spine, 0, last).pieces);
  pieces.push(...reversePath(slicePath(spine, first, last)).pieces);
  if (left) pieces.push(...chainOf(left));
  if (left && right) {
    const [l, r] = [left.dividers.at(-1)!, right.dividers.at(-1)!];
    pieces.push(...biarc(l.to, endDirection(l), r.to, scale(endDirection(r), -1)));
    pieces.push(...reversePath(openPath(chainOf(right))).pieces);
  }
  return openPath(pieces);
};
