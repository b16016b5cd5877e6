/** Texts that people write, read into values that remember where they stood; and what to say when one is wrong. */

export { type Checked, checkDocument, group, jsonSchemaOf, type ProblemParams, refuse } from './check.ts';
export { capital, describeValue, fileWord, nearestOf, plural, quoted, series } from './describe.ts';
export {
  type Change,
  nodeAt,
  parseText,
  type Splice,
  spliced,
  type Written,
  withValue,
  withValues,
  writtenInLine,
} from './edit.ts';
export { fingerprint } from './fingerprint.ts';
export {
  baseName,
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
  type KeyPath,
  keyName,
  keysAt,
  keyText,
  placeOf,
  readDocument,
  type SourceDocument,
  valueAt,
} from './read.ts';
export { textOf } from './text-of.ts';
