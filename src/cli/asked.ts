/** What a job finds wrong with what it was asked is, at a terminal, a matter of the option that asked for it. */

import { type Problem, ProblemError, quoted } from '../document/index.ts';
import { WrongUse } from './wrong-use.ts';

/** By a problem's code: the option that it is about. */
const OPTIONS: Readonly<Record<string, string>> = {
  'not-in-design': 'show',
  'overlap-too-small': 'overlap',
  'measured-out-of-range': 'measured',
};

const named = (problem: Problem, typed: object): Problem => {
  const option = OPTIONS[problem.code];
  const written = option === undefined ? undefined : (typed as Record<string, unknown>)[option];
  if (typeof written !== 'string') return problem;
  return { ...problem, key: `--${option}`, found: quoted(written) };
};

/** Does the work of a job; what is wrong with the options alone is wrong use, and names them. */
export const asAsked = async <T>(typed: object, work: () => Promise<T>): Promise<T> => {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    const problems = error.problems.map((problem) => named(problem, typed));
    throw problems.every((problem) => problem.key?.startsWith('--')) ? new WrongUse(problems) : error;
  }
};
