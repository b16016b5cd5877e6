/** Problems as the page shows them: beside their field, or with their place in a file. */

import { describeProblem, oneLine, type Place, type Problem } from '../../document/index.ts';
import { plainWords } from '../plan/plain-words.ts';
import { planWords } from '../words/words.ts';
import type { Trouble } from './messages.ts';

/** The plan's own name where it has no file. */
export const PLAN_FILE = 'plan.yaml';
/** And that of a table that was pasted, which has lines and no name. */
export const PASTED_TABLE = '';

export const troubleOf = ({ place, key, ...problem }: Problem): Trouble => ({
  code: problem.code,
  text: textOf(place, key, problem),
  key,
  where: place && place.file !== PLAN_FILE ? whereIn(place) : undefined,
});

/** In a file that she brought keys are what she sees, in a table its columns, and in the page's own plan fields are. */
const textOf = (place: Place | undefined, key: string | undefined, problem: Problem): string => {
  if (place === undefined || place.file === PLAN_FILE) return oneLine(plainWords({ ...problem, key }));
  const isColumn = place.file === PASTED_TABLE && key !== undefined && !key.includes('.');
  return isColumn ? describeProblem({ ...problem, key }) : sentence(describeProblem(problem));
};

const whereIn = ({ file, line, column }: Place): string | undefined => {
  if (file === PASTED_TABLE) return line === undefined ? undefined : planWords.line({ line });
  return [file, line, column].filter((part) => part !== undefined).join(':');
};

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
