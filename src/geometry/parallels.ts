/**
 * Every line at a distance from open paths, on both their sides and round their ends, cut where it enters or
 * leaves an area; and the bands between such lines, as regions.
 *
 * Unlike the way of a foot that comes from outside, a parallel has all its parts: where a narrow neck parts
 * what lies at the distance into several pockets, each keeps its line. Method: the offset elements of the path
 * are cut wherever they meet one another or the area's edge; a stretch is kept when nothing of the path is
 * nearer than the distance. A band's edge is then made of the stretches of its nearer line, of its farther line
 * backwards, and of those of the area's edge that lie between the two, linked end to start.
 *
 * At a point of the path that sticks out the line goes round by an arc, or is pivoted: its two sides run on
 * until they meet, as a template turned about a point leaves them, unless they would meet too far away.
 *
 * Degenerate input: a distance of 0 or less gives no line, as does a path that is empty, broken or not finite. A path may
 * touch or cross itself.
 * Where rounding leaves a band's edge open, because lines run beside one another, the distances are enlarged
 * by a hair and it is tried again.
 */

import { chainPaths } from './chain.ts';
import { cutShares } from './cuts.ts';
import { findUnsound } from './edge-fault.ts';
import { linkLoops, runOf } from './loops.ts';
import { liesAlong, nearnessOf } from './nearness.ts';
import { type OffsetElement, offsetElements } from './offset-elements.ts';
import { closedPath, type Path } from './path.ts';
import { type Piece, pieceAt, pieceDirection, pieceLength, reversePiece, trimPiece } from './piece.ts';
import { add, cross, distance, leftOf, type Point, scale, subtract, unit } from './point.ts';
import { probeRegion, type Region, regionOf, regionPieces } from './region.ts';
import { type Welded, weld } from './weld.ts';

/** How a parallel turns at a point that sticks out. */
export type PointJoin = 'round' | 'pivot';

/**
 * A pivoted point may lie this many distances from the path's own point; beyond, the line goes round. Four
 * reaches to points of 29°, and is the limit that drawing programs and SVG take for mitred lines.
 */
export const PIVOT_LIMIT = 4;

/** Shorter stretches (mm) are left out; their neighbours link across. */
const CRUMB = 1e-9;
/** A stretch is at its distance when nothing of the path is nearer than that by more than this (mm). */
const NEARER = 1e-9;
/** Stretches this near (mm) to an edge run along it. */
const ALONG = 1e-7;
/** How far (mm) to look to one side of a stretch that runs along a line, to see what lies there. */
const LOOK = 1e-4;
/** How far apart (mm) the two ends of one crossing may come out. */
const LINK = 1e-6;
const LOOSE_LINK = 1e-4;
/** By how much (mm) distances are enlarged at each new attempt, and how often. */
const NUDGE = 1e-8;
const MOST_NUDGES = 4;

/** Open paths made ready to be walked along, and to be asked what is near them. */
interface Source {
  readonly walks: readonly (readonly Welded[])[];
  readonly nearer: (p: Point, reach: number) => boolean;
}

const sourceOf = (paths: readonly Path[]): Source | undefined => {
  if (paths.length === 0 || paths.some((path) => findUnsound(path))) return undefined;
  const walks = paths.map((path) => weld(path.pieces, false));
  const { nearer } = nearnessOf(walks.flat().map((w) => w.piece));
  return { walks, nearer };
};

/** One parallel before it is cut, with the kites that pivoted points add to what is near. */
interface Raw {
  readonly pieces: readonly Piece[];
  readonly isNear: (p: Point, slack: number) => boolean;
}

interface Kite {
  readonly at: Point;
  readonly from: Point;
  readonly tip: Point;
  readonly to: Point;
}

const elementsOf = (walk: readonly Welded[], reach: number): readonly OffsetElement[] => {
  const back = walk.map((w) => ({ ...w, piece: reversePiece(w.piece) })).reverse();
  return offsetElements([...walk, ...back], reach, new Set([walk.length - 1, 2 * walk.length - 1]));
};

