/** A drawing as sheets at true size that tape together, with their cover; and how they are told of. */

import { plural } from '../document/index.ts';
import type { StyledDrawing } from '../drawing/index.ts';
import type { Units } from '../length/index.ts';
import { CAUTIONS } from '../output/mockup/index.ts';
import { writeSheetsCounted } from '../output/pdf/index.ts';
import { type LayOutOptions, layOut, type SheetPlan } from '../pagination/index.ts';
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

/** `6 sheets of Letter, landscape, in 2 rows and 3 columns`. */
const sheetsWords = (plan: SheetPlan): string => {
  const { length } = plan.sheets;
  const sheets = `${plural(length, 'sheet')} of ${plan.paper.name}, ${plan.orientation}`;
  if (length === 1) return sheets;
  const { skipped, rows, columns } = plan;
  const empty = skipped.length === 0 ? '' : `, ${plural(skipped.length, 'empty one')} left out`;
  return `${sheets}, in ${plural(rows, 'row')} and ${plural(columns, 'column')}${empty}`;
};
