/** The design at true size, on sheets to tape together. */

import type { LayerId } from '../drawing/index.ts';
import { describeDesign, usualShow } from '../output/mockup/index.ts';
import { shownDrawing } from '../output/view/index.ts';
import type { LayOutOptions, SheetPlan } from '../pagination/index.ts';
import { drawnPart } from './drawn-part.ts';
import type { Made, Means } from './made.ts';
import { type Part, type Shown, shownOf, shownWords } from './part.ts';
import { tapedSheets } from './taped-sheets.ts';
import { isStitchedThrough, leftOutBy, type Transfer, transferred, transferWords } from './transfer.ts';
import { unprintable } from './unprintable.ts';

export interface MockupWanted {
  /** What of the design; what is usual where it is undefined. */
  readonly show?: string | undefined;
  readonly without?: readonly LayerId[] | undefined;
  /** How it goes onto cloth; undefined for sheets to look at. */
  readonly transfer?: Transfer | undefined;
  /** Its units are the plan's. */
  readonly layout: Omit<LayOutOptions, 'units'>;
}

export interface Mockup extends Made {
  readonly shown: Shown;
  readonly sheets: SheetPlan;
}

/** Throws a ProblemError for what is not in the design, fills that are not known, and paper that does not do. */
export const mockup = async (part: Part, wanted: MockupWanted, means: Means): Promise<Mockup> => {
  const { plan, design: whole, templates } = part;
  const { show = usualShow(whole), without = [], transfer, layout } = wanted;
  const shown = shownOf(whole, show);
  const drawn = drawnPart(part, shown, [...without, ...leftOutBy(transfer)]);
  const summary = describeDesign(shown.design, plan.marks.style, plan.channels);
  const { title, units } = plan;
  const taped = await tapedSheets(
    transferred(shownDrawing(drawn.drawing, { without }), transfer, units),
    { title, summary: [shownWords(shown, transferWords(transfer, units)), ...summary, ...plan.doubts] },
    { ...layout, units },
    means,
    isStitchedThrough(transfer),
  );
  return {
    ...taped,
    // What is doubtful about the measures was told when the plan was read.
    summary,
    words: [shown.scope.label, ...transferWords(transfer, units), taped.words].join(', '),
    notices: [...drawn.notices, ...(await unprintable(title, templates, means))],
    shown,
  };
};
