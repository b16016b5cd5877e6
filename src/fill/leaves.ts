/** Leaves on a vine: a line that wanders, with leaves that point forward, first on one side and then on the other. */

import { add, arcByRise, leftOf, type Point, pieceAt, scale } from '../geometry/index.ts';
import { checked, type Fill } from './fill.ts';
import { type Trimming, trimmedVines } from './trimmed-meander.ts';

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
  crowd: 1,
  takes: ['seed'],
  fill: trimmedVines('a vine', {
    apart: APART,
    every: EVERY,
    own: OWN,
    clear: CLEAR,
    fromEdge: FROM_EDGE,
    make: (at, along, side, spacing) => leafAt(at, along, side, LENGTH * spacing),
  }),
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
