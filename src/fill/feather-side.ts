/**
 * The plumes along one side of a feather's spine.
 *
 * A divider is one arc: it leaves the spine nearly along it and bends outwards, and its chord leans forward.
 * A head is a biarc from one divider's end over to the next one's. Where each divider leaves the spine
 * follows from the heads: they are laid out along the row of dividers' ends, each as wide as suits its
 * plume's length, and their count is made whole.
 */

import {
  add,
  type Box,
  boxesTouch,
  crossings,
  directionAlong,
  distance,
  EMPTY_BOX,
  joinBoxes,
  mirror,
  mover,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pieceAt,
  pieceBox,
  pointAlong,
  type RegionProbe,
  scale,
  tangentArc,
} from '../geometry/index.ts';
import type { Axis } from './fill.ts';
import { offAxis } from './symmetry.ts';
import { biarc } from './two-arcs.ts';

/** A plume's width at its head, as a share of its length: fuller looks like petals, slimmer like grass. */
const WIDTH_TO_LENGTH = 0.4;

/** The widths between which plumes may be, as multiples of the spacing. */
const PLUME_WIDTHS: readonly [number, number] = [0.7, 2];

/** A plume shorter than this many of its widths is no plume. */
const LEAST_LENGTH = 1.3;

const degrees = Math.PI / 180;

/**
 * How a divider stands: where its chord points, from the spine's direction, and by how much it bends outwards
 * on its way. Upright at the start, to fill the place behind the first plume; leaning forward in the middle;
 * and at a tip closed up about the spine, as a leaf is.
 */
interface Stance {
  readonly lean: number;
  readonly bend: number;
}
const MIDDLE: Stance = { lean: 52 * degrees, bend: 74 * degrees };
const START: Stance = { lean: 92 * degrees, bend: 50 * degrees };
const TIP: Stance = { lean: 22 * degrees, bend: 36 * degrees };

/** Plumes pass from one stance to the next within this many of their lengths. */
const FROM_START = 0.55;
const TO_TIP = 0.7;

/** Places along the spine at which room is measured. */
const PLACES = 240;

/** More plumes than this on a side are beyond any feather. */
const MOST_PLUMES = 2000;

/** Plumes that do not fit are made shorter this often. */
const MOST_ROUNDS = 16;

/** One side's plumes: dividers in order from the spine's start, and the head after each but the last. */
export interface Side {
  /** Where each divider leaves the spine, mm along it. */
  readonly bases: readonly number[];
  readonly dividers: readonly Piece[];
  /** The unit direction in which each divider ends. */
  readonly ends: readonly Point[];
  readonly heads: readonly (readonly Piece[])[];
}

export interface SideSpec {
  readonly stalk: Path;
  /** 1 for the side to the left of the spine, −1 for the right. */
  readonly side: 1 | -1;
  readonly probe: RegionProbe;
  readonly spacing: number;
  /** Plumes keep this far (mm) from the region's edge. */
  readonly gap: number;
  /**
   * Where the plumes end: at a mirror line, half a bud's width before it, or at a place along the spine (mm).
   */
  readonly until:
    | { readonly kind: 'axis'; readonly axis: Axis }
    | { readonly kind: 'tip'; readonly at: number };
}

interface Growth {
  readonly base: Point;
  readonly along: Point;
  readonly stance: Stance;
  length: number;
}

export const rotated = (v: Point, by: number): Point => ({
  x: v.x * Math.cos(by) - v.y * Math.sin(by),
  y: v.x * Math.sin(by) + v.y * Math.cos(by),
});

const mix = (a: number, b: number, t: number): number => a + (b - a) * t;
const between = (a: Stance, b: Stance, t: number): Stance => ({
  lean: mix(a.lean, b.lean, t),
  bend: mix(a.bend, b.bend, t),
});

const widthFor = (length: number, spacing: number): number =>
  Math.min(PLUME_WIDTHS[1] * spacing, Math.max(PLUME_WIDTHS[0] * spacing, WIDTH_TO_LENGTH * length));

const leastPlume = (spacing: number): number => LEAST_LENGTH * PLUME_WIDTHS[0] * spacing;

