/** Points, lines and arcs, and what a round foot does to them. The only folder that imports paper. */

export { arcSpline } from './arc-spline.ts';
export { CURVE_TOLERANCE, cubicToArcs, tangentArc } from './biarc.ts';
export {
  type Box,
  boxesTouch,
  boxHeight,
  boxOfPoints,
  boxWidth,
  EMPTY_BOX,
  growBox,
  isEmptyBox,
  joinBoxes,
} from './box.ts';
export { type BoxTree, boxTreeOf, eachBoxed } from './box-tree.ts';
export { chainPaths, joinPaths } from './chain.ts';
export { endAlong, startAlong } from './contact.ts';
export { crossings } from './crossing.ts';
export { type EdgeFault, findEdgeFault } from './edge-fault.ts';
export { chordLengths, fairCurve } from './fair-curve.ts';
export { farthestFrom } from './farthest.ts';
export { firstMeetingWithLine, meetingsWithLine } from './line-cut.ts';
export { compose, inverse, type Motion, matrixOf, mirror, move, mover, STAY, shift, turn } from './motion.ts';
export { distanceToPiece, type Nearness, nearnessOf } from './nearness.ts';
export { bandsOf, PIVOT_LIMIT, parallelIn } from './parallels.ts';
export {
  closedPath,
  directionAlong,
  flatten,
  locate,
  movePath,
  openPath,
  type Path,
  pathBox,
  pathEnd,
  pathLength,
  pathStart,
  pointAlong,
  polyline,
  reversePath,
  scalePath,
  signedArea,
  slicePath,
  widestRadius,
} from './path.ts';
export { pathsApart } from './paths-apart.ts';
export {
  type Arc,
  arc,
  arcBetween,
  arcByRise,
  type Line,
  line,
  movePiece,
  type Piece,
  pieceAt,
  pieceBox,
  pieceDirection,
  pieceLength,
  reversePiece,
  riseThrough,
  shareOfAngle,
  trimPiece,
} from './piece.ts';
export {
  add,
  angleOf,
  cross,
  distance,
  dot,
  leftOf,
  middle,
  norm,
  ORIGIN,
  type Point,
  point,
  polar,
  positiveAngle,
  scale,
  subtract,
  TURN,
  turnBetween,
  unit,
} from './point.ts';
export {
  clipperOf,
  containsPoint,
  EMPTY_REGION,
  isEmptyRegion,
  moveRegion,
  probeRegion,
  type Region,
  type RegionProbe,
  regionArea,
  regionBox,
  regionOf,
  regionParts,
  regionPieces,
} from './region.ts';
export { intersectRegions } from './region-boolean.ts';
export { insetRegion, regionBeside } from './region-inset.ts';
export { rollFoot, type StitchedEdge } from './rolling-foot.ts';
export { joinRegions } from './side-by-side.ts';
export { type Support, supportOf } from './support.ts';
export { readSvgNumbers, spacedPathData } from './svg-numbers.ts';
export { piecesFromSvgPath } from './svg-path.ts';
export type { Contact } from './unreached.ts';
