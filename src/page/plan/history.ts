/** Undo and redo: whole states, because a plan is a few hundred characters. */

export interface History<S> {
  readonly past: readonly S[];
  readonly now: S;
  readonly future: readonly S[];
  /** What the last change was about: more of the same, such as typing on in one field, is one step. */
  readonly about: string | undefined;
}

/** Steps that are kept. */
export const MOST_STEPS = 200;

export const beginning = <S>(now: S): History<S> => ({ past: [], now, future: [], about: undefined });

export const changed = <S>(h: History<S>, next: S, about?: string): History<S> => {
  if (about !== undefined && about === h.about) return { ...h, now: next, future: [] };
  return { past: [...h.past, h.now].slice(-MOST_STEPS), now: next, future: [], about };
};

export const undone = <S>(h: History<S>): History<S> => {
  const before = h.past.at(-1);
  if (before === undefined) return h;
  return { past: h.past.slice(0, -1), now: before, future: [h.now, ...h.future], about: undefined };
};

export const redone = <S>(h: History<S>): History<S> => {
  const [next, ...rest] = h.future;
  if (next === undefined) return h;
  return { past: [...h.past, h.now], now: next, future: rest, about: undefined };
};
