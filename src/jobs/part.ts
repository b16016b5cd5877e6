/** A design to make something of, and what it was made from: read, found to be in order, and with nothing drawn yet. */

import { nearestOf, type Problem, ProblemError, quoted } from '../document/index.ts';
import { fillProblems, type Scope, scopeOf } from '../drawing/index.ts';
import type { Plan } from '../plan/index.ts';
import type { Design } from '../swag/index.ts';
import type { Template } from '../template/index.ts';

export interface Part {
  /** What the plan calls it; undefined where the plan is one design. */
  readonly name: string | undefined;
  readonly plan: Plan;
  /** All that the plan names, in its order. */
  readonly templates: readonly Template[];
  readonly design: Design;
  /** A problem of the plan with its place in the plan's file, where there is a file. */
  readonly placed: (problem: Problem) => Problem;
}

export interface Shown {
  readonly design: Design;
  readonly scope: Scope;
}

/** What of a design is meant by `text`, and the design to draw it of. Throws a ProblemError where nothing is. */
export const shownOf = (whole: Design, text: string): Shown => {
  const scoped = scopeOf(whole, text);
  if (scoped.ok) return scoped;
  const near = nearestOf(text, scoped.known);
  throw new ProblemError([
    {
      code: 'not-in-design',
      message: 'not in this design',
      found: quoted(text),
      expected: `one of ${scoped.known.join(', ')}`,
      ...(near === undefined ? {} : { hint: `did you mean ${quoted(near)}?` }),
    },
  ]);
};

/** What a cover says of what lies on its sheets: a repeat or a corner is easily taken for the whole. */
export const shownWords = ({ scope }: Shown, how: readonly string[] = []): string =>
  `Printed here: ${[scope.label, ...how].join(', ')}.`;

/** What is made for a part; a ProblemError tells where in its plan. */
export const withPlaces = <T>({ placed }: Pick<Part, 'placed'>, make: () => T): T => {
  try {
    return make();
  } catch (error) {
    if (error instanceof ProblemError) throw new ProblemError(error.problems.map(placed));
    throw error;
  }
};

/** For jobs that draw no fill and go on without them: a misspelt one is a mistake in the plan all the same. */
export const refuseUnknownFills = ({ plan, placed }: Pick<Part, 'plan' | 'placed'>): void => {
  const problems = fillProblems(plan).map(placed);
  if (problems.length > 0) throw new ProblemError(problems);
};
