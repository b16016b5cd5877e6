/**
 * What a person asks of a figure: exactly so much (`9`), between bounds (`3 to 4`, `at least 3`, `at most 4 cm`), or
 * roughly (`about 9`). A range binds, about only ranks. The same words in a plan, after an option and on the page.
 */

import { Fraction } from 'fraction.js';
import { nearestOf, quoted } from '../document/index.ts';
import { formatLength, type LengthStyle, readLength, type Units } from '../length/index.ts';
import { formOf, type Kind, plainWish, UNIT_WORD } from './wish-form.ts';

type Range = { readonly least?: number; readonly most?: number };
export interface About {
  readonly about: number;
}
/** A number is asked for exactly. Lengths are in mm, shares from 0 to 1. */
export type Wish = number | Range | About;
/** How many swags on a side. */
export type CountWish = Wish | 'odd' | 'even';

export const isAbout = (wish: Wish | string): wish is About => typeof wish === 'object' && 'about' in wish;

export type WishReading<W> =
  | { readonly ok: true; readonly wish: W }
  | {
      readonly ok: false;
      /** A stable word for programs. */
      readonly code: string;
      /** What is wrong, in a few words. */
      readonly reason: string;
      readonly found: string;
      readonly expected: string;
      readonly hint?: string;
    };

interface Limits {
  readonly least: number;
  readonly most: number;
}

/** What one number of a wish is, and how it is told. */
interface Quantity {
  readonly read: (text: string) => number | { readonly code: string; readonly reason: string };
  readonly limits: Limits;
  readonly say: (value: number) => string;
  readonly expected: string;
  /** Other words that may stand in a number's place. */
  readonly words?: readonly string[];
  /** Words that are left out of a text: what it is a number of. */
  readonly nouns: RegExp;
  /** Words for numbers. */
  readonly named?: Readonly<Record<string, string>>;
  /** What is wrong with a text that asks for something else, and how that is asked for. */
  readonly other: RegExp;
  readonly otherwise: { readonly reason: string; readonly hint: string };
}

/** A length in mm; bare numbers are in `unit`, and of two with one unit between them both are in that. */
export const readLengthWish = (
  written: string | number,
  unit: Units,
  limits: Limits,
  style: LengthStyle,
  named: Quantity['named'] = {},
): WishReading<Wish> =>
  readWith(written, {
    read: (text) => {
      const reading = readLength(text, unit);
      return reading.ok ? reading.mm : reading;
    },
    limits,
    say: (mm) => formatLength(mm, style),
    expected: LENGTH_EXPECTED,
    nouns: / (?:wide|deep|long|across|apart|each)\b/g,
    named,
    other: / ?(?:swags?|repeats?)$/,
    otherwise: { reason: 'so many swags are no length', hint: 'how many is asked for by repeats' },
  });

/** For those who say it before anything is read. */
export const LENGTH_EXPECTED = 'a length such as 9, about 9, 8 to 10, at least 8 or at most 10';

