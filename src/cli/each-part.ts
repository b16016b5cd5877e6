/** The same work for each part of a plan, before any of it is written: what is in the way of several is told at once. */

import { type Problem, ProblemError } from '../document/index.ts';
import { ofPart, type PlanFiles } from './steps.ts';
import { WrongUse } from './wrong-use.ts';

/** Throws what is wrong with all parts, each with its name: wrong use only where nothing else is wrong. */
export const eachPart = async <P extends Pick<PlanFiles, 'name'>, T>(
  parts: readonly P[],
  work: (part: P) => Promise<T>,
): Promise<readonly T[]> => {
  const made: T[] = [];
  const problems: Problem[] = [];
  let isUse = true;
  for (const part of parts)
    try {
      made.push(await work(part));
    } catch (error) {
      if (!(error instanceof ProblemError || error instanceof WrongUse)) throw error;
      isUse &&= error instanceof WrongUse;
      problems.push(...error.problems.map((problem) => ofPart(problem, part)));
    }
  if (problems.length === 0) return made;
  throw isUse ? new WrongUse(problems) : new ProblemError(problems);
};
