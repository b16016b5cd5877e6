/** The picture of a part as it looks on paper, and what a person should know about it. */

import { ProblemError } from '../document/index.ts';
import {
  type Drawing,
  type DrawPlanOptions,
  drawPlan,
  type LayerId,
  SHEET,
  type StyledDrawing,
  styled,
} from '../drawing/index.ts';
import type { Part, Shown } from './part.ts';

export interface DrawnPart {
  readonly drawing: StyledDrawing;
  /** The same before it has a look. */
  readonly plain: Drawing;
  /** What was left out, and what ends early. */
  readonly notices: readonly string[];
}

/** Throws a ProblemError with all that is wrong with the plan's fills. */
export const drawnPart = (
  { plan, placed }: Part,
  { design, scope }: Shown,
  without: readonly LayerId[],
  look: Pick<DrawPlanOptions, 'asWhole' | 'labelSize'> = {},
): DrawnPart => {
  const drawn = drawPlan(design, plan, scope, { ...look, withFills: !without.includes('fill') });
  if (drawn.problems.length > 0) throw new ProblemError(drawn.problems.map(placed));
  return { drawing: styled(drawn.drawing, SHEET), plain: drawn.drawing, notices: drawn.messages };
};
