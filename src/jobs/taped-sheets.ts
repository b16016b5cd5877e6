/** A drawing as sheets at true size that tape together, with their cover; and how they are told of. */

import { plural } from '../document/index.ts';
import type { StyledDrawing } from '../drawing/index.ts';
import type { Units } from '../length/index.ts';
import { CAUTIONS } from '../output/mockup/index.ts';
import { writeSheetsCounted } from '../output/pdf/index.ts';
import { type SheetPlan, sheetsWords } from '../pagination/index.ts';
import { correctionLines, type Made, type Means, pdfMeans } from './made.ts';

/** In one file, of all parts or students: more is no evening's taping, and takes long to lay out and to write. */
export const MOST_SHEETS_TOGETHER = 1000;

export interface TapedSheets extends Pick<Made, 'bytes' | 'words' | 'paper' | 'corrections' | 'summary'> {
  readonly sheets: SheetPlan;
  /** With the cover. */
  readonly pages: number;
}

/** `bare` is for what is stitched through. */
export const tapedSheets = async (
  drawing: StyledDrawing,
  sheets: SheetPlan,
  words: { readonly title: string; readonly units: Units; readonly summary: readonly string[] },
  means: Means,
  bare = false,
): Promise<TapedSheets> => {
  const { bytes, pages } = await writeSheetsCounted(drawing, sheets, {
    ...words,
    bare,
    cautions: CAUTIONS,
    ...(await pdfMeans(means)),
  });
  return {
    bytes,
    sheets,
    pages,
    summary: words.summary,
    words: `${sheetsWords(sheets)}; ${pages} pages with the cover`,
    paper: `${plural(pages, 'page')} of ${sheets.paper.name} with the cover`,
    corrections: correctionLines(sheets.measured),
  };
};
