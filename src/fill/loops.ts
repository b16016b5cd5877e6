/** Loops: a line that wanders and makes a loop now and then, first to one side and then to the other. */

import { add, arc, leftOf, type Point, regionArea, regionParts, scale, TURN } from '../geometry/index.ts';
import { checked, type Fill, MOST_ELEMENTS, nothing, ofParts } from './fill.ts';
import { randomOf } from './random.ts';
import { type Trimming, trimmed, vinesIn } from './trimmed-meander.ts';

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
  takes: ['seed'],
  fill: (region, { spacing, seed }, context) => {
    if (!(regionArea(region) / (spacing * spacing) < MOST_ELEMENTS))
      return nothing('the spacing is too fine for this area');
    const random = randomOf(seed);
    const parts = regionParts(region);
    const wish = {
      every: EVERY * spacing,
      own: OWN * spacing,
      clear: CLEAR * spacing,
      fromEdge: FROM_EDGE * spacing,
      make: (at: Point, along: Point, side: 1 | -1) => loopAt(at, along, side, RADIUS * spacing),
    };
    return ofParts(
      parts.map((part) =>
        vinesIn(part, spacing, APART, random, parts.length === 1 ? context : undefined).map((vine) =>
          trimmed(vine, part, wish),
        ),
      ),
      'area',
      'a line',
    );
  },
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
