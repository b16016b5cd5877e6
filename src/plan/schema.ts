/** The keys of a plan file and what each may hold. Lengths become mm; defaults are filled in. */

import * as z from 'zod';
import {
  fileWord,
  group,
  jsonSchemaOf,
  type KeyPath,
  lengthOf,
  listOrOne,
  MOST_NAME,
  nameText,
  oneLine,
  type Problem,
  perUnit,
  plural,
  quoted,
  refuse,
  series,
  titleText,
} from '../document/index.ts';
import { LENGTH_STYLES, type LengthStyle, MM_PER_INCH, stepOf, UNITS, type Units } from '../length/index.ts';
import { coloursSchema } from './colours-schema.ts';
import { auto, choice, layoutSchema } from './layout-schema.ts';
import {
  LARGEST_SEED,
  LIMITS,
  MOST_CHANNELS,
  MOST_PARTS,
  MOST_PATH_CHARACTERS,
  MOST_ROWS,
  MOST_TEMPLATES,
} from './limits.ts';
import { PAPER_IDS, PAPERS, type PaperId, USUAL_PAPER } from './papers.ts';
import { placesSchema, turnSchema } from './place-schema.ts';
import type { Fill, Spot } from './plan.ts';
import { wishKeys } from './wish-schema.ts';

/** What all parts of a quilt share, as it stands at the head of a file. */
const firstKeys = (unit: Units) => ({
  $schema: z.string().meta({ description: 'Where editors find the schema of this file.' }).optional(),
  title: titleText().optional(),
  units: z.enum(UNITS).meta({ description: 'What a bare number in this file is in.' }).default('in'),
  paper: paperSchema.default(USUAL_PAPER[unit]),
  foot: group(
    {
      clearance: lengthOf(unit, {
        ...LIMITS.clearance,
        description: 'Needle to the outer edge of the ruler foot; 1/4 in for a 1/2 in round foot.',
      }).default(MM_PER_INCH / 4),
    },
    'a group such as { clearance: 1/4 }',
  ).prefault({}),
});

/** And what stands at its end. */
const lastKeys = (unit: Units) => ({
  stitch: group(
    {
      length: lengthOf(unit, {
        ...LIMITS.stitch,
        description: 'From stitch to stitch; 1/10 in (10 to the inch) or 2.5 mm is common practice.',
      }).default(unit === 'in' ? MM_PER_INCH / 10 : 2.5),
    },
    'a group such as { length: 1/10 }',
  ).prefault({}),
  marks: group({ round: roundingSchema(unit).optional() }, 'a group such as { round: 1/16 }').prefault({}),
  colours: coloursSchema,
});

/** What belongs to one design. */
const designKeys = (unit: Units) => ({
  layout: layoutSchema(unit),
  swag: swagSchema(unit).prefault({}),
  corner: cornerSchema(),
  rows: rowsSchema(unit),
  channels: group(
    {
      outward: channelWidths(unit).default([]),
      inward: channelWidths(unit).default([]),
      points: z
        .enum(['round', 'pivot'])
        .meta({
          description: 'At a point: round rolls round it, pivot turns on it and keeps it a point.',
        })
        .default('round'),
    },
    'a group such as { outward: [1/4], inward: [1/4, 1/8] }',
  ).prefault({}),
  fills: fillsSchema(unit).prefault({}),
});

/** The schema for a file with one design, whose bare numbers are in `unit`. */
export const planSchema = perUnit((unit: Units) =>
  group(
    { ...firstKeys(unit), template: templateList, ...designKeys(unit), ...lastKeys(unit) },
    'a plan: the keys template and layout at least',
  ),
);

/** The schema for a file with several parts, each a design with a name. */
export const quiltSchema = perUnit((unit: Units) =>
  group(
    {
      ...firstKeys(unit),
      template: templateList.optional(),
      parts: z
        .record(z.string(), partSchema(unit), { error: 'a group of parts, each under its name' })
        .meta({ description: 'The designs of one quilt, each under its name.' }),
      ...lastKeys(unit),
    },
    'a plan: the keys template and parts at least',
  ).superRefine((quilt, context) => {
    for (const problem of partProblems(quilt)) refuse(context, quilt, problem, problem.path);
  }),
);

const partSchema = (unit: Units) =>
  group(
    {
      template: templateList.optional(),
      at: placesSchema(unit),
      turn: turnSchema.default(0),
      ...designKeys(unit),
    },
    'a part: the key layout at least',
  );

interface PartProblem extends Omit<Problem, 'code'> {
  readonly code?: string;
  readonly path: KeyPath;
}

