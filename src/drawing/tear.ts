/**
 * Four square corners do not close round sides that differ: where a whole band is drawn, one join of the shorter side
 * stands open by the difference. Said in words beside the picture, and in it large enough to be read where all of it
 * is looked at.
 */

import { boxHeight, boxOfPoints, boxWidth, move, shift } from '../geometry/index.ts';
import { formatLength, type LengthStyle } from '../length/index.ts';
import type { Design } from '../swag/index.ts';
import type { Item } from './drawing.ts';
import { labelLines } from './label.ts';
import type { Scope, Stretch } from './scope.ts';

/** Whether a stretch shows the join that stands open: a part of a side shows no more than its own swags. */
export const showsTear = ({ side: { tear, places, run }, from, to }: Stretch): boolean =>
  tear !== undefined && tear.after < places && from <= 0 && to >= run.length;

/** `top by 1/2 in, after top 3` for each side that stands open. */
const tearsIn = ({ stretches }: Pick<Scope, 'stretches'>, style: LengthStyle): readonly string[] =>
  stretches
    .filter(showsTear)
    .flatMap(({ side: { tear, run } }) =>
      tear ? [`${run.name} by ${formatLength(tear.by, style)}, after ${run.name} ${tear.after}`] : [],
    );

/** A sentence for each side that is drawn open. */
export const tearMessages = (scope: Pick<Scope, 'stretches'>, style: LengthStyle): readonly string[] =>
  tearsIn(scope, style).map(
    (where) =>
      `the picture stands open at the ${where}, because opposite sides differ and its corners are square; sew without this gap`,
  );

/** Of the cloth inside: so many letters' heights go into its width, and so much of its height they may take. */
const LETTERS_ACROSS = 48;
const MOST_HIGH = 0.6;
const LINE = 1.25;

/** The same in the middle of a whole border, on the cloth that it lies round. */
export const tearsInMiddle = (design: Design, scope: Scope, style: LengthStyle): readonly Item[] => {
  const tears = tearsIn(scope, style);
  if (tears.length === 0 || scope.stretches.length < design.sides.length) return [];
  const lines = [
    'Open only in the drawing, because opposite sides differ:',
    ...tears,
    'Sew without these gaps.',
  ];
  const { field } = design;
  const inside = field.from === 'inner' ? -field.startMargin : field.width - field.startMargin;
  const edges = boxOfPoints(
    design.sides.map(({ run: { place, drawn } }) => move(place, { x: drawn / 2, y: inside })),
  );
  const size = Math.min(
    boxWidth(edges) / LETTERS_ACROSS,
    (MOST_HIGH * boxHeight(edges)) / (LINE * lines.length),
  );
  const middle = { x: (edges.minX + edges.maxX) / 2, y: (edges.minY + edges.maxY) / 2 };
  const first = { x: middle.x, y: middle.y + ((lines.length - 1) / 2) * LINE * size };
  return labelLines(shift(0, 0), first, lines, size, 'note');
};
