/** Puts a value, or a word that is nearly right, into words for a message. Never `[object Object]`. */

import { distance } from 'fastest-levenshtein';

/** A text longer than this is cut: the line must stay readable, and the reader knows what she wrote. */
export const MOST_SHOWN = 40;

/** A text in quotes, cut where it is long, on one line. */
export const quoted = (text: string): string => {
  const flat = text.replace(/\s+/g, ' ');
  return `"${flat.length > MOST_SHOWN ? `${flat.slice(0, MOST_SHOWN)}…` : flat}"`;
};

/** What stands there: `"wide"`, `12`, `nothing`, `a list of 3`, `the keys to and rise`. */
export const describeValue = (value: unknown): string => {
  if (value === null || value === undefined) return 'nothing';
  if (typeof value === 'string') return quoted(value);
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  const keys = Object.keys(value);
  if (keys.length === 0) return 'an empty group';
  return keys.length === 1 ? `the key ${shown(keys[0]!)}` : `the keys ${series(keys.slice(0, 4).map(shown))}`;
};

const shown = (key: string): string => quoted(key).slice(1, -1);

/** `a, b and c`; with `or` where one is to be chosen. */
export const series = (words: readonly string[], last: 'and' | 'or' = 'and'): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;

/** With a capital, to begin a sentence or a heading. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `1 sheet`, `6 sheets`. */
export const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** How many slips of the finger a word allows before it is more likely another word. */
const slipsAllowed = (word: string): number =>
  word.length < 3 ? 0 : word.length < 5 ? 1 : word.length < 9 ? 2 : 3;

/** Two neighbouring letters changed over are one slip, though they are two edits. */
const slipsBetween = (written: string, word: string): number => {
  const edits = distance(written, word);
  return edits === 2 && sorted(written) === sorted(word) ? 1 : edits;
};

const sorted = (word: string): string => [...word].sort().join('');

/** The word that was most likely meant, or undefined when none is near enough to be worth saying. */
export const nearestOf = (written: string, known: readonly string[]): string | undefined => {
  // Levenshtein's cost grows with both lengths: a text that is far too long is no slip of the finger.
  if (written.length > MOST_SHOWN) return undefined;
  const plain = simple(written);
  let best: { word: string; slips: number } | undefined;
  for (const word of known) {
    const slips = slipsBetween(plain, simple(word));
    if (slips <= slipsAllowed(word) && slips < (best?.slips ?? Number.POSITIVE_INFINITY))
      best = { word, slips };
  }
  return best?.word;
};

/** `Channel_Lines` and `channel-lines` are `channelLines` to the eye. */
const simple = (word: string): string => word.toLowerCase().replace(/[\s_-]/g, '');

/** A title or a name as it may stand in a file's name: small letters, digits and dashes; empty where it has none. */
export const fileWord = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
