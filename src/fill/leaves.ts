/** Leaves on a vine: a line that wanders, with leaves that point forward, first on one side and then on the other. */

import {
  add,
  arcByRise,
  leftOf,
  type Point,
  pieceAt,
  regionArea,
  regionParts,
  scale,
} from '../geometry/index.ts';
import { checked, type Fill, MOST_ELEMENTS, nothing, ofParts } from './fill.ts';
import { randomOf } from './random.ts';
import { type Trimming, trimmed, vinesIn } from './trimmed-meander.ts';

/** In spacings: how far apart the vine wanders, how long a leaf is, how much of its line is a trimming’s own, and from one to the next along the vine. */
const APART = 1.15;
const LENGTH = 1;
const OWN = 1.3;
const EVERY = 0.95;
/** A leaf's half width as a share of its length, and how far (radians) it stands off from the vine. */
const FULLNESS = 0.24;
const LEAN = 0.8;
/** What a leaf keeps of the spacing from the vine beside it and from the edge. */
const CLEAR = 0.44;
const FROM_EDGE = 0.12;

export const leaves: Fill = checked({
  name: 'leaves',
  about: 'leaves on a vine that wanders, in one line',
  suits: 'area',
  sewn: 'start anywhere on the vine and follow it; at each leaf go out to its tip and back before going on',
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
      make: (at: Point, along: Point, side: 1 | -1) => leafAt(at, along, side, LENGTH * spacing),
    };
    return ofParts(
      parts.map((part) =>
        vinesIn(part, spacing, APART, random, parts.length === 1 ? context : undefined).map((vine) =>
          trimmed(vine, part, wish),
        ),
      ),
      'area',
      'a vine',
    );
  },
});

/** Two arcs from the vine to the leaf's tip and back. */
const leafAt = (at: Point, along: Point, side: 1 | -1, length: number): Trimming => {
  const toward = add(
    scale(along, Math.cos(LEAN) * length),
    scale(leftOf(along), side * Math.sin(LEAN) * length),
  );
  const tip = add(at, toward);
  const rise = side * FULLNESS * length;
  const pieces = [arcByRise(at, tip, rise), arcByRise(tip, at, rise)];
  return {
    pieces,
    reaches: [tip, ...pieces.flatMap((p, i) => [0.5, 0.75].map((t) => pieceAt(p, i === 0 ? t : 1 - t)))],
  };
};
