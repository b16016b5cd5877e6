/**
 * What is wrong with a plan, for someone who sees fields and no file: the same problems as the commands have, said
 * of the field by its name.
 */

import { planWords } from '../words/words.ts';

/** What is told of a problem, without its place: what the reader of lengths and the reader of plans both give. */
export interface Told {
  readonly code: string;
  readonly message: string;
  readonly key?: string | undefined;
  readonly found?: string | undefined;
  readonly expected?: string | undefined;
  readonly hint?: string | undefined;
}

/** Fields by the plan's keys. */
const FIELDS: readonly (readonly [RegExp, keyof typeof planWords.fields])[] = [
  [/^layout\.border\.(?:inner|outer)\.(top|right|bottom|left)$/, 'side'],
  [/^layout\.border\.(?:inner|outer)$/, 'sides'],
  [/^layout\.(border|strip)\.width$/, 'width'],
  [/^layout\.strip\.length$/, 'stripLength'],
  [/^layout\.strip\.ends$/, 'stripEnds'],
  [/^layout\.frame\.around$/, 'motif'],
  [/^layout\.frame\.block$/, 'block'],
  [/^layout\.frame\.block\.(width|height)$/, 'ofBlock'],
  [/^layout\.frame\.clearance$/, 'fromMiddle'],
  [/^layout\.frame\.within$/, 'limit'],
  [/^layout\.\w+\.margin$/, 'seams'],
  [/^layout\.\w+\.margin\.(inner|outer)$/, 'seam'],
  [/^foot\.clearance$/, 'foot'],
  [/^at\.1$/, 'right'],
  [/^at\.2$/, 'up'],
  [/^swag\.span$/, 'span'],
  [/^swag\.depth$/, 'depth'],
  [/^swag\.use$/, 'use'],
  [/^swag\.repeats$/, 'repeats'],
  [/^channels\.points$/, 'points'],
  [/^channels\.(outward|inward)(\.\d+)?$/, 'channel'],
  [/^fills\..+\.(spacing|angle|seed)$/, 'ofFill'],
];

/** What a key's field is called; undefined for a key that has no field. */
export const fieldName = (key: string | undefined): string | undefined => {
  for (const [pattern, field] of FIELDS) {
    const found = pattern.exec(key ?? '');
    const words = planWords.fields[field];
    if (found) return typeof words === 'string' ? words : words({ which: found[1] ?? '' });
  }
  return undefined;
};

/** Sentences for one problem. `name` is the field's; without one the problem speaks for itself. */
export const plainWords = (told: Told, name = fieldName(told.key)): string => {
  const { code, message, found = '', expected = '' } = told;
  const such = /such as .*$/.exec(expected)?.[0] ?? expected;
  if (name !== undefined)
    switch (code) {
      case 'zero':
        return planWords.zero({ name, such });
      case 'negative':
        return planWords.negative({ name, such });
      case 'not-a-length':
        return found === '""' || found === ''
          ? planWords.empty({ name, such })
          : planWords.unread({ name, found: quoted(found), why: message, such });
      case 'too-small':
      case 'too-large':
        return planWords.beyond({ name, found, expected });
      case 'does-nothing':
        return planWords.of({ name, why: message });
      default:
    }
  // The limit has a field of its own, and no other figure says so.
  if (told.key === LIMIT && code === 'does-not-agree')
    return planWords.limitOff({ found, expected, why: message });
  // Without figures to compare, the message is whole sentences by itself, the same as the commands have.
  if (told.found === undefined && told.expected === undefined)
    return sentence([message, told.hint].filter((part) => part !== undefined).join('; '));
  return [message, planWords.compared(told), told.hint]
    .filter((part) => part !== undefined)
    .map((part) => `${sentence(part)}.`)
    .join(' ');
};

const LIMIT = 'layout.frame.within';

/** Said of a frame round a block whose limit is missing, with an example in her units. */
export const needsLimit = (example: string): string => planWords.limitMissing({ example });

/** A page's quotes for a program's. */
const quoted = (found: string): string =>
  found.replace(/^"(.*)"$/, (_, text: string) => planWords.quoted({ text }));

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
