/** A traced template with what a person sets right in one go: stretches, breaks, and its size by the print. */

import { type Problem, ProblemError } from '../document/index.ts';
import { distance, inverse, move, movePath, type Point } from '../geometry/index.ts';
import type { PlaceOnOutline, Traced, TraceResult } from '../trace/index.ts';
import { type EdgeAsItIs, lostBreaks, placeAll, type SetRight, spoiltByStretch } from './set-right.ts';
import { type OffBy, sizeByPrint, tooFarOff } from './size-by-print.ts';
import {
  type Said,
  type TracedTemplate,
  type TracedTemplateWants,
  templateFromTrace,
} from './traced-template.ts';

export interface SetRightInTrace {
  /** Its places are in the frame of the first trace. */
  readonly right: SetRight;
  readonly off: OffBy | undefined;
}

export interface TracedSetRight {
  readonly traced: Traced;
  readonly made: TracedTemplate;
  /** What the outline is larger by than the picture says. */
  readonly correction: number;
}

/**
 * `trace` finds the outline, enlarged by a factor; `first` is what it found without one. Throws a ProblemError where what
 * is said cannot be done.
 */
export const traceSetRight = (
  trace: (correction: number) => TraceResult,
  first: Traced,
  wantsFor: (traced: Traced) => TracedTemplateWants,
  { right, off }: SetRightInTrace,
): TracedSetRight => {
  // What is etched may lie on it only once it is set right.
  const asTraced = templateFromTrace(first, { ...wantsFor(first), said: undefined });
  if (!asTraced.ok && asTraced.problem.code === 'no-such-corner')
    return { traced: first, made: asTraced, correction: 1 };
  const placed = placeAll(right, edgeAsTraced(first, asTraced));
  if (!placed.ok) throw new ProblemError(placed.problems);
  const { mends } = placed;
  const areBreaksSaid = right.breaks.length + right.renames.length + right.takenOut.length > 0;
  const make = (traced: Traced, size: number): TracedTemplate => {
    const wants = wantsFor(traced);
    const larger = (p: Point): Point => ({ x: p.x * size, y: p.y * size });
    const said: Said = {
      ...wants.said,
      mends: mends.map(({ from, to, through }) => ({
        from: larger(from),
        to: larger(to),
        through: through.map(larger),
      })),
      breaks: areBreaksSaid ? placed.breaks.map(({ at, name }) => ({ at: larger(at), name })) : undefined,
    };
    // Corners keep the numbers that they had before anything was set right.
    const end = (place: PlaceOnOutline | undefined): PlaceOnOutline | undefined => {
      const corner = place?.kind === 'corner' ? first.outline.corners[place.number - 1] : undefined;
      return corner ? { kind: 'point', point: larger(corner.point) } : place;
    };
    const choice = { ...wants.choice, heel: end(wants.choice.heel), crown: end(wants.choice.crown) };
    const made = templateFromTrace(traced, { ...wants, choice, said });
    if (!made.ok && made.problem.code === 'no-stretch')
      throw new ProblemError([{ ...made.problem, key: '--stretch' }]);
    return made;
  };
  let result: TracedSetRight = { traced: first, made: make(first, 1), correction: 1 };
  if (off && result.made.ok) {
    const { heel, crown } = result.made.found;
    const correction = sizeByPrint(distance(heel, crown), off);
    if (correction === 'too-far') throw new ProblemError([tooFarOff]);
    const again = trace(correction);
    if (!again.ok) throw new ProblemError([again.problem]);
    // Enlarged, a picture's outline is similar to itself about the origin of its frame.
    result = { traced: again.traced, made: make(again.traced, correction), correction };
  }
  // Without the stretches there was an edge.
  if (!result.made.ok && asTraced.ok && mends.length > 0 && result.made.problem.key === undefined)
    throw new ProblemError([spoiltByStretch(result.made.problem)]);
  if (result.made.ok) {
    const lost: readonly Problem[] = lostBreaks(right.breaks, result.made.template.breaks);
    if (lost.length > 0) throw new ProblemError(lost);
  }
  return result;
};

/** In the outline's frame. */
const edgeAsTraced = ({ outline }: Traced, made: TracedTemplate): EdgeAsItIs => {
  const back = made.found && inverse(made.found.motion);
  return {
    outline: outline.path,
    edge: made.found && back && movePath(made.found.edge, back),
    corners: outline.corners.map((c) => c.point),
    breaks:
      made.ok && back
        ? made.template.breaks.flatMap(({ point, name }) =>
            name === undefined ? [] : [{ at: move(back, point), name }],
          )
        : [],
  };
};
