/** Where a corner is looked for that makes the depths of a border most alike: what is known before any count. */

import type { Lay } from './corner.ts';
import type { CorneredField } from './field.ts';
import type { SeatRules } from './seat.ts';
import { gapAsked } from './seat.ts';
import type { Way } from './setting.ts';
import type { Window } from './windows.ts';
import type { Measuring } from './wishes.ts';

/** The valid rises of sides and corners. */
export interface TurnWindows {
  readonly sides: readonly Window[];
  readonly corners: readonly Window[];
}

/** Where a corner is looked for: a way on a field, with a gap (mm) between neighbours. */
export interface Ground extends Pick<SeatRules, 'widestSpan' | 'widestGap'> {
  readonly way: Way;
  /** What the swag over a corner is made with. */
  readonly over: Way;
  readonly field: CorneredField;
  readonly lay: Lay;
  /** Angles (radians) to a start line of the lines that a half keeps before. */
  readonly lines: readonly number[];
  readonly gap: number;
  readonly windows: TurnWindows;
  readonly asked: Measuring | undefined;
  /** Whether poses are left out that come over their neighbours' cloth, or run doubled beside them. */
  readonly keepsApart: boolean;
  /** The windows of what bulges past none of the lines by more (mm) than is left there, by the sine of its angle. */
  readonly keepBefore: (leaves: (sine: number) => number) => TurnWindows;
}

export interface Corner {
  readonly repeats: readonly number[];
  /** The corner's rise, radians. */
  readonly rise: number;
  /** How much the depths differ, mm. */
  readonly spread: number;
  /** How far it is from what is asked, all in all, as a share. */
  readonly missed: number;
  /** What of both is to be least (mm): what is asked comes before like depths. */
  readonly blame: number;
}

/** mm from the start line's corner to the start mark of a corner's half that rises so (radians). */
export const toStart = ({ ofSpan, ofDepth }: Lay, chord: number, rise: number): number =>
  chord * (ofSpan * Math.cos(rise) + ofDepth * Math.sin(rise));

/** How steeply (radians) so many swags rise on what two corners leave of a side (mm), with a gap before each and after the last. */
export const riseOnSide = (rest: number, repeats: number, ground: Ground): number =>
  Math.acos(Math.min(1, halfSpanOnSide(rest, repeats, ground) / ground.way.shape.chord));

export const halfSpanOnSide = (rest: number, repeats: number, ground: Ground): number =>
  (rest - gapOnSide(rest, repeats, ground) * (repeats + 1)) / (2 * repeats);

export const gapOnSide = (rest: number, repeats: number, ground: Ground): number =>
  gapAsked(rest, repeats, repeats + 1, ground.gap, ground);
