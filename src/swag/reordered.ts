/**
 * What was found without wishes, in the order of some: at once, while a slider moves, where a search of its own would be
 * waited for. Each of them is a fit; that a search finds none nearer is not said.
 */

import type { Plan } from '../plan/index.ts';
import { answersOf } from './answers.ts';
import { wishesOf } from './asked.ts';
import type { Ranked } from './search.ts';
import { missCost, missedBy } from './wishes.ts';

/** A plan that asks for no span, depth or use: what a slider gives. */
export const withoutSizes = (plan: Plan): Plan => ({
  ...plan,
  swag: { ...plan.swag, ...NO_SIZE, use: undefined, alternate: withoutKindSizes(plan.swag.alternate) },
});

const NO_SIZE = { span: undefined, depth: undefined };

const withoutKindSizes = (kinds: Plan['swag']['alternate']): Plan['swag']['alternate'] =>
  kinds && [
    { ...kinds[0], ...NO_SIZE },
    { ...kinds[1], ...NO_SIZE },
  ];

/** `results` are those of the plan without sizes. What misses a range comes the later, the farther off it is. */
export const reordered = (results: readonly Ranked[], plan: Plan): readonly Ranked[] => {
  const outward = plan.channels.outward.reduce((a, b) => a + b, 0);
  const all = wishesOf(plan, 'rank');
  const sizes = wishesOf({ ...plan, swag: { ...plan.swag, repeats: undefined, gap: undefined } }, 'rank');
  if (!all || !sizes) return results;
  return results
    .map((ranked): Ranked => {
      const { field, fit, score } = ranked;
      const missed = missCost(missedBy(fit, { wishes: sizes, field, outward }));
      return {
        ...ranked,
        score: { ...score, cost: score.cost + missed },
        answers: answersOf(fit, { wishes: all, field, outward }),
      };
    })
    .sort((a, b) => a.score.cost - b.score.cost);
};
