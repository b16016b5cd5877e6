/**
 * Closed areas with holes: what a fill is asked to fill.
 *
 * Outer loops run counterclockwise and holes clockwise, so that the area lies to the left of every loop.
 * Loops do not cross themselves or one another; two areas that only touch may share a point.
 */

import { type Box, EMPTY_BOX, joinBoxes } from './box.ts';
import { type BoxTree, boxTreeOf, eachBoxed } from './box-tree.ts';
import { crossings, TOUCH } from './crossing.ts';
import type { Motion } from './motion.ts';
import { type Nearness, nearnessOf } from './nearness.ts';
import { movePath, openPath, type Path, pathBox, pathStart, reversePath, signedArea } from './path.ts';
import { type Arc, type Piece, pieceAt, pieceBox, pieceLength, trimPiece } from './piece.ts';
import { cross, distance, type Point, subtract } from './point.ts';

export interface Region {
  readonly loops: readonly Path[];
}

export const EMPTY_REGION: Region = { loops: [] };

/**
 * A region from closed paths in any order and direction: a loop inside an odd number of others is a hole.
 * Loops without area are left out.
 */
export const regionOf = (loops: readonly Path[]): Region => {
  const kept = loops
    .map((loop) => ({ pieces: loop.pieces, closed: true }))
    .filter((loop) => Math.abs(signedArea(loop)) > LEAST_AREA);
  return {
    loops: kept.map((loop, i) => {
      const inside = kept.filter((other, k) => k !== i && windsRound([other], innerPoint(loop)) !== 0).length;
      const outer = inside % 2 === 0;
      return signedArea(loop) > 0 === outer ? loop : reversePath(loop);
    }),
  };
};

/** Loops of less area (mm²) are rounding left over from a boolean. */
const LEAST_AREA = 1e-6;

/** A point on the loop itself serves to place it among loops that it does not cross. */
const innerPoint = (loop: Path): Point => pieceAt(loop.pieces[0]!, 0.5);

export const isEmptyRegion = (region: Region): boolean => region.loops.length === 0;

/** The area in mm², exact for lines and arcs. */
export const regionArea = (region: Region): number => region.loops.reduce((sum, l) => sum + signedArea(l), 0);

export const regionBox = (region: Region): Box =>
  region.loops.reduce<Box>((box, loop) => joinBoxes(box, pathBox(loop)), EMPTY_BOX);

export const regionPieces = (region: Region): Piece[] => region.loops.flatMap((loop) => [...loop.pieces]);

/** A region carried by a motion; turned over, its loops are turned round, so that the area stays on their left. */
export const moveRegion = ({ loops }: Region, motion: Motion): Region => ({
  loops: loops.map((loop) => {
    const moved = movePath(loop, motion);
    return motion.flip ? reversePath(moved) : moved;
  }),
});

/** The parts of a region that do not hang together: each outer loop with its own holes. */
export const regionParts = (region: Region): Region[] => {
  const outers = region.loops.filter((l) => signedArea(l) > 0);
  const holes = region.loops.filter((l) => !(signedArea(l) > 0));
  const parts = outers.map((outer) => ({ outer, loops: [outer] }));
  for (const hole of holes) {
    const at = innerPoint(hole);
    const around = parts.filter((p) => windsRound([p.outer], at) !== 0);
    // With islands in holes several outers lie around; the smallest is the one the hole was cut from.
    around.sort((a, b) => signedArea(a.outer) - signedArea(b.outer));
    around[0]?.loops.push(hole);
  }
  return parts.map(({ loops }) => ({ loops }));
};

/**
 * How many times closed paths go round a point. The chords are counted by the crossing rule of polygons, and
 * each arc adds one where the point lies between chord and arc: exact, and without one angle. A point on a
 * chord is taken as if it lay a hair to the right and above, in both counts, so that they always agree.
 */
export const windsRound = (loops: readonly Path[], p: Point): number => {
  let winding = 0;
  for (const loop of loops) for (const piece of loop.pieces) winding += windOf(piece, p);
  return winding;
};

const windOf = (piece: Piece, p: Point): number => {
  const { from, to } = piece;
  let winding = 0;
  if (from.y <= p.y !== to.y <= p.y) {
    const side = sideOf(from, to, p);
    if (to.y > from.y && side > 0) winding++;
    else if (to.y < from.y && side < 0) winding--;
  }
  if (piece.kind === 'arc' && isAboutTheArc(piece, distance(piece.center, p))) {
    const turnsLeft = piece.sweep > 0;
    const comesRound = from.x === to.x && from.y === to.y;
    // A speck of an arc may end on the digit that it starts from, and goes round nothing.
    if (comesRound) winding += Math.abs(piece.sweep) < Math.PI ? 0 : turnsLeft ? 1 : -1;
    else if (sideOf(from, to, p) < 0 === turnsLeft) winding += turnsLeft ? 1 : -1;
  }
  return winding;
};

/**
 * Whether a point this far from the centre may lie between an arc and its chord: within the circle, and no farther in than
 * the chord's middle, r·cos(sweep/2) ≥ r·(1 − sweep²/8). The chord of a speck has no direction to tell that by.
 */
