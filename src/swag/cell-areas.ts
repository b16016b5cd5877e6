/**
 * The areas of a design before anything is drawn in them: what a half swag's cell holds, and what lies inside
 * and outside a repeat's swag. In the frame of the repeat's first half.
 *
 * A cell ends at its join, halfway to its neighbour. Where the runs of a border meet at the corners without a
 * swag across them, the first and last repeats end at the mitre instead: seen from the inner seam it leans away
 * from them, and they reach out into the corner; from the outer seam it leans over them, and cuts them.
 */

import {
  closedPath,
  cross,
  intersectRegions,
  line,
  mirror,
  move,
  movePath,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathEnd,
  pathStart,
  polar,
  type Region,
  regionOf,
  reversePath,
  subtract,
} from '../geometry/index.ts';
import type { Cell, Design, Placed } from './design.ts';
import { overMirror, ringCellArea, ringGroundArea, ringSwagArea } from './ring-areas.ts';

export interface MirrorLine {
  readonly at: Point;
  /** To the start line, radians. */
  readonly angle: number;
}

/** Where runs meet at their corners, the first and the last repeat end at a mitre. */
export interface MitredEnds {
  readonly own: boolean;
  readonly other: boolean;
}

export const NO_MITRES: MitredEnds = { own: false, other: false };

/** Where the runs of a border meet at its corners, a side's outermost halves end at a mitre. */
export const mitredEnds = (half: Placed, { field, sides }: Design): MitredEnds => {
  const side = sides.find((s) => s.run.name === half.side);
  if (field.corners !== 'meet' || !side) return NO_MITRES;
  const first = half.repeat === `${half.side} 1`;
  const last = half.repeat === `${half.side} ${side.fit.repeats}`;
  return half.half === 'first' ? { own: first, other: last } : { own: last, other: first };
};

/** The mitre at a cell's own start, where runs meet. */
export const mitreOf = (cell: Cell, { field }: Design): MirrorLine => ({
  at: { x: cell.join, y: 0 },
  angle: Math.PI - field.mitre,
});

/**
 * Where a cell ends beyond its start: halfway to its neighbour. A corner's swags stand as far from their
 * neighbours as those stand from one another, and where sides differ, at least so far.
 */
export const joinOf = (cell: Cell, { corner, sides }: Design): number =>
  cell === corner?.cell ? -Math.min(...sides.map((s) => s.fit.seat.gap)) / 2 : cell.join;

/** The mirror in a cell's centre line, in the cell's frame. */
export const centreMirror = (cell: Cell) => mirror(cell.crown, cell.mirror);

/** The whole swag, in the frame of its first half: the half and its mirror image. */
export const wholeSwag = (cell: Cell): Path => {
  const second = reversePath(movePath(cell.path, centreMirror(cell)));
  return openPath([...cell.path.pieces, ...second.pieces]);
};

/** Where the centre mirror leaves the start line: at a corner, where the start lines of its two sides meet. */
export const footOfMirror = ({ crown: { x, y }, mirror: angle }: Cell): Point => ({
  x: x - (y * Math.cos(angle)) / Math.sin(angle),
  y: 0,
});

/** Where the centre mirror meets the far margin. */
const headOfMirror = (cell: Cell, { field: { room } }: Design): Point => {
  const { x, y } = cell.crown;
  return { x: x + ((room - y) * Math.cos(cell.mirror)) / Math.sin(cell.mirror), y: room };
};

/** Between the stitching and the start line (round the corner, at a corner). */
export const swagArea = (cell: Cell): Region => {
  const swag = wholeSwag(cell);
  if (cell.ring) return ringSwagArea(cell, cell.ring, swag, overMirror(centreMirror(cell)));
  const foot = footOfMirror(cell);
  return outlined([line(pathStart(swag)!, foot), line(foot, pathEnd(swag)!), ...reversePath(swag).pieces]);
};