const rawParallel = ({ walks, nearer }: Source, reach: number, join: PointJoin): Raw => {
  const kites: Kite[] = [];
  const elements = walks.flatMap((walk) => elementsOf(walk, reach));
  const pieces = elements.flatMap((e): readonly Piece[] => {
    const { piece } = e;
    if (join === 'round' || e.kind !== 'corner' || piece.kind === 'line') return [piece];
    const share = Math.cos(piece.sweep / 2);
    if (!(share * PIVOT_LIMIT >= 1)) return [piece];
    const tip = add(
      piece.center,
      scale(unit(subtract(pieceAt(piece, 0.5), piece.center)), piece.radius / share),
    );
    kites.push({ at: piece.center, from: piece.from, tip, to: piece.to });
    return [
      { kind: 'line', from: piece.from, to: tip },
      { kind: 'line', from: tip, to: piece.to },
    ];
  });
  const isNear = (p: Point, slack: number): boolean =>
    nearer(p, reach - slack) || kites.some((k) => isInKite(k, p, slack));
  return { pieces, isNear };
};

/** Inside by more than the slack (mm); the two sides at the point itself lie within the distance anyhow. */
const isInKite = ({ at, from, tip, to }: Kite, p: Point, slack: number): boolean => {
  const right = (a: Point, b: Point): number => cross(subtract(p, a), unit(subtract(b, a)));
  return right(from, tip) > slack && right(tip, to) > slack && right(to, at) > 0 && right(at, from) > 0;
};

/** The kept stretches of one parallel inside an area, and where it cuts the area's edge. */
interface Level {
  readonly stretches: readonly Piece[];
  /** Whether a point is nearer to the path than the parallel. */
  readonly isNear: (p: Point, slack: number) => boolean;
  /** Shares along each piece of the area's edge. */
  readonly cuts: readonly (readonly number[])[];
}

const levelIn = (source: Source, reach: number, join: PointJoin, edge: readonly Piece[]): Level => {
  const raw = rawParallel(source, reach, join);
  const cuts = cutShares([...raw.pieces, ...edge]);
  const stretches = raw.pieces.flatMap((piece, i) =>
    stretchesOf(piece, cuts[i]!).filter((s) => !raw.isNear(pieceAt(s, 0.5), NEARER)),
  );
  return { stretches: withoutSlits(stretches), isNear: raw.isNear, cuts: cuts.slice(raw.pieces.length) };
};

const stretchesOf = (piece: Piece, cuts: readonly number[]): readonly Piece[] => {
  const length = pieceLength(piece);
  const stretches: Piece[] = [];
  let t0 = 0;
  for (const t1 of cuts) {
    if (!((t1 - t0) * length > CRUMB)) continue;
    stretches.push(t0 === 0 && t1 === 1 ? piece : trimPiece(piece, t0, t1));
    t0 = t1;
  }
  return stretches;
};

/**
 * The lines at `reach` (mm) from open paths that lie in an area, its edge included, with what is farther on
 * their left; none where nothing is left.
 */
export const parallelIn = (
  paths: readonly Path[],
  reach: number,
  area: Region,
  join: PointJoin = 'round',
): Path[] => {
  const source = sourceOf(paths);
  if (!source || !(reach > 0)) return [];
  const probe = probeRegion(area);
  const { stretches } = levelIn(source, reach, join, regionPieces(area));
  const inside = stretches.filter((s) => {
    const middle = pieceAt(s, 0.5);
    return probe.contains(middle) || probe.nearer(middle, ALONG);
  });
  // Two closed forms of one crossing differ in their last digits.
  return chainPaths(
    inside.map((piece) => ({ pieces: [piece], closed: false })),
    LINK,
  );
};

/**
 * The parts of an area between one distance from an open path and the next: nearer than the first, between the
 * first and the second, …, beyond the last; one region more than there are distances (mm, ascending from above
 * 0). The path may be part of the area's edge. One that is empty, broken or not finite gives the whole area as the last.
 */
