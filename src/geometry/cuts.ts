/** All the places at which a set of pieces meet one another: the closed forms for every two whose boxes touch. */

import { type BoxTree, boxTreeOf, eachClosePair } from './box-tree.ts';
import { crossings, crossingsOfNeighbours } from './crossing.ts';
import { isStraightOn, type Piece } from './piece.ts';
import { distance, type Point } from './point.ts';

export interface Meeting {
  readonly first: number;
  readonly second: number;
  readonly point: Point;
  /** Shares along the first and the second piece. */
  readonly a: number;
  readonly b: number;
}

/** Boxes are grown by this (mm) on every side, so that pieces which only touch are not passed over by rounding. */
const BOX_SLACK = 1e-8;

/**
 * Calls `visit` for every meeting of two pieces (first < second); stops early when it returns true. Where one
 * piece goes on smoothly into the next, their joint is no meeting. `tree` and `smooth` are those of these very
 * pieces, where they are at hand.
 */
export const eachMeeting = (
  pieces: readonly Piece[],
  visit: (m: Meeting) => boolean | undefined,
  tree: BoxTree = boxTreeOf(pieces),
  smooth: readonly boolean[] = smoothJoints(pieces),
): void => {
  const last = pieces.length - 1;
  eachClosePair(tree, 2 * BOX_SLACK, (first, second) => {
    if (second === first + 1 && smooth[first]) return false;
    if (first === 0 && second === last && smooth[last]) return false;
    const p = pieces[first]!;
    const q = pieces[second]!;
    const isRound = first === 0 && second === last && last > 1 && distance(q.to, p.from) <= JOINT_GAP;
    if (isRound) {
      for (const c of crossingsOfNeighbours(q, p))
        if (visit({ first, second, point: c.point, a: c.b, b: c.a })) return true;
      return false;
    }
    const isNext = second === first + 1 && distance(p.to, q.from) <= JOINT_GAP;
    for (const c of isNext ? crossingsOfNeighbours(p, q) : crossings(p, q))
      if (visit({ first, second, point: c.point, a: c.a, b: c.b })) return true;
    return false;
  });
};

/** Ends this near (mm) are one joint: rounding, and no more. */
const JOINT_GAP = 1e-10;

/** For each piece whether it goes on smoothly into the next; for the last, into the first. */
export const smoothJoints = (pieces: readonly Piece[]): boolean[] => {
  const smooth: boolean[] = [];
  for (let i = 1; i < pieces.length; i++) smooth.push(goesOn(pieces[i - 1]!, pieces[i]!));
  if (pieces.length > 0) smooth.push(goesOn(pieces.at(-1)!, pieces[0]!));
  return smooth;
};

/**
 * Whether a piece goes on smoothly into another. Two circles, or a line and a circle, that are tangent meet
 * nowhere else; only one circle that goes round into itself does.
 */
const goesOn = (a: Piece, b: Piece): boolean => {
  if (!(distance(a.to, b.from) <= JOINT_GAP)) return false;
  const round = (a.kind === 'arc' ? Math.abs(a.sweep) : 0) + (b.kind === 'arc' ? Math.abs(b.sweep) : 0);
  if (!(round < ONE_ROUND)) return false;
  return isStraightOn(a, b, SMOOTH_TURN);
};

/** Radians within which a joint is smooth: rounding, and nothing that could make a crossing to be seen. */
const SMOOTH_TURN = 1e-11;

/** Less than a full turn (radians) by more than the tangency of two arcs could hide. */
const ONE_ROUND = 6;

/** For each piece the shares at which others meet it, ascending, from 0 to 1 inclusive. */
export const cutShares = (
  pieces: readonly Piece[],
  smooth: readonly boolean[] = smoothJoints(pieces),
): readonly (readonly number[])[] => {
  // Most pieces meet nothing: they all share one list.
  const cuts = new Array<number[]>(pieces.length).fill(UNCUT);
  const cut = (i: number, share: number): void => {
    const before = cuts[i]!;
    const shares = before === UNCUT ? [0, 1] : before;
    cuts[i] = shares;
    // Put in its place: a piece is rarely met more than a few times.
    let k = shares.length;
    for (; k > 0 && shares[k - 1]! > share; k--) shares[k] = shares[k - 1]!;
    shares[k] = share;
  };
  const visit = (m: Meeting): boolean => {
    cut(m.first, m.a);
    cut(m.second, m.b);
    return false;
  };
  eachMeeting(pieces, visit, boxTreeOf(pieces), smooth);
  return cuts;
};

/** The shares of a piece that nothing meets. Never written to. */
const UNCUT: number[] = [0, 1];
