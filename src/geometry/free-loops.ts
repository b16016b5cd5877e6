/**
 * The loops along which the centre of a disc can go while the disc touches an edge and overlaps it nowhere.
 *
 * The offset elements are cut wherever they meet; a stretch between two cuts is kept when its middle is no
 * nearer to the edge than c; and the kept stretches are linked, end to start, into loops with the free space
 * on their left. In exact arithmetic every kept stretch is part of a loop. Where rounding breaks one, because
 * many elements run through one point or beside one another, the same is done for a clearance larger by a
 * hundredth of the promised accuracy: that parts what coincides, and closes a slot that leaves the foot no play. Where
 * two ways are one within rounding for so long that this does not help, every cut is a place where one way may go on as
 * the other; what is then in no loop must lie beside one.
 */

import type { BoxTree } from './box-tree.ts';
import { type Crossing, crossings, shareOf, TOUCH } from './crossing.ts';
import { cutShares, smoothJoints } from './cuts.ts';
import { linkLoops, type Run, runOf } from './loops.ts';
import { distanceToPiece, liesAlong, nearnessOf } from './nearness.ts';
import { DISTANCE_NOISE, type OffsetElement, offsetElements } from './offset-elements.ts';
import { signedArea } from './path.ts';
import { type Piece, pieceAt, pieceDirection, pieceLength, trimPiece } from './piece.ts';
import { add, distance, dot, leftOf, type Point, scale, subtract } from './point.ts';
import type { Welded } from './weld.ts';

/** A slot is open to the foot when it is wider than twice the clearance by more than this (mm). */
const SLOT_PLAY = 1e-7;

/** Stretches shorter than this (mm) are left out; the runs beside them link across. */
const CRUMB = 1e-9;

/**
 * A stretch no longer than this (mm) does not speak for the next one. At the bottom of a pocket that the disc just
 * fits into, such as a concave arc of exactly the clearance, nothing is left for an offset to meet: there the disc
 * is stuck, and it is free as soon as the hair of play no longer leads into a wall that it goes along at a right
 * angle, which by Pythagoras is √(2c · play) away. Twice that is taken.
 */
const tellingLength = (c: number): number => 2 * Math.sqrt(2 * c * SLOT_PLAY);

/** A stretch of an offset element that the disc can reach without touching anything else. */
export interface Stretch {
  readonly element: number;
  readonly t0: number;
  readonly t1: number;
}

export interface Loop {
  readonly stretches: readonly Stretch[];
  /** The stretches as pieces. */
  readonly pieces: readonly Piece[];
  /** mm², negative for the loop round everything. */
  readonly area: number;
}

export interface FreeLoops {
  readonly elements: readonly OffsetElement[];
  readonly loops: readonly Loop[];
}

/** How much (mm) the clearance is enlarged at each new attempt, and how often that is tried. */
const NUDGE = 1e-8;
const MOST_NUDGES = 6;

/** How far apart (mm) the two ends of one crossing may come out; the first is what nearly tangent pieces need. */
const LINK = 1e-6;
const LOOSE_LINK = 1e-4;

/**
 * `walk` comes back to where it starts; `caps` are the pieces of it that an end of the edge follows; `outside` says
 * that the disc goes round it from outside, so that there must be a loop round everything; `tree` is the one over the
 * obstacle, where it is at hand.
 */
export const freeLoops = (
  walk: readonly Welded[],
  obstacle: readonly Piece[],
  clearance: number,
  caps: ReadonlySet<number>,
  outside: boolean,
  tree?: BoxTree,
): FreeLoops => {
  const near = nearnessOf(obstacle, tree);
  let first: FreeLoops | undefined;
  for (const isWhole of [true, false])
    for (let k = 0; k <= MOST_NUDGES; k++) {
      const c = clearance + k * NUDGE;
      const elements = offsetElements(walk, c, caps);
      // A larger clearance has its own play in it: a place where that is all there is has none to be asked about.
      const play = k === 0 ? SLOT_PLAY : 0;
      const stretches = keptStretches(elements, near.nearer, c, play, isWhole);
      const runs = isWhole ? joinedRuns(stretches, elements) : stretches.map((s) => [s]);
      const slack = k < MOST_NUDGES / 2 ? LINK : LOOSE_LINK;
      const linked = linkLoops(
        runs.map((run) => endsOf(run, elements)),
        slack,
      );
      const found = { elements, loops: linked.map((indices) => loopOf(indices, runs, elements)) };
      const isClosed = !outside || found.loops.some((l) => l.area < 0);
      if (isClosed && isComplete(linked, runs, found, isWhole ? slack : 0)) return found;
      first ??= found;
    }
  return first!;
};

