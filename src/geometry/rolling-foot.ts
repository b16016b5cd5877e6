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

import { boxTreeOf } from './box-tree.ts';
import { type EdgeFault, findSelfCrossing, findUnsound } from './edge-fault.ts';
import { type FreeLoops, freeLoops, type Loop, pieceOf, type Stretch } from './free-loops.ts';
import type { OffsetElement } from './offset-elements.ts';
import { closedPath, type Path, pathLength, signedArea } from './path.ts';
import { line, type Piece, pieceLength, reversePiece, startingAt } from './piece.ts';
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
  const unsound = findUnsound(edge);
  if (unsound) return { ok: false, fault: unsound };
  const out = weld(edge.pieces, false);
  const obstacle = out.map((w) => w.piece);
  const tree = boxTreeOf(obstacle);
  const crossing = findSelfCrossing(edge, out, tree);
  if (crossing) return { ok: false, fault: crossing };
  const back = out.map((w) => ({ ...w, piece: reversePiece(w.piece) })).reverse();
  const caps = new Set([out.length - 1, 2 * out.length - 1]);
  const walk = [...out, ...back];
  const { elements, loops } = freeLoops(walk, obstacle, clearance, caps, true, tree);
  const outer = outermost(loops)?.stretches;
  if (!outer) return { ok: false, fault: { kind: 'unresolved', at: edge.pieces[0]!.from } };

  // In the walk's order: the left side, the crown's cap, the other side, the heel's cap.
  const crownCap = elements.findIndex((e) => e.kind === 'cap');
  const isLeft = (s: Stretch): boolean => s.element < crownCap;
  const kept = longestAlong(outer, isLeft, elements);
  if (kept.length === 0) return { ok: false, fault: { kind: 'trapped', at: edge.pieces[0]!.from } };
  const after = outer[(outer.indexOf(kept.at(-1)!) + 1) % outer.length]!;
  const cap = after.element === crownCap && shorten(after, elements, options.roundEnd ?? 0);
  if (cap) kept.push(cap);
  const pieces = kept.map((s) => pieceOf(s, elements));
  return { ok: true, value: stitched(kept, pieces, elements, edge, false, clearance) };
};

/**
 * Rolls the foot round a closed outline, on its left: outside an outline that runs clockwise (one loop), inside
 * one that runs counterclockwise (a loop for each part in which the disc has room).
 */
export const rollFootRound = (outline: Path, clearance: number): Rolled<readonly StitchedEdge[]> => {
  const found = waysRound(outline, clearance);
  if (!found.ok) return found;
  const { elements, loops } = found.value;
  const value = loops.map((l) => stitched(l.stretches, l.pieces, elements, outline, true, clearance));
  return { ok: true, value };
};

/** The same ways as bare paths, for those who do not ask what the foot touches meanwhile, and what it misses. */
export const pathsRound = (outline: Path, clearance: number): Rolled<readonly Path[]> => {
  const found = waysRound(outline, clearance);
  if (!found.ok) return found;
  return { ok: true, value: found.value.loops.map((l) => closedPath(joined(l.pieces, NOWHERE))) };
};

/** Loops round a closed outline on its left, each from the lowest place along the outline that it touches. */
const waysRound = (outline: Path, clearance: number): Rolled<FreeLoops> => {
  requireClearance(clearance);
  const unsound = findUnsound(outline);
  if (unsound) return { ok: false, fault: unsound };
  const walk = weld(outline.pieces, true);
  const obstacle = walk.map((w) => w.piece);
  const tree = boxTreeOf(obstacle);
  const crossing = findSelfCrossing(outline, walk, tree);
  if (crossing) return { ok: false, fault: crossing };
  const inside = signedArea(outline) > 0;
  const { elements, loops } = freeLoops(walk, obstacle, clearance, NO_CAPS, !inside, tree);
  const outer = outermost(loops);
  const wanted = inside ? loops.filter((l) => l.area > 0) : outer ? [outer] : [];
  return { ok: true, value: { elements, loops: wanted.map(fromStart) } };
};

