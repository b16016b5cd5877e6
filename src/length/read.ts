/**
 * Reads a length as a person writes it: `5 1/2 in`, `5-1/2"`, `5½″`, `.5 in`, `14 cm`, `140mm`, `5' 6"`,
 * `2 yd`, or a bare number or fraction in the unit that the file is in.
 *
 * Everything stays an exact rational up to one single conversion, so that 17/32 in is 13.49375 mm and not
 * 13.493749999999999. Nothing is guessed: what could mean two things (`1,500 mm`, `5 - 1/2`) is refused
 * with a word about how to write it.
 */

import { Fraction } from 'fraction.js';

/** The units that a bare number can be in. */
export type Units = 'in' | 'cm' | 'mm';
export const UNITS: readonly Units[] = ['in', 'cm', 'mm'];

/** Exactly, by the definition of the inch (international yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4;
export const MM_PER: Readonly<Record<Units, number>> = { in: MM_PER_INCH, cm: 10, mm: 1 };

/** Longer texts are refused unread: `12 345 5/64 inches` has 18 characters. */
export const MOST_LENGTH_CHARACTERS = 40;

/** A length of something is positive, or may be zero (a gap); a coordinate may be negative too. */
export type AllowedSign = 'positive' | 'zero-or-more' | 'any';

export type LengthReading =
  | { readonly ok: true; readonly mm: number }
  | {
      readonly ok: false;
      /** A stable word for programs. */
      readonly code: 'not-a-length' | 'negative' | 'zero';
      /** What is wrong, in a few words: `one number divided by zero`. */
      readonly reason: string;
      /** What was written, shortened and in quotes. */
      readonly found: string;
      /** What would have been right. */
      readonly expected: string;
    };

/**
 * The length in mm, or what is wrong with it. A number stands for its shortest decimal.
 */
export const readLength = (
  written: string | number,
  unit: Units,
  sign: AllowedSign = 'zero-or-more',
): LengthReading => {
  const text = String(written);
  const fail = (code: 'not-a-length' | 'negative' | 'zero', reason: string): LengthReading => ({
    ok: false,
    code,
    reason,
    found: typeof written === 'number' ? text : quote(text),
    expected: EXPECTED[sign][unit],
  });
  if (text.length > MOST_LENGTH_CHARACTERS) return fail('not-a-length', 'too long to be a length');
  const parsed = parse(plain(text), unit);
  if (typeof parsed === 'string') return fail('not-a-length', parsed);
  if (sign !== 'any' && parsed.lt(0)) return fail('negative', 'a negative length');
  if (sign === 'positive' && parsed.equals(0)) return fail('zero', 'a length of nothing');
  return { ok: true, mm: toNumber(parsed) };
};

const EXPECTED: Readonly<Record<AllowedSign, Readonly<Record<Units, string>>>> = {
  positive: {
    in: 'a length above zero, such as 5 1/2 or 140 mm',
    cm: 'a length above zero, such as 14 or 5 1/2 in',
    mm: 'a length above zero, such as 140 or 5 1/2 in',
  },
  'zero-or-more': {
    in: 'a length such as 5 1/2 or 140 mm',
    cm: 'a length such as 14 or 5 1/2 in',
    mm: 'a length such as 140 or 5 1/2 in',
  },
  any: {
    in: 'a length such as 5 1/2, -1/4 or 140 mm',
    cm: 'a length such as 14, -0.5 or 5 1/2 in',
    mm: 'a length such as 140, -5 or 5 1/2 in',
  },
};

/** Units by the ways people write them, each with its millimetres. A yard is 3 feet, a foot 12 inches. */
const MM_PER_UNIT: ReadonlyMap<string, Fraction> = new Map(
  (
    [
      [['in', 'inch', 'inches', '"', "''"], '254/10'],
      [['ft', 'foot', 'feet', "'"], '3048/10'],
      [['yd', 'yds', 'yard', 'yards'], '9144/10'],
      [['mm', 'millimeter', 'millimeters', 'millimetre', 'millimetres'], '1'],
      [['cm', 'centimeter', 'centimeters', 'centimetre', 'centimetres'], '10'],
      [['m', 'meter', 'meters', 'metre', 'metres'], '1000'],
    ] as const
  ).flatMap(([names, mm]) => names.map((name) => [name, new Fraction(mm)] as const)),
);

/** Known so that the message can say more than "unknown": people do write these in the wrong place. */
const OTHER_UNITS: ReadonlyMap<string, string> = new Map([
  ...['oz', 'ounce', 'ounces', 'lb', 'lbs', 'pound', 'pounds', 'g', 'gram', 'grams', 'kg'].map(
    (u) => [u, 'a weight, not a length'] as const,
  ),
  ...['°', 'deg', 'degree', 'degrees', 'rad'].map((u) => [u, 'an angle, not a length'] as const),
  ...['%', 'percent'].map((u) => [u, 'a share, not a length'] as const),
  ...['px', 'pt', 'em'].map((u) => [u, 'a unit of screens and type, not of cloth'] as const),
]);

/** Digits, points and slashes as typewriters have them, whatever was pasted: `5½″` becomes `5 1/2"`. */
const plain = (text: string): string =>
  text
    .replace(/[\u00bc-\u00be\u2150-\u215e\u2189]/g, (glyph) => ` ${glyph.normalize('NFKC')} `)
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2018\u2019\u201b\u2032\u02b9\u00b4]/g, "'")
    .replace(/[\u201c\u201d\u201f\u2033\u02ba\u3003]/g, '"')
    .replace(/[\u2010-\u2015\u2212\ufe63\uff0d]/g, '-')
    .replace(/[\s\u00a0\u2000-\u200a\u202f\u205f\u3000]+/g, ' ')
    .trim()
    .toLowerCase();