const endsOf = (run: readonly Stretch[], elements: readonly OffsetElement[]): Run => {
  const [first, last] = [run[0]!, run.at(-1)!];
  return runOf(elements[first.element]!.piece, elements[last.element]!.piece, first.t0, last.t1);
};

const loopOf = (
  indices: readonly number[],
  runs: readonly (readonly Stretch[])[],
  elements: readonly OffsetElement[],
): Loop => {
  const stretches: Stretch[] = [];
  const pieces: Piece[] = [];
  for (const i of indices) {
    for (const s of runs[i]!) {
      stretches.push(s);
      pieces.push(pieceOf(s, elements));
    }
  }
  const left = withoutSteps(stretches, pieces, elements);
  return {
    stretches: left.stretches,
    pieces: left.pieces,
    area: signedArea({ pieces: left.pieces, closed: true }),
  };
};

/**
 * A loop without steps back. Where pieces cross at a small angle they lie deeper than c beyond that by less than a
 * distance can be told by, so all are kept to their ends, and the way from one to the next would be a step back: along a
 * concave arc of nearly the clearance, of which the disc leaves out all but a thousandth of a millimetre, or between
 * lines of a millionth with a kink as small. The loop is cut where the pieces about such a step cross, and what lies
 * between is left out.
 */
const withoutSteps = (
  stretches: Stretch[],
  pieces: Piece[],
  elements: readonly OffsetElement[],
): Pick<Loop, 'stretches' | 'pieces'> => {
  const count = stretches.length;
  let isOut: Uint8Array | undefined;
  for (let i = 0; i < count; i++) {
    const gap = stepBack(pieces[i]!, pieces[(i + 1) % count]!);
    if (gap === 0 || count < 2) continue;
    const found = crossingAbout(pieces, i, gap);
    if (!found) continue;
    const { first, second, meeting } = found;
    const [before, after] = [stretches[first]!, stretches[second]!];
    stretches[first] = { ...before, t1: before.t0 + (before.t1 - before.t0) * meeting.a };
    stretches[second] = { ...after, t0: after.t0 + (after.t1 - after.t0) * meeting.b };
    for (const k of [first, second]) pieces[k] = pieceOf(stretches[k]!, elements);
    for (let k = (first + 1) % count; k !== second; k = (k + 1) % count) {
      isOut ??= new Uint8Array(count);
      isOut[k] = 1;
    }
  }
  if (!isOut) return { stretches, pieces };
  const out = isOut;
  return { stretches: stretches.filter((_, k) => !out[k]), pieces: pieces.filter((_, k) => !out[k]) };
};

/** How far (mm) the way goes back from one piece of a loop to the next; 0 where it does not. */
const stepBack = (before: Piece, after: Piece): number => {
  const gap = distance(before.to, after.from);
  if (!(gap > CRUMB)) return 0;
  return dot(pieceDirection(before, 1), subtract(after.from, before.to)) < 0 ? gap : 0;
};

/**
 * The pieces about a step back that cross nearest to it, over pieces that are shorter than the step. Where the crossing
 * lies a hair beyond the end of one, the later piece begins on the earlier one as far as can be told.
 */
const crossingAbout = (
  pieces: readonly Piece[],
  at: number,
  gap: number,
): { readonly first: number; readonly second: number; readonly meeting: Crossing } | undefined => {
  const count = pieces.length;
  const { to } = pieces[at]!;
  const { from } = pieces[(at + 1) % count]!;
  const isNear = (m: Crossing): boolean =>
    distance(m.point, to) <= gap + CRUMB && distance(m.point, from) <= gap + CRUMB && m.a > 0 && m.b < 1;
  const isShort = (k: number): boolean => pieceLength(pieces[k]!) < gap;
  // As many pieces are looked over as lie between the two that are tried.
  for (let over = 0; over <= Math.min(MOST_OVER, count - 2); over++)
    for (let back = 0; back <= over; back++) {
      const first = (at - back + count) % count;
      const second = (at + 1 + over - back) % count;
      let k = (first + 1) % count;
      while (k !== second && isShort(k)) k = (k + 1) % count;
      if (k !== second) continue;
      const meeting = [
        ...crossings(pieces[first]!, pieces[second]!),
        ...begins(pieces[first]!, pieces[second]!),
      ].find(isNear);
      if (meeting) return { first, second, meeting };
    }
  return undefined;
};

/** Where a piece begins on another one. */
const begins = (on: Piece, piece: Piece): readonly Crossing[] => {
  const a = distanceToPiece(on, piece.from) <= TOUCH ? shareOf(on, piece.from) : undefined;
  return a === undefined ? [] : [{ point: piece.from, a, b: 0 }];
};

