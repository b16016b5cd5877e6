/** The keys of a plan file and what each may hold. Lengths become mm; defaults are filled in. */

import * as z from 'zod';
import {
  group,
  jsonSchemaOf,
  lengthOf,
  listOrOne,
  MOST_NAME,
  nameText,
  perUnit,
  refuse,
  titleText,
} from '../document/index.ts';
import {
  INCH_EIGHTH,
  INCH_SIXTEENTH,
  INCH_SIXTYFOURTH,
  INCH_THIRTYSECOND,
  type LengthStyle,
  MM_HALF,
  MM_PER_INCH,
  MM_TENTH,
  MM_WHOLE,
  stepOf,
  type Units,
} from '../length/index.ts';
import {
  FEWEST_IN_FRAME,
  LARGEST_SEED,
  LIMITS,
  MOST_CHANNELS,
  MOST_IN_FRAME,
  MOST_PATH_CHARACTERS,
  MOST_REPEATS,
  MOST_TEMPLATES,
} from './limits.ts';
import type { Fill, PaperName, Spot } from './plan.ts';

/** A choice of words, in which `auto` leaves the choice to the search, as leaving the key out does. */
const choice = <const W extends readonly string[]>(words: W, description: string) =>
  z
    .enum([...words, 'auto'])
    .meta({ description })
    .transform((word) => (word === 'auto' ? undefined : (word as W[number])))
    .optional();

const auto = z.literal('auto');

/** The schema for a file whose bare numbers are in `unit`. */
export const planSchema = perUnit((unit: Units) =>
  group(
    {
      $schema: z.string().meta({ description: 'Where editors find the schema of this file.' }).optional(),
      title: titleText().optional(),
      units: z
        .enum(['in', 'cm', 'mm'])
        .meta({ description: 'What a bare number in this file is in.' })
        .default('in'),
      paper: paperSchema.default('letter'),
      foot: group(
        {
          clearance: lengthOf(unit, {
            ...LIMITS.clearance,
            description: 'Needle to the outer edge of the ruler foot; 1/4 in for a 1/2 in round foot.',
          }).default(MM_PER_INCH / 4),
        },
        'a group such as { clearance: 1/4 }',
      ).prefault({}),
      template: templateList.meta({
        description: 'A name in profiles/, a path that ends in .yaml, or a list to search.',
      }),
      layout: layoutSchema(unit),
      swag: swagSchema(unit).prefault({}),
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
      stitch: group(
        {
          length: lengthOf(unit, {
            ...LIMITS.stitch,
            description: 'From stitch to stitch; 1/10 in (10 to the inch) or 2.5 mm is common practice.',
          }).default(unit === 'in' ? MM_PER_INCH / 10 : 2.5),
        },
        'a group such as { length: 1/10 }',
      ).prefault({}),
      marks: group({ round: roundingSchema(unit).optional() }, 'a group such as { round: 1/16 }').prefault(
        {},
      ),
    },
    'a plan: the keys template and layout at least',
  ),
);

const PAPERS = [
  'letter',
  'a4',
  'legal',
  'tabloid',
  'a3',
  'letter-a4',
] as const satisfies readonly PaperName[];
/** Names of paper are written in capitals as often as not. */
const CAPITALS = ['Letter', 'A4', 'Legal', 'Tabloid', 'A3'] as const;
const paperSchema = z
  .enum([...PAPERS, ...CAPITALS], { error: 'letter, a4, legal, tabloid, a3 or letter-a4' })
  .transform((name) => name.toLowerCase() as PaperName);

const templateList = listOrOne(
  z.string({ error: 'a name or a path' }).trim().min(1).max(MOST_PATH_CHARACTERS),
  MOST_TEMPLATES,
  'a name such as baluster, a path such as ./mine.yaml, or a list of them',
  1,
);

const marginSchema = (unit: Units) => {
  const margin = lengthOf(unit, LIMITS.margin);
  return z
    .union([margin, group({ inner: margin.default(0), outer: margin.default(0) })], {
      error: 'a length such as 1/2, or { inner: 1/2, outer: 1/4 }',
    })
    .meta({ description: 'Kept clear of both seams; or inner and outer apart.' })
    .transform((m) => (typeof m === 'number' ? { inner: m, outer: m } : m))
    .default({ inner: 0, outer: 0 });
};

