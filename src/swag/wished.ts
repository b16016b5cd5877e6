/**
 * The one cost that a search keeps and ranks by: what a design costs in itself, and before all else how far it is from
 * what is asked.
 */

import type { Wishes } from './asked.ts';
import type { Field } from './field.ts';
import { type Fit, kindsIn, type SideFit } from './fit.ts';
import { type Costing, type Score, type SideFigures, scoreOf, worthOf } from './score.ts';
import type { Way } from './setting.ts';
import { settledCost } from './ties.ts';
import { breaksRange, type Missed, missCost, missedBy, missedBySide, ofKind, worseOf } from './wishes.ts';

/** What some sides sum up to. */
interface Sum {
  readonly figures: ReturnType<Costing['add']>;
  readonly missed: Missed;
}

/** What a side counts for by itself. */
export interface Measured {
  readonly figures: SideFigures;
  readonly missed: Missed;
}

interface WishedCosting extends Pick<Costing, 'leastAlone'> {
  /** Undefined where the side misses a range that binds. */
  readonly add: (sum: Sum | undefined, i: number, side: SideFit) => Sum | undefined;
  /** The same in two steps, for a side that is summed up with many others. */
  readonly measure: (i: number, side: SideFit) => Measured | undefined;
  readonly addMeasured: (sum: Sum | undefined, i: number, side: Measured) => Sum;
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
  const measure: WishedCosting['measure'] = (i, side) => {
    const missed = to ? missedBySide(i, side, to) : NOTHING_ASKED;
    if (wishes && breaksRange(wishes, missed)) return undefined;
    return { figures: worth.measure(side), missed };
  };
  const addMeasured: WishedCosting['addMeasured'] = (sum, i, { figures, missed }) => ({
    figures: worth.addMeasured(sum?.figures, i, figures),
    missed: sum ? worseOf(sum.missed, missed) : missed,
  });
  return {
    leastAlone: worth.leastAlone,
    add: (sum, i, side) => {
      const measured = measure(i, side);
      return measured && addMeasured(sum, i, measured);
    },
    measure,
    addMeasured,
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
