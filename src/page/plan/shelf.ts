/** Her own templates: added, renamed, doubled and removed. */

import type { OwnTemplate } from '../engine/messages.ts';
import { filesWords } from '../words/words.ts';
import {
  type KeyPath,
  listAt,
  templatePlaces,
  templatesOf,
  textAt,
  type Written,
  withValues,
} from './plan-text.ts';
import { MOST_OWN, type State } from './state.ts';

/** With a template more, or in place of the one of its name; `full` where the shelf holds no more. */
export const withOwn = (state: State, file: OwnTemplate): State | 'full' => {
  const isThere = state.own.some((t) => t.name === file.name);
  if (!isThere && state.own.length >= MOST_OWN) return 'full';
  const own = isThere ? state.own.map((t) => (t.name === file.name ? file : t)) : [...state.own, file];
  return { ...state, own };
};

/** What goes along with a plan: no other templates than those that it uses. */
export const takingAlong = (state: State): State => {
  const used = templatesOf(state.plan);
  return { ...state, own: state.own.filter((t) => used.includes(t.name)) };
};

/** A name that no template of hers has: `./newel.yaml`, `./newel-2.yaml`. */
export const freeName = (own: readonly Pick<OwnTemplate, 'name'>[], name: string): string => {
  const [, stem = name, ending = ''] = /^(.*?)(\.[a-z]+)?$/i.exec(name) ?? [];
  const taken = new Set(own.map((t) => t.name));
  for (let n = 1; ; n++) {
    const tried = n === 1 ? name : `${stem}-${n}${ending}`;
    if (!taken.has(tried)) return tried;
  }
};

/** A title that no other template has: `Corbel`, `Corbel 2`. Capitals tell no two apart. */
export const freeTitle = (taken: readonly string[], title: string): string => {
  const all = new Set(taken.map((other) => other.toLowerCase()));
  for (let n = 1; ; n++) {
    const tried = n === 1 ? title : `${title} ${n}`;
    if (!all.has(tried.toLowerCase())) return tried;
  }
};

export const titlesOf = (own: readonly OwnTemplate[]): readonly string[] =>
  own.flatMap(({ text }) => textAt(text, ['title']) ?? []);

/** Whether one on the shelf is the one that is brought, be it that it had to take another title there. */
export const isSame = (there: OwnTemplate, brought: OwnTemplate): boolean => {
  if (there.text === brought.text) return true;
  const [title = '', first = ''] = [there, brought].map(({ text }) => textAt(text, ['title']));
  const isNumbered = title.startsWith(`${first} `) && /^\d+$/.test(title.slice(first.length + 1));
  return isNumbered && there.text === entitled(brought.text, title);
};

/** The template's file with another title. One with a mistake in its writing stays as it is. */
export const entitled = (text: string, title: string): string => {
  try {
    return textAt(text, ['title']) === title ? text : withValues(text, [[['title'], title]]);
  } catch {
    return text;
  }
};

/** What is said where another template has the title that was asked for. */
export const otherwiseCalled = (asked: string, title: string): string =>
  asked === title ? '' : filesWords.otherwiseCalled({ asked, title });

/**
 * A state that comes from outside, with the templates that it brings beside those that are there: one that is there
 * already is not added again, and one of another's name comes under a free one, by which its plan knows it then.
 * `along`: the titles of those that come with the page.
 */
export const beside = (
  there: readonly OwnTemplate[],
  brought: State,
  along: readonly string[] = [],
): State => {
  const names = new Map<string, string>();
  let own = there;
  for (const t of brought.own) {
    const alike = own.filter((other) => isSame(other, t));
    const same = alike.find(({ name }) => name === t.name) ?? alike[0];
    const name = same?.name ?? freeName(own, t.name);
    names.set(t.name, name);
    const title = textAt(t.text, ['title']);
    const free = title && freeTitle([...along, ...titlesOf(own)], title);
    if (!same) own = [...own, { name, text: free ? entitled(t.text, free) : t.text }];
  }
  return { ...brought, plan: withNames(brought.plan, names), own };
};

/** Off the shelf, and out of the plan; a plan without any other template goes on with the first one that comes along. */
export const withoutOwn = (state: State, name: string): State => ({
  ...state,
  plan: withTemplates(state.plan, (listed, path) => {
    const left = listed.filter((t) => t !== name);
    // A corner or a row without one of its own has that of all.
    const [of] = path[0] === 'parts' ? path.slice(2) : path;
    return left.length > 1 ? left : (left[0] ?? (of === 'corner' || of === 'rows' ? undefined : FIRST));
  }),
  own: state.own.filter((t) => t.name !== name),
});

const FIRST = 'baluster';

/** The plan with other templates wherever it names some. */
const withTemplates = (plan: string, others: (listed: readonly string[], path: KeyPath) => Written): string =>
  withValues(
    plan,
    templatePlaces(plan).flatMap((path): [KeyPath, Written][] => {
      const listed = listAt(plan, path);
      const now = others(listed, path);
      return [now ?? []].flat().join('\n') === listed.join('\n') ? [] : [[path, now]];
    }),
  );

/** The plan with templates under the names that they have now. */
export const withNames = (plan: string, moved: ReadonlyMap<string, string>): string =>
  withTemplates(plan, (listed) => {
    const now = listed.map((name) => moved.get(name) ?? name);
    return now.length > 1 ? now : now[0];
  });
