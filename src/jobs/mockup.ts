/** The design at true size, on sheets to tape together. */

import type { SheetPlan } from '../pagination/index.ts';
import { laidPart, type MockupWanted } from './laid-part.ts';
import type { Made, Means } from './made.ts';
import { type Part, type Shown, shownWords } from './part.ts';
import { tapedSheets } from './taped-sheets.ts';
import { isStitchedThrough, transferWords } from './transfer.ts';
import { unprintable } from './unprintable.ts';

export interface Mockup extends Made {
  readonly shown: Shown;
  readonly sheets: SheetPlan;
}

/** Throws a ProblemError for what is not in the design, fills that are not known, and paper that does not do. */
export const mockup = async (part: Part, wanted: MockupWanted, means: Means): Promise<Mockup> => {
  const { drawing, sheets, shown, notices, summary } = laidPart(part, wanted);
  const { title, units, doubts } = part.plan;
  const how = transferWords(wanted.transfer, units);
  const taped = await tapedSheets(
    drawing,
    sheets,
    { title, units, summary: [shownWords(shown, how), ...summary, ...doubts] },
    means,
    isStitchedThrough(wanted.transfer),
  );
  return {
    ...taped,
    // What is doubtful about the measures was told when the plan was read.
    summary,
    words: [shown.scope.label, ...how, taped.words].join(', '),
    notices: [...notices, ...(await unprintable(title, part.templates, means))],
    shown,
  };
};
