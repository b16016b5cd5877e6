/** The keys of a template file, what each may hold, and the limits: what lies beyond them is a slip of the pen. */

import * as z from 'zod';
import {
  group,
  jsonSchemaOf,
  lengthOf,
  listOrOne,
  nameText,
  perUnit,
  refuse,
  titleText,
} from '../document/index.ts';
import { MM_PER_INCH, UNITS, type Units } from '../length/index.ts';

/** A path traced by hand has some dozens of steps. */
const MOST_STEPS = 500;
/** Ends, corners and handles lie this near to the file's origin (mm): 200 in. */
export const FARTHEST = 200 * MM_PER_INCH;
/** Acrylic of 1/32 in bends, of 1 in no foot is high enough for. */
const THINNEST = MM_PER_INCH / 32;
const THICKEST = MM_PER_INCH;
/** Measured with a ruler, point by point; and what may lie between a point and the curve (mm). */
const MOST_POINTS = 300;
const LEAST_TOLERANCE = 0.05;
const MOST_TOLERANCE = 3;
/** Etched lines: a dozen is many. */
const MOST_LINES = 40;
/** The longest etched distances (mm): 40 in, longer than any template that one hand can hold. */
const FARTHEST_LINE = 40 * MM_PER_INCH;
const NEAREST_LINE = MM_PER_INCH / 64;

const unitsSchema = z.enum(UNITS).meta({ description: 'What a bare number in this file is in.' });

const pair = (unit: Units, expected: string) => {
  const across = lengthOf(unit, { sign: 'any', least: -FARTHEST, most: FARTHEST });
  return z.tuple([across, across], { error: expected });
};

/** A measured point, with the word corner where the edge has one. */
const measuredPoint = (unit: Units) => {
  const across = lengthOf(unit, { sign: 'any', least: -FARTHEST, most: FARTHEST });
  return z
    .union([z.tuple([across, across]), z.tuple([across, across, z.literal('corner')])], {
      error: 'a point such as [3 1/4, 1/8], or [3 1/4, 1/8, corner]',
    })
    .transform(([x, y, corner]) => ({ at: { x, y }, corner: corner === 'corner' }));
};

/** One step of the edge; exactly one key, told after the keys themselves are right. */
const stepSchema = (unit: Units) => {
  const to = pair(unit, 'a point such as [3 1/4, 1/8]');
  const rise = lengthOf(unit, {
    sign: 'any',
    least: -FARTHEST,
    most: FARTHEST,
    description: 'Height of the middle over the chord, positive towards the foot.',
  });
  const step = {
    start: to.meta({ description: 'Where the edge begins: the heel.' }),
    line: group({ to }, 'a straight line such as { to: [5, 1/8] }'),
    arc: group(
      { to, rise: rise.optional(), through: to.optional() },
      'an arc such as { to: [3 1/4, 1/8], rise: 3/4 }',
    ).superRefine((arc, context) => {
      if ((arc.rise === undefined) !== (arc.through === undefined)) return;
      const both = arc.rise !== undefined;
      refuse(context, arc, {
        code: both ? 'too-many-keys' : 'missing-key',
        message: both ? 'an arc has a rise or a point that it goes through' : 'an arc needs a rise',
        found: both ? 'both' : 'only its end',
        expected: both ? 'one of them' : 'rise, or through with a point on the arc',
      });
    }),
    curve: group(
      { to, handles: z.tuple([to, to], { error: 'two points such as [[5 3/4, 1/8], [6 1/2, 1/4]]' }) },
      'a curve such as { to: [7, 3/4], handles: [[5 3/4, 1/8], [6 1/2, 1/4]] }',
    ),
    break: nameText().meta({ description: 'Names the section that begins here.' }),
  };
  return group(
    {
      start: step.start.optional(),
      line: step.line.optional(),
      arc: step.arc.optional(),
      curve: step.curve.optional(),
      break: step.break.optional(),
    },
    'a step: start, line, arc, curve or break',
  )
    .meta({ minProperties: 1, maxProperties: 1 })
    .superRefine((value, context) => {
      const keys = Object.keys(value);
      if (keys.length === 1) return;
      refuse(context, value, {
        code: keys.length === 0 ? 'missing-key' : 'too-many-keys',
        message: keys.length === 0 ? 'an empty step' : 'two steps in one',
        ...(keys.length > 1 && { found: keys.join(' and ') }),
        expected: 'one of start, line, arc, curve or break; each step begins with its own -',
      });
    });
};