const NO_CAPS: ReadonlySet<number> = new Set();

const requireClearance = (clearance: number): void => {
  if (!(clearance > 0 && clearance < Number.POSITIVE_INFINITY))
    throw new RangeError(`A clearance must be positive and finite, not ${clearance}.`);
};

/** The loop round everything: the only one that has the free space outside. */
const outermost = (loops: readonly Loop[]): Loop | undefined => {
  let best: Loop | undefined;
  for (const loop of loops) if (loop.area < (best?.area ?? 0)) best = loop;
  return best;
};

/**
 * Of the stretches of a loop that follow on one another on the left side, the most: none where the loop has none. There
 * is one way along it, but for hairs of a side that has the other one within rounding.
 */
const longestAlong = (
  loop: readonly Stretch[],
  isLeft: (s: Stretch) => boolean,
  elements: readonly OffsetElement[],
): Stretch[] => {
  let best: Stretch[] = [];
  let most = 0;
  for (let i = 0; i < loop.length; i++) {
    if (!isLeft(loop[i]!) || isLeft(loop.at(i - 1)!)) continue;
    const along: Stretch[] = [];
    let length = 0;
    for (let k = i; isLeft(loop[k % loop.length]!); k++) {
      along.push(loop[k % loop.length]!);
      length += pieceLength(pieceOf(along.at(-1)!, elements));
    }
    if (length > most) [best, most] = [along, length];
  }
  return best;
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
const fromStart = (loop: Loop): Loop => {
  const { stretches, pieces } = loop;
  let lowest = 0;
  for (let i = 1; i < stretches.length; i++) {
    const a = stretches[i]!;
    const b = stretches[lowest]!;
    if (a.element < b.element || (a.element === b.element && a.t0 < b.t0)) lowest = i;
  }
  if (lowest === 0) return loop;
  return { ...loop, stretches: turned(stretches, lowest), pieces: turned(pieces, lowest) };
};

const turned = <T>(list: readonly T[], first: number): T[] => [...list.slice(first), ...list.slice(0, first)];

/**
 * Pieces that follow on one another within rounding, as pieces that follow on one another to the last bit. Two
 * closed forms of one crossing differ in their last digits; the earlier one is taken for both. `bridge` is told
 * the number of each piece before which a line goes.
 */
const joined = (pieces: readonly Piece[], bridge: (before: number) => void): Piece[] => {
  const out: Piece[] = [];
  let end = pieces[0]?.from;
  for (let i = 0; i < pieces.length; i++) {
    const piece = pieces[i]!;
    const { from } = piece;
    if (from.x === end!.x && from.y === end!.y) out.push(piece);
    else if (distance(end!, from) > SAME_END) {
      bridge(i);
      out.push(line(end!, from), piece);
    } else out.push(startingAt(piece, end!));
    end = piece.to;
  }
  return out;
};

const NOWHERE = (): void => {};

const stitched = (
  stretches: readonly Stretch[],
  pieces: readonly Piece[],
  elements: readonly OffsetElement[],
  edge: Path,
  closed: boolean,
  clearance: number,
): StitchedEdge => {
  const edgeLength = pathLength(edge);
  const contacts = stretches.map(({ element, t0, t1 }): Contact => {
    const { contactFrom, contactTo } = elements[element]!;
    const span = contactTo - contactFrom;
    return { from: contactFrom + span * t0, to: contactFrom + span * t1 };
  });
  // The foot stands still while the needle goes along a bridge.
  const bridges: number[] = [];
  const path = { pieces: joined(pieces, (i) => bridges.push(i)), closed };
  for (const i of bridges.reverse())
    contacts.splice(i, 0, { from: contacts[i]!.from, to: contacts[i]!.from });
  const unreached = findUnreached(path, contacts, edge, edgeLength, clearance);
  return { clearance, edge, edgeLength, path, contacts, unreached };
};
