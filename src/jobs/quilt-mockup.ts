/** Several parts of a quilt at true size, in one file: one cover with the quilt, a map for each, and their sheets. */

import { ProblemError, plural } from '../document/index.ts';
import { SHEET, type StyledDrawing, styled } from '../drawing/index.ts';
import { CAUTIONS, describeDesign, usualShow } from '../output/mockup/index.ts';
import { writeQuiltSheets } from '../output/pdf/index.ts';
import { shownDrawing } from '../output/view/index.ts';
import { layOut, manyOf, type SheetPlan } from '../pagination/index.ts';
import { drawnPart } from './drawn-part.ts';
import { correctionLines, type Made, type Means, pdfMeans } from './made.ts';
import type { MockupWanted } from './mockup.ts';
import { type Part, type Shown, shownOf, shownWords } from './part.ts';
import { quiltDrawing } from './quilt-picture.ts';
import { isStitchedThrough, leftOutBy, transferred, transferWords } from './transfer.ts';
import { designsOf, underName } from './under-name.ts';
import { unprintable } from './unprintable.ts';

/** Of all parts: more is no evening's taping, and takes more than a few seconds to write. */
const MOST_QUILT_SHEETS = 1000;

export interface QuiltMockup extends Made {
  readonly parts: readonly { readonly part: Part; readonly shown: Shown; readonly sheets: SheetPlan }[];
}

/** `title` is the quilt's. Throws a ProblemError as `mockup` does. */
export const quiltMockup = async (
  title: string,
  parts: readonly Part[],
  { show, without = [], transfer, layout }: MockupWanted,
  means: Means,
): Promise<QuiltMockup> => {
  const [first] = parts;
  if (!first) throw new Error('A quilt without parts');
  const { units } = first.plan;
  const laid = parts.map((part) => {
    const shown = shownOf(part.design, show ?? usualShow(part.design));
    const { drawing, notices } = drawnPart(part, shown, [...without, ...leftOutBy(transfer)]);
    const visible = transferred(shownDrawing(drawing, { without }), transfer, units);
    const summary = describeDesign(shown.design, part.plan.marks.style, part.plan.channels);
    return { part, shown, notices, summary, drawing: visible, sheets: layOut(visible, { ...layout, units }) };
  });
  const count = laid.reduce((sum, { sheets }) => sum + sheets.sheets.length, 0);
  if (count > MOST_QUILT_SHEETS)
    throw new ProblemError([
      {
        code: 'too-many-sheets',
        key: 'parts',
        message: 'the parts together take too many sheets',
        found: plural(count, 'sheet'),
        expected: `at most ${MOST_QUILT_SHEETS}`,
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
