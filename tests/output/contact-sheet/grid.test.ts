/** Pictures that are a little smaller and lie on far fewer pages are better to compare. */

import { expect, test } from 'vitest';
import { gridFor } from '../../../src/output/contact-sheet/grid.ts';

const ROOM = { width: 190, height: 230, gutter: 8, caption: 12 };

test('five wide pictures stand two abreast on one page, for a scale that is a step smaller', () => {
  // At 1:3 one of 296 mm is 98.7 mm wide: one column of three rows, two pages. At 1:3.5 it is 84.6: two columns.
  expect(gridFor(5, 296, 150, ROOM)).toEqual({ columns: 2, rows: 3, pages: 1, reduction: 3.5 });
});

test('where a step saves no page the pictures stay as large as they can be', () => {
  const grid = gridFor(2, 296, 150, ROOM)!;
  expect(grid.pages).toBe(1);
  // Two rows of 130 mm with their captions: 2·(150/r + 12) + 8 ≤ 230 and 296/r ≤ 190, so r ≥ 1.56.
  expect(grid.reduction).toBe(2);
});
