/** When two swags look the same to an eye. */

import { distance } from '../geometry/index.ts';
import { type Probes, probesOf } from './same-line.ts';
import type { Seat } from './seat.ts';
import { SEEN } from './weights.ts';

/**
 * Shares by which depths and spans of two designs differ before an eye tells the designs apart: twice as much as
 * within one, where they stand in a row. Common practice, no source.
 */
export const SIZE_SEEN = { depth: 2 * SEEN.depth, span: 1.5 * SEEN.span };
/**
 * Shares by which swags of one template differ in depth or span, to be seen as two kinds that take turns and not as a
 * slip. Common practice, no source.
 */
const KINDS_SEEN = { depth: 1 / 4, span: 1 / 3 };

/** Whether two kinds that take turns would look like one: of two templates they may be of one size, where their lines differ. */
export const lookAlike = (a: Seat, b: Seat, probes: Probes): boolean =>
  isOfSize(a, b, KINDS_SEEN) && (a.shape.stitching === b.shape.stitching || isLineAlike(a, b, probes));

/** Halves of swags whose lines stay within this share of their width and depth look alike. Common practice, no source. */
const LINE_SEEN = 0.08;

/** Whether they are as deep and as wide, but for such shares. */
export const isOfSize = (a: Seat, b: Seat, { depth, span } = SIZE_SEEN): boolean =>
  isWithin(a.depth, b.depth, depth) && isWithin(a.span, b.span, span);

const isWithin = (a: number, b: number, share: number): boolean =>
  Math.min(a, b) >= (1 - share) * Math.max(a, b);

/** Each line seen in its own width and depth. */
export const isLineAlike = (a: Seat, b: Seat, probes: Probes): boolean => {
  const others = probesOf(b, probes);
  const inOwn = ({ x, y }: { x: number; y: number }, { pose }: Seat) => ({
    x: x / pose.halfSpan,
    y: y / pose.depth,
  });
  return probesOf(a, probes).every((p, k) => distance(inOwn(p, a), inOwn(others[k]!, b)) <= LINE_SEEN);
};
