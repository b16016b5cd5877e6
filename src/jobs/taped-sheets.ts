/** A drawing as sheets at true size that tape together, with their cover; and how they are told of. */

import type { StyledDrawing } from '../drawing/index.ts';
import type { Units } from '../length/index.ts';
import { CAUTIONS } from '../output/mockup/index.ts';
import { writeSheetsCounted } from '../output/pdf/index.ts';
import { type LayOutOptions, layOut, type SheetPlan, sheetsWords } from '../pagination/index.ts';
import { correctionLines, type Made, type Means, pdfMeans } from './made.ts';

export interface TapedSheets extends Pick<Made, 'bytes' | 'words' | 'corrections' | 'summary'> {
  readonly sheets: SheetPlan;
  /** With the cover. */
  readonly pages: number;
}

/** `bare` is for what is stitched through. Throws a ProblemError where there is nothing to print, or where the sheets cannot hold it. */
export const tapedSheets = async (
  drawing: StyledDrawing,
  words: { readonly title: string; readonly summary: readonly string[] },
  layout: LayOutOptions & { readonly units: Units },
  means: Means,
  bare = false,
): Promise<TapedSheets> => {
  const sheets = layOut(drawing, layout);
  const { bytes, pages } = await writeSheetsCounted(drawing, sheets, {
    ...words,
    units: layout.units,
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
    corrections: correctionLines(sheets.measured),
  };
};