export const bandsOf = (
  area: Region,
  path: Path,
  reaches: readonly number[],
  join: PointJoin = 'round',
): readonly Region[] => {
  const source = sourceOf([path]);
  const edge = soundEdge(area);
  if (!source || reaches.length === 0) return [...reaches.map(() => NO_REGION), area];
  let first: readonly Region[] | undefined;
  for (let k = 0; k <= MOST_NUDGES; k++) {
    const tried = bandsAt(
      area,
      edge,
      source,
      reaches.map((r) => r + k * NUDGE),
      join,
      k < MOST_NUDGES / 2 ? LINK : LOOSE_LINK,
    );
    if (tried.complete) return tried.bands;
    first ??= tried.bands;
  }
  return first!;
};

const NO_REGION: Region = { loops: [] };

const bandsAt = (
  area: Region,
  edge: readonly Piece[],
  source: Source,
  reaches: readonly number[],
  join: PointJoin,
  slack: number,
): { readonly bands: readonly Region[]; readonly complete: boolean } => {
  const probe = probeRegion(area);
  const levels = reaches.map((r) => levelIn(source, r, join, edge));
  const lines = levels.map((level) =>
    level.stretches.filter((s) => {
      const middle = pieceAt(s, 0.5);
      // A line along the area's edge is the edge's own; `bandAt` says to which band.
      return probe.contains(middle) && !probe.nearer(middle, ALONG);
    }),
  );
  /** The first level that a point is nearer than: the band's number. */
  const bandAt = (s: Piece): number => {
    const inward = add(pieceAt(s, 0.5), scale(leftOf(pieceDirection(s, 0.5)), LOOK));
    const at = levels.some((l) => l.isNear(pieceAt(s, 0.5), -ALONG) !== l.isNear(pieceAt(s, 0.5), ALONG))
      ? inward
      : pieceAt(s, 0.5);
    const found = levels.findIndex((l) => l.isNear(at, 0));
    return found < 0 ? levels.length : found;
  };
  const parts: Piece[][] = [...reaches.map(() => []), []];
  edge.forEach((piece, i) => {
    const cuts = levels.flatMap((l) => l.cuts[i]!).sort((a, b) => a - b);
    for (const s of stretchesOf(piece, cuts)) parts[bandAt(s)]!.push(s);
  });
  lines.forEach((line, i) => {
    parts[i]!.push(...line.map(reversePiece));
    parts[i + 1]!.push(...line);
  });
  const linked = parts.map((pieces) => linkedRegion(pieces, slack));
  return { bands: linked.map((l) => l.region), complete: linked.every((l) => l.complete) };
};

/** Pieces with an area on their left, in any order, as that area. */
const linkedRegion = (
  pieces: readonly Piece[],
  slack: number,
): { readonly region: Region; readonly complete: boolean } => {
  const loops = linkLoops(
    pieces.map((p) => runOf(p)),
    slack,
  );
  const used = new Set(loops.flat());
  // Where lines cross at a small angle both are kept for a while beyond that, and are one as far as can be told.
  const taken = pieces.filter((_, i) => used.has(i));
  const complete = pieces.every(
    (p, i) => used.has(i) || pieceLength(p) <= slack || liesAlong(p, taken, ALONG),
  );
  const paths = loops.map((indices) =>
    closedPath(indices.map((k, i) => ({ ...pieces[k]!, from: pieces[indices.at(i - 1)!]!.to }))),
  );
  return { region: regionOf(paths), complete };
};

/** An edge cut where it touches itself, without its slits: a swag's first inches may lie on the line that closes it. */
const soundEdge = (area: Region): readonly Piece[] => {
  const edge = regionPieces(area);
  const cuts = cutShares(edge);
  return withoutSlits(edge.flatMap((piece, i) => stretchesOf(piece, cuts[i]!)));
};

/** Without stretches that run along one another in opposite directions, with nothing between. */
const withoutSlits = (stretches: readonly Piece[]): readonly Piece[] => {
  const isBack = (a: Piece, b: Piece): boolean =>
    distance(a.from, b.to) <= ALONG &&
    distance(a.to, b.from) <= ALONG &&
    distance(pieceAt(a, 0.5), pieceAt(b, 0.5)) <= ALONG;
  return stretches.filter((a) => !stretches.some((b) => b !== a && isBack(a, b)));
};
