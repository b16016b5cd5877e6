/**
 * The areas of a design before anything is drawn in them: what a half swag's cell holds, and what lies inside
 * and outside a repeat's swag. In the frame of the repeat's first half.
 *
 * A cell ends at its join, halfway to its neighbour. Where the runs of a border meet at the corners without a
 * swag across them, the first and last repeats end at the mitre instead: seen from the inner seam it leans away
 * from them, and they reach out into the corner; from the outer seam it leans over them, and cuts them. So does
 * the line that parts them from a swag that stands across the corner, and beyond its point again the mitre.
 *
 * Where there is a gap, the lines square to the start line through start and stop part the swag from the ground.
 */

import {
  closedPath,
  compose,
  cross,
  distance,
  intersectRegions,
  line,
  type Motion,
  mirror,
  move,
  movePath,
  ORIGIN,
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
  shift,
  subtract,
} from '../geometry/index.ts';
import { partedAt } from './beside.ts';
import { cellLines, type Joins, joinsOf } from './cell-lines.ts';
import {
  type Cell,
  centreMirror,
  type Design,
  type Placed,
  type PlacedSide,
  sharesBefore,
} from './design.ts';
import type { Field } from './field.ts';
import { cornerSwag } from './fit.ts';

interface MirrorLine {
  readonly at: Point;
  /** To the start line, radians. */
  readonly angle: number;
}

/**
 * Where runs meet at their corners, or at a swag that stands there, their ends lean: how many repeats lie between a
 * cell and the end that it comes to, at its own start and at the far end of its other half; undefined for none.
 */
export interface MitredEnds {
  readonly own: number | undefined;
  readonly other: number | undefined;
  /** Of a corner's swag, where it is parted from the sides' last ones: in the middle of each side's own gap. */
  readonly joins?: Joins;
}

export const NO_MITRES: MitredEnds = { own: undefined, other: undefined };

/**
 * Which ends of its side a half's cell comes to: a mitre, or the line beside a swag across the corner. Leaning away they
 * are the outermost halves' own; leaning over the side they come to all cells that they reach below the far level.
 */
export const mitredEnds = (half: Placed, design: Design): MitredEnds => {
  const { field, sides } = design;
  const side = sides.find((s) => s.run.name === half.side);
  if (!side) return NO_MITRES;
  if (half.cell === cornerSwag(design)?.cell) return { ...NO_MITRES, joins: cornerJoins(half, side, sides) };
  const { corners, from } = field;
  const isTurned = corners === 'turn' && from === 'outer';
  if (corners !== 'meet' && corners !== 'across' && !isTurned) return NO_MITRES;
  const before = Number(half.repeat.slice(half.side.length + 1)) - 1;
  const reach = from === 'inner' ? 0 : reachOver(half.cell, design);
  // A turned corner's swag stands between, and may reach as far as the sides do.
  const comesTo = (between: number): number | undefined =>
    (between === 0 && !isTurned) || sharesBefore(side, between) < reach ? between : undefined;
  const [first, last] = [comesTo(before), comesTo(side.fit.repeats - 1 - before)];
  return half.half === 'first' ? { own: first, other: last } : { own: last, other: first };
};

/** A corner's first half ends the side that it lies on, and its second half begins the next. */
const cornerJoins = ({ half }: Placed, side: PlacedSide, sides: readonly PlacedSide[]): Joins => {
  const beyond = sides.find((s) =>
    half === 'first' ? s.run.name === side.run.next : s.run.next === side.run.name,
  );
  return { own: -side.fit.seat.gap / 2, other: -(beyond ?? side).fit.seat.gap / 2 };
};

/** How far along a side (mm from its outermost join) the lines that lean over it come below the far level. */
const reachOver = (cell: Cell, design: Design): number =>
  Math.max(
    ...endLines(cell, design, 0).map(
      ({ at, angle }) => at.x - cell.join + (design.field.far - at.y) / Math.tan(angle),
    ),
  );

/** A run without corners ends square. */
const mitreAngle = (field: Field): number => (field.corners === 'none' ? Math.PI / 2 : field.mitre);

/**
 * The mitre at the end of a cell's side, where runs meet or a swag turns the corner; where one stands across, the line
 * beside it and the mitre beyond. So many repeats lie `between` the cell and the end.
 */
const endLines = (cell: Cell, design: Design, between: number): readonly MirrorLine[] => {
  const { field } = design;
  const side = design.sides.find(({ cells }) => cells.includes(cell));
  const back = side && between > 0 ? sharesBefore(side, between) : 0;
  const join = { x: cell.join - back, y: field.marksAt };
  const mitre = Math.PI - mitreAngle(field);
  const corner = cornerSwag(design);
  if (!corner) return [{ at: join, angle: mitre }];
  const away = corner.fit.toCorner - 2 * cell.join;
  const beyond = { at: { x: -away - back, y: field.marksAt }, angle: mitre };
  return corner.kind === 'across' ? [{ at: join, angle: partedAt(field) ?? mitre }, beyond] : [beyond];
};