const isAboutTheArc = ({ radius, sweep }: Arc, away: number): boolean =>
  away < radius && away > radius * (1 - (sweep * sweep) / 8 - NEAR_ARC);

/** Far more than rounding, as a share of the radius. */
const NEAR_ARC = 1e-9;

/** Positive when p, a hair to the right and above, lies left of from→to. */
const sideOf = (from: Point, to: Point, p: Point): number => {
  const chord = subtract(to, from);
  const side = cross(chord, subtract(p, from));
  if (side !== 0) return side;
  return chord.y !== 0 ? -chord.y : chord.x;
};

/** Whether a point lies inside. For points on the boundary either answer may come. */
export const containsPoint = (region: Region, p: Point): boolean => windsRound(region.loops, p) !== 0;

/** A region made ready for many questions; the distance to the empty one's boundary is Infinity. */
export interface RegionProbe extends Nearness {
  readonly contains: (p: Point) => boolean;
  /** Distance to the boundary, negative outside. */
  readonly depth: (p: Point) => number;
}

export const probeRegion = (region: Region): RegionProbe => probed(regionPieces(region)).probe;

const probed = (pieces: readonly Piece[]): { readonly probe: RegionProbe; readonly tree: BoxTree } => {
  const tree = boxTreeOf(pieces);
  const near = nearnessOf(pieces, tree);
  // A piece counts only for points beside it: no higher and no lower, nor farther right than it reaches.
  const contains = ({ x, y }: Point): boolean => {
    let winding = 0;
    eachBoxed(tree, x - TOUCH, y - TOUCH, Number.POSITIVE_INFINITY, y + TOUCH, (i) => {
      winding += windOf(pieces[i]!, { x, y });
    });
    return winding !== 0;
  };
  const depth = (p: Point): number => (contains(p) ? near.distance(p) : -near.distance(p));
  return { probe: { ...near, contains, depth }, tree };
};

/**
 * The stretches of a path inside a region, in the path's order, cut where the path crosses the boundary (in
 * closed form). Stretches along the boundary itself count as inside. A closed path that lies inside stays
 * closed; one that is cut starts after a cut, so that no stretch is broken at its old start.
 *
 * What does not change from one path to the next is worked out once. What runs along the boundary may also be left
 * out, stretch by stretch.
 */
export const clipperOf = (
  region: Region,
  alongEdge: 'kept' | 'left out' = 'kept',
): ((path: Path) => Path[]) => {
  const pieces = regionPieces(region);
  const {
    probe: { contains, nearer },
    tree,
  } = probed(pieces);
  const isIn =
    alongEdge === 'kept'
      ? (p: Point): boolean => contains(p) || nearer(p, ALONG)
      : (p: Point): boolean => contains(p) && !nearer(p, BESIDE);
  return (path) => clipped(path, pieces, tree, isIn);
};

const clipped = (
  path: Path,
  boundary: readonly Piece[],
  tree: BoxTree,
  isInside: (p: Point) => boolean,
): Path[] => {
  const runs: Piece[][] = [];
  let current: Piece[] | undefined;
  let wasCut = false;
  for (const piece of path.pieces) {
    const box = pieceBox(piece);
    const cuts: number[] = [];
    eachBoxed(tree, box.minX - TOUCH, box.minY - TOUCH, box.maxX + TOUCH, box.maxY + TOUCH, (i) => {
      for (const c of crossings(piece, boundary[i]!)) cuts.push(c.a);
    });
    const places = apart(cuts, TOUCH / pieceLength(piece));
    // Where the stretch that is being followed began on this piece; cuts that change nothing (a boundary's vertex
    // touched from inside) do not end it.
    let from: number | undefined;
    for (let i = 1; i < places.length; i++) {
      const [a, b] = [places[i - 1]!, places[i]!];
      const isIn = isInside(pieceAt(piece, (a + b) / 2));
      if (isIn) from ??= a;
      else wasCut = true;
      if (from !== undefined && (!isIn || i === places.length - 1)) {
        if (!current) {
          current = [];
          runs.push(current);
        }
        const to = isIn ? b : a;
        current.push(from === 0 && to === 1 ? piece : trimPiece(piece, from, to));
        from = undefined;
      }
      if (!isIn) current = undefined;
    }
  }
  if (!path.closed) return runs.map(openPath);
  if (!wasCut) return path.pieces.length > 0 && runs.length > 0 ? [path] : [];
  const [first, last] = [runs[0], runs.at(-1)];
  if (first && last && first !== last && current === last && first[0]!.from === pathStart(path)) {
    runs[0] = [...last, ...first];
    runs.pop();
  }
  return runs.map(openPath);
};

/** A point this near (mm) to the boundary runs along it: midpoints of real stretches inside lie deeper. */
const ALONG = 1e-7;
/** And this near (mm) it would be stitched over the boundary. */
const BESIDE = 1e-6;

/** Cuts as places that are apart: one for cuts within rounding of one another (a share), and none beside an end. */
const apart = (cuts: readonly number[], rounding: number): readonly number[] => {
  const places = [0];
  for (const cut of cuts.toSorted((a, b) => a - b))
    if (cut - places.at(-1)! > rounding && 1 - cut > rounding) places.push(cut);
  places.push(1);
  return places;
};
