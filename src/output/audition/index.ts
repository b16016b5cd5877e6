/** Sheets on which fills are tried in a frame, to choose from and to draw on. */

export { setsOf, type Together } from './together.ts';
export {
  hasRegion,
  suitsRegion,
  TRIAL_REGIONS,
  type Trial,
  type TrialRegion,
  type TrialsAsked,
  trialsAsked,
  trialsFor,
} from './trials.ts';
export {
  type AuditionOptions,
  auditionPages,
  REGION_WORDS,
  setLetter,
  writeAudition,
  writeEmptyFrames,
} from './write-audition.ts';
