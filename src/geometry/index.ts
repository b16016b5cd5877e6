/** Points, lines and arcs, and what a round foot does to them. The only folder that imports paper. */

export { type ArcSpline, type ArcSplineOptions, arcSpline } from './arc-spline.ts';
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
export { endAlong, startAlong } from './contact.ts';
export { type Crossing, crossings, shareOf, TOUCH } from './crossing.ts';
export { type EdgeFault, findEdgeFault } from './edge-fault.ts';
export { chordLengths, type FairOptions, fairCurve } from './fair-curve.ts';
export { farthestFrom } from './farthest.ts';
export { firstMeetingWithLine, type LineMeeting, meetingsWithLine } from './line-cut.ts';
export { compose, inverse, type Motion, matrixOf, mirror, move, mover, STAY, shift, turn } from './motion.ts';
export { distanceToPiece, type Nearness, nearnessOf } from './nearness.ts';
export { bandsOf, PIVOT_LIMIT, type PointJoin, parallelIn } from './parallels.ts';
export {
  closedPath,
  directionAlong,
  EMPTY_PATH,
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
  signedArea,
  slicePath,
} from './path.ts';
export {
  type Arc,
  arc,
  arcBetween,
  arcByRise,
  inWedge,
  type Line,
  line,
  movePiece,
  movePieceBy,
  type Piece,
  pieceAt,
  pieceBox,
  pieceCurvature,
  pieceDirection,
  pieceLength,
  reversePiece,
  riseThrough,
  roundFrom,
  shareOfAngle,
  trimPiece,
} from './piece.ts';
export {
  add,
  angleOf,
  cross,
  distance,
  dot,
  isFinitePoint,
  leftOf,
  lengthOf,
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
  clipPathToRegion,
  clipperOf,
  containsPoint,
  distanceToBoundary,
  EMPTY_REGION,
  isEmptyRegion,
  probeRegion,
  type Region,
  type RegionProbe,
  regionArea,
  regionBox,
  regionOf,
  regionParts,
  regionPieces,
  windsRound,
} from './region.ts';
export { intersectRegions, subtractRegion, uniteRegions } from './region-boolean.ts';
export { INSET_TOLERANCE, insetRegion } from './region-inset.ts';
export { type Rolled, type RollOptions, rollFoot, rollFootRound, type StitchedEdge } from './rolling-foot.ts';
export { type Support, supportOf } from './support.ts';
export { readSvgNumbers, spacedPathData } from './svg-numbers.ts';
export { piecesFromSvgPath, type SvgPathResult } from './svg-path.ts';
export { type Contact, findUnreached, type Unreached } from './unreached.ts';
