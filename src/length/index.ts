/** Lengths as people write them, and as they like to read them. Millimetres inside, always. */

export { lengthsApart, numberApart } from './apart.ts';
export {
  AS_READ,
  CM_TENTH,
  exactLength,
  formatLength,
  INCH_EIGHTH,
  INCH_SIXTEENTH,
  INCH_SIXTYFOURTH,
  INCH_THIRTYSECOND,
  LENGTH_STYLES,
  type LengthStyle,
  MM_HALF,
  MM_TENTH,
  MM_WHOLE,
  roundLength,
  stepOf,
} from './print.ts';
export {
  type AllowedSign,
  MM_PER,
  MM_PER_INCH,
  pointInstead,
  readLength,
  UNITS,
  type Units,
} from './read.ts';
export { wordsOf } from './words.ts';