/** The last place along the spine with room on both sides for plumes that close up about it. */
export const tipPlace = (
  stalk: Path,
  probe: RegionProbe,
  spacing: number,
  gap: number,
): number | undefined => {
  const total = pathLength(stalk);
  for (let i = PLACES; i > 0; i--) {
    const s = (total * i) / PLACES;
    const base = pointAlong(stalk, s)!;
    const along = directionAlong(stalk, s)!;
    const roomy = [1, -1].every(
      (side) =>
        roomAlong(base, rotated(along, side * TIP.lean), probe, gap, spacing) >= 1.25 * leastPlume(spacing),
    );
    if (roomy) return s;
  }
  return undefined;
};

/** The side's plumes, or undefined where there is no room for two of them. */
export const growSide = (spec: SideSpec): Side | undefined => {
  const { stalk, side, probe, spacing, gap, until } = spec;
  const total = pathLength(stalk);
  const least = leastPlume(spacing);
  const places = Array.from({ length: PLACES + 1 }, (_, i) => (total * i) / PLACES);
  const bare = places.map((s) => ({ base: pointAlong(stalk, s)!, along: directionAlong(stalk, s)! }));
  const roomFor = (i: number, lean: number): number => {
    const { base, along } = bare[i]!;
    return roomAlong(base, rotated(along, side * lean), probe, gap, spacing);
  };

  // A first look tells where plumes can begin, and how long they are there and near the tip.
  const plain = (i: number): number => roomFor(i, (MIDDLE.lean + START.lean) / 2);
  const begin = places.findIndex((_, i) => plain(i) >= least);
  if (begin < 0) return undefined;
  const nearStart = Math.max(least, plain(Math.min(PLACES, begin + Math.round(PLACES * 0.08))));
  const tip = until.kind === 'tip' ? until.at : Number.POSITIVE_INFINITY;
  const beforeTip = Math.max(0, Math.floor(Math.min(1, tip / total) * PLACES * 0.88));
  const nearTip = Math.max(least, plain(beforeTip));
  const growth: Growth[] = places.map((s, i) => {
    const opened = between(
      MIDDLE,
      START,
      Math.exp(-Math.max(0, s - places[begin]!) / (FROM_START * nearStart)),
    );
    const stance = between(opened, TIP, Math.exp(-Math.max(0, tip - s) / (TO_TIP * nearTip)));
    return { ...bare[i]!, stance, length: roomFor(i, stance.lean) };
  });
  evenOut(growth, total / PLACES, spacing);

  const stem = boxed(stalk.pieces);
  let made: Side | undefined;
  let wrong: readonly number[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    made = layPlumes(growth, places, spec, least);
    if (!made) return undefined;
    wrong = misfits(made, stem, probe, gap);
    const bud = until.kind === 'axis' ? budOver(made, until.axis, spacing) : undefined;
    if (bud && !keepsInside(bud, probe, gap)) wrong = [...wrong, made.dividers.length - 1];
    if (wrong.length === 0) return made;
    for (const i of wrong) shrinkAround(growth, places, made.bases[i]!, made.bases[i + 1] ?? made.bases[i]!);
  }
  return made && longestGood(made, wrong);
};

/**
 * The head over the axis, between a side's last divider and its mirror image; undefined where those are too
 * far apart.
 */
export const budOver = (made: Side, axis: Axis, spacing: number): Piece[] | undefined => {
  const motion = mirror(axis.at, axis.angle);
  const last = made.dividers.at(-1)!.to;
  const image = mover(motion)(last);
  if (!(distance(last, image) <= WIDEST_BUD * PLUME_WIDTHS[1] * spacing)) return undefined;
  const out = made.ends.at(-1)!;
  return biarc(last, out, image, scale(mover({ ...motion, x: 0, y: 0 })(out), -1));
};

/** A bud is at most this many times as wide as the widest plume. */
const WIDEST_BUD = 1.6;

/**
 * How long a divider may be: as far as a head of the width that suits it still keeps its gap to the edge. Tried in
 * steps; those are left out that cannot come too near from where the edge is still far.
 */
