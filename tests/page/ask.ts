/** The page's two workers, asked in this process. */

import type { Answers, Input, Kind, Question } from '../../src/page/engine/messages.ts';
import { QUICK } from '../../src/page/engine/quick.ts';
import { answer } from '../../src/page/engine/serve.ts';
import { THOROUGH } from '../../src/page/engine/thorough.ts';

/** Throws what the page would show. */
export const ask = async <K extends Kind>(question: Extract<Question, { kind: K }>): Promise<Answers[K]> => {
  const answered = await answer({ ...QUICK, ...THOROUGH }, { id: 1, question });
  if (!answered.ok) throw new Error(answered.problems.map((p) => p.text).join('; '));
  return answered.answer as Answers[K];
};

export const inputOf = (plan: string, taken?: string): Input => ({ plan, own: [], taken });
