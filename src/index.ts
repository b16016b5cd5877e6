/**
 * swagwright as a library: the steps from a plan and its templates to sheets of paper, each a pure function of
 * the step before. Nothing here reads files, the clock, or chance; give the bytes in, get the bytes out.
 *
 * ```
 * readPlan → readTemplate → designFromPlan → drawPlan → styled → layOut → writeSheets
 * ```
 *
 * `samples/from-code.mjs` goes this way once.
 */

export { describeProblem, type Place, type Problem, ProblemError } from './document/index.ts';
export {
  type Drawing,
  type DrawOptions,
  drawDesign,
  drawPlan,
  drawQuilt,
  drawTemplate,
  fillDesign,
  LAYERS,
  type LayerId,
  SHEET,
  scopeOf,
  styled,
} from './drawing/index.ts';
export { FILLS, type Fill, type FillOptions, type FillResult, fillNamed } from './fill/index.ts';
export {
  type Arc,
  type Line,
  type Path,
  type Piece,
  type Point,
  pathLength,
  rollFoot,
  type StitchedEdge,
} from './geometry/index.ts';
export { formatLength, type LengthStyle, MM_PER_INCH, readLength, roundLength } from './length/index.ts';
export { setsOf, type Trial, trialsFor, writeAudition, writeEmptyFrames } from './output/audition/index.ts';
export { type OnePageOptions, type SheetsOptions, writeOnePage, writeSheets } from './output/pdf/index.ts';
export { writeSvg } from './output/svg/index.ts';
export { layOut, PAPERS, type SheetPlan } from './pagination/index.ts';
export { type Part, type PartReading, type Plan, readPlan } from './plan/index.ts';
export {
  channelsOf,
  type Design,
  designFromPlan,
  designOf,
  type Fit,
  marksOf,
  placedChannels,
  placingOf,
  type Ranked,
  regionsOf,
  searchPlan,
  stitchTemplate,
} from './swag/index.ts';
export { readTemplate, type Template, writeTemplate } from './template/index.ts';
export { findWorkingEdge, type Picture, svgOutline, tracePicture } from './trace/index.ts';