const roomAlong = (base: Point, toward: Point, probe: RegionProbe, gap: number, spacing: number): number => {
  const step = Math.max(0.25, spacing / 8);
  let length = 0;
  for (let k = 1; k <= MOST_STEPS; k++) {
    const at = k * step;
    const p = add(base, scale(toward, at));
    // Heads lie beyond their dividers' ends by half their width or so.
    const needed = gap + HALF_HEAD * widthFor(at, spacing);
    const spare = probe.distance(p) - needed;
    // The steps are shorter than what is needed, so that the edge cannot be passed unseen once inside.
    if (spare >= 0 && (length > 0 || probe.contains(p))) {
      k = Math.min(MOST_STEPS, k + Math.floor((spare * SURE) / (step * (1 + HALF_HEAD * WIDTH_TO_LENGTH))));
      length = k * step;
    }
    // The spine itself may lie too near the edge for a head; a little farther out it does not get better.
    else if (length > 0 || at > spacing) break;
  }
  return length;
};

const HALF_HEAD = 0.45;
/** So that rounding never leaves out a step too many. */
const SURE = 1 - 1e-9;
const MOST_STEPS = 4000;

/**
 * Neighbours must not jump in length: the least nearby, then the mean of those, is never too long and always
 * smooth.
 */
const evenOut = (growth: readonly Growth[], step: number, spacing: number): void => {
  const n = growth.length;
  const reach = Math.max(1, Math.round((0.8 * spacing) / step));
  const around = <T>(i: number, of: (k: number) => T): T[] => {
    const found: T[] = [];
    for (let k = Math.max(0, i - reach); k <= Math.min(n - 1, i + reach); k++) found.push(of(k));
    return found;
  };
  const lows = growth.map((_, i) => Math.min(...around(i, (k) => growth[k]!.length)));
  growth.forEach((g, i) => {
    const near = around(i, (k) => lows[k]!);
    g.length = near.reduce((sum, l) => sum + l, 0) / near.length;
  });
};

const shrinkAround = (
  growth: readonly Growth[],
  places: readonly number[],
  from: number,
  to: number,
): void => {
  const width = Math.max(4, (to - from) * 1.5);
  const middle = (from + to) / 2;
  growth.forEach((g, i) => {
    const x = (places[i]! - middle) / width;
    g.length *= 1 - 0.07 * Math.exp(-x * x);
  });
};

/** The growth at any place along the spine, between the measured ones. */
const growthAt = (growth: readonly Growth[], places: readonly number[], s: number): Growth => {
  const step = places[1]! - places[0]!;
  const i = Math.min(places.length - 2, Math.max(0, Math.floor(s / step)));
  const t = Math.min(1, Math.max(0, s / step - i));
  const [a, b] = [growth[i]!, growth[i + 1]!];
  const along = { x: mix(a.along.x, b.along.x, t), y: mix(a.along.y, b.along.y, t) };
  return {
    base: { x: mix(a.base.x, b.base.x, t), y: mix(a.base.y, b.base.y, t) },
    along: scale(along, 1 / Math.hypot(along.x, along.y)),
    stance: between(a.stance, b.stance, t),
    length: mix(a.length, b.length, t),
  };
};

const outerEnd = (g: Growth, side: number): Point =>
  add(g.base, scale(rotated(g.along, side * g.stance.lean), g.length));

