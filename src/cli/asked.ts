/** What a job finds wrong with what it was asked is, at a terminal, a matter of the option that asked for it. */

import { type Problem, ProblemError, quoted } from '../document/index.ts';
import { WrongUse } from './wrong-use.ts';

/** By a problem's code: the option that it is about. */
const OPTIONS: Readonly<Record<string, string>> = {
  'not-in-design': 'show',
  'overlap-too-small': 'overlap',
  'measured-out-of-range': 'measured',
  'frame-too-large': 'scale',
  'holes-too-near': 'every',
  'bridges-too-near': 'every',
  'slot-too-wide': 'slot',
  'no-such-roll': 'roll',
  'no-swags': 'spans',
};

const isOption = ({ key }: Problem): boolean => key?.startsWith('--') ?? false;

const named = (problem: Problem, typed: object): Problem => {
  const option = OPTIONS[problem.code];
  const written = option === undefined ? undefined : (typed as Record<string, unknown>)[option];
  if (typeof written !== 'string' || isOption(problem)) return problem;
  return { ...problem, key: `--${option}`, found: quoted(written) };
};

/**
 * Does the work of a job; what is wrong with the options alone is wrong use, and names them. `said` says a problem in
 * the words of a command's own options.
 */
export const asAsked = async <T>(
  typed: object,
  work: () => Promise<T>,
  said: (problem: Problem) => Problem = (problem) => problem,
): Promise<T> => {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    const problems = error.problems.map(said);
    const asked = problems.map((problem) => named(problem, typed));
    if (asked.every((problem) => problem.code in OPTIONS && isOption(problem))) throw new WrongUse(asked);
    throw new ProblemError(problems);
  }
};
