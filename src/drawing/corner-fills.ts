/** What fills the corner squares that the sides of a border leave free: one fill, alike in all four. */

import { type Fill, fillNamed } from '../fill/index.ts';
import { movePath } from '../geometry/index.ts';
import type { Fill as FillChoice, Plan } from '../plan/index.ts';
import { type CornerSquares, cornerSquares, type Design, type Placed, wholeOf } from '../swag/index.ts';
import { type OpenFilled, USUAL_SEED, USUAL_SPACING } from './open-fills.ts';
import type { ToFill } from './too-fine.ts';

interface SquaresAsked extends ToFill {
  readonly fill: Fill;
  readonly squares: CornerSquares;
  readonly choice: FillChoice;
}

/** Undefined where there are none, or nothing is to fill them. */
export const squaresAsked = (design: Design, { fills }: Plan): SquaresAsked | undefined => {
  const choice = fills.corner;
  const squares = cornerSquares(wholeOf(design));
  const fill = choice && fillNamed(choice.kind);
  if (!squares || !choice || !fill || !('fill' in fill)) return undefined;
  const { spacing = USUAL_SPACING } = choice;
  return {
    fill,
    squares,
    choice,
    spacing,
    regions: squares.at.map(() => squares.region),
    path: ['fills', 'corner'],
  };
};

interface SquaresFilled {
  readonly open: readonly OpenFilled[];
  readonly messages: readonly string[];
}

export const fillSquares = (asked: SquaresAsked): SquaresFilled => {
  const { open, messages } = squaresFilled(asked);
  return { open, messages: messages.map((message) => `corner squares: ${asked.fill.name}: ${message}`) };
};

/** The same for any fill, whether the plan asks for it or not. */
export const squaresFilled = ({
  fill,
  squares: { region, at },
  choice: { seed = USUAL_SEED, angle },
  spacing,
}: Pick<SquaresAsked, 'fill' | 'squares' | 'choice' | 'spacing'>): SquaresFilled => {
  const options = { spacing, seed, ...(angle === undefined ? {} : { angle }) };
  const { paths, continuous, messages } = fill.fill(region, options);
  return {
    open:
      paths.length === 0
        ? []
        : at.map(({ before, after, place }) => ({
            kind: 'corner square',
            beside: besideSquare({ before, after }),
            row: 1,
            fill: fill.name,
            paths: paths.map((path) => movePath(path, place)),
            continuous,
          })),
    messages,
  };
};

/** The repeats that end beside a square: it is shown with both. */
const besideSquare = ({ before, after }: Pick<CornerSquares['at'][number], 'before' | 'after'>): string[] => [
  `${before.run.name} ${before.places}`,
  `${after.run.name} 1`,
];

/** Those of a design's free corner squares that are shown with some of its halves. */
export const squaresShown = (design: Design, halves: readonly Placed[]): CornerSquares['at'] => {
  const shown = new Set(halves.map(({ repeat }) => repeat));
  const at = cornerSquares(wholeOf(design))?.at ?? [];
  return at.filter((square) => besideSquare(square).every((repeat) => shown.has(repeat)));
};
