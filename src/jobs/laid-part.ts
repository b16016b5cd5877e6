/** A part as it is printed at true size: what of it, and how that lies on sheets, before any is written. */

import type { LayerId, StyledDrawing } from '../drawing/index.ts';
import { describeDesign, usualShow } from '../output/mockup/index.ts';
import { shownDrawing } from '../output/view/index.ts';
import { type LayOutOptions, layOut, type SheetPlan, sheetsWords } from '../pagination/index.ts';
import { drawnPart } from './drawn-part.ts';
import { type Part, type Shown, shownOf } from './part.ts';
import { leftOutBy, type Transfer, transferred } from './transfer.ts';

export interface MockupWanted {
  /** What of the design; what is usual where it is undefined. */
  readonly show?: string | undefined;
  readonly without?: readonly LayerId[] | undefined;
  /** How it goes onto cloth; undefined for sheets to look at. */
  readonly transfer?: Transfer | undefined;
  /** Its units are the plan's. */
  readonly layout: Omit<LayOutOptions, 'units'>;
}

export interface LaidPart {
  readonly part: Part;
  readonly shown: Shown;
  readonly drawing: StyledDrawing;
  readonly sheets: SheetPlan;
  readonly notices: readonly string[];
  /** What was designed, a line each. */
  readonly summary: readonly string[];
}

/** Throws a ProblemError for what is not in the design, fills that are not known, and paper that does not do. */
export const laidPart = (part: Part, wanted: MockupWanted): LaidPart => {
  const { plan, design } = part;
  const { show = usualShow(design), without = [], transfer, layout } = wanted;
  const shown = shownOf(design, show);
  const drawn = drawnPart(part, shown, [...without, ...leftOutBy(transfer)]);
  const drawing = transferred(shownDrawing(drawn.drawing, { without }), transfer, plan.units);
  return {
    part,
    shown,
    drawing,
    sheets: layOut(drawing, { ...layout, units: plan.units }),
    notices: drawn.notices,
    summary: describeDesign(shown.design, plan.marks.style, plan.channels),
  };
};

/** How many sheets each part takes, a line each: `the top right corner …, 6 sheets of Letter, landscape, in 2 rows and 3 columns`. */
export const countSheets = (parts: readonly Part[], wanted: MockupWanted): readonly string[] =>
  parts.map((part) => {
    const { shown, sheets } = laidPart(part, wanted);
    const words = `${shown.scope.label}, ${sheetsWords(sheets)}`;
    return part.name === undefined ? words : `${part.name}: ${words}`;
  });
