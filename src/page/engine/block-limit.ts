/** Where nothing fits round a block because its frame may not be large enough: the limit is what to change. */

import type { Problem } from '../../document/index.ts';
import { formatLength } from '../../length/index.ts';
import { liesRoundBlock, type Plan } from '../../plan/index.ts';
import { leastSteps, MOST_WIDER, searchPlan, WIDER } from '../../swag/index.ts';
import type { Template } from '../../template/index.ts';
import { answersWords } from '../words/words.ts';

/**
 * What is wrong with the limit of a frame round a block that nothing fits; undefined where a larger one would not
 * help. It is tried, not guessed, and taken that a larger limit never serves less.
 */
export const limitInTheWay = (plan: Plan, templates: readonly Template[]): Problem | undefined => {
  const { layout } = plan;
  if (!liesRoundBlock(layout)) return undefined;
  const serves = (steps: number): boolean => {
    const wider = { ...plan, layout: { ...layout, width: layout.width + steps * WIDER } };
    const searched = searchPlan(wider, templates);
    return searched.ok && searched.search.results.length > 0;
  };
  const steps = leastSteps(MOST_WIDER, serves);
  if (steps === undefined) return undefined;
  const across = (width: number): string =>
    formatLength(Math.max(layout.inner.top, layout.inner.left) + 2 * width, plan.marks.style);
  return {
    code: 'nothing-fits',
    key: 'layout.frame.within',
    message: answersWords.limitInTheWay({
      limit: across(layout.width),
      wider: across(layout.width + steps * WIDER),
    }),
  };
};
