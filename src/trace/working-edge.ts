/**
 * The working edge is one part of a template's outline: from the heel to the crown end, the foot outside. What
 * part, a person may say; otherwise the long straight side is the back, a straight side at either end of it is cut
 * square, and what is left is the edge. It is laid as template files want it: the heel at the origin, the long
 * axis along x (the back's direction, or else from the heel to the crown end), the foot on the left.
 */

import type { Problem } from '../document/index.ts';
import {
  angleOf,
  compose,
  distance,
  dot,
  type Motion,
  move,
  movePath,
  nearnessOf,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pieceAt,
  pieceDirection,
  pieceLength,
  reversePath,
  shift,
  slicePath,
  subtract,
  turn,
  turnBetween,
} from '../geometry/index.ts';

/** An outline turns by more than this (radians) at a corner: what template files count as one. */
export const OUTLINE_CORNER = (10 * Math.PI) / 180;

/** A corner's number, counted from 1, or a place in mm in the outline's own frame. */
export type PlaceOnOutline =
  | { readonly kind: 'corner'; readonly number: number }
  | { readonly kind: 'point'; readonly point: Point };

export interface EdgeChoice {
  readonly heel?: PlaceOnOutline | undefined;
  readonly crown?: PlaceOnOutline | undefined;
  /** On which side the foot runs, on the way from the heel to the crown end, as one looks at the picture. */
  readonly foot?: 'left' | 'right' | undefined;
  /** What is laid level; the long straight side, where there is one, unless she says. */
  readonly level?: Level | undefined;
}

/** The long straight side, the line from heel to crown end, or nothing: as it lies in the picture. */
export type Level = 'back' | 'ends' | 'picture';

export interface WorkingEdge {
  /** In the template's frame, mm. */
  readonly edge: Path;
  /** From the outline's frame to the template's. */
  readonly motion: Motion;
  /** Whether the outline had to be turned over: the foot ran on the right. */
  readonly turnedOver: boolean;
  /** What was laid level: the back, or without one the line from the heel to the crown end. */
  readonly level: Level;
  /** How far that was turned from level in the picture (radians). */
  readonly skew: number;
  /** Where heel and crown end lie in the outline's frame. */
  readonly heel: Point;
  readonly crown: Point;
}

export type WorkingEdgeResult =
  | { readonly ok: true; readonly found: WorkingEdge }
  | { readonly ok: false; readonly problem: Problem };

export interface MarkedCorner {
  readonly at: number;
  readonly point: Point;
}

/** The joints at which a path turns, a closed one also where it closes. */
export const cornersOf = (path: Path): readonly MarkedCorner[] => {
  const found: MarkedCorner[] = [];
  let at = 0;
  path.pieces.forEach((piece, i) => {
    const before = i > 0 ? path.pieces[i - 1] : path.closed ? path.pieces.at(-1) : undefined;
    const turned = before ? turnBetween(pieceDirection(before, 1), pieceDirection(piece, 0)) : 0;
    if (Math.abs(turned) > OUTLINE_CORNER) found.push({ at, point: piece.from });
    at += pieceLength(piece);
  });
  return found;
};

/** The corners that a person may name by their numbers: the ends of an open outline are some too. */
export const numberedCorners = (path: Path): readonly MarkedCorner[] => {
  const [first, last] = [path.pieces[0], path.pieces.at(-1)];
  if (path.closed || !first || !last) return cornersOf(path);
  return [{ at: 0, point: first.from }, ...cornersOf(path), { at: pathLength(path), point: last.to }];
};

/** A side is straight when its middle is off by no more than this (mm), or this share of its length. */
const STRAIGHT = 0.25;
const STRAIGHT_SHARE = 0.003;
/** The back is at least this share of the outline's length: a shorter straight side is a side. */
const BACK_SHARE = 0.2;
/** A side cut off square meets the back at an angle within this (radians) of a right one. */
const SQUARE_WITHIN = (50 * Math.PI) / 180;
/** A place that a person points at is meant to be the corner if it is this near (mm). */
const SNAP = 2;
/** A place that is farther than this (mm) from the outline was never meant to be on it. */
const FARTHEST = 10;

interface Side {
  /** Along the outline, mm; `to` may lie beyond the whole where the side goes over the start. */
  readonly from: number;
  readonly to: number;
  readonly chord: Point;
}

/** `outline` runs clockwise with y up, or is open; corners are those of `numberedCorners`, or as the trace found them. */
export const findWorkingEdge = (
  outline: Path,
  corners: readonly MarkedCorner[],
  choice: EdgeChoice,
): WorkingEdgeResult =>
  outline.closed ? edgeOfClosed(outline, corners, choice) : edgeOfOpen(outline, corners, choice);