/** One number with its unit, at the start of what is left to read. */
const PART =
  /^(?:(?<whole>\d{1,9})(?: |-|- )(?=\d+ ?\/)(?<n>\d{1,9}) ?\/ ?(?<d>\d{1,9})|(?<top>\d{1,9}) ?\/ ?(?<bottom>\d{1,9})|(?<decimal>\d{1,9}(?:\.\d{0,25})?|\.\d{1,25}))(?![\d./,]) ?(?<unit>[a-z]+\.?|''|["'°%])? ?/;

/** What PART finds: a mixed number, a fraction, or a decimal, and perhaps a unit. */
interface Part {
  readonly whole?: string;
  readonly n?: string;
  readonly d?: string;
  readonly top?: string;
  readonly bottom?: string;
  readonly decimal?: string;
  readonly unit?: string;
}

/** `2 yd 1 ft 3 1/2 in` has three parts; nothing a person writes has more. */
const MOST_PARTS = 3;

/** Millimetres, or what is wrong. */
const parse = (text: string, unit: Units): Fraction | string => {
  if (text === '') return 'nothing is written';
  if (/\de[+-]?\d/.test(text)) return 'a power of ten';
  const negative = text.startsWith('-');
  let rest = withPoint(negative ? text.slice(1).trimStart() : text, unit);
  let sum = new Fraction(0);
  let unitBefore: Fraction | undefined;
  for (let part = 0; part < MOST_PARTS && rest !== ''; part++) {
    const match = PART.exec(rest);
    if (!match) return whyNoNumber(rest);
    const found = match.groups as Part;
    const value = numberOf(found);
    if (typeof value === 'string') return value;
    rest = rest.slice(match[0].length);
    const name = found.unit?.replace(/\.$/, '');
    if (name === undefined && (part > 0 || rest !== '')) return 'not one number with one unit';
    const size = MM_PER_UNIT.get(name ?? unit);
    if (!size) return OTHER_UNITS.get(name!) ?? `the unit ${quote(name!)} is not known`;
    const nested =
      unitBefore === undefined || (isImperial(unitBefore) && isImperial(size) && size.lt(unitBefore));
    if (!nested) return 'not one number with one unit';
    sum = sum.add(value.mul(size));
    unitBefore = size;
  }
  if (rest !== '') return 'not one number with one unit';
  return negative ? sum.neg() : sum;
};

/**
 * A metric length with a decimal comma, with a point instead: the marker is either (SI brochure, 5.4.4). Inches are
 * never written so, and three digits behind a comma may be thousands: those stay as they are, and are refused.
 */
const withPoint = (text: string, unit: Units): string => {
  const [, whole, part, name] = /^(\d{1,9}),(\d{1,2})(?: ?([a-z]+)\.?)?$/.exec(text) ?? [];
  const size = MM_PER_UNIT.get(name ?? unit);
  return part === undefined || !size || isImperial(size) ? text : `${whole}.${part} ${name ?? ''}`.trim();
};

const INCH = new Fraction('254/10');
const isImperial = (size: Fraction): boolean => size.divisible(INCH);

const numberOf = (found: Part): Fraction | string => {
  if (found.decimal !== undefined) return new Fraction(found.decimal.replace(/\.$/, ''));
  const top = BigInt(found.n ?? found.top ?? '');
  const bottom = BigInt(found.d ?? found.bottom ?? '');
  if (bottom === 0n) return 'a fraction with a zero below the line';
  if (found.whole === undefined) return new Fraction(top, bottom);
  if (top >= bottom) return 'the fraction after a whole number must be less than one';
  return new Fraction(top, bottom).add(BigInt(found.whole));
};

const whyNoNumber = (rest: string): string => {
  if (/^\d*,\d/.test(rest)) return `a comma in a number; ${pointInstead(rest)}`;
  if (/^\d{10}/.test(rest)) return 'too many digits';
  if (/^\d/.test(rest)) return 'not a number or a fraction';
  return 'no number';
};

/** What to write for `143,5`. Three digits behind a comma may as well be thousands: nothing is guessed. */
export const pointInstead = (written: string): string => {
  const [, whole, part] = /^[+-]?(\d*),(\d+)(?![\d.,])/.exec(written) ?? [];
  const known = part !== undefined && part.length !== 3;
  return `write a decimal point${known ? `: ${whole || 0}.${part}` : ''}`;
};

/**
 * The nearest double of a rational, so that a number that a program wrote out in full is that number again. A whole
 * number becomes the nearest double (ECMA-262, 6.1.6.1), and dividing by a power of two is exact; what the whole
 * division leaves over is told by an odd last digit, far behind the 53 that count: numerators are below 2^130, and
 * denominators below 2^90.
 */
const toNumber = ({ n, d, s }: Fraction): number => {
  const scaled = n << SHIFT;
  const odd = scaled % d === 0n ? 0n : 1n;
  return (Number((scaled / d) | odd) / 2 ** Number(SHIFT)) * Number(s) || 0;
};

const SHIFT = 192n;

/** Long enough to recognise what was written, short enough for one line. */
const MOST_QUOTED = 32;

const quote = (text: string): string => {
  const flat = text.replace(/\s+/g, ' ');
  return `"${flat.length > MOST_QUOTED ? `${flat.slice(0, MOST_QUOTED)}…` : flat}"`;
};
