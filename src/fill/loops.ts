/** Loops: a line that wanders and makes a loop now and then, first to one side and then to the other. */

import { add, arc, leftOf, type Point, scale, TURN } from '../geometry/index.ts';
import { checked, type Fill } from './fill.ts';
import { type Trimming, trimmedVines } from './trimmed-meander.ts';

/** In spacings: how far apart the line wanders, a loop's radius, and from one loop to the next along the line. */
const APART = 1.12;
const RADIUS = 0.32;
const OWN = 1.1;
const EVERY = 2.2;
/** What a loop keeps of the spacing from the line beside it and from the edge. */
const CLEAR = 0.46;
const FROM_EDGE = 0.12;

export const loops: Fill = checked({
  name: 'loops',
  about: 'a line that wanders and makes loops to both sides',
  suits: 'area',
  sewn: 'start anywhere on the line and follow it, going once round each loop where it stands, back to where it began',
  crowd: 1,
  takes: ['seed'],
  fill: trimmedVines('a line', {
    apart: APART,
    every: EVERY,
    own: OWN,
    clear: CLEAR,
    fromEdge: FROM_EDGE,
    make: (at, along, side, spacing) => loopAt(at, along, side, RADIUS * spacing),
  }),
});

/** A circle that the line goes round once, and leaves as it came. */
const loopAt = (at: Point, along: Point, side: 1 | -1, radius: number): Trimming => {
  const out = scale(leftOf(along), side);
  const center = add(at, scale(out, radius));
  const start = Math.atan2(-out.y, -out.x);
  const whole = arc(center, radius, start, side * TURN);
  const reaches = [0.5, 0.25, 0.4, 0.6, 0.75].map((t) => ({
    x: center.x + radius * Math.cos(start + t * TURN),
    y: center.y + radius * Math.sin(start + t * TURN),
  }));
  return { pieces: [{ ...whole, from: at, to: at }], reaches };
};
