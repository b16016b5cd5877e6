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
export { drawTemplate } from './draw-template.ts';
export {
  type AreaItem,
  type Drawing,
  type Facts,
  type Item,
  LAYERS,
  type LayerId,
  type PathItem,
  type Stroke,
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
export { type Scope, type Scoped, type Stretch, scopeNames, scopeOf } from './scope.ts';
export { drawSilhouette, type SilhouetteResult } from './silhouette.ts';
export { drawSpacer, type Spacer } from './spacer.ts';
export { INK, LABEL_SIZE, STROKES } from './style.ts';
