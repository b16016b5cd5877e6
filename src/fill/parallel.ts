/** Families of parallel lines across a region, cut exactly at its edge. */

import {
  boxHeight,
  boxWidth,
  clipperOf,
  type Path,
  type Point,
  polyline,
  type Region,
  regionBox,
} from '../geometry/index.ts';
import { type FillContext, MOST_ELEMENTS } from './fill.ts';

/** A line that a family is counted from: the region's own middle, so that both halves look alike. */
export const anchorOf = (region: Region, context: FillContext | undefined): Point => {
  if (context?.axis) return context.axis.at;
  const box = regionBox(region);
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
};

/**
 * The lines at `angle` whose distances from the one through `anchor` are given by `offsets` (mm, to the
 * left), cut to the region. Every other line runs backwards, so that the way from one to the next is short.
 */
export const parallelLines = (
  region: Region,
  anchor: Point,
  angle: number,
  offsets: readonly number[],
): Path[] => {
  const box = regionBox(region);
  const reach =
    boxWidth(box) + boxHeight(box) + Math.abs(anchor.x - box.minX) + Math.abs(anchor.y - box.minY);
  const u = { x: Math.cos(angle), y: Math.sin(angle) };
  // What falls on a straight stretch of the edge would only be stitched over it.
  const clip = clipperOf(region, 'left out');
  return offsets.flatMap((d, i) => {
    const at = { x: anchor.x - d * u.y, y: anchor.y + d * u.x };
    const s = i % 2 === 0 ? reach : -reach;
    return clip(
      polyline([
        { x: at.x - s * u.x, y: at.y - s * u.y },
        { x: at.x + s * u.x, y: at.y + s * u.y },
      ]),
    );
  });
};

/** How far the region reaches to either side of the line through `anchor` at `angle`: [least, most] in mm. */
export const reachAcross = (region: Region, anchor: Point, angle: number): [number, number] => {
  const box = regionBox(region);
  const n = { x: -Math.sin(angle), y: Math.cos(angle) };
  const across = [box.minX, box.maxX].flatMap((x) =>
    [box.minY, box.maxY].map((y) => (x - anchor.x) * n.x + (y - anchor.y) * n.y),
  );
  return [Math.min(...across), Math.max(...across)];
};

/** Even offsets through 0, or undefined when there would be too many. */
export const evenOffsets = (
  [least, most]: readonly [number, number],
  spacing: number,
): number[] | undefined => {
  const [first, last] = [Math.ceil(least / spacing), Math.floor(most / spacing)];
  if (!(last - first < MOST_ELEMENTS)) return undefined;
  const offsets: number[] = [];
  for (let k = first; k <= last; k++) offsets.push(k * spacing);
  return offsets;
};
