/** The neutral picture: named layers of paths, areas and texts in mm at true size. */

export { type ClothArea, clothOf, clothSize, fromTheBack, movedCloth } from './cloth.ts';
export { type ClothColours, clothColours, colourDoubts } from './cloth-colours.ts';
export { squaresFilled, squaresShown } from './corner-fills.ts';
export { type DrawOptions, drawDesign } from './draw-design.ts';
export { type DrawPlanOptions, drawPlan, endedChannels, fillLinesOf, MOST_FILL_LINES } from './draw-plan.ts';
export { drawQuilt, type QuiltPart, quiltPlaces } from './draw-quilt.ts';
export { drawTemplate } from './draw-template.ts';
export { type Drawing, type Facts, type Item, LAYERS, type LayerId, type TextItem } from './drawing.ts';
export {
  bandSpacing,
  type Filled,
  fillDesign,
  fillLengths,
  fillProblems,
  fillRegion,
  spacingFor,
  usedFills,
} from './filling.ts';
export { etchedAlignment, insideEdge } from './ghost.ts';
export { inColours } from './in-colours.ts';
export { joinedLines, mirrored, quiltingAlone } from './joined.ts';
export { roughTextWidth } from './label.ts';
export { type LegendEntry, legendOf } from './legend.ts';
export {
  fillOpenArea,
  type OpenFilled,
  openShown,
  USUAL_SEED,
  USUAL_SPACING,
} from './open-fills.ts';
export { LEAST_HOLES_APART, pounced } from './pounce.ts';
export { type Grid, PROJECTED_WORDS, projected } from './projected.ts';
export { type Scope, scopeOf, wholeScope } from './scope.ts';
export { SHEET } from './sheet-style.ts';
export { drawSilhouette } from './silhouette.ts';
export { LEAST_LAND, leastBridgesApart, stencilled } from './stencil.ts';
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
export { tearMessages } from './tear.ts';
export { tooFineFor } from './too-fine.ts';
