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
 * Requires finite pieces with length, each starting where the one before ends: anything else is a fault.
 * Orientation: the foot is on the left; arcs that turn left are concave to it.
 * Decided cases: a slot is open to the foot when it is wider than 2c by more than SLOT_PLAY, and closed when
 * it is exactly 2c; a concave arc of radius up to c is not entered; a kink below KINK adds no arc.
 * Cost: sorting and a sweep, plus a few tree visits a stretch: near n log n for the edges that occur.
 */

import { cutShares } from './cuts.ts';
import { type EdgeFault, findEdgeFault } from './edge-fault.ts';
import { linkLoops, type Run } from './loops.ts';
import { nearnessOf } from './nearness.ts';
import { type OffsetElement, offsetElements } from './offset-elements.ts';
import { closedPath, openPath, type Path, pathLength, signedArea } from './path.ts';
import { type Piece, pieceAt, pieceDirection, pieceLength, reversePiece, trimPiece } from './piece.ts';
import { add, distance, leftOf, type Point, scale } from './point.ts';
import { type Contact, findUnreached, type Unreached } from './unreached.ts';

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

/** Rounding of a distance, mm: a hundred times the noise of coordinates of a few metres. */
const DISTANCE_NOISE = 1e-11;

/** A slot is open to the foot when it is wider than twice the clearance by more than this (mm). */
export const SLOT_PLAY = 1e-7;

/** Stretches shorter than this (mm) are left out; the runs beside them link across. */
const CRUMB = 1e-9;

/** A stretch of an offset element that the disc can reach without touching anything else. */
interface Stretch {
  readonly element: number;
  readonly t0: number;
  readonly t1: number;
}

/** Rolls the foot along an open edge, from its first point (the heel) to its last (the crown end). */
export const rollFoot = (edge: Path, clearance: number, options: RollOptions = {}): Rolled<StitchedEdge> => {
  const fault = findEdgeFault(edge);
  if (fault) return { ok: false, fault };
  const count = edge.pieces.length;
  const walk = [...edge.pieces, ...edge.pieces.map(reversePiece).reverse()];
  const elements = offsetElements(walk, clearance, new Set([count - 1, 2 * count - 1]));
  const edgeLength = pathLength(edge);
  const outer = outermost(loopsOf(elements, edge.pieces, clearance));
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
      if (s.element === crownCap && options.roundEnd) kept.push(shorten(s, elements, options.roundEnd));
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
  const fault = findEdgeFault(outline);
  if (fault) return { ok: false, fault };
  const elements = offsetElements(outline.pieces, clearance, new Set());
  const loops = loopsOf(elements, outline.pieces, clearance);
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

interface Loop {
  readonly stretches: readonly Stretch[];
  /** mm², negative for the loop round everything. */
  readonly area: number;
}

const loopsOf = (elements: readonly OffsetElement[], edge: readonly Piece[], c: number): readonly Loop[] => {
  const runs = joinedRuns(keptStretches(elements, edge, c), elements);
  const ends = runs.map((run): Run => {
    const first = run[0]!;
    const last = run.at(-1)!;
    const a = elements[first.element]!.piece;
    const b = elements[last.element]!.piece;
    return {
      from: pieceAt(a, first.t0),
      to: pieceAt(b, last.t1),
      setOut: pieceDirection(a, first.t0),
      arrive: pieceDirection(b, last.t1),
    };
  });
  return linkLoops(ends).map((indices) => {
    const stretches = indices.flatMap((i) => runs[i]!);
    return { stretches, area: signedArea(closedPath(stretches.map((s) => pieceOf(s, elements)))) };
  });
};

const outermost = (loops: readonly Loop[]): readonly Stretch[] | undefined => {
  let best: Loop | undefined;
  for (const loop of loops) if (loop.area < (best?.area ?? 0)) best = loop;
  return best?.stretches;
};

const pieceOf = (s: Stretch, elements: readonly OffsetElement[]): Piece => {
  const { piece } = elements[s.element]!;
  return s.t0 === 0 && s.t1 === 1 ? piece : trimPiece(piece, s.t0, s.t1);
};

/** Cuts the elements at their meetings and keeps the stretches at which the disc touches nothing else. */
const keptStretches = (
  elements: readonly OffsetElement[],
  edge: readonly Piece[],
  c: number,
): readonly Stretch[] => {
  const near = nearnessOf(edge);
  const cuts = cutShares(elements.map((e) => e.piece));
  const kept: Stretch[] = [];
  for (let element = 0; element < elements.length; element++) {
    const { piece } = elements[element]!;
    const length = pieceLength(piece);
    let t0 = 0;
    for (const t1 of cuts[element]!) {
      if (!((t1 - t0) * length > CRUMB)) continue;
      if (isFree(piece, (t0 + t1) / 2, near.nearer, c)) {
        const last = kept.at(-1);
        if (last?.element === element && last.t1 === t0) kept[kept.length - 1] = { element, t0: last.t0, t1 };
        else kept.push({ element, t0, t1 });
      }
      t0 = t1;
    }
  }
  return kept;
};

/** Free means: no nearer than c here, and still so a hair farther out, so that a slot without play is closed. */
const isFree = (
  piece: Piece,
  t: number,
  nearer: (p: Point, reach: number) => boolean,
  c: number,
): boolean => {
  const at = pieceAt(piece, t);
  const reach = c - DISTANCE_NOISE;
  if (nearer(at, reach)) return false;
  return !nearer(add(at, scale(leftOf(pieceDirection(piece, t)), SLOT_PLAY)), reach);
};

/** Stretches that follow on one another without a gap, in the walk's cyclic order, as runs. */
const joinedRuns = (
  stretches: readonly Stretch[],
  elements: readonly OffsetElement[],
): readonly (readonly Stretch[])[] => {
  const count = elements.length;
  const follows = (a: Stretch, b: Stretch): boolean =>
    (b.element === (a.element + 1) % count || (a.element === b.element && a.t1 === b.t0)) &&
    distance(pieceAt(elements[a.element]!.piece, a.t1), pieceAt(elements[b.element]!.piece, b.t0)) <= CRUMB;
  const runs: Stretch[][] = [];
  for (const s of stretches) {
    const run = runs.at(-1);
    if (run && follows(run.at(-1)!, s)) run.push(s);
    else runs.push([s]);
  }
  if (runs.length > 1 && follows(runs.at(-1)!.at(-1)!, runs[0]![0]!)) {
    runs[0] = [...runs.pop()!, ...runs[0]!];
  }
  return runs;
};

/** A cap is followed only as far as the turn that was asked for. */
const shorten = (s: Stretch, elements: readonly OffsetElement[], most: number): Stretch => {
  const { piece } = elements[s.element]!;
  const size = piece.kind === 'arc' ? Math.abs(piece.sweep) : 0;
  return { ...s, t1: Math.min(s.t1, s.t0 + Math.min(most, Math.PI) / size) };
};

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
    const before = pieces.at(-1);
    // Two closed forms of one crossing differ in their last digits; the path takes the earlier one for both.
    pieces.push(before ? { ...piece, from: before.to } : piece);
    const span = e.contactTo - e.contactFrom;
    contacts.push({ from: e.contactFrom + span * s.t0, to: e.contactFrom + span * s.t1 });
  }
  const path = asPath(pieces);
  return {
    clearance,
    edge,
    edgeLength,
    path,
    contacts,
    unreached: findUnreached(path, contacts, edge, edgeLength),
  };
};
