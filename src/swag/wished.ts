/**
 * The one cost that a search keeps and ranks by: what a design costs in itself, and before all else how far it is from
 * what is asked.
 */

import type { Wishes } from './asked.ts';
import type { Field } from './field.ts';
import { type Fit, kindsIn, type SideFit } from './fit.ts';
import { type Costing, type Score, scoreOf, worthOf } from './score.ts';
import type { Way } from './setting.ts';
import { settledCost } from './ties.ts';
import { breaksRange, type Missed, missCost, missedBy, missedBySide, ofKind } from './wishes.ts';

/** What some sides sum up to. */
interface Sum {
  readonly figures: ReturnType<Costing['add']>;
  readonly missed: Missed;
}

interface WishedCosting {
  /** Undefined where a side misses a range that binds. */
  readonly add: (sum: Sum | undefined, i: number, side: SideFit) => Sum | undefined;
  readonly cost: (sum: Sum) => number;
}

const NOTHING_ASKED: Missed = [];

export const wishedWorth = (
  way: Way,
  field: Field,
  outward: number,
  wishes: Wishes | undefined,
): WishedCosting => {
  const worth = worthOf(way, field, outward);
  const to = wishes && { wishes, field, outward };
  return {
    add: (sum, i, side) => {
      const missed = to ? missedBySide(sum?.missed, i, side, to) : NOTHING_ASKED;
      if (wishes && breaksRange(wishes, missed)) return undefined;
      return { figures: worth.add(sum?.figures, i, side), missed };
    },
    cost: (sum) => settledCost(worth.cost(sum.figures) + missCost(sum.missed)),
  };
};

/** What a fit scores; undefined where it misses a range that binds. */
export const wishedScore = (
  fit: Fit,
  field: Field,
  outward: number,
  wishes: Wishes | undefined,
): Score | undefined => {
  const score = scoreOf(fit, field, outward);
  if (!wishes) return score;
  const missed = kindsIn(fit).map((kind, k) => {
    const own = ofKind(wishes, k);
    return { own, missed: missedBy(kind, { wishes: own, field, outward }) };
  });
  if (missed.some((kind) => breaksRange(kind.own, kind.missed))) return undefined;
  const cost = missed.reduce((sum, kind) => sum + missCost(kind.missed), 0) / missed.length;
  return { ...score, cost: settledCost(score.cost + cost) };
};
