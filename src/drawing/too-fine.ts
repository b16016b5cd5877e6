/** Spacings that would draw more than a fill is made of: found before any of it is made. */

import { type KeyPath, keyName, type Problem } from '../document/index.ts';
import { type Fill, finestSpacing } from '../fill/index.ts';
import { isEmptyRegion, type Region } from '../geometry/index.ts';
import { exactLength, formatLength, INCH_THIRTYSECOND, MM_HALF, stepOf } from '../length/index.ts';
import type { Plan } from '../plan/index.ts';

/** What one key of a plan asks to be filled. */
export interface ToFill {
  readonly path: KeyPath;
  readonly fill: Fill;
  /** mm */
  readonly spacing: number;
  readonly regions: readonly Region[];
}

/** The spacings that are too fine, a problem for each key: all that it asks for together is what takes the time. */
export const tooFineOf = (asked: readonly ToFill[], plan: Plan): readonly Problem[] => {
  const byKey = new Map<string, ToFill>();
  for (const one of asked) {
    const key = keyName(one.path);
    const known = byKey.get(key);
    byKey.set(key, known ? { ...known, regions: [...known.regions, ...one.regions] } : one);
  }
  return [...byKey.values()].flatMap((one) => tooFineFor(one, plan) ?? []);
};

/** What is wrong with a spacing that would draw more elements in some areas than a fill does; the finest that is taken. */
export const tooFineFor = (
  { path, fill, spacing, regions }: ToFill,
  { marks: { style } }: Plan,
): Problem | undefined => {
  const { finest, byArea } = finestSpacing(fill, regions);
  if (regions.every(isEmptyRegion) || spacing >= finest) return undefined;
  const fine = style.unit === 'in' ? INCH_THIRTYSECOND : MM_HALF;
  const step = stepOf(fine);
  return {
    code: 'spacing-too-fine',
    key: keyName([...path, 'spacing']),
    message: `the spacing is too fine for ${byArea ? 'so large an area of ' : ''}${fill.name}`,
    found: exactLength(spacing, style),
    expected: `at least ${formatLength(Math.ceil(finest / step) * step, fine)}`,
  };
};