/** More pieces than this, each shorter than a step back, are no step but a tangle. */
const MOST_OVER = 6;

/**
 * Whether every run is in a loop, but for such as fit into the slack of linking, and where none fits for such as lie
 * beside a loop: two ways that are one as far as can be told.
 */
const isComplete = (
  linked: readonly (readonly number[])[],
  runs: readonly (readonly Stretch[])[],
  { elements, loops }: FreeLoops,
  slack: number,
): boolean => {
  const isUsed = new Array<boolean>(runs.length).fill(false);
  for (const indices of linked) for (const i of indices) isUsed[i] = true;
  const isSpare = (p: Piece): boolean =>
    slack > 0 ? pieceLength(p) <= slack : loops.some((l) => liesAlong(p, l.pieces, LINK));
  return runs.every((run, i) => isUsed[i] || run.every((s) => isSpare(pieceOf(s, elements))));
};

export const pieceOf = (s: Stretch, elements: readonly OffsetElement[]): Piece => {
  const { piece } = elements[s.element]!;
  return s.t0 === 0 && s.t1 === 1 ? piece : trimPiece(piece, s.t0, s.t1);
};

/**
 * Cuts the elements at their meetings and keeps the stretches at which the disc touches nothing else. Whether
 * it does can change only at a meeting, so what holds at the end of one element holds at the start of the next
 * where it goes on smoothly: along a curve of a hundred arcs one look is enough.
 */
const keptStretches = (
  elements: readonly OffsetElement[],
  nearer: (p: Point, reach: number) => boolean,
  c: number,
  play: number,
  /** Whether stretches of one element that follow on one another are one. */
  isWhole: boolean,
): readonly Stretch[] => {
  const pieces = elements.map((e) => e.piece);
  const smooth = smoothJoints(pieces);
  const cuts = cutShares(pieces, smooth);
  const telling = tellingLength(c);
  const kept: Stretch[] = [];
  // Whether the disc is free at the end of the last element; undefined where a cut is too near to say.
  let atEnd: boolean | undefined;
  for (let element = 0; element < elements.length; element++) {
    const piece = pieces[element]!;
    const shares = cuts[element]!;
    const length = pieceLength(piece);
    const atStart = element > 0 && smooth[element - 1] ? atEnd : undefined;
    // By far the most elements are met by nothing.
    if (shares.length === 2) {
      const free = length > CRUMB && (atStart ?? isFree(piece, 0.5, nearer, c, play));
      if (free) kept.push({ element, t0: 0, t1: 1 });
      atEnd = length > telling ? free : undefined;
      continue;
    }
    atEnd = undefined;
    let t0 = 0;
    for (let i = 1; i < shares.length; i++) {
      const t1 = shares[i]!;
      if (!((t1 - t0) * length > CRUMB)) continue;
      const known = i === 1 ? atStart : undefined;
      const free = known ?? isFree(piece, (t0 + t1) / 2, nearer, c, play);
      if (free) {
        const last = kept.at(-1);
        if (isWhole && last?.element === element && last.t1 === t0)
          kept[kept.length - 1] = { element, t0: last.t0, t1 };
        else kept.push({ element, t0, t1 });
      }
      if (i === shares.length - 1 && (t1 - t0) * length > telling) atEnd = free;
      t0 = t1;
    }
    // A crumb at the very end belongs to the stretch before it.
    const last = kept.at(-1);
    if (t0 < 1 && last?.element === element && last.t1 === t0) kept[kept.length - 1] = { ...last, t1: 1 };
  }
  return kept;
};

/** Free means: no nearer than c here, and still so a hair farther out, so that a slot without play is closed. */
const isFree = (
  piece: Piece,
  t: number,
  nearer: (p: Point, reach: number) => boolean,
  c: number,
  play: number,
): boolean => {
  const at = pieceAt(piece, t);
  const reach = c - DISTANCE_NOISE;
  if (nearer(at, reach)) return false;
  return play === 0 || !nearer(add(at, scale(leftOf(pieceDirection(piece, t)), play)), reach);
};

/** Stretches that follow on one another without a gap, in the walk's cyclic order, as runs. */
const joinedRuns = (
  stretches: readonly Stretch[],
  elements: readonly OffsetElement[],
): readonly (readonly Stretch[])[] => {
  const count = elements.length;
  const follows = (a: Stretch, b: Stretch): boolean =>
    a.element === b.element
      ? a.t1 === b.t0
      : b.element === (a.element + 1) % count &&
        a.t1 === 1 &&
        b.t0 === 0 &&
        distance(elements[a.element]!.piece.to, elements[b.element]!.piece.from) <= LINK;
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
