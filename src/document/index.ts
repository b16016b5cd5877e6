/** Texts that people write, read into values that remember where they stood; and what to say when one is wrong. */

export { type Checked, checkDocument, group, jsonSchemaOf, type ProblemParams, refuse } from './check.ts';
export { describeValue, MOST_SHOWN, nearestOf, plural, quoted, series } from './describe.ts';
export {
  baseName,
  type LengthLimits,
  lengthOf,
  listOrOne,
  MOST_NAME,
  MOST_TITLE,
  nameText,
  perUnit,
  titleText,
  unitsOf,
} from './parts.ts';
export { describeProblem, oneLine, type Place, type Problem, ProblemError } from './problem.ts';
export {
  type DocumentReading,
  type KeyPath,
  keyName,
  MOST_CHARACTERS,
  MOST_DEPTH,
  MOST_VALUES,
  placeOf,
  readDocument,
  type SourceDocument,
  valueAt,
} from './read.ts';
