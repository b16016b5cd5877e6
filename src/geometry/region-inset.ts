/**
 * A region grown or shrunk by a distance: for fills, which keep away from edges and repeat them.
 *
 * Clipper2 offsets the flattened loops (round joins), and the lines and circles that the answer must consist
 * of are found again in its chords. What comes back is exact where it was recovered, and within
 * `INSET_TOLERANCE` otherwise; the stitched edge itself never goes this way.
 */

import { Clipper, EndType, FillRule, JoinType } from 'clipper2-ts';
import type { Box } from './box.ts';
import { flatten, type Path, polyline } from './path.ts';
import type { Piece } from './piece.ts';
import { add, leftOf, scale } from './point.ts';
import { type Carrier, carrierOf, carriersFrom, recoverLoop } from './recover.ts';
import { EMPTY_REGION, isEmptyRegion, type Region, regionOf, regionPieces } from './region.ts';

/** How far (mm) chords may lie from their arcs on the way through Clipper. */
const INSET_TOLERANCE = 0.015;

/** Chords, rounding, and Clipper's own round joins together stay within this (mm). */
const RECOVER_TOLERANCE = 0.04;

/** Clipper works on whole numbers: this many decimals of a millimetre. */
const DECIMALS = 5;

/**
 * The points of the region at least `by` mm from its boundary; a negative `by` grows it. Parts may vanish.
 */
export const insetRegion = (region: Region, by: number): Region => {
  if (isEmptyRegion(region) || by === 0) return region;
  const polygons = region.loops.map((loop) => flattenLoop(loop));
  const result = Clipper.inflatePathsD(
    polygons,
    -by,
    JoinType.Round,
    EndType.Polygon,
    2,
    DECIMALS,
    INSET_TOLERANCE,
  );
  if (result.length === 0) return EMPTY_REGION;
  const carriers = carriersFrom(regionPieces(region), (p) => insetCarriers(p, by), Math.abs(by));
  return regionOf(
    result.map((p) =>
      recoverLoop(
        p.map((point) => ({ point })),
        carriers,
        RECOVER_TOLERANCE,
      ),
    ),
  );
};

/**
 * What of a region within a box is farther than `by` mm from some lines, as polygons within a third of a millimetre: for
 * looking at what is left, not for stitching along its edge.
 */
export const regionBeside = (region: Region, lines: readonly Path[], by: number, box: Box): Region => {
  const flat = lines.map((line) => flatten(line, ROUGH).map(({ x, y }) => ({ x, y })));
  const round = Clipper.inflatePathsD(flat, by, JoinType.Round, EndType.Round, 2, DECIMALS, ROUGH);
  const { minX, minY, maxX, maxY } = box;
  const window = polyline(
    [
      { x: minX, y: minY },
      { x: maxX, y: minY },
      { x: maxX, y: maxY },
      { x: minX, y: maxY },
    ],
    true,
  );
  const whole = Clipper.intersectD(
    region.loops.map(flattenLoop),
    [flattenLoop(window)],
    FillRule.NonZero,
    DECIMALS,
  );
  const left = Clipper.differenceD(whole, round, FillRule.NonZero, DECIMALS);
  return left.length === 0 ? EMPTY_REGION : regionOf(left.map((loop) => polyline(loop, true)));
};

const ROUGH = 0.15;

const flattenLoop = (loop: Path): { x: number; y: number }[] =>
  flatten(loop, INSET_TOLERANCE)
    .slice(0, -1)
    .map((p) => ({ x: p.x, y: p.y }));

/** Everything beside a piece that the boundary of the inset can consist of: its offset, and a circle about its corner. */
const insetCarriers = (p: Piece, by: number): readonly Carrier[] => {
  const carrier = carrierOf(p);
  if (!carrier) return [];
  const about: Carrier = { kind: 'circle', center: p.from, radius: Math.abs(by) };
  if (carrier.kind === 'line')
    return [{ ...carrier, at: add(carrier.at, scale(leftOf(carrier.along), by)) }, about];
  const radius = carrier.radius - (p.kind === 'arc' && p.sweep > 0 ? by : -by);
  return radius > 0 ? [{ ...carrier, radius }, about] : [about];
};
