/** A border is measured along its inner or its outer edge: the other lies a width farther in or out on both sides. */

import { type Border, SIDES, type Side } from './plan.ts';

type Sides = Readonly<Record<Side, number>>;

const longerBy = (sides: Sides, mm: number): Sides =>
  Object.fromEntries(SIDES.map((side) => [side, sides[side] + mm])) as Record<Side, number>;

/** Of a border of a width whose outer sides are known; all in mm. */
export const innerSides = (outer: Sides, width: number): Sides => longerBy(outer, -2 * width);

/** The sides as the person measured them, mm. */
export const measuredSides = ({ inner, measured, width }: Border): Sides =>
  measured === 'inner' ? inner : longerBy(inner, 2 * width);

/** The same border in another width (mm): what was measured stays as it is. */
export const inWidth = (border: Border, width: number): Border =>
  border.measured === 'inner'
    ? { ...border, width }
    : { ...border, width, inner: innerSides(measuredSides(border), width) };