const layPlumes = (
  growth: readonly Growth[],
  places: readonly number[],
  { stalk, side, spacing, until }: SideSpec,
  least: number,
): Side | undefined => {
  const begin = growth.findIndex((g) => g.length >= least);
  if (begin < 0) return undefined;
  // On the axis half a bud must find room before the last divider; at a tip the plumes end with the spine.
  const goesOn = (i: number): boolean => {
    const g = growth[i]!;
    if (!(g.length >= least)) return false;
    if (until.kind === 'tip') return places[i]! <= until.at;
    return Math.abs(offAxis(outerEnd(g, side), until.axis)) >= 0.55 * widthFor(g.length, spacing);
  };
  let end = begin;
  while (end + 1 < growth.length && goesOn(end + 1)) end++;
  if (end - begin < 2) return undefined;

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
    bases.push(mix(places[begin + k - 1]!, places[begin + k]!, t));
  }
  // On the spine to the last digit, so that no divider starts a hair beyond it.
  const at = bases.map((s) => ({ ...growthAt(growth, places, s), base: pointAlong(stalk, s)! }));
  const dividers = at.map((g) =>
    tangentArc(g.base, rotated(g.along, side * (g.stance.lean - g.stance.bend / 2)), outerEnd(g, side)),
  );
  const ends = at.map((g) => rotated(g.along, side * (g.stance.lean + g.stance.bend / 2)));
  const heads = dividers
    .slice(1)
    .map((d, i) => biarc(dividers[i]!.to, ends[i]!, d.to, scale(ends[i + 1]!, -1)));
  return { bases, dividers, ends, heads };
};

/** Whether pieces keep their gap to the edge; three quarters of it will do for the crown of a head. */
export const keepsInside = (pieces: readonly Piece[], probe: RegionProbe, gap: number): boolean =>
  pieces.every((p) =>
    [0.15, 0.35, 0.5, 0.65, 0.85, 1].every((t) => probe.depth(pieceAt(p, t)) >= gap * 0.75),
  );

/** Plumes whose head comes too near the edge, or that cross an earlier one or the spine. */
const misfits = (made: Side, stalk: readonly Boxed[], probe: RegionProbe, gap: number): number[] => {
  const plumes = made.dividers.map((d, i) => boxed([d, ...(made.heads[i] ?? [])]));
  const boxes = plumes.map((p) => p.reduce((box, q) => joinBoxes(box, q.box), EMPTY_BOX));
  return plumes.flatMap((plume, i) => {
    const [stem, ...head] = plume.map((p) => p.piece);
    const beside = stalk.filter((b) => boxesTouch(b.box, boxes[i]!));
    if (!keepsInside(head, probe, gap) || cross(plume, beside, stem!.from)) return [i];
    for (let j = 0; j < i; j++) if (boxesTouch(boxes[i]!, boxes[j]!) && cross(plume, plumes[j]!)) return [i];
    return [];
  });
};

interface Boxed {
  readonly piece: Piece;
  readonly box: Box;
}

const boxed = (pieces: readonly Piece[]): Boxed[] => pieces.map((piece) => ({ piece, box: pieceBox(piece) }));

/** Whether two rows of pieces cross, but for where they share an end. */
export const pathsCross = (a: readonly Piece[], b: readonly Piece[]): boolean => cross(boxed(a), boxed(b));

/** The same, but for one more known point where they meet. */
const cross = (a: readonly Boxed[], b: readonly Boxed[], known?: Point): boolean => {
  for (const { piece: p, box } of a)
    for (const { piece: q, box: other } of b) {
      if (!boxesTouch(box, other)) continue;
      for (const { point } of crossings(p, q)) {
        const atEnd = [p.from, p.to].some(
          (e) =>
            distance(e, point) <= NEAR_END &&
            (e === known || distance(e, q.from) < NEAR_END || distance(e, q.to) < NEAR_END),
        );
        if (!atEnd) return true;
      }
    }
  return false;
};

/**
 * Pieces that share an end (within this, mm) touch there, and where they are tangent also a little beside it.
 */
const NEAR_END = 0.05;

/** The longest row of plumes without a misfit, when nothing else helped. */
const longestGood = (made: Side, wrong: readonly number[]): Side | undefined => {
  const stops = [-1, ...wrong, made.dividers.length];
  let [from, to] = [0, 0];
  for (let k = 1; k < stops.length; k++) {
    const [a, b] = [stops[k - 1]! + 1, stops[k]!];
    if (b - a > to - from) [from, to] = [a, b];
  }
  if (to - from < 3) return undefined;
  return {
    bases: made.bases.slice(from, to),
    dividers: made.dividers.slice(from, to),
    ends: made.ends.slice(from, to),
    heads: made.heads.slice(from, to - 1),
  };
};
