/** How many sheets of which paper, in words: the same on the cover, in the terminal and on the page. */

import { plural } from '../document/index.ts';
import type { Paper } from '../plan/index.ts';
import type { SheetPlan } from './sheet-plan.ts';

/** `6 sheets of Letter`, `2 pages of a roll 36 in wide`. */
export const manyOf = (paper: Paper, count: number): string => {
  const { piece, of } = pieceOf(paper);
  return `${plural(count, piece)} of ${of}`;
};

/** `a sheet of Letter`, `a page of a roll 36 in wide`. */
export const oneOf = (paper: Paper): string => {
  const { piece, of } = pieceOf(paper);
  return `a ${piece} of ${of}`;
};

const pieceOf = ({ id, name }: Paper) =>
  id === 'roll' ? { piece: 'page', of: `a ${name}` } : { piece: 'sheet', of: name };

/** `6 sheets of Letter, landscape, in 2 rows and 3 columns`, and what is left out. */
export const sheetsWords = (plan: SheetPlan): string => {
  const { sheets, skipped, rows, columns, paper, orientation } = plan;
  const words = [manyOf(paper, sheets.length)];
  // A page of a roll is held as the roll runs.
  if (paper.id !== 'roll') words.push(orientation);
  if (sheets.length > 1) words.push(`in ${plural(rows, 'row')} and ${plural(columns, 'column')}`);
  if (skipped.length > 0) words.push(`${plural(skipped.length, 'empty one')} left out`);
  return words.join(', ');
};
