/** The neutral picture: named layers of paths, areas and texts in mm at true size. */

export { type DrawOptions, drawDesign } from './draw-design.ts';
export {
  type DrawnPlan,
  type DrawPlanOptions,
  drawPlan,
  endedChannels,
  fillLinesOf,
  MOST_FILL_LINES,
} from './draw-plan.ts';
export { drawQuilt, type QuiltPart } from './draw-quilt.ts';
export { drawTemplate } from './draw-template.ts';
export {
  type AreaItem,
  type Drawing,
  type Facts,
  type Item,
  LAYERS,
  type LayerId,
  type PathItem,
  type TextItem,
} from './drawing.ts';
export {
  type Filled,
  type Filling,
  fillDesign,
  fillLengths,
  fillProblems,
  fillRegion,
  USUAL_SEED,
  USUAL_SPACING,
} from './filling.ts';
export { etchedAlignment, etchedChannels, ghostItems } from './ghost.ts';
export { type LegendEntry, legendOf } from './legend.ts';
export { AREA_ROLES, type AreaRole, LINE_ROLES, type LineRole, WORD_ROLES, type WordRole } from './role.ts';
export { type Scope, type Scoped, type Stretch, scopeNames, scopeOf } from './scope.ts';
export { LABEL_SIZE, SHEET } from './sheet-style.ts';
export { drawSilhouette, type SilhouetteResult } from './silhouette.ts';
export { drawSpacer, type Spacer } from './spacer.ts';
export {
  type Stroke,
  type StyledArea,
  type StyledDrawing,
  type StyledItem,
  type StyledPath,
  type StyledText,
  type StyleSheet,
  styled,
} from './style.ts';
