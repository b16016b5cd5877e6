/**
 * The stitched edge: the path of the centre of a disc of radius c that rolls along an edge, on its left.
 *
 * Method. Each piece is offset (lines stay lines, arcs stay arcs with r ± c), with an arc of radius c round
 * each convex corner. An open edge is walked out and back, so that it has a cap of radius c round each end
 * and the rest of the way is its other side: the disc sees an obstacle, not a drawing. The offsets are cut at
 * all their crossings; a stretch is kept when its middle is no nearer to the edge than c; kept stretches are
 * linked into loops, with the free space on the left. What the rolling disc reaches from outside is the loop
 * round everything, and the stitched edge is the part of it that touches the edge's left side. Pockets behind
 * a mouth too narrow for the disc are loops of their own, and are left out by that.
 *
 * The arrangement of offset elements is the classical one for outlines of lines and arcs (M. Held, "On the
 * Computational Geometry of Pocket Machining", Springer LNCS 500, 1991; cited from memory).
 *
 * Requires finite pieces, each starting where the one before ends, and an edge that does not touch itself:
 * anything else is a fault. Repeated points and specks are left out (weld.ts). A clearance that is not
 * positive and finite is a mistake of the caller, and throws.
 * Orientation: the foot is on the left; arcs that turn left are concave to it.
 * Accuracy: every point of the result is c from the edge to 1e-6 mm, for edges of some metres, and for arcs
 * of any radius; near tangencies use up to 1e-7 mm of that, everything else less than 1e-10.
 * Decided cases: a slot is open to the foot when it is wider than 2c by more than SLOT_PLAY, and closed when
 * it is exactly 2c; a concave arc of radius up to c is not entered; a kink below `kinkFor` adds no arc; an end
 * of the edge that the disc cannot come to is an unreached stretch, and the path ends where the disc must stop;
 * an edge none of whose left side can be reached traps the foot.
 * Cost: sorting and a sweep, plus a few tree visits a stretch: near n log n for the edges that occur.
 */

import { type EdgeFault, findEdgeFault } from './edge-fault.ts';
import { freeLoops, type Loop, pieceOf, type Stretch } from './free-loops.ts';
import type { OffsetElement } from './offset-elements.ts';
import { closedPath, openPath, type Path, pathLength, signedArea } from './path.ts';
import { line, type Piece, reversePiece } from './piece.ts';
import { distance } from './point.ts';
import { type Contact, findUnreached, type Unreached } from './unreached.ts';
import { weld } from './weld.ts';

export interface StitchedEdge {
  /** mm, needle to the foot's outer edge. */
  readonly clearance: number;
  readonly edge: Path;
  readonly edgeLength: number;
  /** The needle's way, in the edge's order. */
  readonly path: Path;
  /** For each piece of `path` the stretch of edge that the foot touches meanwhile. */
  readonly contacts: readonly Contact[];
  /** The stretches of edge that the foot cannot touch, in order. */
  readonly unreached: readonly Unreached[];
}

export type Rolled<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: EdgeFault };

export interface RollOptions {
  /** Roll on round the last point of an open edge, up to this turn (radians, at most π). */
  readonly roundEnd?: number;
}

/** Rolls the foot along an open edge, from its first point (the heel) to its last (the crown end). */
export const rollFoot = (edge: Path, clearance: number, options: RollOptions = {}): Rolled<StitchedEdge> => {
  requireClearance(clearance);
  const fault = findEdgeFault(edge);
  if (fault) return { ok: false, fault };
  const out = weld(edge.pieces, false);
  const back = out.map((w) => ({ ...w, piece: reversePiece(w.piece) })).reverse();
  const caps = new Set([out.length - 1, 2 * out.length - 1]);
  const obstacle = out.map((w) => w.piece);
  const { elements, loops } = freeLoops([...out, ...back], obstacle, clearance, caps);
  const edgeLength = pathLength(edge);
  const outer = outermost(loops);
  if (!outer) return { ok: false, fault: { kind: 'unresolved', at: edge.pieces[0]!.from } };

  // In the walk's order: the left side, the crown's cap, the other side, the heel's cap.
  const crownCap = elements.findIndex((e) => e.kind === 'cap');
  const isLeft = (s: Stretch): boolean => s.element < crownCap;
  const first = outer.findIndex((s, i) => isLeft(s) && !isLeft(outer.at(i - 1)!));
  if (first < 0) return { ok: false, fault: { kind: 'trapped', at: edge.pieces[0]!.from } };
  const kept: Stretch[] = [];
  for (let i = 0; i < outer.length; i++) {
    const s = outer[(first + i) % outer.length]!;
    if (!isLeft(s)) {
      const cap = s.element === crownCap && shorten(s, elements, options.roundEnd ?? 0);
      if (cap) kept.push(cap);
      break;
    }
    kept.push(s);
  }
  return { ok: true, value: stitched(kept, elements, edge, edgeLength, clearance, openPath) };
};