const edgeOfClosed = (
  outline: Path,
  corners: readonly MarkedCorner[],
  choice: EdgeChoice,
): WorkingEdgeResult => {
  const whole = pathLength(outline);
  const sides = straightSides(outline, corners, whole);
  const back = longestOf(sides);
  const isBack = back && sizeOf(back) >= BACK_SHARE * whole ? back : undefined;
  let heel: number;
  let crown: number;
  let clockwise: boolean;
  if (choice.heel || choice.crown) {
    if (!choice.heel || !choice.crown) return refuse(BOTH);
    const a = placeAlong(outline, corners, choice.heel, '--heel');
    const b = placeAlong(outline, corners, choice.crown, '--crown');
    if (typeof a !== 'number') return refuse(a);
    if (typeof b !== 'number') return refuse(b);
    heel = a;
    crown = b;
    const forward = (((crown - heel) % whole) + whole) % whole;
    const middle = isBack && (isBack.from + isBack.to) / 2;
    // Without a word about the foot the way is the one that leaves out the back, or the longer one.
    const holdsBack = middle !== undefined && (((middle - heel) % whole) + whole) % whole < forward;
    clockwise = choice.foot
      ? choice.foot === 'left'
      : middle !== undefined
        ? !holdsBack
        : forward >= whole / 2;
  } else {
    if (!isBack) return refuse(NO_BACK);
    const guess = guessFrom(isBack, sides, whole);
    if (!guess) return refuse(NO_BACK);
    // Clockwise the foot is on the left; with the foot on the right the same part is walked the other way.
    clockwise = choice.foot !== 'right';
    heel = clockwise ? guess.from : guess.to;
    crown = clockwise ? guess.to : guess.from;
  }
  const [from, to] = clockwise ? [heel, crown] : [crown, heel];
  const end = from + ((((to - from) % whole) + whole) % whole || whole);
  const twice = openPath([...outline.pieces, ...outline.pieces]);
  const start = ((from % whole) + whole) % whole;
  const stretch = slicePath(twice, start, start + end - from);
  const way = clockwise ? stretch : reversePath(stretch);
  return laid(openPath(tidy(way.pieces)), !clockwise, isBack?.chord, choice.level);
};

const edgeOfOpen = (
  outline: Path,
  corners: readonly MarkedCorner[],
  choice: EdgeChoice,
): WorkingEdgeResult => {
  const whole = pathLength(outline);
  const heel = choice.heel ? placeAlong(outline, corners, choice.heel, '--heel') : 0;
  const crown = choice.crown ? placeAlong(outline, corners, choice.crown, '--crown') : whole;
  if (typeof heel !== 'number') return refuse(heel);
  if (typeof crown !== 'number') return refuse(crown);
  const stretch = slicePath(outline, Math.min(heel, crown), Math.max(heel, crown));
  if (stretch.pieces.length === 0) return refuse(SAME);
  const way = heel <= crown ? stretch : reversePath(stretch);
  const back = backBeside(outline, heel, crown);
  return laid(openPath(tidy(way.pieces)), choice.foot === 'right', back, choice.level);
};

/** The back of an open outline of which only a part is the edge: the longest straight side of the rest. */
const backBeside = (outline: Path, heel: number, crown: number): Point | undefined => {
  const whole = pathLength(outline);
  const [first, last] = [Math.min(heel, crown), Math.max(heel, crown)];
  const beside = straightSides(outline, numberedCorners(outline), whole).filter(
    (s) => s.to <= first + 1e-6 || (s.from >= last - 1e-6 && s.to <= whole + 1e-6),
  );
  const back = longestOf(beside);
  return back && sizeOf(back) >= BACK_SHARE * whole ? back.chord : undefined;
};

const refuse = (problem: Problem): WorkingEdgeResult => ({ ok: false, problem });

const SAY = 'say where it runs with --heel and --crown: the number of a corner, or a place as x,y';
const NO_BACK: Problem = {
  code: 'no-back',
  message: 'no long straight side shows which part of the outline is the working edge',
  hint: SAY,
};
const BOTH: Problem = { code: 'one-end', message: 'only one end of the edge is given', hint: SAY };
const SAME: Problem = { code: 'same-end', message: 'heel and crown end are the same place', hint: SAY };

const sizeOf = (s: Side): number => s.to - s.from;

const longestOf = (sides: readonly Side[]): Side | undefined =>
  sides.reduce<Side | undefined>((a, s) => (a && sizeOf(a) >= sizeOf(s) ? a : s), undefined);

/** Runs between corners that are straight enough, and straight pieces of the rest. */
const straightSides = (outline: Path, corners: readonly MarkedCorner[], whole: number): readonly Side[] => {
  const sides: Side[] = [];
  const twice = openPath([...outline.pieces, ...outline.pieces]);
  corners.forEach((corner, i) => {
    const next = corners[(i + 1) % corners.length]!;
    const to = next.at > corner.at ? next.at : next.at + whole;
    const run = slicePath(twice, corner.at, to);
    const a = corner.point;
    const chord = subtract(next.point, a);
    const c = Math.hypot(chord.x, chord.y);
    if (!(c > 0)) return;
    const off = Math.max(
      ...run.pieces.flatMap((p) =>
        [0.25, 0.5, 0.75, 1].map((t) => {
          const q = subtract(pieceAt(p, t), a);
          return Math.abs(chord.x * q.y - chord.y * q.x) / c;
        }),
      ),
    );
    if (off <= Math.max(STRAIGHT, STRAIGHT_SHARE * c)) sides.push({ from: corner.at, to, chord });
  });
  let at = 0;
  for (const piece of outline.pieces) {
    const length = pieceLength(piece);
    const middle = at + length / 2;
    if (piece.kind === 'line' && !sides.some((s) => holds(s, middle, whole)))
      sides.push({ from: at, to: at + length, chord: subtract(piece.to, piece.from) });
    at += length;
  }
  return sides;
};

