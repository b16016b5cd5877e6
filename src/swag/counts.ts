/** How many swags a side may have, and which counts on four sides look alike. */

import type { CountWish } from '../plan/index.ts';
import { byEvenness, type Tied } from './ties.ts';

/** The counts that a plan allows for a side: from a fewest (1 unless said) up to a most, or every other of them. */
export interface Counts {
  readonly from?: number;
  readonly upTo: number;
  readonly only?: 'odd' | 'even';
}

/** The most swags that a search puts on a side; a plan may ask for more by number. */
const MOST_COUNT = 40;

/** The swags of all sides. */
export const swagsOf = (repeats: readonly number[]): number => repeats.reduce((sum, n) => sum + n, 0);

/** What a wish leaves of the counts; one that only ranks leaves them all. */
export const countsFor = (wish: CountWish | undefined): Counts => {
  if (typeof wish === 'number') return { from: wish, upTo: wish };
  if (wish === 'odd' || wish === 'even') return { upTo: MOST_COUNT, only: wish };
  if (wish === undefined) return { upTo: MOST_COUNT };
  if ('about' in wish) return { upTo: Math.max(MOST_COUNT, 2 * wish.about) };
  const { least: from = 1, most } = wish;
  return { from, upTo: most ?? Math.max(MOST_COUNT, 2 * from) };
};

/** All counts, as far as a wish makes it worth while to look. */
export const anyCounts = (wish: CountWish | undefined): Counts => {
  const { from = 1, upTo } = countsFor(wish);
  return { upTo: Math.max(MOST_COUNT, 2 * from, upTo) };
};

/** The one count that is allowed, where there is only one. */
export const fixedCount = ({ from, upTo }: Counts): number | undefined => (from === upTo ? upTo : undefined);

export const allows = ({ from = 1, upTo, only }: Counts, n: number): boolean =>
  n >= from && n <= upTo && (only === undefined || (n % 2 === 1) === (only === 'odd'));

/** The counts from `least` to `most` (any real numbers) that a plan allows; one that it fixes in any case. */
export const countsBetween = (counts: Counts, least: number, most: number): readonly number[] => {
  const fixed = fixedCount(counts);
  if (fixed !== undefined) return [fixed];
  const list: number[] = [];
  for (let n = Math.max(counts.from ?? 1, Math.ceil(least)); n <= Math.min(most, counts.upTo); n++)
    if (allows(counts, n)) list.push(n);
  return list;
};

/** The allowed counts next to a wanted one (any real number), below it and above. */
export const countsBeside = (counts: Counts, wanted: number): readonly number[] => {
  let below = Math.min(Math.floor(wanted), counts.upTo);
  let above = Math.max(Math.ceil(wanted), counts.from ?? 1);
  if (!allows(counts, below)) below--;
  if (!allows(counts, above)) above++;
  return (below === above ? [below] : [below, above]).filter((n) => allows(counts, n));
};

/** Opposite sides that differ by less than this share of a swag are as long to an eye. */
const AS_LONG = 1 / 2;

/** One of two opposite sides: how many swags, on how many mm. */
export interface Counted {
  readonly repeats: number;
  readonly length: number;
}

/**
 * Whether opposite sides that are as long to an eye have different counts: their swags would then differ across
 * the quilt by more than the sides do.
 */
export const differAcross = (a: Counted, b: Counted): boolean =>
  a.repeats !== b.repeats &&
  Math.abs(a.length - b.length) < AS_LONG * Math.min(a.length / a.repeats, b.length / b.repeats);

/**
 * Whether two sides of a border, by their places in top, right, bottom, left, are opposite and have counts that
 * differ across it. Anything but four sides has no opposites, and counts that a plan gives are as it wants them.
 */