/**
 * Rolls the foot round a closed outline, on its left: outside an outline that runs clockwise (one loop), inside
 * one that runs counterclockwise (a loop for each part in which the disc has room).
 */
export const rollFootRound = (outline: Path, clearance: number): Rolled<readonly StitchedEdge[]> => {
  requireClearance(clearance);
  const fault = findEdgeFault(outline);
  if (fault) return { ok: false, fault };
  const walk = weld(outline.pieces, true);
  const obstacle = walk.map((w) => w.piece);
  const { elements, loops } = freeLoops(walk, obstacle, clearance, new Set());
  const inside = signedArea(outline) > 0;
  const outer = outermost(loops);
  const wanted = inside ? loops.filter((l) => l.area > 0).map((l) => l.stretches) : outer ? [outer] : [];
  const length = pathLength(outline);
  return {
    ok: true,
    value: wanted.map((stretches) =>
      stitched(fromStart(stretches), elements, outline, length, clearance, closedPath),
    ),
  };
};

const requireClearance = (clearance: number): void => {
  if (!(clearance > 0 && clearance < Number.POSITIVE_INFINITY))
    throw new RangeError(`A clearance must be positive and finite, not ${clearance}.`);
};

/** The loop round everything: the only one that has the free space outside. */
const outermost = (loops: readonly Loop[]): readonly Stretch[] | undefined => {
  let best: Loop | undefined;
  for (const loop of loops) if (loop.area < (best?.area ?? 0)) best = loop;
  return best?.stretches;
};

/** A cap is followed only as far as the turn that was asked for, counted from the end's own normal. */
const shorten = (s: Stretch, elements: readonly OffsetElement[], most: number): Stretch | undefined => {
  const { piece } = elements[s.element]!;
  const size = piece.kind === 'arc' ? Math.abs(piece.sweep) : 0;
  const t1 = Math.min(s.t1, Math.min(most, Math.PI) / size);
  return t1 > s.t0 ? { ...s, t1 } : undefined;
};

/** Ends this near (mm) are made the same; between ends farther apart, where pieces are all but tangent, goes a line. */
const SAME_END = 1e-7;

/** Turns a loop so that it starts at the lowest place along the outline that it touches. */
const fromStart = (stretches: readonly Stretch[]): readonly Stretch[] => {
  let lowest = 0;
  for (let i = 1; i < stretches.length; i++) {
    const a = stretches[i]!;
    const b = stretches[lowest]!;
    if (a.element < b.element || (a.element === b.element && a.t0 < b.t0)) lowest = i;
  }
  return [...stretches.slice(lowest), ...stretches.slice(0, lowest)];
};

const stitched = (
  stretches: readonly Stretch[],
  elements: readonly OffsetElement[],
  edge: Path,
  edgeLength: number,
  clearance: number,
  asPath: (pieces: readonly Piece[]) => Path,
): StitchedEdge => {
  const pieces: Piece[] = [];
  const contacts: Contact[] = [];
  for (const s of stretches) {
    const e = elements[s.element]!;
    const piece = pieceOf(s, elements);
    const span = e.contactTo - e.contactFrom;
    const contact = { from: e.contactFrom + span * s.t0, to: e.contactFrom + span * s.t1 };
    const before = pieces.at(-1);
    const gap = before ? distance(before.to, piece.from) : 0;
    if (before && gap > SAME_END) {
      pieces.push(line(before.to, piece.from));
      contacts.push({ from: contact.from, to: contact.from });
    }
    // Two closed forms of one crossing differ in their last digits; the path takes the earlier one for both.
    pieces.push(before && gap <= SAME_END ? { ...piece, from: before.to } : piece);
    contacts.push(contact);
  }
  const path = asPath(pieces);
  return {
    clearance,
    edge,
    edgeLength,
    path,
    contacts,
    unreached: findUnreached(path, contacts, edge, edgeLength, clearance),
  };
};
