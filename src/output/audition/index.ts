/** Sheets on which fills are tried in a frame, to choose from and to draw on. */

export { hasRegion, suitsRegion, TRIAL_REGIONS, type Trial, type TrialRegion, trialsFor } from './trials.ts';
export { type AuditionOptions, REGION_WORDS, writeAudition, writeEmptyFrames } from './write-audition.ts';
