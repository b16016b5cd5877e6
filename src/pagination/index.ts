/** Which window of a drawing goes on which sheet, and the marks that neighbours share. Knows nothing of PDF. */

export { CHECK_SECOND, CHECK_SIDE } from './check-square.ts';
export {
  holdsInk,
  type Ink,
  type InkedItem,
  inkOf,
  itemTouches,
  roughTextWidth,
  type TextWidth,
} from './ink.ts';
export { type LayOutOptions, layOut, MOST_SHEETS } from './lay-out.ts';
export { numbered } from './numbered.ts';
export {
  correctionWords,
  edgesOf,
  factorsFor,
  isCorrected,
  type PerAxis,
  type PerEdge,
  UNMEASURED,
} from './paper-edges.ts';
export {
  DEFAULT_MARGIN,
  DEFAULT_OVERLAP,
  evenMargins,
  LEAST_MARGIN,
  type Margins,
  type Orientation,
  PAPER_IDS,
  PAPERS,
  type Paper,
  type PaperId,
} from './papers.ts';
export { type RuleUnit, rulesFor } from './rules.ts';
export {
  type Cross,
  onFile,
  type Rule,
  rowLetters,
  type Segment,
  type SharedEdge,
  type Sheet,
  type SheetPlan,
  SIDES,
  type Side,
  type SkippedSheet,
  sheetLabel,
  type Tick,
} from './sheet-plan.ts';
