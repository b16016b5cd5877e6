/** What a reader of SVG says where it cannot follow a drawing: a problem, thrown to the element that it is about. */

import type { Problem } from '../document/index.ts';

/** Thrown by the readers of single attributes, and caught where the element is known; never leaves this room. */
export class NotFollowed extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

/** What helps against most of what is not followed. */
export const FLATTEN =
  'flatten the transforms in the drawing program, or save the template alone as one plain path';

/** A value as it stands in the file, shortened. */
export const shown = (value: string): string =>
  JSON.stringify(value.length > MOST_SHOWN ? `${value.slice(0, MOST_SHOWN)}…` : value);

const MOST_SHOWN = 60;