const layoutSchema = (unit: Units) => {
  const side = lengthOf(unit, LIMITS.side);
  const width = lengthOf(unit, LIMITS.width).meta({ description: 'From seam to seam.' });
  const strip = group(
    { length: side, width, margin: marginSchema(unit) },
    'a group such as { length: 60, width: 6 }',
  );
  const inner = z
    .union([group({ top: side, right: side, bottom: side, left: side }), side], {
      error: 'top, right, bottom and left, or one length for all four',
    })
    .meta({ description: 'The sides of the inner seam, corner to corner, as measured.' })
    .transform((sides) =>
      typeof sides === 'number' ? { top: sides, right: sides, bottom: sides, left: sides } : sides,
    );
  const corners = choice(
    ['turn', 'meet', 'open'],
    'turn: a swag across the corner; meet: runs end at the corner; open: the corner square is left free.',
  );
  const border = group(
    {
      width,
      inner,
      margin: marginSchema(unit),
      from: z
        .enum(['inner', 'outer'])
        .meta({ description: 'The seam the swags leave from.' })
        .default('inner'),
      corners,
    },
    'a group with width and inner',
  );
  const block = z
    .union([group({ width: side, height: side }), side], {
      error: 'a length for a square, or { width: 12, height: 9 }',
    })
    .meta({ description: 'The block or medallion that a square frame lies round: its width and height.' })
    .transform((size) => (typeof size === 'number' ? { width: size, height: size } : size));
  const frame = group(
    {
      count: z
        .union([z.int().min(FEWEST_IN_FRAME).max(MOST_IN_FRAME), auto], {
          error: 'a whole number such as 8, or auto',
        })
        .meta({ description: 'How many swags.' })
        .optional(),
      around: lengthOf(unit, {
        ...LIMITS.around,
        description: 'The width across of a round motif; or else a block.',
      }).optional(),
      block: block.optional(),
      clearance: lengthOf(unit, { ...LIMITS.margin, description: 'Kept clear round the motif.' }).default(0),
      within: lengthOf(unit, {
        ...LIMITS.side,
        description: 'The greatest width across of the finished frame.',
      }).optional(),
      from: z
        .enum(['inner', 'outer'])
        .meta({ description: 'inner: the swags point outward; outer: they point inward.' })
        .default('inner'),
      corners,
    },
    'a group such as { count: 8, around: 9, clearance: 1/2 }',
  ).superRefine((value, context) => refuseFrame(value, context));
  return group(
    { strip: strip.optional(), border: border.optional(), frame: frame.optional() },
    'one of strip, border or frame',
  )
    .meta({ minProperties: 1, maxProperties: 1 })
    .superRefine((layout, context) => {
      const keys = Object.keys(layout);
      if (keys.length === 1) return;
      refuse(context, layout, {
        code: keys.length === 0 ? 'missing-key' : 'too-many-keys',
        message: keys.length === 0 ? 'the layout is empty' : 'more than one layout',
        ...(keys.length > 1 && { found: keys.join(' and ') }),
        expected: 'one of strip, border or frame',
      });
    });
};

/** A round frame goes by its motif and a count, a square one by its block, its limit and its corners. */
const refuseFrame = (
  frame: {
    readonly around?: number | undefined;
    readonly block?: unknown;
    readonly within?: number | undefined;
    readonly count?: unknown;
    readonly corners?: unknown;
  },
  context: z.RefinementCtx,
): void => {
  const round = frame.around !== undefined;
  const square = frame.block !== undefined;
  const say = (problem: Parameters<typeof refuse>[2]): void => {
    refuse(context, frame, problem);
  };
  if (round === square)
    say({
      code: round ? 'too-many-keys' : 'missing-key',
      message: round ? 'a frame lies round one thing' : 'nothing says what the frame lies round',
      ...(round && { found: 'around and block' }),
      expected: 'around for a round motif, or block for a square or rectangular one',
    });
  else if (square && frame.within === undefined)
    say({
      code: 'missing-key',
      message: 'a frame round a block needs its limit',
      expected: 'within: the greatest width across of the finished frame',
    });
  else if (square && frame.count !== undefined && frame.count !== 'auto')
    say({
      message: 'a frame round a block has sides, each with its own count',
      found: 'count',
      expected: 'swag.repeats: one number, or one per side',
    });
  else if (round && frame.corners !== undefined)
    say({ message: 'a round frame has no corners', found: 'corners', expected: 'corners only with block' });
};

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

const swagSchema = (unit: Units) => {
  const count = z
    .int({ error: `a whole number from 1 to ${MOST_REPEATS}` })
    .min(1)
    .max(MOST_REPEATS);
  const expected = 'a whole number such as 8, a list of four, or auto';
  const repeats = z
    .union([count, z.array(count), group({ top: count, right: count, bottom: count, left: count }), auto], {
      error: expected,
    })
    .meta({ description: 'How many swags on a side: one number, or one per side from the top clockwise.' })
    .transform((value, context): readonly number[] | undefined => {
      if (value === 'auto') return undefined;
      if (typeof value === 'number') return [value];
      if (!Array.isArray(value)) return [value.top, value.right, value.bottom, value.left];
      if (value.length === 1 || value.length === 4) return value;
      const found = value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
      return refuse(context, value, { message: 'a list of repeats is for four sides', found, expected });
    })
    .optional();
  return group(
    {
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
      repeats,
      gap: z
        .union([auto, lengthOf(unit, LIMITS.gap)], { error: 'a length such as 1/2 in, or auto' })
        .meta({ description: 'Between neighbours; auto for the least that serves.' })
        .optional(),
    },
    'a group such as { from: 1, to: crown }',
  );
};

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
      channels: listOrOne(fill, 2 * MOST_CHANNELS, 'a list of fills such as [pearls]').default([]),
    },
    'a group such as { swag: feather, background: stipple }',
  );
};

const ROUNDINGS: readonly LengthStyle[] = [
  INCH_EIGHTH,
  INCH_SIXTEENTH,
  INCH_THIRTYSECOND,
  INCH_SIXTYFOURTH,
  MM_WHOLE,
  MM_HALF,
  MM_TENTH,
];

/** Rounding happens to what a tape shows, not to any length. */
const roundingSchema = (unit: Units) => {
  const expected = '1/8, 1/16, 1/32 or 1/64 in, or 1, 0.5 or 0.1 mm';
  return lengthOf(unit, { description: `To what marks are rounded: ${expected}.` }).transform(
    (step, context): LengthStyle => {
      const style = ROUNDINGS.find((s) => Math.abs(stepOf(s) - step) < SAME_STEP);
      if (style) return unit === 'cm' && style.unit === 'mm' ? { ...style, unit: 'cm' } : style;
      return refuse(context, step, { message: 'no tape is divided like this', expected });
    },
  );
};

/** Steps nearer than this (mm) are the same. */
const SAME_STEP = 1e-6;

export type PlanFile = z.output<ReturnType<typeof planSchema>>;

/** For editors that complete and check plan files. */
export const planJsonSchema = (): object =>
  jsonSchemaOf(planSchema('in'), 'A swagwright plan', 'A border, strip or frame to be filled with swags.');