/** What a cell holds: from the join or the mitre to the centre mirror, from the start line to the far margin. */
export const cellArea = (
  cell: Cell,
  design: Design,
  ends: MitredEnds = NO_MITRES,
  line?: MirrorLine,
): Region => {
  if (cell.ring) return ringCellArea(cell, cell.ring);
  const join = line?.at.x ?? joinOf(cell, design);
  const corners = [
    { x: join, y: 0 },
    footOfMirror(cell),
    headOfMirror(cell, design),
    startEdge(design, join, ends.own),
  ];
  return outlined(linesThrough(withinMitres(corners, cell, design, ends)));
};

/** Both cells of a repeat but for its swag: between the stitching and the far margin. */
export const groundArea = (cell: Cell, design: Design, ends: MitredEnds = NO_MITRES): Region => {
  const swag = wholeSwag(cell);
  if (cell.ring) return ringGroundArea(cell, cell.ring, swag, overMirror(centreMirror(cell)));
  const join = joinOf(cell, design);
  const over = (p: Point): Point => move(centreMirror(cell), p);
  const low = { x: join, y: 0 };
  const corners = [
    pathEnd(swag)!,
    over(low),
    over(startEdge(design, join, ends.other)),
    headOfMirror(cell, design),
    startEdge(design, join, ends.own),
    low,
    pathStart(swag)!,
  ];
  const ground = outlined([...swag.pieces, ...corners.slice(1).map((p, i) => line(corners[i]!, p))]);
  if (design.field.from === 'inner' || !(ends.own || ends.other)) return ground;
  const whole = [low, over(low), over({ x: join, y: design.field.room }), { x: join, y: design.field.room }];
  return intersectRegions(ground, outlined(linesThrough(withinMitres(whole, cell, design, ends))));
};

/** The end of a cell's edge at the far margin. Seen from the inner seam a mitre leans away from the cell. */
const startEdge = ({ field }: Design, join: number, mitred: boolean): Point => ({
  x: mitred && field.from === 'inner' ? join - field.room / Math.tan(field.mitre) : join,
  y: field.room,
});

/** Seen from the outer seam mitres lean over the cells: what is left of a convex polygon between them. */
const withinMitres = (
  polygon: readonly Point[],
  cell: Cell,
  design: Design,
  ends: MitredEnds,
): readonly Point[] => {
  if (design.field.from === 'inner') return polygon;
  const { at, angle } = mitreOf(cell, design);
  const along = polar(angle);
  const beside = (p: Point): number => cross(subtract(p, at), along);
  const own = ends.own ? cutPolygon(polygon, beside) : polygon;
  return ends.other ? cutPolygon(own, (p) => beside(move(centreMirror(cell), p))) : own;
};

/** The part of a convex polygon on which a linear measure is not negative (Sutherland and Hodgman, 1974). */
const cutPolygon = (polygon: readonly Point[], measure: (p: Point) => number): readonly Point[] =>
  polygon.flatMap((p, i) => {
    const before = polygon.at(i - 1)!;
    const [a, b] = [measure(before), measure(p)];
    const t = a / (a - b);
    const crossing = { x: before.x + t * (p.x - before.x), y: before.y + t * (p.y - before.y) };
    if (b >= 0) return a < 0 ? [crossing, p] : [p];
    return a > 0 ? [crossing] : [];
  });

const linesThrough = (corners: readonly Point[]): readonly Piece[] =>
  corners.map((p, i) => line(p, corners[(i + 1) % corners.length]!));

/** Lines without length, where two corners of an outline fall on one place, are no part of it. */
const outlined = (pieces: readonly Piece[]): Region =>
  regionOf([
    closedPath(
      pieces.filter((p) => p.kind === 'arc' || !(Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y) <= SPECK)),
    ),
  ]);

/** Corners of an outline nearer than this (mm) are one. */
export const SPECK = 1e-9;
