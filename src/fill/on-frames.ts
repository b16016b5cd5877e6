/**
 * Patterns that have an upright, laid on an area: on each of its sides in the side's own frame, cut on the mitres; or
 * upright about its middle where it lies along no band.
 */

import {
  clipperOf,
  compose,
  inverse,
  movePath,
  type Path,
  polyline,
  type Region,
  regionBox,
  regionOf,
  shift,
  turn as turned,
} from '../geometry/index.ts';
import type { FieldSide, FillContext, FillOptions } from './fill.ts';
import { anchorOf } from './parallel.ts';

/** What is drawn in a side's own frame. */
type Laid = (side: FieldSide) => readonly Path[];

/** What `make` draws in each side's frame, cut to the side and the region; in the order of `make`. */
export const laidOn = (
  region: Region,
  options: Pick<FillOptions, 'turn'>,
  context: FillContext | undefined,
  make: Laid,
): readonly Path[] => {
  const inRegion = clipperOf(region, 'left out');
  return framesOf(region, options.turn ?? 0, context).flatMap((side) => {
    const inSide = side.mitre === undefined ? (path: Path) => [path] : clipperOf(regionOf([outlineOf(side)]));
    return make(side)
      .flatMap(inSide)
      .flatMap((path) => inRegion(side.lay(path)));
  });
};

/** A side between its mitres, in its own frame. */
const outlineOf = ({ length, from, to, mitre = Math.PI / 2 }: FieldSide): Path => {
  const lean = 1 / Math.tan(mitre);
  return polyline(
    [
      { x: -lean * from, y: from },
      { x: length + lean * from, y: from },
      { x: length + lean * to, y: to },
      { x: -lean * to, y: to },
    ],
    true,
  );
};

/** The sides there are; else one that holds the whole region, its middle on the region's. */
const framesOf = (region: Region, turn: number, context: FillContext | undefined): readonly FieldSide[] => {
  if (context?.sides) return context.sides;
  const anchor = anchorOf(region, context);
  const upright = compose(turned(-turn), shift(-anchor.x, -anchor.y));
  const stood = region.loops.map((loop) => movePath(loop, upright));
  const box = regionBox({ ...region, loops: stood });
  const half = Math.max(-box.minX, box.maxX) + 1;
  const lay = compose(inverse(upright), shift(-half, 0));
  return [
    {
      length: 2 * half,
      from: box.minY,
      to: box.maxY,
      mitre: undefined,
      lay: (path) => movePath(path, lay),
    },
  ];
};
