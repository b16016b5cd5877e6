/** Half swags, runs, corners: from a template and a plan to a design on the quilt, in mm. */

export {
  cellArea,
  groundArea,
  type MirrorLine,
  type MitredEnds,
  mitredEnds,
  mitreOf,
  NO_MITRES,
  SPECK,
  swagArea,
  wholeSwag,
} from './cell-areas.ts';
export { type ChannelSetting, channelSetting } from './channel-setting.ts';
export {
  CHANNEL_SIDES,
  type Channel,
  type ChannelSide,
  channelsOf,
  type Neighbour,
  placedChannels,
  reachesOf,
  type Surroundings,
} from './channels.ts';
export { type Choices, choicesOf } from './choices.ts';
export { checkCorner, toCornerOf } from './corner.ts';
export { bestChoices, type Choice, type Counts, countsBetween } from './counts.ts';
export {
  type Cell,
  cellContacts,
  centreMirror,
  type Design,
  designOf,
  type Half,
  type Placed,
  type PlacedSide,
  placedPath,
  placedStretch,
  repeatMarks,
  repeatMotions,
} from './design.ts';
export { describeFault } from './edge-problem.ts';
export {
  type Around,
  type BandLine,
  borderRuns,
  type Corners,
  type Field,
  fieldOf,
  type Motif,
} from './field.ts';
export { type CornerFit, depthsOf, type Fit, isRound, type SideFit, spansOf, spreadOf } from './fit.ts';
export { type FrameSize, frameSize } from './frame-size.ts';
export { type Designed, designFromPlan, type Searched, searchPlan } from './from-plan.ts';
export { type Gallery, type GallerySwag, galleryOf } from './gallery.ts';
export { type Change, leastSteps, MOST_WIDER, WIDER } from './layout-changes.ts';
export { type Mark, type MarkKind, markError, marksOf, type SideMarks } from './marking.ts';
export { FIT_NOISE, fits, type Misfit, misses, type Result } from './misfit.ts';
export { changeFor, describeMisfit, describeMiss, nearestMisses } from './near-miss.ts';
export { noWayHint } from './no-way.ts';
export { type OutOfReach, outOfReach, type Pause, pausesOf } from './pausing.ts';
export { type LineStanding, type Placing, placingOf, type Standing } from './placing.ts';
export { crownPose, type Pose, pastMirror, tiltedPose } from './pose.ts';
export { type Alike, alikeRepeats, bandMiddle, regionsOf, type SwagRegion } from './regions.ts';
export { type RingMeasures, type RoundFrame, ringMeasures, roundFrame } from './round-frame.ts';
export { frameAt, isClosed, levelPath, type Run, straightRun } from './run.ts';
export { fitRuns, type Miss, type Tried } from './runs.ts';
export { type Score, scoreOf, smallnessOf } from './score.ts';
export { MOST_COUNT, type Ranked, type Search, searchFits } from './search.ts';
export {
  bulgeFor,
  type Circling,
  circlingOf,
  gapFor,
  laidPath,
  MOST_ROUNDS,
  NEIGHBOUR_ROOM,
  type Seat,
  type SeatRules,
  seat,
  straightSeat,
} from './seat.ts';
export { leanOf, type Setting, tiltOf, type Way } from './setting.ts';
export { type Direction, type Shape, shapeOf, shortened, type TemplateSide } from './shape.ts';
export { smallestChange } from './smallest-change.ts';
export {
  endStops,
  type Flat,
  flatsOf,
  lineStops,
  type Stitched,
  type Stitching,
  type Stop,
  startStops,
  stitchTemplate,
  telling,
} from './stitching.ts';
export {
  LOCKSTITCH_RATIO,
  modelRatio,
  type StitchedLength,
  stitchedLength,
  type ThreadEstimate,
  threadFor,
  twoDigits,
  WASTAGE,
} from './thread.ts';
export { hasSpot, spotNames, waysOf } from './ways.ts';
