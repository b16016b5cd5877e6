/**
 * Two kinds of swag that take turns: A B A … A, so that a side is the same from its middle to either end, and begins and
 * ends with the first kind. Both are laid with their crowns on the centre line, so each has its own chord C, and a depth
 * √(C² − (s/2)²) that follows from its span s.
 *
 * On a side of length L with a of the first kind and b of the second, and a gap g after each, a·(s₁ + g) + b·(s₂ + g) = L.
 * The one number that this leaves free is by how much the first kind is wider than the second. That is the same on all
 * sides, so that both kinds take their part of what sides differ by:
 * s₂ = (L − a·Δ)/(a + b) − g and s₁ = s₂ + Δ.
 *
 * Method. What a kind costs on one side is a function of its span, and is sampled once for each way to make it. A pair
 * costs at least what both cost on the longest side, each half of it; the cheapest by that are laid on all sides with
 * the Δ that costs least, until none that is left can cost less.
 */

import { askedOfSides } from './asked-rises.ts';
import { besideNeighbour, doubledBeside, overEnd, partedAt } from './beside.ts';
import {
  allows,
  anchorOf,
  type Counts,
  countsBeside,
  countsBetween,
  lopsidedPair,
  product,
} from './counts.ts';
import type { Field } from './field.ts';
import { type Fit, HALVES, type SideFit, WITHOUT_SWAG } from './fit.ts';
import { leastIn } from './least.ts';
import { crownPose } from './pose.ts';
import type { Tried } from './runs.ts';
import type { Probes } from './same-line.ts';
import { bulgeFor, type Seat, type SeatRules, seat, straightSeat } from './seat.ts';
import type { Way } from './setting.ts';
import { lookAlike } from './to-an-eye.ts';
import { clip, limitsOf, riseBelow, riseOfBulge, uprightRise, type Window, windowsOf } from './windows.ts';
import { wishedWorth } from './wished.ts';
import { countCost, ofKind, withoutCounts } from './wishes.ts';

/** A gap (mm) is given: swags touch where the plan says nothing of it. */
interface KindRules extends SeatRules {
  readonly gap: number;
}

/** What one side holds of each kind when both together are so many; halves at its ends are one swag of the first. */
const shared = (repeats: number, { corners }: Field): readonly [number, number] => {
  const second = Math.floor(repeats / 2);
  return [corners === 'half' ? second : repeats - second, second];
};

/** The spans of both kinds on a side when the first is wider by so much, mm. */
export const spansInTurn = (
  length: number,
  [a, b]: readonly [number, number],
  gap: number,
  wider: number,
): readonly [number, number] => {
  const second = (length - a * wider) / (a + b) - gap;
  return [second + wider, second];
};

/** For each way to make the first kind, and each count of the longest side, the second kind that costs least with it. */
export const fitKinds = (
  [firsts, seconds]: readonly [readonly Way[], readonly Way[]],
  field: Field,
  rules: KindRules,
  counts: readonly Counts[],
  outward: number,
): Tried => {
  const only = field.corners === 'half' ? ('even' as const) : ('odd' as const);
  if (counts.some((c) => c.only !== undefined && c.only !== only)) return { fits: [], tried: 0 };
  const ground: Ground = {
    field,
    rules,
    outward,
    counts: counts.map((c) => ({ ...c, only })),
    probes: new Map(),
  };
  const kinds = [firsts, seconds].map((ways, k) => candidatesOf(ways, k, ground)) as [
    Candidate[],
    Candidate[],
  ];
  const { groups, tried } = likely(kinds, ground);
  const fits: Fit[] = [];
  for (const { pairs } of groups) {
    let best: Turns | undefined;
    for (const pair of pairs) {
      if (best && pair.least > best.cost + SAMPLED) break;
      best = bestOf(pair, ground, best?.cost) ?? best;
    }
    const fit = best && layTurns(best, ground);
    if (fit) fits.push(fit);
  }
  return { fits, tried };
};

interface Ground {
  readonly field: Field;
  readonly rules: KindRules;
  readonly outward: number;
  readonly counts: readonly Counts[];
  readonly probes: Probes;
}

