/**
 * How much a fit search would have to do, told before it starts. The half swags of a template grow with the square
 * of its sections, and with their cube where the sections are straight, so a zigzag that takes a minute to draw
 * would take the memory of any machine. What is counted is what a search lays: every half swag's lines and arcs,
 * and in a round frame every half swag at every count.
 */

import type { Problem } from '../document/index.ts';
import { locate, type Path } from '../geometry/index.ts';
import { closesRound, FEWEST_IN_FRAME, MOST_IN_FRAME, type Plan } from '../plan/index.ts';
import { endStops, type Stitching, type Stop } from './stitching.ts';
import { DIRECTIONS, SIDES, settingsFor, stopsFor } from './ways.ts';

/** Lines and arcs of all half swags: as many take some 10 s and 0.7 GB. Sixty arcs in a row have 400,000. */
const MOST_LAID = 500_000;
/** Half swags times counts of a round frame: as many take some 12 s. Thirty-five arcs in a row have as many. */
const MOST_CLOSED = 160_000;

/** The problem that says so when a search of these templates would be too large. */
export const tooLarge = (plan: Plan, stitchings: readonly Stitching[]): Problem | undefined => {
  const { layout } = plan;
  const counts = closesRound(layout) && layout.count === undefined ? MOST_IN_FRAME - FEWEST_IN_FRAME + 1 : 1;
  const most = { laid: MOST_LAID, ways: closesRound(layout) ? MOST_CLOSED / counts : MOST_LAID };
  let laid = 0;
  let ways = 0;
  for (const stitching of stitchings) {
    for (const size of sizesOf(stitching, plan)) {
      laid += size;
      ways++;
      if (laid > most.laid || ways > most.ways) return problemOf(plan, stitchings, counts);
    }
  }
  return undefined;
};

/** The number of pieces of each half swag, none of which is made. */
function* sizesOf(stitching: Stitching, { swag }: Plan): Generator<number> {
  const { path } = stitching.stitched;
  const indexAt = indexing(path);
  const sides = swag.side ? 1 : SIDES.length;
  const ends = stopsFor(swag.to, endStops(stitching), stitching);
  for (const direction of swag.direction ? [swag.direction] : DIRECTIONS)
    for (const { starts } of settingsFor(stitching, swag, direction))
      for (const from of starts)
        for (const to of ends) {
          if (!(to.along > from.along)) continue;
          const size = indexAt(to) - indexAt(from) + 1;
          for (let side = 0; side < sides; side++) yield size;
        }
}

const indexing = (path: Path): ((stop: Stop) => number) => {
  const known = new Map<number, number>();
  return ({ along }) => {
    const index = known.get(along) ?? locate(path, along)?.index ?? 0;
    known.set(along, index);
    return index;
  };
};

const problemOf = (plan: Plan, stitchings: readonly Stitching[], counts: number): Problem => {
  const sections = Math.max(...stitchings.map((s) => s.sections.length));
  const { from, to, side, direction } = plan.swag;
  const open = [
    ...(counts > 1 ? ['layout.frame.count'] : []),
    ...(from ? [] : ['swag.from']),
    ...(to ? [] : ['swag.to']),
    ...(side ? [] : ['swag.side']),
    ...(direction ? [] : ['swag.direction']),
  ];
  const narrower = open.length > 0 ? `say ${open.join(', ')}` : 'leave out breaks that make no swag';
  return {
    code: 'search-too-large',
    key: 'template',
    message: 'too many sections to try every swag from each to each',
    found:
      stitchings.length > 1
        ? `${stitchings.length} templates with up to ${sections} sections`
        : `${sections} sections`,
    expected: counts > 1 ? 'about 35 at most, or 10 straight ones' : 'about 60 at most, or 20 straight ones',
    hint: stitchings.length > 1 ? `name fewer templates, or ${narrower}` : narrower,
  };
};
