/**
 * The areas that one repeat makes and that can be filled: inside the innermost channel, each channel's band,
 * and the ground between the outermost line and the far margin. In the frame of the repeat's first half.
 *
 * A band is the area between two distances from the stitching: what the outline of a disc rolled right round
 * the whole swag encloses, once for the farther distance and once for the nearer. So its edges are the
 * channels' own lines.
 */

import {
  closedPath,
  EMPTY_REGION,
  intersectRegions,
  isEmptyRegion,
  line,
  move,
  movePath,
  type Path,
  type Point,
  pathEnd,
  pathStart,
  type Region,
  regionOf,
  reversePath,
  rollFoot,
  subtractRegion,
} from '../geometry/index.ts';
import type { Channels } from '../plan/index.ts';
import { cellRegion, centreMirror, wholeSwag } from './channels.ts';
import type { Cell, Design } from './design.ts';

export interface SwagRegion {
  readonly kind: 'swag' | 'channel' | 'background';
  /** For a channel `outward 1`, `inward 2`; the kind itself for the others. */
  readonly name: string;
  readonly region: Region;
}

/** The regions of a repeat whose halves are copies of one cell; those in which nothing is left are empty. */
export const regionsOf = (cell: Cell, design: Design, channels: Channels): readonly SwagRegion[] => {
  const inside = swagArea(cell);
  const ground = subtractRegion(repeatArea(cell, design), inside);
  const reaches = { outward: cumulative(channels.outward), inward: cumulative(channels.inward) };
  const within = (area: Region, distance: number): Region =>
    distance > 0 ? intersectRegions(area, nearSwag(cell, distance)) : EMPTY_REGION;
  const beyond = (area: Region, distance: number): Region =>
    distance > 0 ? subtractRegion(area, nearSwag(cell, distance)) : area;
  const bands = (['outward', 'inward'] as const).flatMap((side) =>
    reaches[side].map((distance, i): SwagRegion => {
      const area = side === 'outward' ? ground : inside;
      const before = reaches[side][i - 1] ?? 0;
      return { kind: 'channel', name: `${side} ${i + 1}`, region: within(beyond(area, before), distance) };
    }),
  );
  return [
    { kind: 'swag', name: 'swag', region: beyond(inside, reaches.inward.at(-1) ?? 0) },
    ...bands,
    { kind: 'background', name: 'background', region: beyond(ground, reaches.outward.at(-1) ?? 0) },
  ];
};

export const leftEmpty = (regions: readonly SwagRegion[]): readonly SwagRegion[] =>
  regions.filter((r) => isEmptyRegion(r.region));

const cumulative = (widths: readonly number[]): readonly number[] => {
  let sum = 0;
  return widths.map((w) => {
    sum += w;
    return sum;
  });
};

/** Where the two start lines of a corner meet, or undefined on a side: where the centre mirror leaves the start line. */
const footOfMirror = (cell: Cell): Point => {
  const { x, y } = cell.crown;
  return { x: x - (y * Math.cos(cell.mirror)) / Math.sin(cell.mirror), y: 0 };
};

/** Between the stitching and the start line (round the corner, at a corner). */
const swagArea = (cell: Cell): Region => {
  const swag = wholeSwag(cell);
  const start = pathStart(swag)!;
  const stop = pathEnd(swag)!;
  const foot = footOfMirror(cell);
  return regionOf([closedPath([...swag.pieces, line(stop, foot), line(foot, start)])]);
};

/** Both cells of a repeat together: their outlines, joined along the centre mirror. */
const repeatArea = (cell: Cell, design: Design): Region => {
  const half = cellRegion(cell, design).loops[0]!;
  // The cell's corners, from the join on the start line round to the join at the far margin.
  const corners = half.pieces.map((p) => p.from);
  const mirrored = corners.map((p) => move(centreMirror(cell), p));
  const [joinLow, footLow, topMiddle, joinHigh] = corners as [Point, Point, Point, Point];
  const outline = [joinLow, footLow, mirrored[0]!, mirrored[3]!, topMiddle, joinHigh];
  return regionOf([closedPath(outline.map((p, i) => line(p, outline[(i + 1) % outline.length]!)))]);
};

/** Everything nearer to a repeat's stitching than a distance. */
const nearSwag = (cell: Cell, distance: number): Region => {
  const swag = wholeSwag(cell);
  const out = rollFoot(swag, distance, { roundEnd: Math.PI });
  const back = rollFoot(reversePath(swag), distance, { roundEnd: Math.PI });
  if (!out.ok || !back.ok) return EMPTY_REGION;
  return regionOf([closedPath([...out.value.path.pieces, ...back.value.path.pieces])]);
};

/** A path of a region's frame, for the second half of a repeat: mirrored in the centre line. */
export const mirroredInCentre = (cell: Cell, path: Path): Path => movePath(path, centreMirror(cell));
