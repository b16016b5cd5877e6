/** The legend of a drawing: a short sample of each kind of line with its name, in rows. */

import type { LegendEntry } from '../../drawing/index.ts';
import { INK, TYPE } from './look.ts';
import type { PageContent } from './page-content.ts';
import type { Typefaces } from './typeface.ts';

const SAMPLE = 11;
const AFTER_SAMPLE = 1.8;
const BETWEEN = 5;
const ROW = 5;

interface Placed {
  readonly entry: LegendEntry;
  readonly x: number;
}

export type LegendRows = readonly (readonly Placed[])[];

/** Sets the entries in rows of a width (mm), in their order. */
export const legendRows = (entries: readonly LegendEntry[], width: number, faces: Typefaces): LegendRows => {
  const rows: Placed[][] = [];
  let x = 0;
  for (const entry of entries) {
    const wide = SAMPLE + AFTER_SAMPLE + faces.regular.width(entry.words, TYPE.small);
    const row = rows.at(-1);
    if (row && x + wide <= width) row.push({ entry, x });
    else {
      x = 0;
      rows.push([{ entry, x }]);
    }
    x += wide + BETWEEN;
  }
  return rows;
};

export const legendHeight = (rows: LegendRows): number => rows.length * ROW;

export const drawLegend = (content: PageContent, rows: LegendRows, left: number, top: number): void => {
  rows.forEach((row, i) => {
    const y = top - (i + 0.5) * ROW;
    for (const { entry, x } of row) {
      const from = { x: left + x, y };
      content.lines([{ from, to: { x: from.x + SAMPLE, y } }], entry.stroke);
      const at = { x: from.x + SAMPLE + AFTER_SAMPLE, y: y - 0.36 * TYPE.small };
      content.text({ text: entry.words, at, size: TYPE.small, color: INK.text });
    }
  });
};