/** A way to make one of the kinds, with what it costs on one side by its span. */
interface Candidate {
  readonly way: Way;
  readonly worth: ReturnType<typeof wishedWorth>;
  /** Spans (mm) from the least that it may have. */
  readonly windows: readonly Window[];
  /** For each window its costs, evenly from end to end. */
  readonly samples: readonly (readonly number[])[];
  readonly least: number;
}

/** Samples of a window. */
const SAMPLES = 24;
/** By how much a cost that is read between samples may be too high. */
const SAMPLED = 0.02;

const candidatesOf = (ways: readonly Way[], kind: number, ground: Ground): Candidate[] => {
  const { field, rules, outward } = ground;
  const wishes = rules.wishes && ofKind(rules.wishes, kind);
  return ways
    .flatMap((way): Candidate[] => {
      if (way.tilt !== undefined) return [];
      const windows = spansOfKind(way, kind, ground);
      const worth = wishedWorth(way, field, outward, wishes);
      // Whatever the count: that is counted with the pair.
      const alone = wishedWorth(way, field, outward, wishes && withoutCounts(wishes));
      const costAt = (span: number): number => {
        const seated = seatOf(way, span, rules.gap);
        const run = field.runs[0]!;
        const sum = seated && alone.add(undefined, 0, { run, repeats: FEWEST, seat: seated });
        return sum ? alone.cost(sum) : Number.POSITIVE_INFINITY;
      };
      const samples = windows.map(({ from, to }) =>
        Array.from({ length: SAMPLES + 1 }, (_, k) => costAt(from + (k / SAMPLES) * (to - from))),
      );
      const least = Math.min(...samples.flat());
      return Number.isFinite(least) ? [{ way, worth, windows, samples, least }] : [];
    })
    .sort((a, b) => a.least - b.least);
};

/** A B A, or half of A, B, and half of A: with fewer there is one kind only. */
const FEWEST = 2;

/** The spans (mm) at which a way keeps to its cell and to what is asked; of the first kind, which stands at the ends, to those. */
const spansOfKind = ({ shape }: Way, kind: number, { field, rules, outward }: Ground): readonly Window[] => {
  const limits = limitsOf(shape, rules.room);
  const own = { ...rules, wishes: rules.wishes && ofKind(rules.wishes, kind) };
  const windows = askedOfSides(windowsOf(limits, Math.PI / 2), shape, field, outward, own);
  const upright = rules.gap > 0 ? riseOfBulge(shape, limits, bulgeFor(rules.gap)) : uprightRise(limits);
  const line = partedAt(field);
  const ends = kind === 0 && line !== undefined && rules.gap === 0 ? riseBelow(limits, line) : upright;
  return clip(windows, 0, Math.min(upright, ends))
    .map(({ from, to }) => ({ from: 2 * shape.chord * Math.cos(to), to: 2 * shape.chord * Math.cos(from) }))
    .toReversed();
};

const seatOf = (way: Way, span: number, gap: number): Seat | undefined => {
  const pose = crownPose(way.shape, span / 2);
  return pose && straightSeat(way, way.shape, pose, gap);
};

/** What a span costs at least; read between samples. */
const costAt = ({ windows, samples }: Candidate, span: number): number => {
  for (let w = 0; w < windows.length; w++) {
    const { from, to } = windows[w]!;
    if (span < from || span > to) continue;
    const at = to > from ? ((span - from) / (to - from)) * SAMPLES : 0;
    const k = Math.min(SAMPLES - 1, Math.floor(at));
    const [before, after] = [samples[w]![k]!, samples[w]![k + 1]!];
    return at === k ? before : before + (at - k) * (after - before);
  }
  return Number.POSITIVE_INFINITY;
};

interface Pair {
  readonly first: Candidate;
  readonly second: Candidate;
  /** Of the longest side. */
  readonly repeats: number;
  /** What both cost there at least. */
  readonly least: number;
}

/** Of one way to make the first kind and one count, the second kinds that may be the best with it, the likeliest first. */
interface Group {
  readonly pairs: Pair[];
}

/** Groups that are laid: more than anyone looks through. */
const MOST_GROUPS = 60;
/** Second kinds that are kept with each. */
const MOST_SECONDS = 4;

