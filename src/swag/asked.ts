/**
 * What a plan asks of the span, depth, use of the band, repeats and gap of its swags, and how far a figure is from it.
 * Up to a twentieth beside what is asked about is as good as asked for, since an eye does not see it.
 */

import { stepOf } from '../length/index.ts';
import { type CountWish, isAbout, type Plan, type Wish } from '../plan/index.ts';

const WISH_KEYS = ['span', 'depth', 'use', 'repeats', 'gap'] as const;
export type WishKey = (typeof WISH_KEYS)[number];

/** One thing that is asked for. Lengths in mm, shares from 0 to 1. */
export interface Asked {
  readonly key: WishKey;
  readonly wish: CountWish;
  /** The place of the one run that it is asked of, where it is not asked of all. */
  readonly on: number | undefined;
  /** The place of the one kind that it is asked of, where kinds take turns. */
  readonly of: number | undefined;
  /** How far beside an exact figure is still that figure. */
  readonly play: number;
}

export interface Wishes {
  readonly asked: readonly Asked[];
  /** Whether what misses a range is left out, or comes the later, the farther off it is. */
  readonly ranges: 'bind' | 'rank';
}

/** A difference of a twentieth is about where an eye sees it (common practice, no source). */
export const UNSEEN = 0.05;
/** Rounding of a chain of closed forms, in mm or as a share. */
export const ASKED_NOISE = 1e-7;
/** What nothing is held against (mm): an inch. */
const LEAST_SCALE = 25.4;
/** Of shares that are printed in whole percents. */
const HALF_PERCENT = 0.005;
/** A gap that is given is kept to this, mm. */
const GAP_KEPT = 1e-2;

/** Undefined where nothing is asked. */
export const wishesOf = (plan: Plan, ranges: Wishes['ranges'] = 'bind'): Wishes | undefined => {
  const asked = askedIn(plan);
  return asked.length > 0 ? { asked, ranges } : undefined;
};

export const askedIn = ({ swag, marks }: Plan): readonly Asked[] => {
  const half = stepOf(marks.style) / 2;
  const asked: Asked[] = [];
  const ask = (
    key: WishKey,
    wish: CountWish | 'auto' | undefined,
    play: number,
    on?: number,
    of?: number,
  ): void => {
    if (wish !== undefined && wish !== 'auto') asked.push({ key, wish, play, on, of });
  };
  const kinds = swag.alternate ?? [swag];
  kinds.forEach(({ span, depth }, k) => {
    const of = kinds.length > 1 ? k : undefined;
    ask('span', span, half, undefined, of);
    ask('depth', depth, half, undefined, of);
  });
  ask('use', swag.use, HALF_PERCENT);
  const { repeats = [] } = swag;
  repeats.forEach((wish, i) => {
    ask('repeats', wish, 0, repeats.length === 1 ? undefined : i);
  });
  ask('gap', swag.gap, GAP_KEPT);
  return asked;
};

/** Whether it only ranks. */
export const onlyRanks = ({ wish }: Pick<Asked, 'wish'>): boolean => isAbout(wish);

/** The least and the most that a wish allows; of odd and even ones, and what is asked about, anything. */
export const boundsOf = ({ wish, play }: Pick<Asked, 'wish' | 'play'>): readonly [number, number] => {
  if (typeof wish === 'number') return [wish - play, wish + play];
  if (typeof wish === 'string' || isAbout(wish)) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return [wish.least ?? Number.NEGATIVE_INFINITY, wish.most ?? Number.POSITIVE_INFINITY];
};

/** How far a figure is from what is asked, as a share of it; 0 where it meets it, or nobody sees that it does not. */
export const missOf = (asked: Pick<Asked, 'wish' | 'play'>, value: number): number => {
  const { wish } = asked;
  if (wish === 'odd' || wish === 'even') return (value % 2 === 1) === (wish === 'odd') ? 0 : 1 / value;
  if (isAbout(wish)) return Math.max(0, Math.abs(value / wish.about - 1) - UNSEEN);
  const [least, most] = boundsOf(asked);
  const off = Math.max(least - value, value - most);
  const scale = scaleOf(wish);
  return off > 2 * ASKED_NOISE ? off / scale : 0;
};

const scaleOf = (wish: Wish): number => {
  if (typeof wish === 'number') return wish > 0 ? wish : LEAST_SCALE;
  if (isAbout(wish)) return wish.about;
  return wish.least || wish.most || LEAST_SCALE;
};
