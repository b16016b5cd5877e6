/**
 * How a wish is built: the words for about, at least, at most and from one to another as people type them, and the
 * numbers that stand between them. What the numbers are is for others to say (wish.ts).
 */

/** What a wish makes of its numbers; `around` is so much more or less than the first of them. */
export type Kind = 'exactly' | 'about' | 'least' | 'most' | 'between' | 'around';

export interface Form {
  readonly kind: Kind;
  readonly numbers: readonly string[];
}

/** Why a text has no form, and what might be written. */
interface NoForm {
  readonly reason: string;
  readonly hint?: string;
}

/** As one types it: small letters, one kind of dash, signs and number words in their plain form. */
export const plainWish = (text: string): string =>
  PLAIN.reduce((plain, [what, by]) => plain.replace(what, by), text.trim().toLowerCase());

const NUMBER_WORDS = [
  ...['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
].map((word, i): readonly [RegExp, string] => [new RegExp(`\\b${word}\\b`, 'g'), String(i + 1)]);

const PLAIN: readonly (readonly [RegExp, string])[] = [
  [/[\u2010-\u2015\u2212]/g, '-'],
  [/[\u2248\u223c\u2243]/g, '~'],
  [/\u2265/g, '>='],
  [/\u2264/g, '<='],
  [/\u2026/g, '..'],
  ...NUMBER_WORDS,
  [/ and (?:a|1) (half|quarter)\b/g, ' $1'],
  [/\b3 quarters?\b/g, '3/4'],
  [/\b(?:(?:a|1) )?half(?: an?| of an?)?\b/g, '1/2'],
  [/\b(?:(?:a|1) )?quarter(?: of an?)?\b/g, '1/4'],
  [/^an? (?=in|foot|ft|yard)/, '1 '],
  [/\s+/g, ' '],
];

/** Before a number, and after it. */
const BEFORE: readonly (readonly [RegExp, Kind])[] = [
  [/^(?:(?:about|around|roughly|approximately|approx|circa|ca|some)(?![a-z])|ca?\.|~)\.? ?/, 'about'],
  [
    /^(?:(?:at (?:the )?least|(?:no|not) (?:less|fewer|smaller|narrower) than|min(?:imum)?)(?![a-z])\.?|>=) ?/,
    'least',
  ],
  [
    /^(?:(?:at (?:the )?most|(?:no|not) (?:more|wider|deeper|larger) than|max(?:imum)?|up to)(?![a-z])\.?|<=) ?/,
    'most',
  ],
  [/^(?:(?:exactly|just)(?![a-z])|=) ?/, 'exactly'],
];
const AFTER: readonly (readonly [RegExp, Kind])[] = [
  [/(?:-? ?ish| or so| or thereabouts)$/, 'about'],
  [/(?: or (?:more|wider|deeper|larger)| and (?:up|more)| (?:at least|min(?:imum|\.)?)| ?\+)$/, 'least'],
  [/(?: or (?:less|fewer|narrower|shallower|smaller)| (?:at most|max(?:imum|\.)?))$/, 'most'],
  [/ exactly$/, 'exactly'],
];
/** Bounds that leave out their own end, which no wish does. */
const STRICT: readonly (readonly [RegExp, string])[] = [
  [/^(?:more than|over|above|greater than|wider than|deeper than|>) ?/, 'at least'],
  [/^(?:less than|fewer than|under|below|narrower than|<) ?/, 'at most'],
];

/** `text` is plain; `reads` says whether a text is a number. One that is not stays as it is written. */
export const formOf = (text: string, reads: (text: string) => boolean): Form | NoForm => {
  if (reads(text)) return { kind: 'exactly', numbers: [text] };
  for (const [words, instead] of STRICT) {
    const rest = text.replace(words, '');
    if (rest !== text && reads(rest))
      return { reason: 'a bound that is not reached itself', hint: `write ${instead} ${rest}` };
  }
  return betweenOf(text, reads) ?? boundOf(text) ?? { kind: 'exactly', numbers: [text] };
};

const boundOf = (text: string): Form | NoForm | undefined => {
  for (const [words, kind] of [...BEFORE, ...AFTER]) {
    if (!words.test(text)) continue;
    const number = text.replace(words, '').trim();
    if (number === '') return { reason: `no number stands beside “${text}”`, hint: EXAMPLE[kind] };
    if (!/\d/.test(number)) continue;
    return { kind, numbers: [kind === 'about' ? number.replace(AFTER[0]![0], '') : number] };
  }
  return undefined;
};

const EXAMPLE: Readonly<Record<Kind, string>> = {
  exactly: 'for example 9',
  about: 'for example about 9',
  least: 'for example at least 9',
  most: 'for example at most 9',
  between: 'for example 8 to 10',
  around: 'for example 8 to 10',
};

const betweenOf = (text: string, reads: (text: string) => boolean): Form | NoForm | undefined => {
  const around = /^(.+?) ?(?:±|\+ ?\/? ?-) ?(.+)$/.exec(text);
  if (around) return { kind: 'around', numbers: [around[1]!, around[2]!] };
  const and = /^between (.+) and (.+)$/.exec(text);
  if (and) return between(and[1]!, and[2]!);
  const ends = text
    .replace(/^from /, '')
    .split(/(?:^| )to(?: |$)/)
    .map((end) => end.trim());
  if (ends.length > 2) return { reason: 'more than two ends', hint: 'for example 8 to 10' };
  const [from, to] = ends;
  if (to !== undefined && from !== undefined) {
    if (/^(?:up|close|next)$/.test(from)) return undefined;
    if (to === '')
      return {
        reason: 'nothing stands after “to”',
        hint: `for example ${from || 8} to 10, or at least ${from || 8}`,
      };
    if (from === '') return { reason: 'nothing stands before “to”', hint: `for example at most ${to}` };
    return between(from, to);
  }
  const or = /^(.+) or (.+)$/.exec(text);
  if (or && reads(or[1]!) && reads(or[2]!))
    return Number(or[2]) - Number(or[1]) === 1
      ? between(or[1]!, or[2]!)
      : { reason: 'one or the other is not asked for', hint: `for example ${or[1]} to ${or[2]}` };
  // A dash may stand within a number, as in 9-1/2: it parts what reads as two.
  for (const { index, 0: dash } of text.matchAll(/ ?(?:\.{2,3}|-) ?/g)) {
    const [low, high] = [text.slice(0, index), text.slice(index + dash.length)];
    if (FRACTION.test(high)) continue;
    if (reads(low) && reads(high)) return between(low, high);
  }
  return undefined;
};

/** After a dash it may be the rest of the number before it. */
const FRACTION = /^\d+ ?\/ ?\d+/;

const between = (from: string, to: string): Form => ({
  kind: 'between',
  numbers: [inUnitOf(from, to), inUnitOf(to, from)],
});

/** `3` of `3 to 4 cm` is 3 cm. */
const inUnitOf = (one: string, other: string): string => {
  const unit = UNIT_WORD.exec(other)?.[0];
  return unit === undefined || UNIT_WORD.test(one) ? one : `${one} ${unit}`;
};
export const UNIT_WORD = /[a-z"'\u2019\u201d\u2032\u2033]+\.?$/;