const likely = (
  [firsts, seconds]: readonly [readonly Candidate[], readonly Candidate[]],
  { field, rules, counts }: Ground,
): { readonly groups: readonly Group[]; readonly tried: number } => {
  const anchor = anchorOf(field.runs.map(({ length }) => length));
  const { length } = field.runs[anchor]!;
  const fewest = FEWEST + (field.corners === 'half' ? 0 : 1);
  const all = countsBetween(counts[anchor]!, fewest, Number.POSITIVE_INFINITY)
    .filter((repeats) => repeats >= fewest && allows(counts[anchor]!, repeats))
    .map((repeats) => ({ repeats, counted: rules.wishes ? countCost(rules.wishes, anchor, repeats) : 0 }));
  const groups: Group[] = [];
  let tried = 0;
  let enough = Number.POSITIVE_INFINITY;
  for (const first of firsts) {
    if (!(seconds[0] && (first.least + seconds[0].least) / 2 <= enough)) break;
    for (const { repeats, counted } of all) {
      const pairs: Pair[] = [];
      for (const second of seconds) {
        const bound = Math.min(enough, pairs[MOST_SECONDS - 1]?.least ?? enough);
        if ((first.least + second.least) / 2 + counted > bound) break;
        tried++;
        const least = leastOnSide(first, second, length, shared(repeats, field), rules.gap) + counted;
        if (!(least <= bound)) continue;
        pairs.push({ first, second, repeats, least });
        pairs.sort((a, b) => a.least - b.least);
        if (pairs.length > MOST_SECONDS) pairs.pop();
      }
      if (pairs.length > 0) groups.push({ pairs });
    }
    groups.sort((a, b) => a.pairs[0]!.least - b.pairs[0]!.least);
    groups.splice(MOST_GROUPS);
    if (groups.length === MOST_GROUPS) enough = groups.at(-1)!.pairs[0]!.least + SAMPLED;
  }
  return { groups, tried };
};

/** What two ways cost together on one side, at the best of some samples of how they may share it. */
const leastOnSide = (
  first: Candidate,
  second: Candidate,
  length: number,
  share: readonly [number, number],
  gap: number,
): number => {
  let least = Number.POSITIVE_INFINITY;
  const isSame = isSameShape(first.way, second.way);
  for (const { from, to } of widerOnSide(first, second, length, share, gap))
    for (let k = 0; k <= SAMPLES; k++) {
      const [a, b] = spansInTurn(length, share, gap, from + (k / SAMPLES) * (to - from));
      if (isSame && Math.min(a, b) > SAME_SIZE * Math.max(a, b)) continue;
      // At the very end of a window rounding may put a span out of it.
      const cost = (costAt(first, within(a, first.windows)) + costAt(second, within(b, second.windows))) / 2;
      if (cost < least) least = cost;
    }
  return least;
};

/** Spans of one and the same line nearer to each other than this share are of one kind to an eye. */
const SAME_SIZE = 0.95;

const within = (span: number, windows: readonly Window[]): number => {
  for (const { from, to } of windows) {
    if (span >= from && span <= to) return span;
    if (Math.abs(span - from) < ROUNDED) return from;
    if (Math.abs(span - to) < ROUNDED) return to;
  }
  return span;
};

const ROUNDED = 1e-9;

const isSameShape = ({ shape: a }: Way, { shape: b }: Way): boolean =>
  a.stitching === b.stitching &&
  a.from.label === b.from.label &&
  a.to.label === b.to.label &&
  a.side === b.side &&
  a.direction === b.direction;

/** By how much (mm) the first kind may be wider than the second, for both to have spans that they may have on a side. */
const widerOnSide = (
  first: Candidate,
  second: Candidate,
  length: number,
  [a, b]: readonly [number, number],
  gap: number,
): readonly Window[] => {
  const byFirst = (span: number): number => ((a + b) * (span + gap) - length) / b;
  const bySecond = (span: number): number => (length - (a + b) * (span + gap)) / a;
  const found: Window[] = [];
  for (const one of first.windows)
    for (const two of second.windows) {
      const from = Math.max(byFirst(one.from), bySecond(two.to));
      const to = Math.min(byFirst(one.to), bySecond(two.from));
      if (to >= from) found.push({ from, to });
    }
  return found;
};

/**
 * How closely a difference in width is looked for: to tell pairs apart, and to lay one. Each part of what a pair costs
 * goes by the worst side, and some begin at a size, so that it has many valleys, some little more than a millimetre wide.
 */
const LOOKING = { toTell: { samples: 20, steps: 9 }, toLay: { samples: 160, steps: 26 } };

