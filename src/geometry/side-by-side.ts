/**
 * Regions that lie side by side as one: the straight edges that two of them share, from both sides, are left out, and
 * what is left is linked anew. Edges may share a part of their length.
 *
 * Regions must not overlap. Where nothing is shared they come back as they are.
 */

import { boxTreeOf, eachClosePair } from './box-tree.ts';
import { linkLoops, runOf } from './loops.ts';
import { closedPath } from './path.ts';
import { type Line, type Piece, pieceLength, trimPiece } from './piece.ts';
import { cross, distance, dot, type Point, scale, subtract } from './point.ts';
import { type Region, regionOf, regionPieces } from './region.ts';

/** Edges nearer than this (mm) are one edge, and ends are one place. */
const ONE_EDGE = 1e-6;

/** Shorter stretches (mm) are what rounding leaves beside a shared edge; their neighbours link across. */
const CRUMB = 2e-6;

/** How far apart (mm) ends that belong together may come out. */
const LINK = 1e-5;

export const joinRegions = (regions: readonly Region[]): Region => {
  const pieces = regions.flatMap(regionPieces).filter((p) => pieceLength(p) > CRUMB);
  const kept = withoutShared(pieces);
  const loops = linkLoops(
    kept.map((p) => runOf(p)),
    LINK,
  );
  return regionOf(
    loops.map((indices) =>
      closedPath(straightened(indices.map((k, i) => ({ ...kept[k]!, from: kept[indices.at(i - 1)!]!.to })))),
    ),
  );
};

const withoutShared = (pieces: readonly Piece[]): readonly Piece[] => {
  const shared = new Map<number, (readonly [number, number])[]>();
  const lines = pieces.flatMap((p, i) => (p.kind === 'line' ? [i] : []));
  const put = (i: number, from: number, to: number): void => {
    const known = shared.get(i);
    if (known) known.push([from, to]);
    else shared.set(i, [[from, to]]);
  };
  const tree = boxTreeOf(lines.map((i) => pieces[i]!));
  eachClosePair(tree, ONE_EDGE, (first, second) => {
    const [i, k] = [lines[first]!, lines[second]!];
    const [a, b] = [pieces[i] as Line, pieces[k] as Line];
    const part = sharedPart(a, b);
    const back = part && sharedPart(b, a);
    if (part && back) {
      put(i, ...part);
      put(k, ...back);
    }
    return false;
  });
  return pieces.flatMap((p, i) => (shared.has(i) ? left(p, shared.get(i)!) : [p]));
};

/** From which share to which a line runs along another one, which goes the other way. */
const sharedPart = (a: Line, b: Line): readonly [number, number] | undefined => {
  const length = distance(a.from, a.to);
  const along = scale(subtract(a.to, a.from), 1 / length);
  const off = (p: Point): number => Math.abs(cross(along, subtract(p, a.from)));
  const at = (p: Point): number => dot(along, subtract(p, a.from)) / length;
  // Where the other goes the same way its end comes after its beginning, and nothing is left between.
  const [from, to] = [Math.max(0, at(b.to)), Math.min(1, at(b.from))];
  if (!((to - from) * length > CRUMB)) return undefined;
  // A crossing at a small angle is no edge in common.
  if (!(off(b.from) <= ONE_EDGE && off(b.to) <= ONE_EDGE)) return undefined;
  return [from, to];
};

/** What is left of a line without the stretches between some shares. */
const left = (p: Piece, without: readonly (readonly [number, number])[]): readonly Piece[] => {
  const length = pieceLength(p);
  const found: Piece[] = [];
  let at = 0;
  const keep = (to: number): void => {
    if ((to - at) * length > CRUMB) found.push(at === 0 && to === 1 ? p : trimPiece(p, at, to));
  };
  for (const [from, to] of without.toSorted(([a], [b]) => a - b)) {
    keep(from);
    at = Math.max(at, to);
  }
  keep(1);
  return found;
};

/** Lines that go straight on are one: a margin is not broken where a region ended. */
const straightened = (pieces: readonly Piece[]): readonly Piece[] => {
  const found: Piece[] = [];
  for (const p of pieces) {
    const before = found.at(-1);
    if (before?.kind === 'line' && p.kind === 'line' && goesOn(before, p))
      found[found.length - 1] = { ...before, to: p.to };
    else found.push(p);
  }
  const [first, last] = [found[0], found.at(-1)];
  if (found.length > 2 && first?.kind === 'line' && last?.kind === 'line' && goesOn(last, first)) {
    found[0] = { ...first, from: last.from };
    found.pop();
  }
  return found;
};

const goesOn = (a: Line, b: Line): boolean => {
  const whole = subtract(b.to, a.from);
  const length = distance(b.to, a.from);
  const aside = Math.abs(cross(whole, subtract(a.to, a.from))) / length;
  return dot(whole, subtract(a.to, a.from)) > 0 && dot(whole, subtract(b.to, b.from)) > 0 && aside < 1e-9;
};
