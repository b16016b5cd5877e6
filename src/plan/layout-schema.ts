/** The keys of a plan's layout: a strip, a border, or a frame, round or square. */

import * as z from 'zod';
import { group, lengthOf, type ProblemParams, refuse } from '../document/index.ts';
import { exactLength, INCH_SIXTEENTH, type LengthStyle, type Units } from '../length/index.ts';
import { FEWEST_IN_FRAME, LIMITS, MOST_IN_FRAME } from './limits.ts';
import { SIDES, type Side } from './plan.ts';

/** A choice of words, in which `auto` leaves the choice to the search, as leaving the key out does. */
export const choice = <const W extends readonly string[]>(words: W, description: string) =>
  z
    .enum([...words, 'auto'])
    .meta({ description })
    .transform((word) => (word === 'auto' ? undefined : (word as W[number])))
    .optional();

export const auto = z.literal('auto');

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

export const layoutSchema = (unit: Units) => {
  const side = lengthOf(unit, LIMITS.side);
  const width = lengthOf(unit, LIMITS.width).meta({ description: 'From seam to seam.' });
  const strip = group(
    {
      length: side,
      width,
      margin: marginSchema(unit),
      ends: lengthOf(unit, { ...LIMITS.margin, description: 'Kept clear at both ends.' }).default(0),
    },
    'a group such as { length: 60, width: 6 }',
  );
  const sides = (description: string) =>
    z
      .union([group({ top: side, right: side, bottom: side, left: side }), side], {
        error: 'top, right, bottom and left, or one length for all four',
      })
      .meta({ description })
      .transform((all) => (typeof all === 'number' ? { top: all, right: all, bottom: all, left: all } : all))
      .optional();
  const corners = choice(
    ['turn', 'across', 'half', 'meet', 'open'],
    'turn: a swag round the corner, half on each side; across: one that stands square to the mitre, from the outer seam; half: each side begins and ends with half a swag, and the corner square is left free (the two halves count as one of its repeats); meet: runs end at the corner; open: the corner square is left free.',
  );
  const border = group(
    {
      width,
      inner: sides('The sides of the inner seam, corner to corner, as measured.'),
      outer: sides('Or the sides of the finished outside, corner to corner, as measured.'),
      margin: marginSchema(unit),
      from: z
        .enum(['inner', 'outer'])
        .meta({ description: 'The seam the swags leave from.' })
        .default('inner'),
      corners,
    },
    'a group with width and inner, or width and outer',
  )
    .refine((value) => 'inner' in value || 'outer' in value, NO_SIDES)
    .superRefine((value, context) => refuseTwoEdges(value, context, unit));
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

const EDGES = 'inner for the sides along the inner seam, or outer for those of the finished outside';

/** Told also beside other mistakes in the border: what is written wrong is not missing. */
const NO_SIDES = {
  params: {
    code: 'missing-key',
    message: 'nothing says how long the sides of the border are',
    expected: EDGES,
  } satisfies ProblemParams,
  when: ({ value }: { readonly value: unknown }) => typeof value === 'object' && value !== null,
};

type Sides = Readonly<Record<Side, number>>;

/** A border is measured along one of its edges, and the other follows from its width. */
const refuseTwoEdges = (
  border: { readonly width: number; readonly inner?: Sides | undefined; readonly outer?: Sides | undefined },
  context: z.RefinementCtx,
  unit: Units,
): void => {
  const { inner, outer, width } = border;
  if (!inner || !outer) return;
  const style: LengthStyle = unit === 'in' ? INCH_SIXTEENTH : { unit, step: 0.1 };
  const apart = SIDES.flatMap((side) => {
    const by = Math.abs(outer[side] - inner[side] - 2 * width);
    return by < SAME ? [] : [`${side} by ${exactLength(by, style)}`];
  });
  const found =
    apart.length === 0
      ? 'which agree'
      : `which differ with twice the width between them: ${apart.join(', ')}`;
  refuse(context, border, {
    code: 'too-many-keys',
    message: 'the sides of the border are given twice',
    found: `inner and outer, ${found}`,
    expected: EDGES,
  });
};

/** mm */
const SAME = 1e-6;

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
