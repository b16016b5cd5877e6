/** Several parts of a quilt at true size, in one file: one cover with the quilt, a map for each, and their sheets. */

import { ProblemError, plural } from '../document/index.ts';
import { SHEET, type StyledDrawing, styled } from '../drawing/index.ts';
import { CAUTIONS } from '../output/mockup/index.ts';
import { writeQuiltSheets } from '../output/pdf/index.ts';
import { shownDrawing } from '../output/view/index.ts';
import { manyOf, type SheetPlan } from '../pagination/index.ts';
import { laidPart, type MockupWanted } from './laid-part.ts';
import { correctionLines, type Made, type Means, pdfMeans } from './made.ts';
import { type Part, type Shown, shownWords } from './part.ts';
import { quiltDrawing } from './quilt-picture.ts';
import { MOST_SHEETS_TOGETHER } from './taped-sheets.ts';
import { isStitchedThrough, transferWords } from './transfer.ts';
import { designsOf, underName } from './under-name.ts';
import { unprintable } from './unprintable.ts';

export interface QuiltMockup extends Made {
  readonly parts: readonly { readonly part: Part; readonly shown: Shown; readonly sheets: SheetPlan }[];
}

/** `title` is the quilt's. Throws a ProblemError as `mockup` does. */
export const quiltMockup = async (
  title: string,
  parts: readonly Part[],
  wanted: MockupWanted,
  means: Means,
): Promise<QuiltMockup> => {
  const [first] = parts;
  if (!first) throw new Error('A quilt without parts');
  const { units } = first.plan;
  const { transfer } = wanted;
  const laid = parts.map((part) => laidPart(part, wanted));
  const count = laid.reduce((sum, { sheets }) => sum + sheets.sheets.length, 0);
  if (count > MOST_SHEETS_TOGETHER)
    throw new ProblemError([
      {
        code: 'too-many-sheets',
        key: 'parts',
        message: 'the parts together take too many sheets',
        found: plural(count, 'sheet'),
        expected: `at most ${MOST_SHEETS_TOGETHER}`,
        hint: 'print some parts alone, or show less of each',
      },
    ]);
  const { bytes, pages } = await writeQuiltSheets(
    coverPicture(title, parts),
    laid.map(({ part, shown, drawing, sheets, summary }) => ({
      name: part.name ?? part.plan.title,
      title: part.plan.title,
      drawing,
      plan: sheets,
      summary: [shownWords(shown, transferWords(transfer, units)), ...summary],
    })),
    {
      title,
      summary: [...new Set(parts.flatMap(({ plan }) => plan.doubts))],
      cautions: CAUTIONS,
      units,
      bare: isStitchedThrough(transfer),
      ...(await pdfMeans(means)),
    },
  );
  return {
    bytes,
    words: [
      plural(parts.length, 'part'),
      ...transferWords(transfer, units),
      `${manyOf(laid[0]!.sheets.paper, count)}; ${pages} pages with the cover and the maps`,
    ].join(', '),
    notices: [
      ...laid.flatMap(({ part, notices }) => underName(part, notices)),
      ...(await unprintable(
        title,
        parts.flatMap(({ templates }) => templates),
        means,
      )),
    ],
    summary: designsOf(parts),
    corrections: correctionLines(laid[0]!.sheets.measured),
    parts: laid.map(({ part, shown, sheets }) => ({ part, shown, sheets })),
  };
};

/** The whole quilt for the cover: seams and stitching, without marks and templates, which are too fine there. */
const coverPicture = (title: string, parts: readonly Part[]): StyledDrawing => {
  const without = ['template', 'marks', 'notes', 'fill'] as const;
  return shownDrawing(styled(quiltDrawing(title, parts, without).drawing, SHEET), { without });
};
