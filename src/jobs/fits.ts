/** What fits a plan, best first; and where nothing does, what comes nearest. */

import { type Problem, ProblemError } from '../document/index.ts';
import type { Plan } from '../plan/index.ts';
import {
  describeMiss,
  describeRowMiss,
  type Miss,
  nearestMisses,
  noWayHint,
  type Search,
  searchPlan,
  smallestChange,
  unmetBy,
} from '../swag/index.ts';
import type { Part } from './part.ts';

const NOTHING_FITS: Problem = { code: 'nothing-fits', key: 'layout', message: 'nothing fits this layout' };

/** Near misses that are told; the rest are farther off. */
const NEAREST = 5;
/** Near misses for which a change is looked for: each takes some searches. */
const LOOKED_AT = 15;

/** Throws a ProblemError where there is nothing to search with. */
export const fitsOf = ({ plan, templates, placed }: Pick<Part, 'plan' | 'templates' | 'placed'>): Search => {
  const searched = searchPlan(plan, templates);
  if (!searched.ok) throw new ProblemError(searched.problems.map(placed));
  return searched.search;
};

/** The nearest for which a change is known come before nearer ones that nothing helps. */
export const nearestFits = (misses: readonly Miss[], plan: Plan): readonly Miss[] => {
  const looked = nearestMisses(misses).slice(0, LOOKED_AT);
  const helped = looked.filter((miss) => smallestChange(miss, plan) !== undefined);
  return [...helped, ...looked.filter((miss) => !helped.includes(miss))].slice(0, NEAREST);
};

/** Where that is why nothing fits: what comes nearest to what the plan asks of its swags, and why it cannot be had. */
export const unmetOf = ({ plan, templates, placed }: Pick<Part, 'plan' | 'templates' | 'placed'>) => {
  const unmet = unmetBy(plan, templates);
  if (!unmet) return undefined;
  const { nearest, problem } = unmet;
  return { nearest, problems: [placed(NOTHING_FITS), placed(problem)] };
};

/** That nothing fits, and a line for each of the nearest. */
export const nothingFits = (
  { plan, placed }: Pick<Part, 'plan' | 'placed'>,
  nearest: readonly Miss[],
  rowMiss?: Search['rowMiss'],
): readonly Problem[] => {
  if (rowMiss) return [placed(describeRowMiss(rowMiss, plan))];
  const problem = { ...NOTHING_FITS, ...(nearest.length === 0 ? { hint: noWayHint(plan) } : {}) };
  const lines = nearest.map((miss, i): Problem => {
    const { found, hint } = describeMiss(miss, plan);
    return {
      code: 'nearest',
      message: `nearest ${i + 1}: ${found?.replace(/^nearest: /, '') ?? ''}`,
      ...(hint === undefined ? {} : { hint }),
    };
  });
  return [placed(problem), ...lines];
};
