/** How far a border whose swags turn the corner is from what is asked, for any rise of its corner. */

import { missOf, onlyRanks, UNSEEN, type Wishes, type WishKey } from './asked.ts';
import type { Lay } from './corner.ts';
import { type Counts, countsBeside } from './counts.ts';
import type { Shape } from './shape.ts';
import type { Window } from './windows.ts';
import { type Measuring, useOfTop } from './wishes.ts';

/**
 * How far counts and a gap (mm), where it is the same whatever the corner, are from what is asked of them: of each the
 * worst, summed up.
 */
export const missedByCounts = (
  repeats: readonly number[],
  gap: number | undefined,
  { wishes }: Measuring,
): number => {
  let sum = 0;
  for (const one of wishes.asked) {
    if (one.key === 'gap' && gap !== undefined) sum += missOf(one, gap);
    if (one.key !== 'repeats') continue;
    let worst = 0;
    for (let i = 0; i < repeats.length; i++)
      if (one.on === undefined || one.on === i) worst = Math.max(worst, missOf(one, repeats[i]!));
    sum += worst;
  }
  return sum;
};

/** How far the gaps of sides (mm) are from what is asked of them. */
export const missedByGaps = (gaps: readonly number[], { wishes }: Measuring): number => {
  let sum = 0;
  for (const one of wishes.asked) {
    if (one.key !== 'gap') continue;
    let worst = 0;
    for (const gap of gaps) worst = Math.max(worst, missOf(one, gap));
    sum += worst;
  }
  return sum;
};

/**
 * How far poses are from what is asked of span, depth and use: of each the worst side or corner, summed up. The rises
 * are in radians. Undefined where nothing of it is asked.
 */
export const missedByRises = (
  ofSides: Shape,
  ofCorner: Shape,
  to: Measuring,
): ((corner: number, sides: readonly number[]) => number) | undefined => {
  // Windows hold what binds already.
  const asked = to.wishes.asked.filter(
    (one) =>
      (one.key === 'span' || one.key === 'depth' || one.key === 'use') &&
      (to.wishes.ranges === 'rank' || onlyRanks(one)),
  );
  if (asked.length === 0) return undefined;
  const figure = (key: WishKey, rise: number, { chord, chordAngle, support }: Shape): number => {
    if (key === 'span') return 2 * chord * Math.cos(rise);
    if (key === 'depth') return chord * Math.sin(rise);
    return useOfTop(support(Math.sin(rise - chordAngle), Math.cos(rise - chordAngle)), to);
  };
  return (corner, sides) => {
    let sum = 0;
    for (const one of asked) {
      let worst =
        one.key === 'span' && to.field.corners !== 'across'
          ? 0
          : missOf(one, figure(one.key, corner, ofCorner));
      for (const rise of sides) worst = Math.max(worst, missOf(one, figure(one.key, rise, ofSides)));
      sum += worst;
    }
    return sum;
  };
};

/**
 * The fewest and the most swags that a side (mm) takes between corners and with spans that lie within some rises, and
 * with gaps (mm) from one to another, both with their chords (mm): n = (L − 2a) / (2h + g).
 */
export const countsPossible = (
  length: number,
  sides: readonly Window[],
  corners: readonly Window[],
  [narrow, wide]: readonly [number, number],
  { sides: chord, corner }: Readonly<Record<'sides' | 'corner', number>>,
  { ofSpan, ofDepth }: Lay,
): readonly [number, number] => {
  const toCorner = (rise: number): number => corner * (ofSpan * Math.cos(rise) + ofDepth * Math.sin(rise));
  const farthest = Math.atan2(ofDepth, ofSpan);
  const ends = corners
    .flatMap((w) => [w.from, Math.min(w.to, Math.max(w.from, farthest)), w.to])
    .map(toCorner);
  const widest = 2 * chord * Math.cos(sides[0]!.from);
  const narrowest = 2 * chord * Math.cos(sides.at(-1)!.to);
  return [
    (length - 2 * Math.max(...ends) - wide) / (widest + wide),
    (length - 2 * Math.min(...ends) - narrow) / (narrowest + narrow),
  ];
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
