/** Problems as the page shows them: beside their field, or with their place in a file. */

import { describeProblem, oneLine, type Problem } from '../../document/index.ts';
import { plainWords } from '../plan/plain-words.ts';
import type { Trouble } from './messages.ts';

/** The plan's own name where it has no file. */
export const PLAN_FILE = 'plan.yaml';

export const troubleOf = ({ place, key, ...problem }: Problem): Trouble => ({
  code: problem.code,
  // In a file that she brought keys are what she sees, and in the page's own plan fields are.
  text:
    place && place.file !== PLAN_FILE
      ? sentence(describeProblem(problem))
      : oneLine(plainWords({ ...problem, key })),
  key,
  where:
    place && place.file !== PLAN_FILE
      ? [place.file, place.line, place.column].filter((part) => part !== undefined).join(':')
      : undefined,
});

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
