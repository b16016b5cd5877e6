/** What the page keeps: the plan's text, the visitor's own templates, and which fit she took. */

import type { Input, OwnTemplate } from '../engine/messages.ts';
import { planWords } from '../words/words.ts';
import { FORMAT, isKnownFormat } from './format.ts';
import { openPart } from './plan-text.ts';

export type State = Input;

/** Texts are never larger than a template may be; together they fit a browser's store. */
export const MOST_TEXT = 200_000;
export const MOST_OWN = 20;

/**
 * A state from text that may come from anywhere: a store, a link. Only its shape is checked here; what the plan
 * says is read and checked by the program's own reader.
 */
export const stateFrom = (text: string): State | undefined => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isGroup(value) || !isText(value.plan) || !isKnownFormat(value.format)) return undefined;
  const own: OwnTemplate[] = [];
  const listed = value.own ?? [];
  if (!Array.isArray(listed) || listed.length > MOST_OWN) return undefined;
  for (const entry of listed as readonly unknown[]) {
    if (!isGroup(entry) || !isText(entry.name) || !isText(entry.text)) return undefined;
    own.push({ name: entry.name.slice(0, MOST_NAME), text: entry.text });
  }
  const { plan, taken, part } = value;
  const takenOf = keysFrom(value.takenOf);
  return {
    plan,
    own,
    taken: isKey(taken) ? taken : undefined,
    ...(isKey(part) ? { part } : {}),
    ...(takenOf === undefined ? {} : { takenOf }),
  };
};

const keysFrom = (value: unknown): Readonly<Record<string, string>> | undefined => {
  if (!isGroup(value)) return undefined;
  const kept = Object.entries(value).filter(([, key]) => isKey(key));
  return kept.length > 0 && kept.length <= MOST_TAKEN ? Object.fromEntries(kept) : undefined;
};

/** Keys that may hold anything. */
interface Loose {
  readonly format?: unknown;
  readonly plan?: unknown;
  readonly own?: unknown;
  readonly taken?: unknown;
  readonly part?: unknown;
  readonly takenOf?: unknown;
  readonly name?: unknown;
  readonly text?: unknown;
}

const MOST_NAME = 300;
const MOST_KEY = 1000;
/** More than a plan may have parts. */
const MOST_TAKEN = 100;

const isText = (value: unknown): value is string => typeof value === 'string' && value.length <= MOST_TEXT;
const isKey = (value: unknown): value is string => isText(value) && value.length <= MOST_KEY;
const isGroup = (value: unknown): value is Loose =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What is undefined is left out. */
export const stateText = ({ plan, own, taken, part, takenOf }: State): string =>
  JSON.stringify({ format: FORMAT, plan, own, taken, part, takenOf });

/** The key of the fit that she took, in the part that is open. */
export const takenIn = (state: State): string | undefined => {
  const part = openPart(state);
  if (part === undefined) return state.taken;
  return state.takenOf && Object.hasOwn(state.takenOf, part) ? state.takenOf[part] : undefined;
};

/** With that fit taken in the part that is open; with none where it is undefined. */
export const withTaken = (state: State, key: string | undefined): State => {
  const part = openPart(state);
  if (part === undefined) return { ...state, taken: key };
  const others = Object.entries(state.takenOf ?? {}).filter(([name]) => name !== part);
  return { ...state, takenOf: Object.fromEntries(key === undefined ? others : [...others, [part, key]]) };
};

/** Figures to begin with, so that there is something to see; she types her own over them. Spaced as it is written again. */
export const FIRST_PLAN = `title: ${planWords.title}
units: in
paper: letter
foot: { clearance: 1/4 }
template: [ baluster, finial, newel ]
layout:
  border:
    width: 6
    inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }
    margin: 1/2
    from: inner
    corners: turn
channels: { outward: [ 1/4 ], inward: [ 1/4 ] }
`;

export const FIRST_STATE: State = { plan: FIRST_PLAN, own: [], taken: undefined };