const partProblems = (quilt: {
  readonly template?: unknown;
  readonly parts: Readonly<Record<string, { readonly template?: unknown }>>;
}): readonly PartProblem[] => {
  const names = Object.keys(quilt.parts);
  const path = ['parts'];
  if (names.length === 0)
    return [{ path, message: 'no part is listed', expected: 'at least one, each under its name' }];
  if (names.length > MOST_PARTS)
    return [{ path, message: 'too many parts', found: `${names.length}`, expected: `at most ${MOST_PARTS}` }];
  return names.flatMap((name, i): PartProblem[] => {
    const own = [...path, name];
    const word = fileWord(name);
    if (word === '' || name.length > MOST_NAME || name !== oneLine(name).trim() || name.includes(','))
      return [
        {
          path: own,
          message: 'this is no name for a part',
          expected: `a name of at most ${MOST_NAME} characters, with a letter or a digit and without commas`,
        },
      ];
    const same = names.slice(0, i).find((other) => fileWord(other) === word);
    if (same !== undefined)
      return [
        {
          path: own,
          message: `files of this part would be called as those of the part ${quoted(same)}`,
          found: quoted(name),
          expected: 'names that differ in letters or digits',
        },
      ];
    if (quilt.template !== undefined || quilt.parts[name]!.template !== undefined) return [];
    return [
      {
        path: own,
        code: 'missing-key',
        message: 'nothing says which template this part is sewn with',
        expected: 'the key template, here or for the whole quilt',
      },
    ];
  });
};

const isPaper = (word: string): word is PaperId => PAPER_IDS.some((id) => id === word);
/** Names of paper are written in capitals as often as not. */
const CAPITALS = PAPER_IDS.map((id) => PAPERS[id].name).filter((name) => isPaper(name.toLowerCase()));
const paperSchema = z
  .enum([...PAPER_IDS, ...CAPITALS], { error: series(PAPER_IDS, 'or') })
  .transform((name) => name.toLowerCase() as PaperId);

const templateList = listOrOne(
  z.string({ error: 'a name or a path' }).trim().min(1).max(MOST_PATH_CHARACTERS),
  MOST_TEMPLATES,
  'a name such as baluster, a path such as ./mine.yaml, or a list of them',
  1,
).meta({ description: 'A name in profiles/, a path that ends in .yaml, or a list to search.' });

const spotSchema = (description: string) =>
  z
    .union([z.int().min(1).max(999), z.string().trim().min(1).max(MOST_NAME)], {
      error: "a section's number or name, heel, crown or auto",
    })
    .meta({ description })
    .transform((spot): Spot | undefined => {
      if (typeof spot === 'number') return { kind: 'section', number: spot };
      if (spot === 'auto') return undefined;
      return spot === 'heel' || spot === 'crown' ? { kind: spot } : { kind: 'named', name: spot };
    })
    .optional();

/** How a half swag is made, of whichever row. */
const howMadeKeys = () => ({
  from: spotSchema('Where on the edge the swag starts: a section, or an alignment line.'),
  to: spotSchema('Where on the edge it ends: the end of a section, or the crown end.'),
  setting: choice(['crown-on-centre', 'alignment-line', 'flat-on-guide'], 'How the template is set.'),
  laid: choice(
    ['square', 'along'],
    'With alignment-line: the line lies square to the seam, on the start mark, or along the seam.',
  ),
  flat: z
    .union([z.int().min(1).max(999), auto], {
      error: "a flat's number, counted from 1 at the heel, or auto",
    })
    .meta({ description: 'With flat-on-guide: which straight stretch lies along the guide line.' })
    .optional(),
  side: choice(['inside', 'outside'], 'Whether the template lies inside or outside the swag.'),
  direction: choice(['heel-first', 'crown-first'], 'Which end of the edge is at the seam.'),
});

/** The swag over a corner. How it lies, and how many there are, the layout says. */
const cornerSchema = () =>
  group(
    {
      template: templateList.optional(),
      ...howMadeKeys(),
      smooth: z
        .boolean()
        .meta({
          description: 'true: its two halves meet on the mitre in one smooth curve, and not in a point.',
        })
        .default(false),
    },
    'a group such as { template: finial, from: 1, to: crown }',
  )
    .meta({ description: 'A part of its own, or another template, for the swag over each corner.' })
    .optional();

/** Rows beyond the first. How many swags they have, and with what gap, the shared marks say. */
const rowsSchema = (unit: Units) => {
  const expected = 'a list of rows such as [{ at: 1, marks: as row 1 }]';
  const row = group(
    {
      at: lengthOf(unit, {
        ...LIMITS.at,
        description: "From the first row's start line to this row's; 0 starts both on one mark.",
      }).default(0),
      marks: z
        .literal('as row 1', { error: 'as row 1: a further row shares the marks of the first' })
        .meta({ description: 'Its start, centre and stop marks are those of the first row.' })
        .default('as row 1'),
      apart: lengthOf(unit, {
        ...LIMITS.apart,
        description: "What its stitching keeps from the first row's; without it one clearance of the foot.",
      }).optional(),
      template: templateList.optional(),
      swag: group(howMadeKeys(), 'a group such as { from: 1, to: crown }').prefault({}),
    },
    'a row: a group such as { at: 1, marks: as row 1 }',
  );
  return z
    .array(row, { error: expected })
    .meta({ description: `Rows beyond the first, on the same marks: at most ${MOST_ROWS - 1}.` })
    .transform((rows, context) =>
      rows.length < MOST_ROWS
        ? rows
        : refuse(context, rows, {
            message: 'too many rows',
            found: `${rows.length} beyond the first`,
            expected: `at most ${MOST_ROWS - 1}: ${MOST_ROWS} rows in all`,
          }),
    )
    .default([]);
};

