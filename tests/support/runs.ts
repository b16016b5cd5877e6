/**
 * How often the property tests run, from which seed, and which tests only now and then: the one place that reads it
 * from the environment.
 *
 * `npm test` runs each property as often as it says itself, from its own fixed seed, so that two runs of the same
 * code agree. `npm run test:long` multiplies the runs and starts from a fresh seed, which it prints.
 *
 * RUNS  a whole number that the runs of every property are multiplied by (default 1)
 * SEED  a whole number that every property's own seed is mixed with (default none: the property's own)
 */

import { it } from 'vitest';

const wholeFrom = (name: 'RUNS' | 'SEED'): number | undefined => {
  const text = process.env[name];
  if (text === undefined || text === '') return undefined;
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1 || value > 0x7fffffff)
    throw new Error(`${name} is a whole number from 1 to 2147483647; it is ${JSON.stringify(text)}`);
  return value;
};

const multiplier = wholeFrom('RUNS') ?? 1;
const fresh = wholeFrom('SEED');
const isLong = wholeFrom('RUNS') !== undefined;

export interface Runs {
  readonly numRuns: number;
  readonly seed: number;
}

/** What `fc.assert` takes. A failure prints the seed and the path to the counterexample, which replay it. */
export const runs = (numRuns: number, seed: number): Runs => ({
  numRuns: numRuns * multiplier,
  seed: fresh === undefined ? seed : (fresh ^ Math.imul(seed, 0x9e3779b1)) | 0,
});

/** The same of a slow property, of which `npm test` tries the first `kept`, and `npm run test:long` all. */
export const fewRuns = (kept: number, all: number, seed: number): Runs => runs(isLong ? all : kept, seed);

/** A property's own time limit (ms), grown with its runs; a fixed one would fail long runs that are right. */
export const patience = (milliseconds: number): number => milliseconds * multiplier;

/** A test that is slow and has rarely failed: it is left to `npm run test:long`, and `npm test` counts it as skipped. */
export const long = it.runIf(isLong);

/** Of many like cases `npm test` tries those that are `kept`, and `npm run test:long` all. */
export const few = <T>(cases: readonly T[], kept: (one: T) => boolean): readonly T[] =>
  isLong ? cases : cases.filter(kept);