/** A pair with the counts of all sides, and the difference in width with which it costs least. */
interface Turns {
  readonly pair: Pair;
  readonly repeats: readonly number[];
  readonly windows: readonly Window[];
  readonly cost: number;
}

/** The counts of the other sides with which a pair costs least; undefined where it costs more than another. */
const bestOf = (pair: Pair, ground: Ground, than = Number.POSITIVE_INFINITY): Turns | undefined => {
  const { field, rules, counts } = ground;
  const { first, second } = pair;
  const lengths = field.runs.map(({ length }) => length);
  const anchor = anchorOf(lengths);
  const barred = lopsidedPair(lengths, counts);
  const choices = field.runs.map(({ length }, i) =>
    i === anchor
      ? [pair.repeats]
      : countsBeside(counts[i]!, (pair.repeats * length) / lengths[anchor]!).filter((n) => n >= FEWEST),
  );
  let best: Turns | undefined;
  for (const repeats of product(choices)) {
    if (repeats.some((n, i) => repeats.some((m, k) => k < i && barred(i, n, k, m)))) continue;
    const windows = lengths
      .map((length, i) => widerOnSide(first, second, length, shared(repeats[i]!, field), rules.gap))
      .reduce((left, one) => left.flatMap((w) => clip(one, w.from, w.to)));
    const least = leastIn(windows, costsOf(pair, repeats, ground), LOOKING.toTell, best?.cost ?? than);
    if (least) best = { pair, repeats, windows, cost: least.value };
  }
  return best;
};

/** What a pair costs when the first kind is wider than the second by so much, mm. */
const costsOf = (
  { first, second }: Pair,
  repeats: readonly number[],
  { field, rules, probes }: Ground,
): ((wider: number) => number) => {
  const shares = repeats.map((n) => shared(n, field));
  return (wider) => {
    let ones: ReturnType<Candidate['worth']['add']>;
    let twos: ReturnType<Candidate['worth']['add']>;
    for (let i = 0; i < repeats.length; i++) {
      const run = field.runs[i]!;
      const spans = spansInTurn(run.length, shares[i]!, rules.gap, wider);
      const [one, two] = [seatOf(first.way, spans[0], rules.gap), seatOf(second.way, spans[1], rules.gap)];
      if (!one || !two || !standInTurn(one, two, field) || lookAlike(one, two, probes))
        return Number.POSITIVE_INFINITY;
      ones = first.worth.add(ones, i, { run, repeats: repeats[i]!, seat: one });
      twos = second.worth.add(twos, i, { run, repeats: repeats[i]!, seat: two });
      if (!ones || !twos) return Number.POSITIVE_INFINITY;
    }
    return (first.worth.cost(ones!) + second.worth.cost(twos!)) / 2;
  };
};

/** Whether each stands beside its neighbour, and beside the next side's at a corner where they lean over the same cloth. */
const standInTurn = (one: Seat, two: Seat, field: Field): boolean =>
  !besideNeighbour(one, field) && !doubledBeside(two) && overEnd(two, field, one.span + one.gap) <= 0;

const layTurns = ({ pair, repeats, windows }: Turns, ground: Ground): Fit | undefined => {
  const { field, rules } = ground;
  const least = leastIn(windows, costsOf(pair, repeats, ground), LOOKING.toLay);
  if (!least) return undefined;
  const [first, second] = [pair.first.way, pair.second.way];
  const kinds: [SideFit[], SideFit[]] = [[], []];
  for (let i = 0; i < repeats.length; i++) {
    const run = field.runs[i]!;
    const spans = spansInTurn(run.length, shared(repeats[i]!, field), rules.gap, least.at);
    const [one, two] = [first, second].map((way, k) => seat(way, spans[k]! + rules.gap, rules));
    if (!one?.ok || !two?.ok || !standInTurn(one.value, two.value, field)) return undefined;
    kinds[0].push({ run, repeats: repeats[i]!, seat: one.value });
    kinds[1].push({ run, repeats: repeats[i]!, seat: two.value });
  }
  return {
    way: first,
    sides: kinds[0],
    corner: field.corners === 'half' ? HALVES : WITHOUT_SWAG,
    pattern: { kind: 'in turn', way: second, sides: kinds[1] },
  };
};