export const lopsidedPair = (
  lengths: readonly number[],
  counts: readonly Counts[],
): ((i: number, repeats: number, k: number, others: number) => boolean) => {
  if (lengths.length !== 4) return () => false;
  const mayAgree = [0, 1].map((i) => haveCommon(counts[i]!, counts[i + 2]!));
  return (i, repeats, k, others) =>
    (i + k) % 2 === 0 &&
    mayAgree[i % 2]! &&
    differAcross({ repeats, length: lengths[i]! }, { repeats: others, length: lengths[k]! });
};

/** Whether there is a count that both allow; where there is none, the plan asks for unlike sides. */
const haveCommon = (a: Counts, b: Counts): boolean => {
  for (let n = Math.max(a.from ?? 1, b.from ?? 1); n <= Math.min(a.upTo, b.upTo); n++)
    if (allows(a, n) && allows(b, n)) return true;
  return false;
};

/** The same for the counts of all sides. */
export const lopsidedCounts = (
  lengths: readonly number[],
  counts: readonly Counts[],
): ((repeats: readonly number[]) => boolean) => {
  const isPair = lopsidedPair(lengths, counts);
  return (repeats) =>
    repeats.length === 4 &&
    (isPair(0, repeats[0]!, 2, repeats[2]!) || isPair(1, repeats[1]!, 3, repeats[3]!));
};

/**
 * The side by whose counts designs are grouped: the longest, and of several the one whose opposite is longer. What is
 * left of them are images of one another in the quilt, so that it makes no difference which of them is taken.
 */
export const anchorOf = (lengths: readonly number[]): number => {
  const opposite = (i: number): number => lengths[(i + 2) % lengths.length]!;
  return lengths.reduce(
    (best, length, i) =>
      length > lengths[best]! || (length === lengths[best] && opposite(i) > opposite(best)) ? i : best,
    0,
  );
};

/** All ways to take one of each. */
export const product = (choices: readonly (readonly number[])[]): readonly (readonly number[])[] => {
  let all: (readonly number[])[] = [[]];
  for (const some of choices) {
    const longer: (readonly number[])[] = [];
    for (const head of all) for (const x of some) longer.push([...head, x]);
    all = longer;
  }
  return all;
};

/** A count that is possible on one side, with how deep and wide it makes swags and how far they reach (mm). */
export interface Choice extends Tied {
  readonly span: number;
  readonly top: number;
}

/** What a search for the best choices asks of those who know what a choice is worth; F sums up what is chosen. */
export interface Worth<C extends Choice, F> {
  /** Whether two sides may not have these counts beside one another. */
  readonly isBarred: (i: number, repeats: number, k: number, others: number) => boolean;
  /** The sum of what is chosen so far and a choice for one more side; undefined where that cannot be made. */
  readonly add: (sum: F | undefined, side: number, choice: C) => F | undefined;
  /** What a sum costs; it never costs less with a further side. */
  readonly cost: (sum: F) => number;
  /** What a choice costs at least, and what two cost at least beside one another, over what either costs by itself. */
  readonly leastAlone: (choice: C) => number;
  readonly leastApart: (a: C, b: C) => number;
  /** The sides' own, mm. */
  readonly lengths: readonly number[];
}

/**
 * For every choice of one side, the anchor, the choices of the others that cost least with it, and so also the least
 * of all. In the order of the sides.
 *
 * Method: branch and bound (Land and Doig, Econometrica 28, 1960). Choices that cost least beside the anchor alone
 * are tried first, and a branch ends where what is chosen costs more already than the best so far; to begin with, than
 * swags that are as wide as the anchor's, or nearly. What costs the same is a tie, which ties.ts settles.
 */
