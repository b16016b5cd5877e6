/**
 * Swags that are all but flat. No cost keeps them from coming first where something else is asked about, say a span, so
 * a search leaves them out; but not where a plan says how deep its swags are to be, nor where it finds nothing else, so
 * that what is asked, and what was taken once, is laid.
 */

import type { Fit } from './fit.ts';
import { kindsIn, seatsOf } from './fit.ts';
import type { Seat, SeatRules } from './seat.ts';
import { DRAPE } from './weights.ts';
import { clip, type Window } from './windows.ts';
import { ofKind } from './wishes.ts';

type Rules = Pick<SeatRules, 'mayBeFlat' | 'wishes'>;

/** Whether some are left out: not where it is asked how deep they are, or how far they reach into the band. */
export const leavesOutFlat = ({ mayBeFlat, wishes }: Rules): boolean =>
  !mayBeFlat && !wishes?.asked.some(({ key }) => key === 'depth' || key === 'use');

/** With both ends on the mirrors, depth over span is half the tangent of the rise. */
const LINE_RISE = Math.atan(2 * DRAPE.line);

/** Of some rises (radians) those at which a half swag, its ends on the mirrors, is not all but flat where that is left out. */
export const withoutFlat = (windows: readonly Window[], rules: Rules): readonly Window[] =>
  leavesOutFlat(rules) ? clip(windows, LINE_RISE, Math.PI) : windows;

/** Whether a swag is left out for that. */
export const isLeftOut = ({ depth, span }: Pick<Seat, 'depth' | 'span'>, rules: Rules): boolean =>
  depth < (1 - ROUNDING) * DRAPE.line * span && leavesOutFlat(rules);

/** Of a rise that ends a window, as a share. */
const ROUNDING = 1e-9;

/** Whether any swag of a fit is, its corners' too; of two kinds each goes by what is asked of it. */
export const hasLeftOut = (fit: Fit, { mayBeFlat, wishes }: Rules): boolean =>
  kindsIn(fit).some((kind, k) => {
    const own = { mayBeFlat, wishes: wishes && ofKind(wishes, k) };
    return seatsOf(kind).some((seat) => isLeftOut(seat, own));
  });
