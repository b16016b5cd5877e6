/**
 * What a feather leaves bare gets drops that stand on its line, as quilters set an extra curl where plumes leave a gap.
 */

import {
  add,
  arc,
  boxesTouch,
  boxOfPoints,
  crossings,
  distance,
  distanceToPiece,
  growBox,
  leftOf,
  mirror,
  movePiece,
  mover,
  type Nearness,
  nearnessOf,
  type Path,
  type Piece,
  type Point,
  pieceAt,
  pieceBox,
  polar,
  type Region,
  type RegionProbe,
  regionPieces,
  reversePiece,
  scale,
  subtract,
  TURN,
  trimPiece,
  unit,
} from '../geometry/index.ts';
import { type BarePlace, barePlaces } from './bare-places.ts';
import type { Axis } from './fill.ts';
import { mirrorOf, offAxis } from './symmetry.ts';
import { teardrop } from './teardrop.ts';

/** Discs larger than this (radius in spacings) are bare; about an axis, where plumes had to be small, smaller ones too: where two such feathers meet both leave one. */
const BARE = 1.08;
const BARE_ABOUT_AXIS = 1.04;
/** A drop keeps this share of the spacing from all lines but its own. */
const DROP_GAP = 0.42;
/** Where no drop has room, a bead on a stem leaves this share of the spacing round it. */
const ROUND_BEAD = 0.75;
/** Each drop may leave a smaller place bare beside it. */
const MOST_ROUNDS = 5;

/** The lines with a drop in each bare place; mirrored where there is an axis. */
export const withDrops = (
  paths: readonly Path[],
  region: Region,
  probe: RegionProbe,
  spacing: number,
  axis: Axis | undefined,
  isSmall: boolean,
): readonly Path[] => {
  const edge = regionPieces(region);
  let now = paths;
  for (let round = 0; round < MOST_ROUNDS && now.length > 0; round++) {
    const places = barePlaces(
      region,
      probe,
      now,
      (axis && isSmall ? BARE_ABOUT_AXIS : BARE) * spacing,
    ).filter(({ at }) => !axis || offAxis(at, axis) > -spacing / 10);
    if (places.length === 0) break;
    const pieces = now.flatMap((p) => p.pieces);
    const near = nearnessOf(pieces);
    const walls = [...pieces, ...edge].map((piece) => ({ piece, box: pieceBox(piece) }));
    const drops: Piece[] = [];
    const ways: Way[] = [];
    for (const found of places) {
      // The drop before this one may reach into its place: what is left of it comes up again.
      const reach = 0.95 * found.radius;
      if (drops.some((p) => distanceToPiece(p, found.at) < reach)) continue;
      const onAxis = axis && Math.abs(offAxis(found.at, axis)) <= spacing / 10;
      const middle = onAxis ? footOnAxis(near, pieces, found, axis) : undefined;
      // Where no line crosses the axis there, two drops share the place, one from either side.
      const place = onAxis && !middle ? halfOf(found, axis) : found;
      const foot = middle ?? footOf(near, pieces, place.at);
      const around = growBox(boxOfPoints([place.at]), WALLS * place.radius);
      const beside = walls.filter((w) => boxesTouch(w.box, around)).map((w) => w.piece);
      const drop = dropOn(foot.at, place, [...beside, ...drops], spacing);
      drops.push(...drop);
      ways.push({ ...foot, drop });
      if (!axis || middle) continue;
      const over = mirror(axis.at, axis.angle);
      const image = drop.map((p) => movePiece(p, over));
      drops.push(...image);
      ways.push({ ...footOf(near, pieces, mover(mirrorOf(axis))(foot.at)), drop: image });
    }
    now = inserted(now, pieces, ways);
  }
  return now;
};

/** The half of a bare place on the left of an axis through it. */
const halfOf = ({ at, radius }: BarePlace, axis: Axis): BarePlace => ({
  at: add(at, scale(leftOf(polar(axis.angle, 1)), radius / 2)),
  radius: radius / 2,
});

/** There and back: a drop as full as there is room for, or a bead on a stem. */
const dropOn = (foot: Point, { at, radius }: BarePlace, near: readonly Piece[], spacing: number): Piece[] => {
  const up = unit(subtract(at, foot));
  const drop = teardrop(foot, up, near, DROP_GAP * spacing);
  const isClear = drop?.every((p) =>
    near.every((q) => crossings(p, q).every((c) => distance(c.point, foot) < AT_FOOT)),
  );
  if (drop && isClear) return drop;
  const bead = Math.max(spacing / 4, radius - ROUND_BEAD * spacing);
  const start = subtract(at, scale(up, bead));
  const stem: Piece = { kind: 'line', from: foot, to: start };
  const round = arc(at, bead, Math.atan2(-up.y, -up.x), TURN);
  return [stem, { ...round, from: start, to: start }, { kind: 'line', from: start, to: foot }];
};

