/** What to say where the edge that was found in a picture or a drawing is none that a template can have. */

import type { Problem } from '../document/index.ts';
import { findEdgeFault, inverse, move, type Point } from '../geometry/index.ts';
import type { WorkingEdge } from '../trace/index.ts';

/**
 * One problem without a place, instead of those of a template file that is never written. `where` says a point of the
 * outline's frame as the person sees it.
 */
export const notAnEdge = (
  { edge, motion }: WorkingEdge,
  [first]: readonly Problem[],
  where: (p: Point) => string,
): Problem => {
  const fault = findEdgeFault(edge);
  const crossing = fault?.kind === 'crosses-itself' ? ` at ${where(move(inverse(motion), fault.at))}` : '';
  const crosses = fault?.kind === 'crosses-itself' || first?.code === 'edge-crosses';
  const found = crosses
    ? `an edge that crosses itself${crossing}`
    : first && [first.message, ...(first.found === undefined ? [] : [first.found])].join(': ');
  return {
    code: 'no-working-edge',
    message: 'what was found cannot be the edge of a template',
    ...(found === undefined ? {} : { found }),
    ...(crosses || first?.expected === undefined ? {} : { expected: first.expected }),
    hint: 'say where its two ends are with --heel and --crown',
  };
};