const holds = (s: Side, at: number, whole: number): boolean =>
  (at >= s.from && at <= s.to) || (at + whole >= s.from && at + whole <= s.to);

/** From the end of the back round to its start, less a straight side at each end that is about square to it. */
const guessFrom = (
  back: Side,
  sides: readonly Side[],
  whole: number,
): { readonly from: number; readonly to: number } | undefined => {
  const same = (a: number, b: number): boolean => {
    const d = (((a - b) % whole) + whole) % whole;
    return Math.min(d, whole - d) < 1e-6;
  };
  const isSquare = (s: Side): boolean =>
    Math.abs(Math.abs(turnBetween(back.chord, s.chord)) - Math.PI / 2) <= SQUARE_WITHIN;
  const first = sides.find((s) => s !== back && same(s.from, back.to) && isSquare(s));
  const last = sides.find((s) => s !== back && same(s.to, back.from) && isSquare(s));
  const from = back.to + (first ? sizeOf(first) : 0);
  const to = back.from + whole - (last ? sizeOf(last) : 0);
  return to - from > 1 ? { from, to } : undefined;
};

const placeAlong = (
  outline: Path,
  corners: readonly MarkedCorner[],
  place: PlaceOnOutline,
  option: '--heel' | '--crown',
): number | Problem => {
  if (place.kind === 'corner') {
    const corner = corners[place.number - 1];
    if (corner) return corner.at;
    return {
      code: 'no-such-corner',
      key: option,
      message: 'the outline has no corner of this number',
      found: String(place.number),
      expected: corners.length > 0 ? `1 to ${corners.length}, or a place as x,y` : 'a place as x,y',
    };
  }
  const near = corners.find((c) => distance(c.point, place.point) <= SNAP);
  if (near) return near.at;
  const away = nearnessOf(outline.pieces).distance(place.point);
  if (away <= FARTHEST) return alongNearest(outline, place.point);
  return {
    code: 'off-the-outline',
    key: option,
    message: 'this place is not on the outline',
    found: `a place ${Math.round(away)} mm away from it`,
    expected: `one on it, or within ${FARTHEST} mm`,
  };
};

/** The length along a path of its point nearest to a point, mm. */
export const alongNearest = (path: Path, p: Point): number => {
  const index = nearnessOf(path.pieces).nearest(p);
  const before = path.pieces.slice(0, Math.max(0, index)).reduce((sum, q) => sum + pieceLength(q), 0);
  const piece = path.pieces[index];
  if (!piece) return 0;
  // Along a line or an arc the distance falls and then rises: a search by thirds finds the least.
  let low = 0;
  let high = 1;
  for (let i = 0; i < 80; i++) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (distance(pieceAt(piece, a), p) < distance(pieceAt(piece, b), p)) high = b;
    else low = a;
  }
  return before + ((low + high) / 2) * pieceLength(piece);
};

/** Slivers that a cut leaves at its ends go to their neighbours. */
const SLIVER = 0.15;

const tidy = (pieces: readonly Piece[]): readonly Piece[] => {
  const kept = [...pieces];
  while (kept.length > 1 && pieceLength(kept[0]!) < SLIVER) kept.shift();
  while (kept.length > 1 && pieceLength(kept.at(-1)!) < SLIVER) kept.pop();
  return kept;
};

/** `back` is its chord, either way. */
const laid = (
  way: Path,
  turnedOver: boolean,
  back: Point | undefined,
  asked: Level | undefined,
): WorkingEdgeResult => {
  const heel = way.pieces[0]?.from;
  const crown = way.pieces.at(-1)?.to;
  if (!heel || !crown || !(distance(heel, crown) > 1)) return refuse(SAME);
  const chord = subtract(crown, heel);
  const level = asked === 'picture' || asked === 'ends' ? asked : back ? 'back' : 'ends';
  const side = { back: back ?? chord, ends: chord, picture: { x: 1, y: 0 } }[level];
  const along = dot(side, chord) < 0 ? { x: -side.x, y: -side.y } : side;
  const flipped: Motion = turnedOver
    ? { flip: true, angle: 0, x: 0, y: 0 }
    : { flip: false, angle: 0, x: 0, y: 0 };
  const turned = compose(turn(-angleOf(move(flipped, along))), flipped);
  const at = move(turned, heel);
  const motion = compose(shift(-at.x, -at.y), turned);
  const tilt = Math.atan(along.y / along.x);
  const edge = movePath(way, motion);
  return {
    ok: true,
    found: {
      edge,
      motion,
      turnedOver,
      level,
      skew: Number.isFinite(tilt) ? tilt : Math.PI / 2,
      heel,
      crown,
    },
  };
};
