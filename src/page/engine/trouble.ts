/** Problems as the page shows them: beside their field, or with their place in a file. */

import { describeProblem, type Problem } from '../../document/index.ts';
import type { Trouble } from './messages.ts';

/** The plan's own name where it has no file. */
export const PLAN_FILE = 'plan.yaml';

export const troubleOf = ({ place, key, ...problem }: Problem): Trouble => ({
  code: problem.code,
  text: sentence(describeProblem(problem)),
  key,
  where:
    place && place.file !== PLAN_FILE
      ? [place.file, place.line, place.column].filter((part) => part !== undefined).join(':')
      : undefined,
});

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
