/** Lines of a whole design, such as its background, cut to what of it is shown and brought to where that is drawn. */

import {
  clipperOf,
  compose,
  inverse,
  joinRegions,
  movePath,
  moveRegion,
  type Path,
  polyline,
  type Region,
  regionOf,
} from '../geometry/index.ts';
import { cellArea, mitredEnds } from './cell-areas.ts';
import { type Design, designOf, type Placed, type PlacedSide } from './design.ts';
import { mendedPath, type Torn, tearAt } from './torn.ts';

/** The design that a side drawn alone is of, in its own place on the quilt. */
export const wholeOf = (design: Design): Design =>
  aloneIn(design) ? designOf(design.field, design.fit) : design;

/** The side that is drawn alone, at its own length. */
const aloneIn = ({ sides }: Design): PlacedSide | undefined => sides.find(({ run, fit }) => run !== fit.run);

/** The cloth that a half takes on the quilt, from its join or mitre to its centre line. */
export const windowOf = (half: Placed, row: Design): Region =>
  moveRegion(cellArea(half.cell, row, mitredEnds(half, row)), half.motion);

/**
 * What of lines of a whole design's row lies where some halves of that row do, as `row` draws them: a side that is drawn
 * alone has its own place and length.
 */
export const shownLines = (
  paths: readonly Path[],
  whole: Design,
  row: Design,
  halves: readonly Placed[],
): readonly Path[] => {
  const alone = aloneIn(row);
  const side = alone && whole.sides.find(({ run }) => run.name === alone.run.name);
  if (!side && halves.length === whole.halves.length) return paths;
  const keys = new Set(halves.map(keyOf));
  const windows = whole.halves.filter((h) => keys.has(keyOf(h))).map((h) => windowOf(h, whole));
  const torn = side && tearAt(side);
  const strips = side && torn ? [stripOf(side, torn, whole)] : [];
  const shown = paths.flatMap(clipperOf(joinRegions([...windows, ...strips])));
  if (!side) return shown;
  const back = inverse(side.run.place);
  if (!torn) return shown.map((path) => movePath(path, compose(alone.run.place, back)));
  return shown.flatMap((path) => {
    const mended = mendedPath(movePath(path, back), torn);
    return mended.pieces.length > 0 ? [movePath(mended, alone.run.place)] : [];
  });
};

const keyOf = ({ repeat, half }: Placed): string => `${repeat} ${half}`;

/** The join that stands open, from the near level to the far one. */
const stripOf = ({ run }: PlacedSide, { at, by }: Torn, { field: { near, far } }: Design): Region =>
  moveRegion(
    regionOf([
      polyline(
        [
          { x: at, y: near },
          { x: at + by, y: near },
          { x: at + by, y: far },
          { x: at, y: far },
        ],
        true,
      ),
    ]),
    run.place,
  );
