/** What a person plans: the cloth, the template, and what she has already decided; read from her plan file. */

export { type Colours, colourFrom } from './colours.ts';
export { cornersOfWritten, inCornersOf } from './in-corners.ts';
export { closesRound, hasCorners, hasEnds, layoutKey, liesRoundBlock } from './layout-kinds.ts';
export { FEWEST_IN_FRAME, LARGEST_SEED, LIMITS, MOST_IN_FRAME } from './limits.ts';
export { inWidth } from './measured-sides.ts';
export { overlaps } from './neighbours.ts';
export { PAPER_IDS, PAPERS, type Paper, type PaperId, USUAL_PAPER } from './papers.ts';
export type { PartReading } from './part-reading.ts';
export {
  type Border,
  type Channels,
  type CornerMade,
  type CornerTreatment,
  cornersFrom,
  type Fill,
  type Frame,
  type FurtherRow,
  type HowMade,
  type Layout,
  type Part,
  type Plan,
  type SettingName,
  SIDES,
  type Side,
  type Spot,
  type Strip,
} from './plan.ts';
export { type PlanReading, readPlan } from './read.ts';
export { planJsonSchema } from './schema.ts';
export { MOST_STUDENTS, readStudents, type Student } from './students.ts';
export {
  type CountWish,
  isAbout,
  readShareWish,
  sayShare,
  type Wish,
  type WishReading,
  wishText,
} from './wish.ts';
export { formOf, plainWish } from './wish-form.ts';
export { readRepeatsWish, readWishOf } from './wish-schema.ts';