/** From the frame of the next side's first half over a mitre to that of the cell whose own start is there. */
export const overMitre = (cell: Cell, next: Cell, design: Design): Motion => {
  const [{ at, angle }] = endLines(cell, design, 0) as [MirrorLine];
  return compose(mirror(at, angle), shift(cell.join - next.join, 0));
};

/** The whole swag, in the frame of its first half: the half and its mirror image. */
export const wholeSwag = (cell: Cell): Path => {
  const second = reversePath(movePath(cell.path, centreMirror(cell)));
  return openPath([...cell.path.pieces, ...second.pieces]);
};

/** Between the stitching and the near level (round the corner, at a corner). */
export const swagArea = (cell: Cell, design: Design): Region => {
  const swag = wholeSwag(cell);
  const { start, middle, stop, along, near } = cellLines(cell, design);
  return outlined([
    line(ORIGIN, start(near)),
    ...along([start(near), middle(near), stop(near)], 'forward'),
    line(stop(near), pathEnd(swag)!),
    ...reversePath(swag).pieces,
  ]);
};

/** What a cell holds: from the join or the mitre to the centre mirror, from the near level to the far margin. */
export const cellArea = (cell: Cell, design: Design, ends: MitredEnds = NO_MITRES): Region => {
  const { join, middle, along, near, own } = cellLines(cell, design, ends.joins);
  const mitred = leansAway(design, ends.own);
  const begin = mitred ? onMitre(join(design.field.marksAt), design, near) : join(near);
  const end = mitred ? mitredEnd(join(near), design) : join(own);
  const outline = [
    ...along([begin, middle(near)], 'forward'),
    line(middle(near), middle(own)),
    ...along([middle(own), end], 'backward'),
    line(end, begin),
  ];
  return leansOver(design, ends) ? withinMitres(outline, cell, design, ends) : outlined(outline);
};

/** Both cells of a repeat but for its swag: between the stitching and the far margin. */
export const groundArea = (cell: Cell, design: Design, ends: MitredEnds = NO_MITRES): Region => {
  const swag = wholeSwag(cell);
  const lines = cellLines(cell, design, ends.joins);
  const { join, farJoin, middle, start, stop, along, near, far } = lines;
  const { first, last, apart } = boundsAt(cell, design, ends, near);
  const begins = apart.own ? first : ORIGIN;
  const comes = apart.other ? last : pathEnd(swag)!;
  const own = leansAway(design, ends.own) ? mitredEnd(join(near), design) : join(lines.own);
  const other = leansAway(design, ends.other)
    ? move(centreMirror(cell), mitredEnd(join(near), design))
    : farJoin(lines.other);
  const behindStop = apart.other
    ? [line(pathEnd(swag)!, stop(near)), ...along([stop(near), comes], 'forward')]
    : [];
  const behindStart = apart.own
    ? [...along([begins, start(near)], 'forward'), line(start(near), ORIGIN)]
    : [];
  const ground = outlined([
    ...swag.pieces,
    ...behindStop,
    line(comes, other),
    ...along([other, middle(far), own], 'backward'),
    line(own, begins),
    ...behindStart,
  ]);
  if (!leansOver(design, ends)) return ground;
  const whole = [join(near), farJoin(near), farJoin(far), join(far)];
  return intersectRegions(ground, withinMitres(linesThrough(whole), cell, design, ends));
};

/**
 * Where a repeat begins and ends at a level: on its joins, or on the mitres that lean away from it; and whether that
 * is not where its swag does. Without a gap a swag starts on its join, and has nothing behind it.
 */
const boundsAt = (
  cell: Cell,
  design: Design,
  ends: MitredEnds,
  level: number,
): {
  readonly first: Point;
  readonly last: Point;
  readonly apart: { readonly own: boolean; readonly other: boolean };
} => {
  const { join, farJoin } = cellLines(cell, design, ends.joins);
  const { marksAt } = design.field;
  const onLean = (): Point => onMitre(join(marksAt), design, level);
  const { own, other } = ends.joins ?? joinsOf(cell, design);
  const leans = (end: number | undefined): boolean => leansAway(design, end) && level !== marksAt;
  return {
    first: leansAway(design, ends.own) ? onLean() : join(level),
    last: leansAway(design, ends.other) ? move(centreMirror(cell), onLean()) : farJoin(level),
    apart: { own: own < 0 || leans(ends.own), other: other < 0 || leans(ends.other) },
  };
};

