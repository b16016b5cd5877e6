/** What can be wrong with an edge, so that no foot can roll along it. Always names the place. */

import { type BoxTree, boxTreeOf } from './box-tree.ts';
import { eachMeeting, type Meeting } from './cuts.ts';
import type { Path } from './path.ts';
import { type Piece, pieceLength } from './piece.ts';
import { distance, isFinitePoint, type Point } from './point.ts';
import { SPECK, type Welded, weld } from './weld.ts';

export type EdgeFault =
  | { readonly kind: 'empty' }
  | { readonly kind: 'not-finite'; readonly piece: number }
  | { readonly kind: 'broken'; readonly piece: number; readonly at: Point; readonly by: number }
  | { readonly kind: 'crosses-itself'; readonly at: Point; readonly pieces: readonly [number, number] }
  | { readonly kind: 'trapped'; readonly at: Point }
  | { readonly kind: 'unresolved'; readonly at: Point };

/** Neighbours whose ends are farther apart than this (mm) do not make one edge. */
const BROKEN = 1e-6;

/** Neighbours may meet at their shared corner, and nowhere else; this near to it (mm) is the corner. */
const AT_CORNER = 1e-7;

/** Checks everything that can be told before the foot is rolled; undefined when the edge is sound. */
export const findEdgeFault = (edge: Path): EdgeFault | undefined => {
  const unsound = findUnsound(edge);
  if (unsound) return unsound;
  const welded = weld(edge.pieces, edge.closed);
  return findSelfCrossing(edge, welded, boxTreeOf(welded.map((w) => w.piece)));
};

/** What is wrong with single pieces, or with the joints between them. */
export const findUnsound = (edge: Path): EdgeFault | undefined => {
  const { pieces, closed } = edge;
  if (pieces.length === 0) return { kind: 'empty' };
  let length = 0;
  for (let i = 0; i < pieces.length; i++) {
    const p = pieces[i]!;
    const own = pieceLength(p);
    length += own;
    const isSound = isFinitePoint(p.from) && isFinitePoint(p.to) && Number.isFinite(own);
    if (!isSound) return { kind: 'not-finite', piece: i };
    const before = i > 0 ? pieces[i - 1] : closed ? pieces.at(-1) : undefined;
    const by = before ? distance(before.to, p.from) : 0;
    if (!(by <= BROKEN)) return { kind: 'broken', piece: i, at: p.from, by };
  }
  // Repeated points do no harm, but something must be left.
  if (!(length > SPECK)) return { kind: 'empty' };
  return undefined;
};

/**
 * Where a sound edge crosses or touches itself: as it is rolled along, and where specks were left out for that, also as
 * it was given. `tree` is the one over the welded pieces.
 */
export const findSelfCrossing = (
  { pieces, closed }: Path,
  welded: readonly Welded[],
  tree: BoxTree,
): EdgeFault | undefined => {
  const rolled = welded.map((w) => w.piece);
  const met = firstMeeting(rolled, closed, tree);
  if (met) return { ...met, pieces: [welded[met.pieces[0]]!.index, welded[met.pieces[1]]!.index] };
  let [kept, last] = [0, -1];
  for (const { index } of welded) if (index !== last) [kept, last] = [kept + 1, index];
  return kept === pieces.length ? undefined : firstMeeting(pieces, closed, boxTreeOf(pieces));
};

const firstMeeting = (
  pieces: readonly Piece[],
  closed: boolean,
  tree: BoxTree,
): (EdgeFault & { readonly kind: 'crosses-itself' }) | undefined => {
  const count = pieces.length;
  let fault: (EdgeFault & { readonly kind: 'crosses-itself' }) | undefined;
  const visit = (m: Meeting): boolean => {
    const shared =
      m.second === m.first + 1
        ? pieces[m.second]!.from
        : closed && m.first === 0 && m.second === count - 1
          ? pieces[0]!.from
          : undefined;
    if (shared && distance(shared, m.point) <= AT_CORNER) return false;
    // Two pieces that close a loop share both ends.
    if (closed && count === 2 && distance(pieces[0]!.from, m.point) <= AT_CORNER) return false;
    // Pieces of a hair's length between two others are the corner of those two.
    const between = pieces.slice(m.first + 1, m.second);
    if (m.second - m.first > 1 && between.reduce((s, p) => s + pieceLength(p), 0) <= AT_CORNER) {
      if (distance(pieces[m.second]!.from, m.point) <= 2 * AT_CORNER) return false;
    }
    fault = { kind: 'crosses-itself', at: m.point, pieces: [m.first, m.second] };
    return true;
  };
  eachMeeting(pieces, visit, tree);
  return fault;
};
