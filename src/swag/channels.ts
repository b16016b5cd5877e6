/**
 * Channels: echo lines at set distances outward and inward of the stitching, clipped to their cell.
 *
 * A run of swags is one mirror-symmetric figure, and inside a cell the distance to that figure is the distance
 * to the cell's own half. So a channel is the parallel of the half swag, rolled round its ends like the foot
 * round a template, and cut at the mirrors, the start line and the far margin: exact where it is not cut.
 * The half is taken together with its mirror image in the centre line, so that a crown's point is rounded
 * (or trimmed) as the corner that it is.
 */

import {
  clipPathToRegion,
  closedPath,
  mirror,
  movePath,
  openPath,
  type Path,
  pathLength,
  polyline,
  type Region,
  regionOf,
  reversePath,
  rollFoot,
} from '../geometry/index.ts';
import type { Channels } from '../plan/index.ts';
import type { Cell, Design } from './design.ts';

export interface Channel {
  readonly side: 'outward' | 'inward';
  /** Counted from 1, away from the stitching. */
  readonly number: number;
  /** mm from the line before it. */
  readonly width: number;
  /** mm from the stitching. */
  readonly distance: number;
  /** Its line in the cell's frame, from the start line to the centre mirror; in several parts where it is cut, none where nothing is left. */
  readonly paths: readonly Path[];
}

/** All channels of a cell, outward ones first. */
export const channelsOf = (cell: Cell, design: Design, channels: Channels): readonly Channel[] => {
  const region = cellRegion(cell, design);
  return (['outward', 'inward'] as const).flatMap((side) => {
    let reach = 0;
    return channels[side].map((width, i): Channel => {
      reach += width;
      const line = parallel(cell, side, reach);
      const paths = line ? clipPathToRegion(line, region).filter((p) => pathLength(p) > CRUMB) : [];
      return { side, number: i + 1, width, distance: reach, paths };
    });
  });
};

/** Shorter scraps of a channel (mm) are no line to stitch, only where it touches its own boundary. */
const CRUMB = 0.05;

/** The mirror in a cell's centre line, in the cell's frame. */
export const centreMirror = (cell: Cell) => mirror(cell.crown, cell.mirror);

/** The whole swag, in the frame of its first half: the half and its mirror image. */
export const wholeSwag = (cell: Cell): Path => {
  const second = reversePath(movePath(cell.path, centreMirror(cell)));
  return openPath([...cell.path.pieces, ...second.pieces]);
};

/**
 * The half of the parallel that lies in the cell, from beyond the start (rolled round it) to beyond the centre
 * mirror. Only the end of a rolled path can be rolled round, so each side is taken from the half that ends:
 * outward it is the second half, mirrored back.
 */
const parallel = (cell: Cell, side: Channel['side'], distance: number): Path | undefined => {
  const swag = wholeSwag(cell);
  const rolled = rollFoot(side === 'outward' ? swag : reversePath(swag), distance, { roundEnd: Math.PI });
  if (!rolled.ok) return undefined;
  return side === 'outward'
    ? reversePath(movePath(rolled.value.path, centreMirror(cell)))
    : rolled.value.path;
};

/** What a cell holds: from the join mirror to the centre mirror, from the start line to the far margin. */
export const cellRegion = (cell: Cell, { field }: Design): Region => {
  const top = field.room;
  const { x, y } = cell.crown;
  // The centre mirror's place on the start line and at the far margin; upright on a side, leaning at a corner.
  const slope = Math.cos(cell.mirror) / Math.sin(cell.mirror);
  const corners = [
    { x: cell.join, y: 0 },
    { x: x - y * slope, y: 0 },
    { x: x + (top - y) * slope, y: top },
    { x: cell.join, y: top },
  ];
  return regionOf([closedPath(polyline(corners, true).pieces)]);
};
