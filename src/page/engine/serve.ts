/** A worker's life: a question comes, its answer goes. Both workers live like this, and differ in what they can answer. */

import { ProblemError } from '../../document/index.ts';
import { answersWords } from '../words/words.ts';
import type { Answered, Answers, Asked, Kind, Question, Trouble } from './messages.ts';
import { troubleOf } from './trouble.ts';

/** What a worker can answer. */
export type Answering = {
  readonly [K in Kind]?: (question: Extract<Question, { kind: K }>) => Answers[K] | Promise<Answers[K]>;
};

/** One question answered; never throws. */
export const answer = async (able: Answering, { id, question }: Asked): Promise<Answered> => {
  try {
    const make = able[question.kind] as ((q: Question) => unknown) | undefined;
    if (!make) throw new Error(`No answer is known to ${question.kind}`);
    return { id, ok: true, answer: await make(question) };
  } catch (error) {
    return { id, ok: false, problems: troublesIn(error) };
  }
};

/** What she is told of whatever was thrown. */
export const troublesIn = (error: unknown): readonly Trouble[] => {
  if (error instanceof ProblemError) return error.problems.map(troubleOf);
  const told = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  const text = answersWords.ownMistake({ told });
  return [{ text, key: undefined, where: undefined }];
};

/** The part of a worker's own scope that is used. */
interface Scope {
  addEventListener(type: 'message', listen: (event: { readonly data: Asked }) => void): void;
  postMessage(message: Answered): void;
}

export const serve = (able: Answering): void => {
  const scope = globalThis as unknown as Scope;
  scope.addEventListener('message', ({ data }) => {
    void answer(able, data).then((answered) => scope.postMessage(answered));
  });
};