/** A share of a whole, such as `80 %`, `3/4` or `0.8`; a bare number above 1 is in percent. */
export const readShareWish = (written: string | number): WishReading<Wish> =>
  readWith(written, {
    read: (text) => shareOf(text) ?? { code: 'not-a-share', reason: 'not a share' },
    limits: { least: LEAST_SHARE, most: 1 },
    say: sayShare,
    expected: SHARE_EXPECTED,
    nouns: / of (?:it|the (?:border|width|room|strip))\b/g,
    named: { all: '100 %', full: '100 %' },
    other: /\d ?(?:in|inch(?:es)?|"|cm|mm)$/,
    otherwise: { reason: 'a length is no share', hint: 'how deep a swag is, is asked for by depth' },
  });
export const SHARE_EXPECTED = 'a share up to 100 %, such as at least 80 %, about 3/4 or 70 % to 90 %';
const LEAST_SHARE = 0.01;

/** How many swags: a whole number, a range, `about 9`, `odd` or `even`. */
export const readCountWish = (written: string | number, most: number): WishReading<CountWish> => {
  const word = PARITY.exec(String(written).trim().toLowerCase())?.[1];
  if (word !== undefined) return { ok: true, wish: word === 'even' ? word : 'odd' };
  return readWith(written, {
    read: (text) => (WHOLE.test(text) ? Number(text) : { code: 'not-a-count', reason: 'not a whole number' }),
    limits: { least: 1, most },
    say: String,
    expected: COUNT_EXPECTED,
    words: ['odd', 'even'],
    nouns: / ?\b(?:swags?|repeats?|each|per side|on (?:a|each|every) side)\b/g,
    other: /\d ?(?:in|inch(?:es)?|"|cm|mm)$/,
    otherwise: { reason: 'a length is not how many', hint: 'how wide a swag is, is asked for by span' },
  });
};
const PARITY = /^(?:an? )?(odd|even|uneven)(?: number)?(?: of (?:swags|repeats))?$/;
export const COUNT_EXPECTED = 'a whole number such as 8, or odd, even, 5 to 7, about 9, at least 5';

const WHOLE = /^\d{1,15}$/;
const SHARE = /^(?:(\d{1,9}) ?\/ ?(\d{1,9})|(\d{1,9}(?:\.\d{0,15})?|\.\d{1,15})) ?(%|percent)?$/;

const shareOf = (text: string): number | undefined => {
  const match = SHARE.exec(text);
  if (!match) return undefined;
  const [, top, bottom, decimal, percent] = match;
  if (bottom !== undefined && Number(bottom) === 0) return undefined;
  const value =
    decimal === undefined
      ? new Fraction(Number(top), Number(bottom))
      : new Fraction(decimal.replace(/\.$/, ''));
  return (percent === undefined && value.lte(1) ? value : value.div(100)).valueOf();
};

/** `80 %`, and where that is not all of it, `66.67 %`. */
export const sayShare = (share: number): string => `${Number((100 * share).toFixed(2))} %`;

const readWith = (written: string | number, quantity: Quantity): WishReading<Wish> => {
  const refused = (code: string, reason: string, more: object = {}): WishReading<Wish> => ({
    ok: false,
    code,
    reason,
    found: typeof written === 'number' ? String(written) : quoted(written),
    expected: quantity.expected,
    ...more,
  });
  if (String(written).length > MOST_CHARACTERS) return refused('not-a-wish', 'too long to be read');
  const text = plainWish(String(written)).replace(quantity.nouns, '').trim();
  if (text === '') return refused('not-a-wish', 'nothing is written');
  // A plain object answers to words that nobody gave it, such as “constructor”.
  const named = quantity.named && Object.hasOwn(quantity.named, text) ? quantity.named[text] : undefined;
  const form = formOf(named ?? text, (part) => typeof quantity.read(part) === 'number');
  if ('reason' in form) {
    const { reason, ...hint } = form;
    return refused('not-a-wish', reason, hint);
  }
  const numbers: number[] = [];
  for (const part of form.numbers) {
    const value = quantity.read(part);
    if (typeof value !== 'number') {
      if (quantity.other.test(part))
        return refused(value.code, quantity.otherwise.reason, quantity.otherwise);
      if (LEFT_OPEN.test(text)) return refused(value.code, value.reason, { hint: 'auto leaves it open' });
      const near = nearWord(part, quantity.words ?? []);
      return refused(value.code, value.reason, near ? { hint: `did you mean ${quoted(near)}?` } : {});
    }
    const { least, most } = quantity.limits;
    if (!(value >= least - NOISE))
      return refused('too-small', 'too small', { expected: `at least ${quantity.say(least)}` });
    if (!(value <= most + NOISE))
      return refused('too-large', 'too large', { expected: `at most ${quantity.say(most)}` });
    numbers.push(value);
  }
  const [first, second] = numbers as [number, number | undefined];
  if (form.kind === 'around' && second !== undefined) {
    const [low, high] = [first - second, first + second];
    if (low < quantity.limits.least - NOISE)
      return refused('too-small', 'too small', {
        expected: `at least ${quantity.say(quantity.limits.least)}`,
      });
    return { ok: true, wish: { least: low, most: Math.min(high, quantity.limits.most) } };
  }
  if (form.kind === 'about' && first === 0)
    return refused('about-nothing', 'about nothing is no length', { expected: '0, or at most so much' });
  if (second !== undefined && first > second)
    return refused('ends-first', 'it ends below where it begins', { expected: 'the smaller one first' });
  return { ok: true, wish: wishOf(form.kind, first, second) };
};

const wishOf = (kind: Kind, first: number, second: number | undefined): Wish => {
  switch (kind) {
    case 'about':
      return { about: first };
    case 'least':
      return { least: first };
    case 'most':
      return { most: first };
    default:
      return second === undefined || second === first ? first : { least: first, most: second };
  }
};

/** No wish that a person writes is longer. */
const MOST_CHARACTERS = 80;
/** What one types who asks for nothing. */
const LEFT_OPEN = /^(?:any|anything|whatever|free|open|none)$/;
/** A limit must let itself pass, whichever unit it was written in. */
const NOISE = 1e-9;

/** The word that was meant, where a number should begin and something like one of a wish's words does. */
const nearWord = (text: string, others: readonly string[]): string | undefined => {
  const words = /^[a-z]+(?: [a-z]+)?/.exec(text)?.[0];
  const near = words && nearestOf(words, ['about', 'at least', 'at most', ...others, 'auto']);
  return near === words ? undefined : near;
};

/** In the words that are read again: `about 9 in`, `3 to 4 in`, `at least 80 %`, `odd`. */
export const wishText = (wish: CountWish | 'auto', say: (value: number) => string): string => {
  if (typeof wish === 'string') return wish;
  if (typeof wish === 'number') return say(wish);
  if (isAbout(wish)) return `about ${say(wish.about)}`;
  const { least, most } = wish;
  if (least === undefined) return most === undefined ? 'auto' : `at most ${say(most)}`;
  return most === undefined ? `at least ${say(least)}` : bothText(say(least), say(most));
};

/** A unit that both have is said once. */
const bothText = (from: string, to: string): string => {
  const unit = UNIT_WORD.exec(to)?.[0];
  const bare = unit !== undefined && from.endsWith(` ${unit}`) ? from.slice(0, -unit.length - 1) : from;
  return `${bare} to ${to}`;
};
