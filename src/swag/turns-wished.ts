/** How far a border whose swags turn the corner is from what is asked, for any rise of its corner. */

import { missOf, UNSEEN, type Wishes } from './asked.ts';
import type { Counts } from './counts.ts';
import { countsBeside } from './counts.ts';
import type { Shape } from './shape.ts';
import { addMisses, type Measuring, type Missed, useOfTop } from './wishes.ts';

/** Of each wish the worst side's or corner's miss, summed up; the rises of the corner and the sides in radians. */
export const missedAtRises = (
  shape: Shape,
  repeats: readonly number[],
  gap: number,
  to: Measuring,
): ((corner: number, sides: readonly number[]) => number) => {
  const { wishes } = to;
  const { chord, chordAngle, support } = shape;
  const asksUse = wishes.asked.some(({ key }) => key === 'use');
  const figures = (rise: number) => ({
    depth: chord * Math.sin(rise),
    ...(asksUse && { use: useOfTop(support(Math.sin(rise - chordAngle), Math.cos(rise - chordAngle)), to) }),
  });
  return (corner, sides) => {
    let missed: Missed = addMisses(undefined, wishes, undefined, figures(corner));
    sides.forEach((rise, i) => {
      const span = 2 * chord * Math.cos(rise);
      missed = addMisses(missed, wishes, i, { ...figures(rise), span, repeats: repeats[i]!, gap });
    });
    return missed.reduce((sum, miss) => sum + miss, 0);
  };
};

/**
 * Beside the counts that a common depth asks of a side, those that are no farther from the asked count than the
 * longest side's own: what is asked comes before like depths.
 */
export const countsAsked = (
  wishes: Wishes | undefined,
  counts: Counts,
  i: number,
  wanted: number,
  anchor: { readonly i: number; readonly repeats: number },
): readonly number[] => {
  const of = (side: number) =>
    wishes?.asked.find(({ key, on }) => key === 'repeats' && (on === undefined || on === side));
  const mine = of(i);
  if (!mine) return [];
  const { wish } = mine;
  if (typeof wish === 'string')
    return missOf(mine, Math.floor(wanted)) > 0 ? countsBeside({ ...counts, only: wish }, wanted) : [];
  const its = of(anchor.i);
  const off = UNSEEN + (its ? missOf(its, anchor.repeats) : 0);
  const [least, most] =
    typeof wish === 'number'
      ? [wish, wish]
      : 'about' in wish
        ? [wish.about, wish.about]
        : [wish.least ?? 1, wish.most ?? Number.POSITIVE_INFINITY];
  return countsBeside(counts, Math.min(most * (1 + off), Math.max(least * (1 - off), wanted)));
};
