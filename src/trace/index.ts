/** From pictures to outlines: what a scan, a photograph or a drawing shows of a template, in mm. */

export { CAPTURE_INSET, MARK_PLACES, MARK_RADII, MARK_SPAN } from './capture-marks.ts';
export {
  endDoubts,
  levelWords,
  lineArtDoubt,
  marksDoubt,
  outlineDoubt,
  photoDoubt,
  raisedDoubt,
  touchedDoubt,
} from './doubts.ts';
export type { Outline } from './fit-outline.ts';
export type { LineSide } from './line-middle.ts';
export { type Mend, mendOutline } from './mend.ts';
export { BAND, greyOf, greysOf, type Picture, sizeProblem } from './picture.ts';
export { DAMAGED, OTHER_FORMAT, readPictureHead } from './picture-file.ts';
export { isNoResolution } from './resolution.ts';
export { type SvgOutline, svgOutline } from './svg-outline.ts';
export { type Marks, type Traced, type TraceResult, tracePicture } from './trace-picture.ts';
export {
  alongNearest,
  cornersOf,
  type EdgeChoice,
  findWorkingEdge,
  type Level,
  type MarkedCorner,
  numberedCorners,
  type PlaceOnOutline,
  type WorkingEdge,
} from './working-edge.ts';