export const bestChoices = <C extends Choice, F>(
  sides: readonly (readonly C[])[],
  anchor: number,
  worth: Worth<C, F>,
): readonly (readonly C[])[] => {
  const { isBarred, add, cost, leastAlone, leastApart } = worth;
  // The anchor's opposite first: it has the fewest choices that are allowed.
  const others = sides.map((_, i) => (anchor + 2 + i) % sides.length).filter((i) => i !== anchor);
  const bounds = sides.map((choices) => choices.map((choice) => ({ choice, least: leastAlone(choice) })));
  return (sides[anchor] ?? []).flatMap((first): (readonly C[])[] => {
    const begun = add(undefined, anchor, first);
    if (begun === undefined) return [];
    const alone = cost(begun);
    let least = costOfAlike(sides, others, anchor, { first, begun }, worth);
    const open = others.map((side) => {
      const beside: Beside<C, F>[] = [];
      for (const { choice, least: itsLeast } of bounds[side]!) {
        // What it costs beside the anchor at least, if it were like it.
        const alike = Math.max(alone, itsLeast);
        if (alike + leastApart(first, choice) > least + ROUNDING) continue;
        const sum = isBarred(anchor, first.repeats, side, choice.repeats)
          ? undefined
          : add(begun, side, choice);
        const both = sum === undefined ? Number.POSITIVE_INFINITY : cost(sum);
        if (sum !== undefined && both <= least) beside.push({ choice, alike, sum, cost: both });
      }
      return beside.sort((a, b) => a.cost - b.cost);
    });
    const chosen = sides.map(() => first);
    let best: readonly C[] | undefined;
    const choose = (k: number, sum: F, sumCost: number): void => {
      if (k === others.length) {
        if (sumCost < least || !best || byEvenness(chosen, best) < 0) {
          least = sumCost;
          best = [...chosen];
        }
        return;
      }
      const side = others[k]!;
      for (const { choice, alike, sum: pair, cost: beside } of open[k]!) {
        if (beside > least) return;
        let barred = false;
        for (let j = 0; j < k; j++) {
          const other = chosen[others[j]!]!;
          barred ||= alike + leastApart(other, choice) > least + ROUNDING;
          barred ||= isBarred(others[j]!, other.repeats, side, choice.repeats);
        }
        const next = k === 0 ? pair : barred ? undefined : add(sum, side, choice);
        if (next === undefined) continue;
        const nextCost = cost(next);
        if (nextCost > least) continue;
        chosen[side] = choice;
        choose(k + 1, next, nextCost);
      }
    };
    choose(0, begun, alone);
    return best ? [best] : [];
  });
};

/** A choice beside the anchor's: what both sum up to and cost, and cost at least if they were alike. */
interface Beside<C, F> {
  readonly choice: C;
  readonly alike: number;
  readonly sum: F;
  readonly cost: number;
}

/** What is told of a choice before it is laid may be off by, as a cost. */
const ROUNDING = 1e-6;

/** What it costs to give every side swags as wide as the anchor's, or nearly; infinite where they are not to be had. */
const costOfAlike = <C extends Choice, F>(
  sides: readonly (readonly C[])[],
  others: readonly number[],
  anchor: number,
  { first, begun }: { readonly first: C; readonly begun: F },
  { isBarred, add, cost, lengths }: Worth<C, F>,
): number => {
  const width = lengths[anchor]! / first.repeats;
  const counts: number[] = [];
  const offBy = ({ repeats }: C, side: number): number => Math.abs(lengths[side]! / repeats - width);
  const isBarredBeside = (side: number, repeats: number): boolean => {
    if (isBarred(anchor, first.repeats, side, repeats)) return true;
    for (let j = 0; j < counts.length; j++) if (isBarred(others[j]!, counts[j]!, side, repeats)) return true;
    return false;
  };
  let sum: F | undefined = begun;
  for (const side of others) {
    let nearest: C | undefined;
    for (const choice of sides[side]!) {
      const isNearer = !nearest || offBy(choice, side) < offBy(nearest, side);
      if (isNearer && !isBarredBeside(side, choice.repeats)) nearest = choice;
    }
    sum = nearest && add(sum, side, nearest);
    if (sum === undefined || !nearest) return Number.POSITIVE_INFINITY;
    counts.push(nearest.repeats);
  }
  return cost(sum);
};
