/**
 * The rises at which a half swag meets the ranges that a plan asks of it. With the chord C the span is 2·C·cos(rise) and
 * the depth C·sin(rise), so these follow at once; how far it reaches into its band is found as the far margin is.
 */

import { isAbout } from '../plan/index.ts';
import { ASKED_NOISE, type Asked, boundsOf, onlyRanks, UNSEEN, type Wishes, type WishKey } from './asked.ts';
import type { Field } from './field.ts';
import { withoutFlat } from './flat.ts';
import { useOf } from './score.ts';
import type { SeatRules } from './seat.ts';
import type { Shape } from './shape.ts';
import { clip, lowerThan, type Window, without } from './windows.ts';

type Rules = Pick<SeatRules, 'mayBeFlat' | 'wishes'>;

/** Of some rises those that sides may have. */
export const askedOfSides = (
  windows: readonly Window[],
  shape: Shape,
  field: Field,
  outward: number,
  rules: Rules,
): readonly Window[] => asked(windows, shape, field, outward, rules, ['span', 'depth', 'use']);

/** Of some rises those that corners may have; round a corner the span is told along two sides. */
export const askedOfCorners = (
  windows: readonly Window[],
  shape: Shape,
  field: Field,
  outward: number,
  rules: Rules,
): readonly Window[] =>
  asked(windows, shape, field, outward, rules, [
    'depth',
    'use',
    ...(field.corners === 'across' ? (['span'] as const) : []),
  ]);

const asked = (
  windows: readonly Window[],
  shape: Shape,
  field: Field,
  outward: number,
  rules: Rules,
  keys: readonly WishKey[],
): readonly Window[] => {
  const { wishes } = rules;
  const drapes = withoutFlat(windows, rules);
  if (wishes?.ranges !== 'bind') return drapes;
  return wishes.asked
    .filter((one) => keys.includes(one.key) && !onlyRanks(one))
    .reduce((left, one) => narrowed(left, one, shape, field, outward), drapes);
};

const narrowed = (
  windows: readonly Window[],
  one: Asked,
  shape: Shape,
  field: Field,
  outward: number,
): readonly Window[] => {
  // What lies on the very end of a range lies within it.
  const [least, most] = boundsOf(one).map((end, k) => end + (k === 0 ? -1 : 1) * ASKED_NOISE) as [
    number,
    number,
  ];
  const { chord } = shape;
  switch (one.key) {
    case 'span':
      if (least > 2 * chord) return [];
      return clip(windows, acos(most / (2 * chord)), acos(least / (2 * chord)));
    case 'depth':
      if (least > chord) return [];
      return clip(windows, Math.PI / 2 - acos(least / chord), Math.PI / 2 - acos(most / chord));
    case 'use': {
      // What is used grows evenly with how far the stitching reaches.
      const none = useOf(0, field, outward);
      const each = useOf(1, field, outward) - none;
      const reach = (share: number): number => (share - none) / each;
      const low = most < 1 ? lowerThan(windows, shape, reach(most)) : windows;
      return least > none ? without(low, lowerThan(low, shape, reach(least))) : low;
    }
    default:
      return windows;
  }
};

/**
 * How wide (mm) swags whose rises lie in some windows may be at most, to be as asked; undefined where nothing of that is
 * asked. What is asked about counts only where a gap is asked for, too: else the least gap is what suits. `inPrint`
 * takes a figure for all that is printed as it.
 */
export const widestAsked = (
  { chord }: Shape,
  windows: readonly Window[],
  wishes: Wishes | undefined,
  inPrint = false,
): number | undefined => {
  if (!wishes || windows.length === 0) return undefined;
  const sizes = wishes.asked.filter(({ key }) => key === 'span' || key === 'depth' || key === 'use');
  const binding = wishes.ranges === 'bind' && sizes.some((one) => !onlyRanks(one));
  const hasGap = wishes.asked.some(({ key }) => key === 'gap');
  const widest = sizes.flatMap(({ key, wish, play }) => {
    if (isAbout(wish) ? !hasGap : typeof wish !== 'number') return [];
    const of = (sense: 1 | -1): number =>
      isAbout(wish) ? wish.about * (1 + sense * UNSEEN) : Number(wish) + (inPrint ? sense * play : 0);
    if (key === 'span') return [of(1)];
    return key === 'depth' && of(-1) < chord ? [2 * Math.sqrt(chord * chord - of(-1) ** 2)] : [];
  });
  const most = Math.min(
    binding ? 2 * chord * Math.cos(windows[0]!.from) : Number.POSITIVE_INFINITY,
    ...widest,
  );
  // Of two figures the one may ask for narrower ones than the play of the other leaves.
  const narrowest = 2 * chord * Math.cos(windows.at(-1)!.to) + ASKED_NOISE;
  return Number.isFinite(most) ? Math.max(most, narrowest) : undefined;
};

/** The same of spans alone, whatever their rises: undefined where no widest span is asked. */
export const widestSpanAsked = (wishes: Wishes | undefined): number | undefined => {
  if (!wishes) return undefined;
  const hasGap = wishes.asked.some(({ key }) => key === 'gap');
  const spans = wishes.asked.flatMap((one) => {
    const { key, wish } = one;
    if (key !== 'span') return [];
    if (isAbout(wish)) return hasGap ? [wish.about * (1 + UNSEEN)] : [];
    if (typeof wish === 'number') return [wish];
    return wishes.ranges === 'bind' ? [boundsOf(one)[1]] : [];
  });
  const most = Math.min(...spans);
  return Number.isFinite(most) ? most : undefined;
};

const acos = (share: number): number => Math.acos(Math.min(1, Math.max(-1, share)));
