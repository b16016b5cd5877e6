/** Where a part lies on its quilt: its middle, measured from the quilt's, and how far it is turned. */

import * as z from 'zod';
import { describeValue, lengthOf, plural, refuse } from '../document/index.ts';
import type { Point } from '../geometry/index.ts';
import type { Units } from '../length/index.ts';
import { inCornersOf } from './in-corners.ts';
import { LIMITS, MOST_PLACES } from './limits.ts';

const TURN = 'a number of degrees from -360 to 360, such as 90';

export const turnSchema = z
  .number({ error: TURN })
  .min(-360)
  .max(360)
  .meta({ description: 'How far the part is turned on the quilt, degrees counterclockwise.' });

type Entry = string | number;

/** Where a part is written to lie: in places, mm, or in the corners that the part of that name leaves free. */
export type WrittenPlaces = readonly Point[] | { readonly of: string };

/** One place or several. A mistake is told at the length that it is in, so the lengths are read one by one. */
export const placesSchema = (unit: Units) => {
  const away = lengthOf(unit, { least: -LIMITS.side.most, most: LIMITS.side.most, sign: 'any' });
  const entry = z.union([z.string(), z.number()]);
  const expected = 'middle, a place such as [12, -8], a list of places, or corners of a part';
  return z
    .union([z.string(), z.array(z.union([entry, z.array(entry)]))], { error: expected })
    .meta({
      description:
        "Where the part's middle lies from the quilt's: right and up, as [12, -8]; a list of such places; or `corners of` and the name of a part that leaves its corner squares free.",
    })
    .transform((value, context): WrittenPlaces => {
      if (value === 'middle') return MIDDLE;
      if (typeof value === 'string') {
        const of = inCornersOf(value);
        if (of !== undefined) return { of };
        return refuse(context, value, { message: 'this is no place', found: describeValue(value), expected });
      }
      if (value.length === 0) return refuse(context, value, { message: 'no place is listed', expected });
      if (!value.some(Array.isArray)) return [placeAt(value as Entry[], [], away, context)];
      if (value.length > MOST_PLACES)
        return refuse(context, value, {
          message: 'too many places',
          found: `${value.length}`,
          expected: `at most ${MOST_PLACES}`,
        });
      return value.map((place, i) => {
        if (Array.isArray(place)) return placeAt(place, [i], away, context);
        const found = describeValue(place);
        return refuse(context, value, { message: 'this is no place', found, expected: PLACE }, [i]);
      });
    })
    .default(MIDDLE);
};

const MIDDLE: readonly Point[] = [{ x: 0, y: 0 }];
const PLACE = 'two lengths, such as [12, -8]';

const placeAt = (
  place: readonly Entry[],
  path: readonly number[],
  away: z.ZodType<number>,
  context: z.RefinementCtx,
): Point => {
  if (place.length !== 2)
    return refuse(
      context,
      place,
      {
        message: 'a place has two lengths: how far right, and how far up',
        found: plural(place.length, 'length'),
        expected: PLACE,
        ...(place.length > 2 && {
          hint: 'a comma parts one length from the next: decimals stand behind a point, as in 143.5',
        }),
      },
      path,
    );
  const [x, y] = place.map((written, i) => {
    const read = away.safeParse(written);
    if (read.success) return read.data;
    for (const issue of read.error.issues)
      context.issues.push({
        ...issue,
        input: written,
        path: [...path, i, ...issue.path],
      } as z.core.$ZodRawIssue);
    return Number.NaN;
  });
  return { x: x!, y: y! };
};
