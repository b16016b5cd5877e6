/** From pictures to outlines: what a scan, a photograph or a drawing shows of a template, in mm. */

export { type Blob, blobsOf, isInked } from './blobs.ts';
export {
  CAPTURE_INSET,
  type Capture,
  type CaptureResult,
  expectedError,
  findCapture,
  MARK_PLACES,
  MARK_RADII,
  MARK_SPAN,
} from './capture-marks.ts';
export { contourFrom, ringArea } from './contour.ts';
export {
  type Corner,
  type CornerOptions,
  findCorners,
  LEAST_TURN,
  type Ring,
  ringLength,
  ringOf,
} from './corners.ts';
export { endDoubts, outlineDoubt, photoDoubt } from './doubts.ts';
export { type FitOptions, fitOutline, type Outline, type OutlineCorner } from './fit-outline.ts';
export { applyHomography, findHomography, type Homography, inverseHomography } from './homography.ts';
export { type LensFrame, type SheetView, viewAt, viewThroughLens } from './lens.ts';
export { type LineSide, lineMiddle } from './line-middle.ts';
export {
  greyOf,
  LONGEST_SIDE,
  MOST_PIXELS,
  type Picture,
  SHORTEST_SIDE,
  sizeProblem,
  softened,
} from './picture.ts';
export { DAMAGED, type HeadResult, type PictureHead, readPictureHead } from './picture-file.ts';
export { findShape, type Shape, type ShapeResult } from './shape.ts';
export { type SvgOutline, type SvgOutlineOptions, type SvgOutlineResult, svgOutline } from './svg-outline.ts';
export { evenlyLit, otsu, type Tone, toneOf } from './tone.ts';
export {
  type Dot,
  LEAST_RESOLUTION,
  type Traced,
  type TraceOptions,
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
  type WorkingEdgeResult,
} from './working-edge.ts';
