/**
 * The shelf as all windows of a browser share it. A window writes without having seen what another wrote a moment
 * before, so what stands in the store never says by itself that a template was taken off: it may be one that the other
 * had not heard of. Therefore each version of a template has an identifier, and those that were replaced or taken off
 * are remembered as gone. Put together in whichever order, and however often, the same shelf comes out.
 */

import { fingerprint } from '../../document/index.ts';
import type { OwnTemplate } from '../engine/messages.ts';
import { FORMAT, isKnownFormat } from './format.ts';
import { textAt } from './plan-text.ts';
import { entitled, freeName } from './shelf.ts';

/** One version of a template: each change of it is another one. */
interface Version extends OwnTemplate {
  readonly id: string;
  /** Its place among the others: they stand in the order of these numbers. */
  readonly at: number;
  /** The versions that it was before it made room for others of its name, the first one first: gone when it is, and it with any of them. */
  readonly was?: readonly string[];
}

export interface SharedShelf {
  /** In order, each name once. */
  readonly there: readonly Version[];
  /** Sorted, so that one shelf is one text. */
  readonly gone: readonly string[];
}

export const EMPTY: SharedShelf = { there: [], gone: [] };

export const ownOf = ({ there }: SharedShelf): readonly OwnTemplate[] =>
  there.map(({ name, text }) => ({ name, text }));

/** As this window has it now: what is not in `own` any longer was taken off by it. */
export const withOwnNow = (shelf: SharedShelf, own: readonly OwnTemplate[]): SharedShelf => {
  const before = new Map(shelf.there.map((v) => [v.name, v]));
  const same = (t: OwnTemplate): Version | undefined => {
    const found = before.get(t.name);
    return found?.text === t.text ? found : undefined;
  };
  const stay = new Set(own.map(same));
  const left = shelf.there.filter((v) => !stay.has(v)).flatMap((v) => [v.id, ...(v.was ?? [])]);
  if (left.length === 0 && own.length === shelf.there.length) return shelf;
  const gone = new Set([...shelf.gone, ...left]);
  let last = 0;
  const there = own.map((t, i) => {
    const next = own.slice(i + 1).flatMap((o) => before.get(o.name)?.at ?? []);
    const after = next.find((at) => at > last);
    const at = before.get(t.name)?.at ?? (after === undefined ? last + 1 : (last + after) / 2);
    last = at;
    return same(t) ?? version(t, at, gone);
  });
  return { there: there.sort(byPlace), gone: [...gone].sort() };
};

/** One that is put back as it was is another version than the one that is gone. */
const version = ({ name, text }: OwnTemplate, at: number, gone: ReadonlySet<string>): Version => {
  const made = fingerprint([name, text]);
  let n = 1;
  while (gone.has(`${made}-${n}`)) n++;
  return { name, text, at, id: `${made}-${n}` };
};

const byPlace = (a: Version, b: Version): number => a.at - b.at || (marked(a) < marked(b) ? -1 : 1);
const marked = ({ id, was }: Version): string => `${id} ${was}`;

/**
 * Two shelves as one. A template that one has and the other has not heard of is added, and one that either has taken
 * off is gone, unless the other has changed it since. Of two versions of one name, neither of which came from the
 * other, both stay: the second under a name that is free.
 */
export const joined = (a: SharedShelf, b: SharedShelf): SharedShelf => {
  const gone = new Set([...a.gone, ...b.gone]);
  const all = [...a.there, ...b.there].filter((v) => ![v.id, ...(v.was ?? [])].some((id) => gone.has(id)));
  const moved = new Set(all.flatMap((v) => v.was ?? []));
  const sorted = all.filter((v) => !moved.has(v.id)).sort(byPlace);
  const inOrder = sorted.filter((v, i) => sorted.findIndex((other) => other.id === v.id) === i);
  const there: Version[] = [];
  for (const v of inOrder) {
    // Two windows may each have made room for the same version, under other names.
    if (v.was && there.some((other) => other.was?.[0] === v.was?.[0])) continue;
    const hasRoom = !there.some((other) => other.name === v.name);
    const others = [...there, ...inOrder];
    there.push(hasRoom ? v : { ...version(beside(v, others), v.at, gone), was: [...(v.was ?? []), v.id] });
  }
  return { there: there.sort(byPlace), gone: [...gone].sort() };
};

/** The template under a free name; and where its title is taken too, under another title. */
const beside = ({ name, text }: OwnTemplate, others: readonly OwnTemplate[]): OwnTemplate => {
  const title = textAt(text, ['title']);
  const isTaken = others.some((t) => t.text !== text && textAt(t.text, ['title']) === title);
  const free = freeName(others, name);
  if (title === undefined || !isTaken) return { name: free, text };
  const [, number = '2'] = /-(\d+)\.[a-z]+$/i.exec(free) ?? [];
  return { name: free, text: entitled(text, `${title} ${number}`) };
};

export const sharedText = ({ there, gone }: SharedShelf): string =>
  JSON.stringify({ format: FORMAT, there, gone });

/** A shelf from the store; undefined where it is none. */
export const sharedFrom = (text: string): SharedShelf | undefined => {
  try {
    const { format, there, gone } = JSON.parse(text) as {
      readonly format?: unknown;
      readonly there: unknown[];
      readonly gone: unknown[];
    };
    if (!isKnownFormat(format)) return undefined;
    const kept = there as readonly Version[];
    const isWhole = kept.every(
      (v) => [v.name, v.text, v.id, ...(v.was ?? [])].every((word) => typeof word === 'string') && v.at > 0,
    );
    return isWhole && gone.every((id) => typeof id === 'string')
      ? { there: kept, gone: gone as string[] }
      : undefined;
  } catch {
    return undefined;
  }
};

/** What another window's shelf brought that this one had not, because two were changed at once, by its title. */
export const doubledIn = (shelf: SharedShelf, before: SharedShelf): readonly string[] =>
  shelf.there
    .filter((v) => v.was !== undefined && !before.there.some(({ id }) => id === v.id))
    .map((v) => textAt(v.text, ['title']) ?? v.name);

/** The names that templates of this window had, and have now, where they made room for another window's. */
export const movedIn = (shelf: SharedShelf, before: SharedShelf): ReadonlyMap<string, string> =>
  new Map(
    shelf.there.flatMap((v) => {
      const old = before.there.find(({ id }) => v.was?.includes(id));
      return old === undefined ? [] : [[old.name, v.name] as const];
    }),
  );
