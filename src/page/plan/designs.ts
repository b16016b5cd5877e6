/** Designs that she keeps by name: each a plan with what it needs, and its figures. Written and read. */

import { isPlanSized } from '../../jobs/page-limits.ts';
import { entitled, freeTitle, takingAlong } from './shelf.ts';
import { type State, stateFrom, stateText } from './state.ts';

export interface Design {
  /** By which the browser keeps it: each its own, whatever it is called. */
  readonly id: string;
  readonly title: string;
  /** Its place among the others: the newest, which has the largest, comes first. */
  readonly at: number;
  /** With no other templates than those that its plan uses. */
  readonly state: State;
  /** Its figures, a line each. */
  readonly words: readonly string[];
}

/** More than anyone looks through; a browser keeps some millions of characters for all of the page. */
export const MOST_DESIGNS = 40;

/** A design of what is open, called as none is yet. */
export const designOf = (state: State, title: string, more: Pick<Design, 'id' | 'at' | 'words'>): Design => {
  const along = takingAlong(state);
  return { ...more, title, state: { ...along, plan: entitled(along.plan, title) } };
};

/** The same under another name, which its plan has too. */
export const called = (design: Design, title: string): Design => ({
  ...design,
  title,
  state: { ...design.state, plan: entitled(design.state.plan, title) },
});

export const freeTitleIn = (designs: readonly Design[], title: string): string =>
  freeTitle(
    designs.map((d) => d.title),
    title,
  );

export const designText = ({ state, ...rest }: Design): string =>
  JSON.stringify({ ...rest, state: JSON.parse(stateText(state)) as object });

/** Undefined for what is none, or was damaged. */
export const designFrom = (text: string): Design | undefined => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  return designIn(value);
};

const designIn = (value: unknown): Design | undefined => {
  const { id, title, at, state: written, words } = groupOf(value);
  const state = stateFrom(JSON.stringify(written ?? null));
  if (!state || !isPlanSized(state.plan)) return undefined;
  if (typeof id !== 'string' || typeof title !== 'string' || typeof at !== 'number') return undefined;
  return {
    id: id.slice(0, MOST_NAME),
    title: title.slice(0, MOST_NAME),
    at,
    state,
    words: listOf(words).filter((w) => typeof w === 'string'),
  };
};

const MOST_NAME = 300;

const groupOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? (value as Readonly<Record<string, unknown>>)
    : {};
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** All of them as one file, for another device. What it is stands first in it. */
export const designsText = (designs: readonly Design[]): string =>
  `${JSON.stringify({ swagwright: 'designs', designs: designs.map((d) => JSON.parse(designText(d)) as object) }, undefined, 1)}\n`;

/** What such a file holds, and how many entries are none; undefined where it is another. */
export const designsFrom = (
  text: string,
): { readonly designs: readonly Design[]; readonly bad: number } | undefined => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  const { swagwright, designs } = groupOf(value);
  if (swagwright !== 'designs' || !Array.isArray(designs)) return undefined;
  const read = designs.map(designIn);
  const good = read.filter((d) => d !== undefined);
  return { designs: good, bad: read.length - good.length };
};