/**
 * Between a row's swag and that of the row beyond it, in the frame of the first: a band that runs on from swag to swag,
 * and where there is a gap, from start line to start line.
 */
export const betweenArea = (
  cell: Cell,
  design: Design,
  beyond: Cell,
  ends: MitredEnds = NO_MITRES,
): Region => {
  const at = levelBeyond(design);
  const swag = wholeSwag(cell);
  const next = movePath(wholeSwag(beyond), shift(0, at));
  const [below, above] = [boundsAt(cell, design, ends, 0), boundsAt(cell, design, ends, at)];
  // Two rows that start on one mark have nothing between their start lines.
  const behindStop = at > 0 ? [below.last, above.last] : [];
  const behindStart = at > 0 ? [above.first, below.first] : [];
  const through = (points: readonly Point[]): readonly Piece[] =>
    points.slice(1).map((p, i) => line(points[i]!, p));
  const area = outlined([
    ...swag.pieces,
    ...through([pathEnd(swag)!, ...behindStop, pathEnd(next)!]),
    ...reversePath(next).pieces,
    ...through([pathStart(next)!, ...behindStart, ORIGIN]),
  ]);
  if (!leansOver(design, ends)) return area;
  const { join, farJoin, near, far } = cellLines(cell, design);
  const whole = [join(near), farJoin(near), farJoin(far), join(far)];
  return intersectRegions(area, withinMitres(linesThrough(whole), cell, design, ends));
};

/** mm from a row's start line to that of the row beyond it. */
const levelBeyond = ({ field, beyond }: Design): number =>
  beyond ? beyond.field.startMargin - field.startMargin : 0;

/** The cell of the row beyond on whose marks another lies. */
export const cellBeyond = (cell: Cell, { cells, beyond }: Design): Cell | undefined =>
  beyond?.cells[cells.indexOf(cell)];

/**
 * The cell's two sides, of the stitching and of the ray through its start where there is a gap: there a line at a
 * distance goes round the start, and is an inward channel's before the ray and an outward one's beyond it.
 */
export const cellSides = (
  cell: Cell,
  design: Design,
): { readonly inward: Region; readonly outward: Region } => {
  const { join, middle, start, along, near, far } = cellLines(cell, design);
  return {
    inward: outlined([
      line(ORIGIN, start(near)),
      ...along([start(near), middle(near)], 'forward'),
      line(middle(near), cell.crown),
      ...reversePath(cell.path).pieces,
    ]),
    outward: outlined([
      ...cell.path.pieces,
      line(cell.crown, middle(far)),
      ...along([middle(far), join(far)], 'backward'),
      line(join(far), join(near)),
      ...along([join(near), start(near)], 'forward'),
      line(start(near), ORIGIN),
    ]),
  };
};

/** Seen from the inner seam a mitre leans away from its cell, from the outer one over it. */
const leansAway = ({ field }: Design, end: number | undefined): boolean =>
  end !== undefined && field.from === 'inner';
const leansOver = ({ field }: Design, ends: MitredEnds): boolean =>
  field.from === 'outer' && (ends.own !== undefined || ends.other !== undefined);

/** The place at a level of a mitre that leans away from its cell, and passes it at a point. */
const onMitre = ({ x, y }: Point, { field }: Design, level: number): Point => ({
  x: x - (level - y) / Math.tan(mitreAngle(field)),
  y: level,
});

/** Its far end, of a mitre that passes the cell's join where marks are measured. */
const mitredEnd = ({ x }: Point, design: Design): Point =>
  onMitre({ x, y: design.field.marksAt }, design, design.field.room);

/** What mitres that lean over a cell leave of a convex polygon. */
const withinMitres = (outline: readonly Piece[], cell: Cell, design: Design, ends: MitredEnds): Region => {
  let polygon = outline.map((p) => p.from);
  const over = centreMirror(cell);
  const cut = (between: number | undefined, seen: (p: Point) => Point): void => {
    for (const { at, angle } of between === undefined ? [] : endLines(cell, design, between)) {
      const along = polar(angle);
      polygon = cutPolygon(polygon, (p) => cross(subtract(seen(p), at), along));
    }
  };
  cut(ends.own, (p) => p);
  cut(ends.other, (p) => move(over, p));
  return outlined(linesThrough(polygon));
};

/** The part of a convex polygon on which a linear measure is not negative (Sutherland and Hodgman, 1974). */
const cutPolygon = (polygon: readonly Point[], measure: (p: Point) => number): Point[] =>
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

/** Pieces without length, where two corners of an outline fall on one place, are no part of it. */
const outlined = (pieces: readonly Piece[]): Region =>
  regionOf([closedPath(pieces.filter((p) => !(distance(p.from, p.to) <= SPECK)))]);

/** Corners of an outline nearer than this (mm) are one. */
export const SPECK = 1e-9;
