/** What another window did to the shelf, brought into what this one has open, without being a step to take back here. */

import type { OwnTemplate } from '../engine/messages.ts';
import { changed, type History } from './history.ts';
import { templatesOf } from './plan-text.ts';
import { withNames, withoutOwn } from './shelf.ts';
import type { State } from './state.ts';

/**
 * The history with the shelf as it is now; `moved` says which of its templates have another name. What was added or
 * changed is so in every step. What was taken off is gone but for steps whose plan uses it: there it would leave a plan
 * that cannot be made. Where the plan that is open uses it, taking it out is a step, and undo brings it back.
 */
export const followed = (
  history: History<State>,
  own: readonly OwnTemplate[],
  moved: ReadonlyMap<string, string>,
): History<State> => {
  const before = new Map(history.now.own.map((t) => [t.name, t.text]));
  const after = new Map(own.map((t) => [t.name, t.text]));
  const brought = own.filter((t) => before.get(t.name) !== t.text);
  const taken = [...before.keys()].filter((name) => !after.has(name));
  const follow = (state: State): State => {
    const { plan } =
      moved.size > 0 ? orAsItWas(state, () => ({ ...state, plan: withNames(state.plan, moved) })) : state;
    const used = taken.length > 0 ? templatesOf(plan) : [];
    const names = new Set(state.own.map((t) => t.name));
    const kept = state.own.filter((t) => !taken.includes(t.name) || used.includes(t.name));
    const added = brought.filter((t) => !before.has(t.name) && !names.has(t.name));
    const changedTo = new Map(brought.map((t) => [t.name, t]));
    return { ...state, plan, own: [...kept.map((t) => changedTo.get(t.name) ?? t), ...added] };
  };
  const now = follow(history.now);
  const next = {
    ...history,
    past: history.past.map(follow),
    now,
    future: history.future.map(follow),
  };
  const open = taken
    .filter((name) => now.own.some((t) => t.name === name))
    .reduce((state, name) => orAsItWas(state, () => withoutOwn(state, name)), now);
  // In the shelf's own order, which a step may not have.
  const inOrder = { ...open, own };
  return open === now ? { ...next, now: inOrder } : changed(next, inOrder);
};

/** A plan that cannot be read cannot be changed. */
const orAsItWas = (state: State, change: () => State): State => {
  try {
    return change();
  } catch {
    return state;
  }
};