const swagSchema = (unit: Units) =>
  group(
    {
      ...howMadeKeys(),
      ...wishKeys(unit),
      alternate: alternateSchema(unit),
    },
    'a group such as { from: 1, to: crown }',
  );

/** Two kinds that take turns along a side. What stands beside them holds for both, but where one says it by itself. */
const alternateSchema = (unit: Units) => {
  const expected = 'a list of two kinds such as [{ span: about 9 }, { span: about 5 }]';
  return z
    .array(kindSchema(unit), { error: expected })
    .meta({ description: 'Two kinds that take turns along a side, the first one at both its ends.' })
    .transform((kinds, context): readonly [WrittenKind, WrittenKind] => {
      const [first, second] = kinds;
      return first && second && kinds.length === 2
        ? [first, second]
        : refuse(context, kinds, {
            message: 'two kinds of swag take turns',
            found: plural(kinds.length, 'kind'),
            expected: 'a list of two',
          });
    })
    .optional();
};

const kindSchema = (unit: Units) => {
  const { span, depth } = wishKeys(unit);
  return group(
    { template: templateList.optional(), ...howMadeKeys(), span, depth },
    'a kind: a group such as { span: about 9 }',
  );
};

type WrittenKind = z.output<ReturnType<typeof kindSchema>>;

const channelWidths = (unit: Units) =>
  listOrOne(lengthOf(unit, LIMITS.channel), MOST_CHANNELS, 'a list of widths such as [1/4, 1/8]').meta({
    description: 'Widths of the bands, one after the other away from the stitching.',
  });

const fillsSchema = (unit: Units) => {
  const fill = z
    .union(
      [
        z.string().trim().min(1).max(MOST_NAME),
        group({
          kind: nameText(),
          spacing: lengthOf(unit, LIMITS.spacing).optional(),
          seed: z
            .int({ error: `a whole number from 0 to ${LARGEST_SEED}` })
            .min(0)
            .max(LARGEST_SEED)
            .optional(),
          angle: z.number().min(-360).max(360).meta({ description: 'Degrees.' }).optional(),
        }),
      ],
      { error: 'a fill such as stipple, or { kind: stipple, spacing: 1/4 }' },
    )
    .transform((value): Fill => {
      if (typeof value === 'string') return { kind: value };
      const { kind, spacing, seed, angle } = value;
      return {
        kind,
        ...(spacing !== undefined && { spacing }),
        ...(seed !== undefined && { seed }),
        ...(angle !== undefined && { angle: (angle * Math.PI) / 180 }),
      };
    });
  return group(
    {
      swag: fill.optional(),
      background: fill.optional(),
      corner: fill.optional(),
      between: fill.meta({ description: 'Between two rows.' }).optional(),
      channels: listOrOne(fill, 2 * MOST_CHANNELS, 'a list of fills such as [pearls]').default([]),
    },
    'a group such as { swag: feather, background: stipple }',
  );
};

/** Rounding happens to what a tape shows, not to any length. */
const roundingSchema = (unit: Units) => {
  const expected = '1/8, 1/16, 1/32 or 1/64 in, or 1, 0.5 or 0.1 mm';
  return lengthOf(unit, { description: `To what marks are rounded: ${expected}.` }).transform(
    (step, context): LengthStyle => {
      const style = LENGTH_STYLES.find((s) => Math.abs(stepOf(s) - step) < SAME_STEP);
      if (style) return unit === 'cm' && style.unit === 'mm' ? { ...style, unit: 'cm' } : style;
      return refuse(context, step, { message: 'no tape is divided like this', expected });
    },
  );
};

/** Steps nearer than this (mm) are the same. */
const SAME_STEP = 1e-6;

export type PlanFile = z.output<ReturnType<typeof planSchema>>;
export type QuiltFile = z.output<ReturnType<typeof quiltSchema>>;

/** For editors that complete and check plan files. */
export const planJsonSchema = (): object =>
  jsonSchemaOf(
    z.union([planSchema('in'), quiltSchema('in')]),
    'A swagwright plan',
    'A border, strip or frame to be filled with swags, or several of them on one quilt.',
  );
