/** Which window of a drawing goes on which sheet, and the marks that neighbours share. Knows nothing of PDF. */

export { PAPER_IDS, PAPERS, type Paper, type PaperId, USUAL_PAPER } from '../plan/index.ts';
export { CHECK_SIDE } from './check-square.ts';
export { manyOf, sheetsWords } from './how-many.ts';
export { type Ink, type InkedItem, inkOf, itemTouches, shownIn, type TextWidth } from './ink.ts';
export { type LayOutOptions, layOut } from './lay-out.ts';
export {
  DEFAULT_MARGIN,
  evenMargins,
  LEAST_MARGIN,
  type Margins,
  type Orientation,
} from './margins.ts';
export { numbered } from './numbered.ts';
export {
  correctionWords,
  edgesOf,
  factorsFor,
  isCorrected,
  type PerEdge,
  scaledWords,
  UNMEASURED,
} from './paper-edges.ts';
export { LONGEST_PAGE } from './roll.ts';
export { rulesFor } from './rules.ts';
export type { Rule, SharedEdge, Sheet, SheetPlan, Side } from './sheet-plan.ts';
