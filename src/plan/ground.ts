/**
 * The cloth that a part takes on its quilt: a rectangle or a disc, less what lies inside a border or a frame, and less the
 * corner squares that a border leaves free. For telling whether parts lie on one another before anything is searched for.
 */

import { dot, type Point, polar, subtract } from '../geometry/index.ts';
import type { Border, Layout, Plan } from './plan.ts';

/** All points at most `radius` (mm) from the hull of `corners`: a rectangle has radius 0, a disc one corner. */
interface Shape {
  readonly corners: readonly Point[];
  readonly radius: number;
}

export interface Ground {
  readonly outer: Shape;
  /** Where other parts may lie: what a border or a frame lies round, and each corner square that is free. */
  readonly holes: readonly Shape[];
  /** Its middle, and how far (mm) it reaches from there at the most. */
  readonly at: Point;
  readonly reach: number;
}

/**
 * The grounds of a part's copies, on the quilt, its middle at the origin. `across` is how wide a round frame comes out,
 * mm: without it, and without a limit, only what is kept clear is known to be taken.
 */
export const groundsOf = ({ layout, part, fills }: Plan, across?: number): readonly Ground[] => {
  const { outer, holes } = shapesOf(layout, across, fills.corner !== undefined);
  const turn = part?.turn ?? 0;
  return (part?.places ?? [{ x: 0, y: 0 }]).map((at) => ({
    outer: laid(outer, at, turn),
    holes: holes.map((hole) => laid(hole, at, turn)),
    at,
    reach: Math.max(...outer.corners.map((p) => Math.hypot(p.x, p.y))) + outer.radius,
  }));
};

const shapesOf = (
  layout: Layout,
  across: number | undefined,
  fillsCorners: boolean,
): Pick<Ground, 'outer' | 'holes'> => {
  switch (layout.kind) {
    case 'strip':
      return { outer: rectangle(layout.length, layout.width), holes: [] };
    case 'border': {
      const { wide, high } = quiltOf(layout.inner);
      const outer = rectangle(wide + 2 * layout.width, high + 2 * layout.width);
      return {
        outer,
        holes: [rectangle(wide, high), ...(fillsCorners ? [] : freeSquares(layout))],
      };
    }
    case 'frame': {
      const { around, clearance, within } = layout;
      return { outer: disc((within ?? across ?? around + 2 * clearance) / 2), holes: [disc(around / 2)] };
    }
    default:
      return layout satisfies never;
  }
};

/** The middles of the corner squares that a border leaves free, where its own middle lies at `at` and it is turned (radians). */
export const freeCorners = (border: Border, at: Point, turn: number): readonly Point[] =>
  laid({ corners: middlesOfFree(border), radius: 0 }, at, turn).corners;

const freeSquares = (border: Border): readonly Shape[] => {
  const size = freeSize(border);
  return middlesOfFree(border).map((at) => laid(rectangle(size, size), at, 0));
};

/** How wide (mm) a corner square is, less the margins. */
const freeSize = ({ width, margin }: Border): number => width - margin.inner - margin.outer;

/** Beside whose ends swags stop or begin with a half; a border that leaves that to the search has none yet. */
const middlesOfFree = (border: Border): readonly Point[] => {
  const { corners, inner, margin } = border;
  const size = freeSize(border);
  if ((corners !== 'open' && corners !== 'half') || !(size > 0)) return [];
  const { wide, high } = quiltOf(inner);
  const [x, y] = [wide / 2, high / 2].map((half) => half + margin.inner + size / 2) as [number, number];
  return [
    { x, y },
    { x: -x, y },
    { x: -x, y: -y },
    { x, y: -y },
  ];
};

/** What lies inside a border: where opposite sides differ, it is as long as the longer. */
const quiltOf = ({ top, right, bottom, left }: Border['inner']): { wide: number; high: number } => ({
  wide: Math.max(top, bottom),
  high: Math.max(left, right),
});

const rectangle = (width: number, height: number): Shape => {
  const [x, y] = [width / 2, height / 2];
  return {
    corners: [
      { x, y },
      { x: -x, y },
      { x: -x, y: -y },
      { x, y: -y },
    ],
    radius: 0,
  };
};

const disc = (radius: number): Shape => ({ corners: [{ x: 0, y: 0 }], radius });

const laid = ({ corners, radius }: Shape, at: Point, turn: number): Shape => ({
  corners: corners.map(({ x, y }) => ({
    x: at.x + x * Math.cos(turn) - y * Math.sin(turn),
    y: at.y + x * Math.sin(turn) + y * Math.cos(turn),
  })),
  radius,
});

/** By how much (mm) two grounds lie on one another; 0 or less where they do not. */
export const overlapOf = (a: Ground, b: Ground): number => {
  // Most of a few thousand copies are far from one another.
  const between = Math.hypot(b.at.x - a.at.x, b.at.y - a.at.y) - a.reach - b.reach;
  return between > 0 ? -between : overlapOfNear(a, b);
};

const overlapOfNear = (a: Ground, b: Ground): number =>
  Math.min(
    -apart(a.outer, b.outer),
    ...b.holes.map((hole) => -roomIn(a.outer, hole)),
    ...a.holes.map((hole) => -roomIn(b.outer, hole)),
  );

/**
 * The distance between two shapes, or less than 0 how far they would have to move apart. Two hulls of corners are
 * farthest apart along a normal of a side of either, or along a line from a corner of one to a corner of the other.
 */
const apart = (a: Shape, b: Shape): number => {
  const between = a.corners.flatMap((p) => b.corners.map((q) => subtract(q, p)));
  const directions = [...normalsOf(a), ...normalsOf(b), ...between].flatMap((d) => {
    const length = Math.hypot(d.x, d.y);
    return length > 0 ? [{ x: d.x / length, y: d.y / length }] : [];
  });
  if (directions.length === 0) directions.push(polar(0, 1));
  const gaps = directions.flatMap((d) => [
    reachTo(b, d, Math.min) - reachTo(a, d, Math.max),
    reachTo(a, d, Math.min) - reachTo(b, d, Math.max),
  ]);
  return Math.max(...gaps) - a.radius - b.radius;
};

const reachTo = ({ corners }: Shape, direction: Point, of: (...all: number[]) => number): number =>
  of(...corners.map((p) => dot(p, direction)));

/** Outward, of a rectangle's four sides; none of a disc. */
const normalsOf = ({ corners }: Shape): readonly Point[] =>
  corners.length < 2
    ? []
    : corners.map((p, i) => {
        const side = subtract(corners[(i + 1) % corners.length]!, p);
        const length = Math.hypot(side.x, side.y);
        return { x: side.y / length, y: -side.x / length };
      });

/** How much room is left between a shape and the one that it lies in, at the least; less than 0 where it does not. */
const roomIn = (inner: Shape, hole: Shape): number => {
  const [centre] = hole.corners;
  if (hole.corners.length === 1 && centre) {
    const away = inner.corners.map((p) => Math.hypot(p.x - centre.x, p.y - centre.y));
    return hole.radius - Math.max(...away) - inner.radius;
  }
  const sides = normalsOf(hole).map((n) => reachTo(hole, n, Math.max) - reachTo(inner, n, Math.max));
  return Math.min(...sides) - inner.radius;
};
