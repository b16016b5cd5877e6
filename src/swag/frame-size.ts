/** How large a finished frame is, from edge to edge of its outermost stitching. */

import { layOf } from './corner.ts';
import type { Field } from './field.ts';
import { cornerSwag, type Fit, seatsOf } from './fit.ts';
import { reachAt } from './pose.ts';
import { type RoundFrame, roundFrame } from './round-frame.ts';
import type { Seat } from './seat.ts';

export interface FrameSize {
  /** mm across, channels included; a round frame is as wide as it is high. */
  readonly width: number;
  readonly height: number;
  /** mm across what the frame leaves free in its middle. */
  readonly inside: { readonly width: number; readonly height: number };
  /** Of a round frame: how many swags, mm from its centre to their starts and crowns, and how far channels reach beyond them. */
  readonly round?: RoundSize;
}

type RoundSize = Pick<RoundFrame, 'count' | 'startRadius' | 'crownRadius' | 'away'>;

/** How far (mm) a swag that stands across a corner reaches from the two start lines, square to the nearer. */
const squareReach = ({ shape, pose }: Seat, field: Field): number =>
  reachAt(shape, pose.tilt + shape.chordAngle, field.corners === 'none' ? 0 : layOf(field).turned);

/** Undefined for strips and for borders round a quilt, whose size is their seams'. `outward` is the channels' reach, mm; a round frame's own unless given. */
export const frameSize = (
  { field, fit }: { readonly field: Field; readonly fit: Fit },
  outward?: number,
): FrameSize | undefined => {
  const { around } = field;
  const round = roundFrame({ field, fit });
  if (round) {
    const { farthest, nearest, away, towards } = round;
    const points =
      field.from === 'inner' ? { away: outward ?? away, towards } : { away, towards: outward ?? towards };
    const across = 2 * (farthest + points.away);
    const inside = 2 * (nearest - points.towards);
    return { width: across, height: across, inside: { width: inside, height: inside }, round };
  }
  if (around.kind !== 'block') return undefined;
  const corner = cornerSwag(fit);
  const last = fit.beyond && { ...fit.beyond, at: fit.beyond.field.startMargin - field.startMargin };
  const tops = [
    ...seatsOf(fit).map((s) =>
      s === corner?.seat && corner.kind === 'across' ? squareReach(s, field) : s.pose.top,
    ),
    ...(last ? seatsOf(last.fit).map((s) => s.pose.top + last.at) : []),
  ];
  const reach = Math.max(...tops) + (outward ?? 0);
  const fromInner = field.from === 'inner';
  // mm from the block's edge to the outermost stitching, and to the innermost.
  const out = fromInner ? field.startMargin + reach : field.width - field.startMargin;
  const within = fromInner ? field.startMargin : field.width - field.startMargin - reach;
  const sideOf = (name: string): number => {
    const seam = field.runs.find((r) => r.name === name)?.seam ?? 0;
    return fromInner ? seam : seam - 2 * field.width;
  };
  const [w, h] = [sideOf('top'), sideOf('right')];
  return {
    width: w + 2 * out,
    height: h + 2 * out,
    inside: { width: w + 2 * within, height: h + 2 * within },
  };
};
