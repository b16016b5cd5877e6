/** What fills the corner squares that the sides of a border leave free: one fill, alike in all four. */

import { type Fill, fillNamed } from '../fill/index.ts';
import { movePath } from '../geometry/index.ts';
import type { Fill as FillChoice, Plan } from '../plan/index.ts';
import { type CornerSquares, cornerSquares, type Design, wholeOf } from '../swag/index.ts';
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

export const fillSquares = ({
  fill,
  squares: { region, at },
  choice: { seed = USUAL_SEED, angle },
  spacing,
}: SquaresAsked): { readonly open: readonly OpenFilled[]; readonly messages: readonly string[] } => {
  const options = { spacing, seed, ...(angle === undefined ? {} : { angle }) };
  const { paths, continuous, messages } = fill.fill(region, options);
  return {
    open:
      paths.length === 0
        ? []
        : at.map(({ before, after, place }) => ({
            kind: 'corner square',
            beside: [`${before.run.name} ${before.places}`, `${after.run.name} 1`],
            row: 1,
            fill: fill.name,
            paths: paths.map((path) => movePath(path, place)),
            continuous,
          })),
    messages: messages.map((message) => `corner squares: ${fill.name}: ${message}`),
  };
};
