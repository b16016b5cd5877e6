/** Undo and redo as text, so that they live through a reload. */

import type { OwnTemplate } from '../engine/messages.ts';
import type { History } from './history.ts';
import { type State, stateFrom, stateText } from './state.ts';
import { followed } from './their-changes.ts';

/** All in all; a browser keeps a few million characters for a page, and the shelf and the plan come first. */
export const MOST_KEPT = 500_000;

/** A step without its templates, which are told by their places in one list: most steps have the same. */
type Step = readonly [state: string, own: readonly number[]];

interface Kept {
  readonly own: readonly OwnTemplate[];
  readonly past: readonly Step[];
  readonly now: Step;
  readonly future: readonly Step[];
}

/** The steps nearest to now, as many as there is room for; undefined where there is none to keep. */
export const historyText = ({ past, now, future }: History<State>): string | undefined => {
  if (past.length + future.length === 0) return undefined;
  const own: OwnTemplate[] = [];
  const places = new Map<string, number>();
  let size = 0;
  const placeOf = ({ name, text }: OwnTemplate): number => {
    const key = JSON.stringify([name, text]);
    const known = places.get(key);
    if (known !== undefined) return known;
    size += key.length;
    places.set(key, own.length);
    return own.push({ name, text }) - 1;
  };
  const stepOf = (state: State): Step => {
    const text = stateText({ ...state, own: [] });
    size += JSON.stringify(text).length;
    return [text, state.own.map(placeOf)];
  };
  const here = stepOf(now);
  const kept = { past: [] as Step[], future: [] as Step[] };
  for (let away = 1; away <= Math.max(past.length, future.length); away++) {
    const [before, after] = [past[past.length - away], future[away - 1]];
    const steps = { before: before && stepOf(before), after: after && stepOf(after) };
    if (size > MOST_KEPT) break;
    if (steps.before) kept.past.unshift(steps.before);
    if (steps.after) kept.future.push(steps.after);
  }
  return JSON.stringify({ own, past: kept.past, now: here, future: kept.future } satisfies Kept);
};

/**
 * What was kept, for the state that the page begins with; undefined where it cannot be read. What came onto the shelf or
 * was taken off it meanwhile is so in every step.
 */
export const historyFrom = (text: string, now: State): History<State> | undefined => {
  try {
    const kept = JSON.parse(text) as Kept;
    const stateOf = ([written, own]: Step): State => {
      const templates = own.map((place) => kept.own[place]!);
      const read = stateFrom(JSON.stringify({ ...(JSON.parse(written) as object), own: templates }));
      if (!read) throw new Error('no state');
      return read;
    };
    const before = stateOf(kept.now);
    const [past, future] = [kept.past.map(stateOf), kept.future.map(stateOf)];
    const here = { ...now, own: before.own };
    // A window that was cut off has kept its plan, and of the last moment not how it came there: that is one step.
    const isSame = stateText(before) === stateText(here);
    const history = isSame
      ? { past, now: here, future, about: undefined }
      : { past: [...past, before], now: here, future: [], about: undefined };
    return followed(history, now.own, new Map());
  } catch {
    return undefined;
  }
};