/** Within this (mm) of its foot a drop meets the line that it stands on. */
const AT_FOOT = 0.1;

/** Lines farther away than this many radii of a bare place are out of its drop's reach. */
const WALLS = 6;

/** Where the axis meets the nearest line from a bare place on it, so that its drop is its own image. */
const footOnAxis = (
  near: Nearness,
  pieces: readonly Piece[],
  { at, radius }: BarePlace,
  axis: Axis,
): Foot | undefined => {
  const start = subtract(at, scale(leftOf(polar(axis.angle, 1)), offAxis(at, axis)));
  const meets = [1, -1].flatMap((way) => {
    for (let s = 0, k = 0; s < 3 * radius && k < 200; k++) {
      const p = add(start, polar(axis.angle, way * s));
      const far = near.distance(p);
      if (far < 1e-6) return [{ s, p }];
      s += far;
    }
    return [];
  });
  const first = meets.sort((a, b) => a.s - b.s)[0];
  return first && footOf(near, pieces, first.p);
};

interface Foot {
  readonly piece: number;
  readonly share: number;
  readonly at: Point;
}

/** What is to be stitched from a point of a line and back to it. */
interface Way extends Foot {
  readonly drop: readonly Piece[];
}

/** The nearest point of some pieces; an end of one where it is nearly that. */
const footOf = (near: Nearness, pieces: readonly Piece[], to: Point): Foot => {
  const piece = near.nearest(to);
  const p = pieces[piece]!;
  const far = (t: number): number => distance(pieceAt(p, t), to);
  let share = 0;
  for (let k = 1; k <= 16; k++) if (far(k / 16) < far(share)) share = k / 16;
  for (let step = 1 / 32; step > 1e-7; step /= 2)
    for (const t of [share - step, share + step]) if (t >= 0 && t <= 1 && far(t) < far(share)) share = t;
  if (share < 1e-6) return { piece, share: 0, at: p.from };
  if (share > 1 - 1e-6) return { piece, share: 1, at: p.to };
  return { piece, share, at: pieceAt(p, share) };
};

/**
 * The lines with ways there and back put in at points of theirs. Where a line comes along there again, it has an end there
 * too, so that it still runs over itself piece by piece.
 */
const inserted = (
  paths: readonly Path[],
  pieces: readonly Piece[],
  ways: readonly Way[],
): readonly Path[] => {
  const splits = new Map<number, Way[]>();
  const splitAt = (piece: number, way: Way): void => {
    splits.set(piece, [...(splits.get(piece) ?? []), way]);
  };
  for (const way of ways) {
    const own = pieces[way.piece]!;
    const back = reversePiece(own);
    pieces.forEach((p, i) => {
      if (i === way.piece) splitAt(i, way);
      else if (isAgain(p, own)) splitAt(i, { ...way, drop: [] });
      else if (isAgain(p, back)) splitAt(i, { ...way, share: 1 - way.share, drop: [] });
    });
  }
  let index = -1;
  return paths.map((path) => ({
    ...path,
    pieces: path.pieces.flatMap((p) => {
      index++;
      const here = splits.get(index);
      return here ? splitInto(p, here) : [p];
    }),
  }));
};

const splitInto = (piece: Piece, ways: readonly Way[]): readonly Piece[] => {
  const made: Piece[] = [];
  let [done, from] = [0, piece.from];
  for (const { share, at, drop } of [...ways].sort((a, b) => a.share - b.share)) {
    if (share > done) made.push({ ...trimPiece(piece, done, share), from, to: at });
    const [first, last] = [drop[0], drop.at(-1)];
    if (first && last) made.push({ ...first, from: at }, ...drop.slice(1, -1), { ...last, to: at });
    [done, from] = [share, at];
  }
  if (done < 1) made.push({ ...trimPiece(piece, done, 1), from, to: piece.to });
  return made;
};

const isAgain = (p: Piece, q: Piece): boolean =>
  distance(p.from, q.from) < 1e-9 &&
  distance(p.to, q.to) < 1e-9 &&
  distance(pieceAt(p, 0.5), pieceAt(q, 0.5)) < 1e-6;
