/** The picture of a plan as it looks on paper, with what a person should know about it said on the way. */

import { type Problem, ProblemError } from '../document/index.ts';
import { drawPlan, type LayerId, type Scope, SHEET, type StyledDrawing, styled } from '../drawing/index.ts';
import type { Plan } from '../plan/index.ts';
import type { Design } from '../swag/index.ts';
import type { Io } from './io.ts';
import { say } from './messages.ts';

export const drawnPlan = async (
  io: Io,
  design: Design,
  plan: Plan,
  scope: Scope,
  without: readonly LayerId[],
  placed: (problem: Problem) => Problem,
): Promise<StyledDrawing> => {
  const drawn = drawPlan(design, plan, scope, { withFills: !without.includes('fill') });
  if (drawn.problems.length > 0) throw new ProblemError(drawn.problems.map(placed));
  for (const message of drawn.messages) await say(io, message);
  return styled(drawn.drawing, SHEET);
};
