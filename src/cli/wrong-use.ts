/** Wrong use of the command line: the exit status is 2, and the file that was named may be quite in order. */

import type { Problem } from '../document/index.ts';

export class WrongUse extends Error {
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(problem.message);
    this.name = 'WrongUse';
    this.problem = problem;
  }
}

/** What is wrong with the value of an option: `--margin: not a length; found "wide"; expected …`. */
export const wrongValue = (option: string, message: string, more: Partial<Problem> = {}): WrongUse =>
  new WrongUse({ code: 'wrong-option', key: option, message, ...more });
