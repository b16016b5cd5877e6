/**
 * What one swag of a round frame bounds, in the frame of its first half: the area that it encloses with the circle
 * that it leaves from, the ground on its other side, and its cell.
 *
 * An outward frame leaves the clear circle round the motif: between that and the stitching lies the swag, and the
 * ground reaches from the stitching to the frame's limit. An inward frame leaves the circle through its farthest
 * stitching or inward channel, and its ground reaches to the clear circle. Where there is a gap, the rays through
 * start and stop part the two.
 */

import {
  angleOf,
  arcBetween,
  closedPath,
  distance,
  line,
  move,
  ORIGIN,
  type Path,
  PIVOT_LIMIT,
  type Piece,
  type Point,
  pathEnd,
  polar,
  type Region,
  regionOf,
  reversePath,
  subtract,
} from '../geometry/index.ts';
import type { Cell } from './design.ts';
import type { RingFit } from './ring.ts';

/** The radius (mm) of the circle that the swags leave from: inward channels have room between them and it. */
export const baseRadius = ({ ring, farthest }: RingFit): number =>
  ring.from === 'inner' ? ring.clear : farthest + ring.inward;

/** The radius (mm) at which the ground ends; without a limit, beyond all channels. */
export const groundRadius = ({ ring, farthest }: RingFit): number => {
  if (ring.from === 'outer') return ring.clear;
  return Number.isFinite(ring.within) ? ring.within : farthest + PIVOT_LIMIT * ring.outward + BEYOND;
};

/** Some cloth beyond the outermost channel, mm. */
const BEYOND = 1;

/** Whether the ground ends anywhere, so that it can be filled. */
export const groundIsBounded = ({ ring }: RingFit): boolean =>
  ring.from === 'outer' || Number.isFinite(ring.within);

interface Rays {
  readonly centre: Point;
  /** Whether going from start to stop turns counterclockwise round the centre. */
  readonly counterclockwise: boolean;
  /** On the join mirror, on its other side, on the centre mirror, on the rays of start and stop: `radius` mm out. */
  readonly join: (radius: number) => Point;
  readonly farJoin: (radius: number) => Point;
  readonly middle: (radius: number) => Point;
  readonly start: (radius: number) => Point;
  readonly stop: (radius: number) => Point;
}

const raysOf = (cell: Cell, { centre, ring }: RingFit, over: (p: Point) => Point): Rays => {
  const ray = (angle: number) => (radius: number) => {
    const p = polar(angle, radius);
    return { x: centre.x + p.x, y: centre.y + p.y };
  };
  // The join mirror stands upright through the centre, towards the start.
  const join = (radius: number): Point => ({
    x: centre.x,
    y: centre.y + (ring.from === 'inner' ? radius : -radius),
  });
  const start = ray(angleOf(subtract(ORIGIN, centre)));
  return {
    centre,
    counterclockwise: ring.from === 'outer',
    join,
    farJoin: (radius) => over(join(radius)),
    middle: ray(angleOf(subtract(cell.crown, centre))),
    start,
    stop: (radius) => over(start(radius)),
  };
};

/** `over` is the mirror in the cell's centre line, `swag` the whole swag. */
export const ringSwagArea = (cell: Cell, fit: RingFit, swag: Path, over: (p: Point) => Point): Region => {
  const rays = raysOf(cell, fit, over);
  const base = baseRadius(fit);
  const [a, b] = [rays.start(base), rays.stop(base)];
  return outlined([
    line(ORIGIN, a),
    arcBetween(rays.centre, a, b, rays.counterclockwise),
    line(b, pathEnd(swag)!),
    ...reversePath(swag).pieces,
  ]);
};

/** The ground beside a whole swag, from join to join. */
export const ringGroundArea = (cell: Cell, fit: RingFit, swag: Path, over: (p: Point) => Point): Region => {
  const rays = raysOf(cell, fit, over);
  const base = baseRadius(fit);
  const far = groundRadius(fit);
  const { centre, counterclockwise } = rays;
  const round = (from: Point, to: Point, forward: boolean): Piece =>
    arcBetween(centre, from, to, forward === counterclockwise);
  // Without a gap the swag starts on its join, and has nothing behind it.
  const joins = cell.join < 0;
  const stop = pathEnd(swag)!;
  const [nearJoin, farJoin] = joins ? [rays.join(base), rays.farJoin(base)] : [ORIGIN, stop];
  const behindStop = joins ? [line(stop, rays.stop(base)), round(rays.stop(base), farJoin, true)] : [];
  const behindStart = joins ? [round(nearJoin, rays.start(base), true), line(rays.start(base), ORIGIN)] : [];
  return outlined([
    ...swag.pieces,
    ...behindStop,
    line(farJoin, rays.farJoin(far)),
    round(rays.farJoin(far), rays.join(far), false),
    line(rays.join(far), nearJoin),
    ...behindStart,
  ]);
};

/** What a cell holds: from its join to its centre mirror, from the clear circle to the frame's edge. */
export const ringCellArea = (cell: Cell, fit: RingFit): Region => {
  const rays = raysOf(cell, fit, (p) => p);
  const near = baseRadius(fit);
  const far = groundRadius(fit);
  return outlined([
    line(rays.join(near), rays.join(far)),
    arcBetween(rays.centre, rays.join(far), rays.middle(far), rays.counterclockwise),
    line(rays.middle(far), rays.middle(near)),
    arcBetween(rays.centre, rays.middle(near), rays.join(near), !rays.counterclockwise),
  ]);
};

/**
 * The cell's two sides, of the stitching and of the ray through its start where there is a gap: there a line at a
 * distance goes round the start, and is an inward channel's before the ray and an outward one's beyond it.
 */
export const ringCellSides = (
  cell: Cell,
  fit: RingFit,
): { readonly inward: Region; readonly outward: Region } => {
  const rays = raysOf(cell, fit, (p) => p);
  const near = baseRadius(fit);
  const far = groundRadius(fit);
  const { centre, counterclockwise } = rays;
  return {
    inward: outlined([
      line(ORIGIN, rays.start(near)),
      arcBetween(centre, rays.start(near), rays.middle(near), counterclockwise),
      line(rays.middle(near), cell.crown),
      ...reversePath(cell.path).pieces,
    ]),
    outward: outlined([
      ...cell.path.pieces,
      line(cell.crown, rays.middle(far)),
      arcBetween(centre, rays.middle(far), rays.join(far), !counterclockwise),
      line(rays.join(far), rays.join(near)),
      arcBetween(centre, rays.join(near), rays.start(near), counterclockwise),
      line(rays.start(near), ORIGIN),
    ]),
  };
};

/** Pieces without length, where two corners of an outline fall on one place, are no part of it. */
const outlined = (pieces: readonly Piece[]): Region =>
  regionOf([closedPath(pieces.filter((p) => !(distance(p.from, p.to) <= SPECK)))]);

/** Corners of an outline nearer than this (mm) are one. */
const SPECK = 1e-9;

/** The mirror in a cell's centre line as a function of points. */
export const overMirror = (motion: Parameters<typeof move>[0]) => (p: Point) => move(motion, p);
