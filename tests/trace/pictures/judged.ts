/** Many pictures traced one after the other, and what is told of one that is off. */

import type { PHOTOS } from './cases.ts';
import { type Answer, answerTo } from './traced.ts';

/** ms: for the whole of a table. */
export const SLOW = 3_600_000;

export const told = ({ one, said, judged, expected, words }: Answer): string =>
  `${one.shape.name}, ${one.medium}, ${one.about}: ${said}, ${judged?.error.toFixed(2)} mm (said ${expected?.toFixed(2)}), ${judged?.missed.length} corners missed; ${words}`;

export const lots = async (cases: typeof PHOTOS): Promise<readonly Answer[]> => {
  const answers: Answer[] = [];
  for (const one of cases) answers.push(await answerTo(one));
  return answers;
};

export const errorOf = (a: Answer): number => a.judged?.error ?? Number.POSITIVE_INFINITY;
