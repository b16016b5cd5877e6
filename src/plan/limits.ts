/**
 * The limits of a plan's lengths, in mm. Beyond each lies no quilt but a slip of the pen (a unit left out, a
 * point misplaced), and the message says so while it is cheap. Whole inches, so that they read well.
 */

import { MM_PER_INCH } from '../length/index.ts';

/** Rounded once, as the plan's own fractions are: 12 · 25.4 is a hair less than 304.8. */
const inches = (n: number): number => (n * (10 * MM_PER_INCH)) / 10;

export const LIMITS = {
  /** The largest quilts are about 120 in wide; a strip may run on across a hall. */
  side: { least: inches(1), most: inches(400) },
  width: { least: inches(1 / 4), most: inches(60) },
  margin: { least: 0, most: inches(30) },
  /** Common practice is 1/4 in; feet of 1/16 in and of 1 in are sold, no others. */
  clearance: { least: inches(1 / 16), most: inches(1) },
  gap: { least: 0, most: inches(60) },
  /** Asked for: less than an eighth of an inch no foot goes round. */
  span: { least: inches(1 / 8), most: inches(400) },
  depth: { least: inches(1 / 8), most: inches(60) },
  apart: { least: inches(1 / 16), most: inches(30) },
  at: { least: 0, most: inches(60) },
  channel: { least: inches(1 / 32), most: inches(12) },
  spacing: { least: inches(1 / 32), most: inches(12) },
  stitch: { least: inches(1 / 64), most: inches(1 / 2) },
  around: { least: inches(1 / 4), most: inches(120) },
} as const;

export const MOST_REPEATS = 400;
export const FEWEST_IN_FRAME = 3;
export const MOST_IN_FRAME = 64;
export const MOST_CHANNELS = 20;
/** With the first one. */
export const MOST_ROWS = 2;
export const MOST_TEMPLATES = 50;
/** Designs on one quilt, and copies of one of them. */
export const MOST_PARTS = 40;
export const MOST_PLACES = 100;
export const MOST_PATH_CHARACTERS = 300;
/** Seeds are whole numbers that a person can write down. */
export const LARGEST_SEED = 999_999_999;
/** What margins must leave of a width (mm): 1/4 in, enough for a line of stitching with cloth beside it. */
export const LEAST_ROOM = inches(1 / 4);
