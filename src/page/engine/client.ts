/**
 * The page's side of a worker: one question at a time, the newest of each kind, and a worker that takes too long
 * is ended and another started. So no question can hang the page.
 */

import { noticeWords } from '../words/words.ts';
import type { Answered, Answers, Asked, Kind, Question, Trouble } from './messages.ts';

/** The part of a worker that is used. */
export interface Hand {
  postMessage(message: Asked): void;
  terminate(): void;
  onmessage: ((event: { readonly data: Answered }) => void) | null;
  onerror: ((event: unknown) => void) | null;
}

export type Outcome<T> =
  | { readonly kind: 'answer'; readonly answer: T }
  | { readonly kind: 'problems'; readonly problems: readonly Trouble[] }
  /** Called off, or overtaken by a newer question: nothing is to be shown. */
  | { readonly kind: 'stopped' };

interface Waiting {
  readonly question: Question;
  readonly settle: (outcome: Outcome<unknown>) => void;
}

interface Running extends Waiting {
  readonly id: number;
  readonly limit: ReturnType<typeof setTimeout>;
  /** Whether it has run so long that a newer question is better served by a fresh worker. */
  old: boolean;
  readonly ageing: ReturnType<typeof setTimeout>;
}

export interface Client {
  ask<K extends Kind>(question: Extract<Question, { kind: K }>): Promise<Outcome<Answers[K]>>;
  /** Calls off everything. */
  stop(): void;
}

/** A worker starts in a tenth of a second: what has run longer than a few of those is not waited for. */
const PATIENCE = 400;
/** The longest that any question may take (ms): the slowest fills on a slow machine, several times over. */
const LIMIT = 60_000;

const TOO_LONG: Trouble = { text: noticeWords.tooLong, key: undefined, where: undefined };
export const NO_START: Trouble = {
  text: noticeWords.noStart,
  key: undefined,
  where: undefined,
};

/** The same where what is asked for needs a part of the page that may not come. */
export const orNoStart = <T>(work: Promise<Outcome<T>>): Promise<Outcome<T>> =>
  work.catch((): Outcome<T> => ({ kind: 'problems', problems: [NO_START] }));

export const startClient = (hire: () => Promise<Hand>, limit = LIMIT): Client => {
  let hand: Promise<Hand> | undefined;
  let running: Running | undefined;
  let waiting: Waiting[] = [];
  let count = 0;

  const finish = (outcome: Outcome<unknown>): void => {
    if (!running) return;
    clearTimeout(running.limit);
    clearTimeout(running.ageing);
    const { settle } = running;
    running = undefined;
    settle(outcome);
    next();
  };

  const dismiss = (outcome: Outcome<unknown>): void => {
    void hand
      ?.then((h) => {
        // Ended while it loads, it would say that it cannot.
        h.onerror = null;
        h.terminate();
      })
      .catch(() => {});
    hand = undefined;
    finish(outcome);
  };

  const next = (): void => {
    if (running) return;
    const first = waiting.shift();
    if (!first) return;
    const id = ++count;
    const now: Running = {
      ...first,
      id,
      old: false,
      limit: setTimeout(() => dismiss({ kind: 'problems', problems: [TOO_LONG] }), limit),
      ageing: setTimeout(() => {
        now.old = true;
        // Something newer of this kind already waits: it need not wait any longer.
        if (waiting.some((w) => w.question.kind === now.question.kind)) dismiss({ kind: 'stopped' });
      }, PATIENCE),
    };
    running = now;
    hand ??= hire().then((h) => {
      h.onmessage = ({ data }) => {
        if (data.id !== running?.id) return;
        finish(
          data.ok ? { kind: 'answer', answer: data.answer } : { kind: 'problems', problems: data.problems },
        );
      };
      h.onerror = () => dismiss({ kind: 'problems', problems: [NO_START] });
      return h;
    });
    hand.then(
      (h) => {
        if (running?.id === id) h.postMessage({ id, question: first.question });
      },
      () => {
        hand = undefined;
        if (running?.id === id) finish({ kind: 'problems', problems: [NO_START] });
      },
    );
  };

  return {
    ask: (question) =>
      new Promise((resolve) => {
        const settle = resolve as (outcome: Outcome<unknown>) => void;
        for (const w of waiting) if (w.question.kind === question.kind) w.settle({ kind: 'stopped' });
        waiting = waiting.filter((w) => w.question.kind !== question.kind);
        waiting.push({ question, settle });
        if (running?.old && running.question.kind === question.kind) dismiss({ kind: 'stopped' });
        else next();
      }),
    stop: () => {
      for (const w of waiting) w.settle({ kind: 'stopped' });
      waiting = [];
      if (running) dismiss({ kind: 'stopped' });
    },
  };
};
