/** Wrong use of the command line: the exit status is 2, and the file that was named may be quite in order. */

import type { Problem } from '../document/index.ts';

export class WrongUse extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map((p) => p.message).join('\n'));
    this.name = 'WrongUse';
    this.problems = problems;
  }
}

/** What is wrong with the value of an option: `--margin: not a length; found "wide"; expected …`. */
export const wrongValue = (option: string, message: string, more: Partial<Problem> = {}): WrongUse =>
  new WrongUse([{ code: 'wrong-option', key: option, message, ...more }]);
