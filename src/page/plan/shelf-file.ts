/** All of her own templates as one file, for another device or a class: written, read, and what is said of one that came. */

import type { OwnTemplate, Trouble } from '../engine/messages.ts';
import { filesWords } from '../words/words.ts';
import { MOST_OWN, MOST_TEXT } from './state.ts';

/** What it is stands first in it. */
export const shelfText = (own: readonly OwnTemplate[]): string =>
  `${JSON.stringify({ swagwright: 'templates', templates: own }, undefined, 1)}\n`;

export interface ShelfFile {
  /** Each is still to be read as any template is. */
  readonly templates: readonly OwnTemplate[];
  /** One for each entry that is none, or larger than one may be. */
  readonly refused: readonly Trouble[];
  /** How many come after the last that is looked at. */
  readonly beyond: number;
}

/**
 * What such a file holds. `stray` where it is written as one and is neither that nor a plan nor a template; undefined
 * where it is a text of another kind.
 */
export const shelfFrom = (text: string): ShelfFile | 'stray' | undefined => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (typeof value !== 'object' || value === null) return 'stray';
  const { templates } = value as { readonly templates?: unknown };
  // Plans and templates can be written so too; what they lack, their readers say.
  if (!Array.isArray(templates)) return OTHER_KINDS.some((key) => key in value) ? undefined : 'stray';
  const kept: OwnTemplate[] = [];
  const refused: Trouble[] = [];
  // Two windows may have filled one shelf with more than one may; what has no room here is said.
  for (const [i, entry] of templates.slice(0, MOST_READ).entries()) {
    const { name, text: held } = ((entry as unknown) ?? {}) as {
      readonly name?: unknown;
      readonly text?: unknown;
    };
    if (typeof name !== 'string' || typeof held !== 'string')
      refused.push(refusal(filesWords.entry({ number: i + 1 }), filesWords.noTemplate));
    else if (held.length > MOST_TEXT) refused.push(refusal(plainName(name), filesWords.templateTooLarge));
    else kept.push({ name, text: held });
  }
  return { templates: kept, refused, beyond: Math.max(0, templates.length - MOST_READ) };
};

const OTHER_KINDS = ['layout', 'parts', 'template', 'edge', 'title', 'units'];
const MOST_READ = 2 * MOST_OWN;

export const refusal = (where: string | undefined, text: string): Trouble => ({
  text,
  key: undefined,
  where,
});

/** As a plan's name of it without its folder; no longer than a line. */
const plainName = (name: string): string => name.replace(/^\.\//, '').slice(0, 100);

/** What has become of the templates of a file. */
export interface Unpacked {
  /** Titles of those that were put on the shelf. */
  readonly added: readonly string[];
  /** Of each of these, a sentence with a blank before it, or nothing. */
  readonly notes: readonly string[];
  /** How many were there before. */
  readonly there: number;
  /** How many could not be put there. */
  readonly bad: number;
  readonly beyond: number;
}

/** That, in sentences. */
export const unpackedWords = (file: string, { added, notes, there, bad, beyond }: Unpacked): string => {
  if (added.length + there + bad === 0) return filesWords.empty({ file });
  if (added.length + bad + beyond === 0) return filesWords.allThere({ file });
  return [
    added.length > 0 && filesWords.added({ file, titles: added, notes: notes.join('') }),
    there > 0 && filesWords.there({ file, count: there }),
    bad > 0 && filesWords.bad({ file, count: bad }),
    beyond > 0 && filesWords.beyond({ count: beyond }),
  ]
    .filter((sentence) => sentence !== false)
    .join(' ');
};
