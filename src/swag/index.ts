/** Half swags, runs, corners: from a template and a plan to a design on the quilt, in mm. */

export { type Kind, kindsOf } from './alike.ts';
export { type Answer, isUnmet, toldAnswers } from './answers.ts';
export { askedWords, wishWords } from './asked-words.ts';
export { type OpenArea, openAreaOf } from './background.ts';
export {
  cellArea,
  groundArea,
  swagArea,
  wholeSwag,
} from './cell-areas.ts';
export { type ChannelStart, channelStarts } from './channel-ends.ts';
export { type ChannelSetting, channelSetting } from './channel-setting.ts';
export {
  CHANNEL_SIDES,
  type Channel,
  channelsOf,
  placedChannels,
} from './channels.ts';
export { type Choices, choicesOf } from './choices.ts';
export { checkCorner, toCornerOf } from './corner.ts';
export { type CornerSquares, cornerSquares } from './corner-squares.ts';

export {
  type Cell,
  cellAt,
  centreMirror,
  type Design,
  designOf,
  halvesAt,
  kindDesigns,
  type LaidCorner,
  ofRow,
  type Placed,
  type PlacedSide,
  placedPath,
  repeatMarks,
  repeatMotions,
  rowsOf,
  rowsShown,
} from './design.ts';
export { describeFault } from './edge-problem.ts';
export {
  borderRuns,
  type Field,
  fieldsOf,
  leavesSquare,
  roomName,
} from './field.ts';
export {
  ALIKE,
  cornerSwag,
  depthsOf,
  type Fit,
  hasGaps,
  isRound,
  kindsIn,
  ownCorner,
  type SideFit,
  seatsOf,
  sidesOf,
  spansOf,
  WITHOUT_SWAG,
} from './fit.ts';
export { frameSize } from './frame-size.ts';
export { designFromPlan, searchPlan, unmetBy } from './from-plan.ts';
export { type GallerySwag, galleryOf } from './gallery.ts';
export { leastSteps, MOST_WIDER, WIDER } from './layout-changes.ts';
export { type Mark, type MarkKind, markError, marksOf, type SideMarks } from './marking.ts';
export type { Misfit } from './misfit.ts';
export {
  changeFor,
  describeMisfit,
  describeMiss,
  describeRowMiss,
  nearestMisses,
} from './near-miss.ts';
export { noWayHint } from './no-way.ts';
export { outOfReach, pausesOf } from './pausing.ts';
export { type Placing, placingOf } from './placing.ts';
export { crownPose, type Pose } from './pose.ts';
export { type Alike, alikeRepeats, bandMiddle, regionsOf, type SwagRegion } from './regions.ts';
export { reordered, withoutSizes } from './reordered.ts';
export { type RoundFrame, ringMeasures, roundFrame } from './round-frame.ts';
export { frameAt, isClosed, levelPath, type Run, straightRun } from './run.ts';
export { fitRuns, type Miss } from './runs.ts';
export { scoreOf, smallnessOf } from './score.ts';
export { givenGap, type Ranked, type Search, searchFits } from './search.ts';
export {
  type Seat,
  seat,
  straightSeat,
} from './seat.ts';
export type { Setting } from './setting.ts';
export { type Shape, shapeOf } from './shape.ts';
export { shownLines, wholeOf, windowOf } from './shown-lines.ts';
export { smallestChange } from './smallest-change.ts';
export { isSmooth } from './smooth.ts';
export {
  endStops,
  flatsOf,
  type Stitching,
  startStops,
  stitchTemplate,
  telling,
} from './stitching.ts';
export {
  LOCKSTITCH_RATIO,
  modelRatio,
  type StitchedLength,
  stitchedLength,
  threadFor,
  threadStarts,
  twoDigits,
  WASTAGE,
} from './thread.ts';
export { askingLess, changeOf, changesFor } from './unmet.ts';
export { waysOf } from './ways.ts';
