/** From pictures to outlines: what a scan, a photograph or a drawing shows of a template, in mm. */

export { blobsOf, isInked } from './blobs.ts';
export {
  CAPTURE_INSET,
  expectedError,
  MARK_PLACES,
  MARK_RADII,
  MARK_SPAN,
} from './capture-marks.ts';
export { contourFrom, ringArea } from './contour.ts';
export {
  findCorners,
  ringOf,
} from './corners.ts';
export { endDoubts, outlineDoubt, photoDoubt } from './doubts.ts';
export { fitOutline } from './fit-outline.ts';
export { applyHomography, findHomography, inverseHomography } from './homography.ts';
export { viewThroughLens } from './lens.ts';
export { type LineSide, lineMiddle } from './line-middle.ts';
export {
  greyOf,
  type Picture,
} from './picture.ts';
export { DAMAGED, readPictureHead } from './picture-file.ts';
export { type SvgOutline, type SvgOutlineOptions, svgOutline } from './svg-outline.ts';
export { otsu, type Tone, toneOf } from './tone.ts';
export {
  type Traced,
  type TraceResult,
  tracePicture,
} from './trace-picture.ts';
export {
  alongNearest,
  cornersOf,
  type EdgeChoice,
  findWorkingEdge,
  type MarkedCorner,
  OUTLINE_CORNER,
  type PlaceOnOutline,
  type WorkingEdge,
} from './working-edge.ts';
