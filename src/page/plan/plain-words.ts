/**
 * What is wrong with a plan, for someone who sees fields and no file: the same problems as the commands have, said
 * of the field by its name.
 */

/** What is told of a problem, without its place: what the reader of lengths and the reader of plans both give. */
export interface Told {
  readonly code: string;
  readonly message: string;
  readonly key?: string | undefined;
  readonly found?: string | undefined;
  readonly expected?: string | undefined;
  readonly hint?: string | undefined;
}

/** Fields by the plan's keys, as the page labels them. */
const NAMES: readonly (readonly [RegExp, string])[] = [
  [/^layout\.border\.(?:inner|outer)\.(top|right|bottom|left)$/, '$1 side'],
  [/^layout\.border\.(?:inner|outer)$/, 'length of the sides'],
  [/^layout\.(border|strip)\.width$/, '$1 width'],
  [/^layout\.strip\.length$/, 'length of the strip'],
  [/^layout\.strip\.ends$/, 'distance from the ends'],
  [/^layout\.frame\.around$/, 'width of the motif'],
  [/^layout\.frame\.block$/, 'side of the block'],
  [/^layout\.frame\.block\.(width|height)$/, '$1 of the block'],
  [/^layout\.frame\.clearance$/, 'distance from the middle'],
  [/^layout\.frame\.within$/, 'greatest finished size'],
  [/^layout\.\w+\.margin$/, 'distance from both seams'],
  [/^layout\.\w+\.margin\.(inner|outer)$/, 'distance from the $1 seam'],
  [/^foot\.clearance$/, 'foot clearance'],
  [/^at\.1$/, 'distance to the right of the middle'],
  [/^at\.2$/, 'distance up from the middle'],
  [/^swag\.span$/, 'width of a swag'],
  [/^swag\.depth$/, 'depth of a swag'],
  [/^swag\.use$/, 'use of the border'],
  [/^swag\.repeats$/, 'number of swags on a side'],
  [/^channels\.points$/, 'choice of how channels go round points'],
  [/^channels\.(outward|inward)(\.\d+)?$/, 'width of a channel'],
  [/^fills\..+\.(spacing|angle|seed)$/, '$1 of a fill'],
];

/** What a key's field is called; undefined for a key that has no field. */
export const fieldName = (key: string | undefined): string | undefined => {
  const named = NAMES.find(([pattern]) => pattern.test(key ?? ''));
  return named && (key ?? '').replace(named[0], named[1]);
};

/** Sentences for one problem. `name` is the field's; without one the problem speaks for itself. */
export const plainWords = (told: Told, name = fieldName(told.key)): string => {
  const { code, message, found = '', expected = '' } = told;
  const such = /such as .*$/.exec(expected)?.[0] ?? expected;
  if (name !== undefined)
    switch (code) {
      case 'zero':
        return `The ${name} cannot be 0. Type a length, ${such}.`;
      case 'negative':
        return `The ${name} cannot be less than 0. Type a length, ${such}.`;
      case 'not-a-length':
        return found === '""' || found === ''
          ? `The ${name} is empty. Type a length, ${such}.`
          : `${sentence(quoted(found))} cannot be read as the ${name}: ${message}. Type a length, ${such}.`;
      case 'too-small':
      case 'too-large':
        return `The ${name} cannot be ${found}: it must be ${expected}.`;
      case 'does-nothing':
        return `The ${name}: ${message}.`;
      default:
    }
  // The limit has a field of its own, and no other figure says so.
  if (told.key === LIMIT && code === 'does-not-agree')
    return `${LIMIT_FIELD} is ${found}, and must be ${expected}: ${message}.`;
  // Without figures to compare, the message is whole sentences by itself, the same as the commands have.
  if (told.found === undefined && told.expected === undefined)
    return sentence([message, told.hint].filter((part) => part !== undefined).join('; '));
  const compared = [
    told.found === undefined ? undefined : `it is ${found}`,
    told.expected === undefined ? undefined : `it should be ${expected}`,
  ];
  return [message, compared.filter((part) => part !== undefined).join(', and '), told.hint]
    .filter((part) => part !== undefined)
    .map((part) => `${sentence(part)}.`)
    .join(' ');
};

/** What the field of the limit is called on the page. */
const LIMIT_FIELD = '“Finished, at most”';
const LIMIT = 'layout.frame.within';

/** Said of a frame round a block whose limit is missing, with an example in her units. */
export const needsLimit = (example: string): string =>
  `A frame round a block needs its greatest finished size, the longer way. Type a length, such as ${example}.`;

/** A page's quotes for a program's. */
const quoted = (found: string): string => found.replace(/^"(.*)"$/, '“$1”');

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
