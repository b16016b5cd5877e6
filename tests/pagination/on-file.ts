import type { Point } from '../../src/geometry/index.ts';
import type { SheetPlan } from '../../src/pagination/index.ts';

/**
 * A point on paper, as a true ruler measures it, to a point on the page in the file (mm). The live area's lower
 * left corner stays where it is.
 */
export const onFile = (plan: SheetPlan, p: Point): Point => ({
  x: plan.live.minX + (p.x - plan.live.minX) * plan.factors.x,
  y: plan.live.minY + (p.y - plan.live.minY) * plan.factors.y,
});
