/** The keys of a plan's swag that hold wishes: span, depth, use, repeats and gap. */

import * as z from 'zod';
import { group, type ProblemParams, refuse } from '../document/index.ts';
import { INCH_SIXTYFOURTH, type LengthStyle, MM_TENTH, type Units } from '../length/index.ts';
import { auto } from './layout-schema.ts';
import { LIMITS, MOST_REPEATS } from './limits.ts';
import { SIDES } from './plan.ts';
import {
  COUNT_EXPECTED,
  type CountWish,
  LENGTH_EXPECTED,
  readCountWish,
  readLengthWish,
  readShareWish,
  SHARE_EXPECTED,
  type Wish,
  type WishReading,
} from './wish.ts';

const STYLES: Readonly<Record<Units, LengthStyle>> = {
  in: INCH_SIXTYFOURTH,
  cm: { unit: 'cm', step: 0.1 },
  mm: MM_TENTH,
};

/** Limits of what may be asked for, mm. */
const lengthLimits = { span: LIMITS.span, depth: LIMITS.depth, gap: LIMITS.gap };
export type LengthWishKey = keyof typeof lengthLimits;

/** One length that is asked for, as it is written anywhere. */
export const readWishOf = (key: LengthWishKey, written: string | number, unit: Units): WishReading<Wish> =>
  readLengthWish(written, unit, lengthLimits[key], STYLES[unit], key === 'gap' ? NO_GAP : {});
const NO_GAP = { touching: '0', none: '0', 'no gap': '0' };

export const readRepeatsWish = (written: string | number): WishReading<CountWish> =>
  readCountWish(written, MOST_REPEATS);

type Written = string | number;

const wish = <W>(read: (written: Written) => WishReading<W>, expected: string, description: string) =>
  z
    .union([z.string(), z.number()], { error: expected })
    .meta({ description })
    .transform((written, context): W => {
      const reading = read(written);
      return reading.ok ? reading.wish : refuse(context, written, problemOf(reading));
    });

const problemOf = (reading: Extract<WishReading<unknown>, { ok: false }>): ProblemParams => {
  const { code, reason, found, expected, hint } = reading;
  return { code, message: reason, found, expected, ...(hint !== undefined && { hint }) };
};

const open = <T>(value: T): Exclude<T, 'auto'> | undefined =>
  value === 'auto' ? undefined : (value as Exclude<T, 'auto'>);

const lengthWish = (key: LengthWishKey, unit: Units, description: string) =>
  wish((written) => readWishOf(key, written, unit), LENGTH_EXPECTED, description);

const FORMS = 'exactly (9), as a range (8 to 10, at least 8, at most 10), or about 9';

export const wishKeys = (unit: Units) => ({
  span: z
    .union([auto, lengthWish('span', unit, `How wide a swag is: ${FORMS}.`)], { error: LENGTH_EXPECTED })
    .transform(open)
    .optional(),
  depth: z
    .union([auto, lengthWish('depth', unit, `How deep a swag is: ${FORMS}.`)], { error: LENGTH_EXPECTED })
    .transform(open)
    .optional(),
  use: z
    .union(
      [
        auto,
        wish(
          readShareWish,
          SHARE_EXPECTED,
          "How much of the border's width between its margins is used: at least 80 %, or about 3/4.",
        ),
      ],
      { error: SHARE_EXPECTED },
    )
    .transform(open)
    .optional(),
  repeats: repeatsSchema(),
  gap: z
    .union(
      [
        auto,
        lengthWish(
          'gap',
          unit,
          'Between neighbours: 0 for swags that touch, another length, a range, about so much; or auto for the least that serves.',
        ),
      ],
      { error: `${LENGTH_EXPECTED}, or auto` },
    )
    .optional(),
});

const repeatsSchema = () => {
  const expected = `${COUNT_EXPECTED}; or one for each side`;
  const count = z.union(
    [z.enum(['odd', 'even', 'auto']), wish(readRepeatsWish, COUNT_EXPECTED, 'A number, 5 to 7, about 9.')],
    { error: `${COUNT_EXPECTED}; or auto` },
  );
  const some = count.optional();
  const sides = group({ top: some, right: some, bottom: some, left: some }, expected).transform((by) =>
    SIDES.map((side) => by[side]),
  );
  return z
    .union([count, z.array(count), sides], { error: expected })
    .meta({
      description:
        'How many swags on a side: a number, odd, even, 5 to 7, about 9; or by the sides, from the top clockwise.',
    })
    .transform((value, context): readonly (CountWish | undefined)[] | undefined => {
      if (!Array.isArray(value)) return value === 'auto' ? undefined : [value as CountWish];
      const counts = (value as readonly (CountWish | 'auto' | undefined)[]).map(open);
      if (counts.length !== 1 && counts.length !== 4) {
        const found = counts.length === 0 ? 'an empty list' : `a list of ${counts.length}`;
        return refuse(context, value, { message: 'a list of repeats is for four sides', found, expected });
      }
      return counts.some((c) => c !== undefined) ? counts : undefined;
    })
    .optional();
};