/** The schema for a file whose bare numbers are in `unit`; every length in it becomes mm. */
export const templateSchema = perUnit((unit: Units) =>
  group(
    {
      $schema: z.string().meta({ description: 'Where editors find the schema of this file.' }).optional(),
      title: titleText().optional(),
      units: unitsSchema.default('in'),
      thickness: lengthOf(unit, {
        least: THINNEST,
        most: THICKEST,
        description: 'Of the acrylic.',
      }).optional(),
      edge: z
        .union(
          [
            z.array(stepSchema(unit)).min(2).max(MOST_STEPS),
            group(
              {
                svg: z.string({ error: 'path data such as "M 0 0 L 100 0"' }).optional(),
                unit: unitsSchema.optional(),
                points: z
                  .array(measuredPoint(unit), {
                    error: 'a list of points such as [[0, 0], [1, 3/4], [2, 1, corner]]',
                  })
                  .max(MOST_POINTS)
                  .meta({ description: 'Measured along the edge; a fair curve is laid through them.' })
                  .optional(),
                tolerance: lengthOf(unit, {
                  least: LEAST_TOLERANCE,
                  most: MOST_TOLERANCE,
                  description: 'How far a point may lie from the curve; 1/64 in unless given.',
                }).optional(),
              },
              'points: with a list of points, or svg: with path data',
            ).superRefine((value, context) => {
              const both = value.svg !== undefined && value.points !== undefined;
              if (!both && (value.svg !== undefined || value.points !== undefined)) return;
              refuse(context, value, {
                code: both ? 'too-many-keys' : 'missing-key',
                message: both ? 'an edge is measured points or path data' : 'an edge without points',
                ...(both && { found: 'both' }),
                expected: both ? 'one of them' : 'points: with a list of points, or svg: with path data',
              });
            }),
          ],
          { error: 'a list of steps, points: as measured, or svg: with path data' },
        )
        .meta({ description: 'The working edge from heel to crown end, the foot on its left.' }),
      alignment: z
        .array(
          group(
            {
              name: nameText(),
              at: lengthOf(unit, {
                most: FARTHEST_LINE,
                description: 'Distance from the heel along the long axis.',
              }),
            },
            'a line such as { name: A, at: 1/4 }',
          ),
          { error: 'a list of lines such as { name: A, at: 1/4 }' },
        )
        .max(MOST_LINES)
        .meta({ description: 'Lines etched across the template near the heel, square to its long axis.' })
        .default([]),
      channelLines: listOrOne(
        lengthOf(unit, { least: NEAREST_LINE, most: FARTHEST_LINE }),
        MOST_LINES,
        'a list of lengths such as [1/8, 1/4]',
      )
        .meta({ description: 'Lines etched parallel to the edge, this far inside it.' })
        .default([]),
      crownEnd: z
        .enum(['end', 'corner'])
        .meta({ description: 'corner: the foot may roll on round the crown end.' })
        .default('end'),
    },
    'a template: the keys title, units, thickness, edge, alignment, channelLines',
  ),
);

export type TemplateFile = z.output<ReturnType<typeof templateSchema>>;

/** For editors that complete and check template files. */
export const templateJsonSchema = (): object =>
  jsonSchemaOf(templateSchema('in'), 'A swagwright template', 'The working edge of a ruler-work template.');
