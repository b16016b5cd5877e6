/** At which rises a way may be laid on the sides, and over a corner. */

import { askedOfCorners, askedOfSides } from './asked-rises.ts';
import { linesBeside } from './beside.ts';
import { layOf } from './corner.ts';
import type { CorneredField } from './field.ts';
import { withRoomForNecks } from './neck.ts';
import { bulgeFor, type SeatRules } from './seat.ts';
import type { Way } from './setting.ts';
import { smoothRises } from './smooth.ts';
import { type Limits, limitsOf, riseOfBulge, type Window, windowsOf } from './windows.ts';

/** A way whose tilt follows from its span, and the rises at which it may be laid. */
export interface Rising {
  readonly way: Way;
  readonly limits: Limits;
  readonly windows: readonly Window[];
  /** The highest rise at which it keeps before all lines beside it, with the gap that is given, or none. */
  readonly highest: number;
}

/** The highest rise (radians) at which it bulges past none of the lines beside it by more than is left there, by the sine of its angle. */
export const highestRise = (
  { shape }: Way,
  limits: Limits,
  lines: readonly number[],
  leaves: (sine: number) => number,
): number => Math.min(...lines.map((line) => riseOfBulge(shape, limits, leaves(Math.sin(line)), line)));

const keepingGap = (way: Way, limits: Limits, field: CorneredField, { gap }: SeatRules): number =>
  highestRise(way, limits, linesBeside(field), (sine) => bulgeFor((gap === 'auto' ? 0 : gap) * sine));

export const risingOnSides = (way: Way, field: CorneredField, rules: SeatRules, outward: number): Rising => {
  const { shape } = way;
  const limits = limitsOf(shape, rules.room);
  const windows = askedOfSides(windowsOf(limits, Math.PI / 2), shape, field, outward, rules);
  return { way, limits, windows, highest: keepingGap(way, limits, field, rules) };
};

/** `known` is the same way on the sides, where it has been looked at. */
export const risingOverCorners = (
  way: Way,
  field: CorneredField,
  rules: SeatRules,
  outward: number,
  known?: Rising,
): Rising => {
  const { shape } = way;
  const { kind, turned, mirror } = layOf(field);
  const isAcross = kind === 'across';
  const limits = (!isAcross && known?.limits) || limitsOf(shape, rules.room, turned);
  const own = windowsOf(limits, mirror);
  const apart = isAcross ? own : withRoomForNecks(own, shape, mirror);
  const windows = rules.smoothCorners ? smoothRises(apart, shape, mirror) : apart;
  return {
    way,
    limits,
    windows: askedOfCorners(windows, shape, field, outward, rules),
    highest: known?.highest ?? keepingGap(way, limits, field, rules),
  };
};
