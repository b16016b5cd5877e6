/**
 * What a feather leaves bare gets drops that stand on its line, as quilters set an extra curl where plumes leave a gap.
 */

import {
  add,
  arc,
  crossings,
  distance,
  distanceToPiece,
  leftOf,
  mirror,
  movePiece,
  mover,
  nearnessOf,
  type Path,
  type Piece,
  type Point,
  pieceAt,
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

/** Discs larger than this (radius in spacings) are bare. */
const BARE = 1.08;
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
): readonly Path[] => {
  const edge = regionPieces(region);
  let now = paths;
  for (let round = 0; round < MOST_ROUNDS && now.length > 0; round++) {
    const places = barePlaces(region, probe, now, BARE * spacing).filter(
      ({ at }) => !axis || offAxis(at, axis) > -spacing / 10,
    );
    if (places.length === 0) break;
    for (const place of places) {
      const pieces = now.flatMap((p) => p.pieces);
      // The drop before this one may reach into its place: what is left of it comes up again.
      if (nearnessOf(pieces).nearer(place.at, place.radius * 0.95)) continue;
      const isMiddle = axis && Math.abs(offAxis(place.at, axis)) <= spacing / 10;
      const foot = (isMiddle && footOnAxis(pieces, place, axis)) || footOf(pieces, place.at).at;
      const drop = dropOn(foot, place, [...pieces, ...edge], spacing);
      now = inserted(now, foot, drop);
      if (axis && !isMiddle) {
        const over = mirror(axis.at, axis.angle);
        now = inserted(
          now,
          mover(mirrorOf(axis))(foot),
          drop.map((p) => movePiece(p, over)),
        );
      }
    }
  }
  return now;
};

/** There and back: a drop as full as there is room for, or a bead on a stem. */
const dropOn = (
  foot: Point,
  { at, radius }: BarePlace,
  lines: readonly Piece[],
  spacing: number,
): Piece[] => {
  const up = unit(subtract(at, foot));
  const near = lines.filter((p) => distanceToPiece(p, at) < WALLS * radius);
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
const footOnAxis = (pieces: readonly Piece[], { at, radius }: BarePlace, axis: Axis): Point | undefined => {
  const near = nearnessOf(pieces);
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
  return meets.sort((a, b) => a.s - b.s)[0]?.p;
};

interface Foot {
  readonly piece: number;
  readonly share: number;
  readonly at: Point;
}

/** The nearest point of some pieces. */
const footOf = (pieces: readonly Piece[], to: Point): Foot => {
  const piece = nearnessOf(pieces).nearest(to);
  const p = pieces[piece]!;
  const far = (t: number): number => distance(pieceAt(p, t), to);
  let share = 0;
  for (let k = 1; k <= 16; k++) if (far(k / 16) < far(share)) share = k / 16;
  for (let step = 1 / 32; step > 1e-7; step /= 2)
    for (const t of [share - step, share + step]) if (t >= 0 && t <= 1 && far(t) < far(share)) share = t;
  return { piece, share, at: pieceAt(p, share) };
};

/**
 * The lines with a way there and back put in at a point of one of them. Where the line comes along there again, it has an
 * end there too, so that it still runs over itself piece by piece.
 */
const inserted = (paths: readonly Path[], at: Point, way: readonly Piece[]): readonly Path[] => {
  const all = paths.flatMap((p) => p.pieces);
  const foot = footOf(all, at);
  const piece = all[foot.piece]!;
  const isSplit = foot.share > 1e-6 && foot.share < 1 - 1e-6;
  const point = isSplit ? foot.at : foot.share > 0.5 ? piece.to : piece.from;
  const [before, after] = isSplit
    ? halves(piece, foot.share, point)
    : foot.share > 0.5
      ? [piece]
      : [undefined, piece];
  const [first, last] = [way[0]!, way.at(-1)!];
  const there = [{ ...first, from: point }, ...way.slice(1, -1), { ...last, to: point }];
  let index = -1;
  return paths.map((path) => ({
    ...path,
    pieces: path.pieces.flatMap((p) => {
      index++;
      if (index === foot.piece) return [...(before ? [before] : []), ...there, ...(after ? [after] : [])];
      if (isSplit && isAgain(p, piece)) return halves(p, foot.share, point);
      return isSplit && isAgain(p, reversePiece(piece)) ? halves(p, 1 - foot.share, point) : [p];
    }),
  }));
};

const halves = (p: Piece, share: number, at: Point): [Piece, Piece] => [
  { ...trimPiece(p, 0, share), to: at },
  { ...trimPiece(p, share, 1), from: at },
];

const isAgain = (p: Piece, q: Piece): boolean =>
  distance(p.from, q.from) < 1e-9 &&
  distance(p.to, q.to) < 1e-9 &&
  distance(pieceAt(p, 0.5), pieceAt(q, 0.5)) < 1e-6;
