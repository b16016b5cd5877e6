/**
 * Lines and arcs found again in a polygon that a library made from them.
 *
 * Libraries for booleans and offsets answer with short chords or cubics. But it is known what lines and
 * circles the answer must consist of (the sources, or their offsets), so each chord is matched with the one
 * that it lies on, and neighbouring runs are joined where their sources cross, in closed form. The library
 * decides only what is kept; where things are stays exact.
 */

import { type BoxTree, boxTreeOf, eachBoxed } from './box-tree.ts';
import { crossings } from './crossing.ts';
import { distanceToPiece } from './nearness.ts';
import { closedPath, type Path } from './path.ts';
import { type Arc, arc, line, type Piece, pieceLength } from './piece.ts';
import {
  add,
  angleOf,
  cross,
  distance,
  dot,
  type Point,
  scale,
  subtract,
  TURN,
  turnBetween,
} from './point.ts';

export type Carrier =
  | { readonly kind: 'line'; readonly at: Point; readonly along: Point }
  | { readonly kind: 'circle'; readonly center: Point; readonly radius: number };

/** The endless line or whole circle that a piece lies on; undefined for a piece without length. */
export const carrierOf = (p: Piece): Carrier | undefined => {
  if (!(pieceLength(p) > 0)) return undefined;
  if (p.kind === 'arc') return { kind: 'circle', center: p.center, radius: p.radius };
  return { kind: 'line', at: p.from, along: scale(subtract(p.to, p.from), 1 / pieceLength(p)) };
};

const off = (c: Carrier, p: Point): number =>
  c.kind === 'line'
    ? Math.abs(cross(c.along, subtract(p, c.at)))
    : Math.abs(distance(c.center, p) - c.radius);

const onto = (c: Carrier, p: Point): Point => {
  if (c.kind === 'line') return add(c.at, scale(c.along, dot(c.along, subtract(p, c.at))));
  const out = subtract(p, c.center);
  const d = Math.hypot(out.x, out.y);
  return d > 0 ? add(c.center, scale(out, c.radius / d)) : p;
};

/** A corner of the polygon, and a point on its edge to the next one where that edge is no straight chord. */
export interface Corner {
  readonly point: Point;
  readonly middle?: Point;
}

/** What an answer may consist of, found by where the pieces lie that it comes from. */
export interface Carriers {
  readonly sources: readonly Piece[];
  readonly tree: BoxTree;
  /** Of each source. */
  readonly bySource: readonly (readonly Carrier[])[];
  readonly reach: number;
}

/** `reach` is how far (mm) from a source the answer on its carriers may be. */
export const carriersFrom = (
  sources: readonly Piece[],
  of: (source: Piece) => readonly Carrier[],
  reach: number,
): Carriers => ({ sources, tree: boxTreeOf(sources), bySource: sources.map(of), reach });

interface Run {
  readonly carrier: Carrier | undefined;
  readonly points: Point[];
}

/**
 * A closed polygon as a closed path of lines and arcs on `carriers`. A chord belongs to a carrier when its
 * ends and middle lie within `tolerance` (mm) of it; one that belongs to none stays as it is.
 */
export const recoverLoop = (polygon: readonly Corner[], carriers: Carriers, tolerance: number): Path => {
  const next = (i: number, of: readonly Corner[]): Point => of[(i + 1) % of.length]!.point;
  const corners = polygon.filter((c, i) => distance(c.point, next(i, polygon)) > 0);
  if (corners.length < 2) return closedPath([]);
  const points = corners.map((c) => c.point);
  const owners = corners.map((c, i) => ownerOf(c, next(i, corners), carriers, tolerance));
  const runs = runsOf(points, owners);
  if (runs.length === 1) return closedPath(wholeLoop(runs[0]!));
  const joints = runs.map((run, i) => jointOf(runs[(i + runs.length - 1) % runs.length]!, run));
  const pieces = runs.flatMap((run, i) => {
    const { start, end } = joints[i]!;
    const bridge = distance(end, start) > LEAST_PIECE ? [line(end, start)] : [];
    return [...bridge, ...piecesOf(run, start, joints[(i + 1) % runs.length]!.end)];
  });
  return closedPath(pieces);
};

const ownerOf = (
  { point: a, middle }: Corner,
  b: Point,
  { sources, tree, bySource, reach }: Carriers,
  tolerance: number,
): Carrier | undefined => {
  const between = middle ?? { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  // A chord's middle may lie a sagitta inside, its ends may not.
  const share = middle ? 1 : 0.5;
  const beside = reach + tolerance;
  let best: Carrier | undefined;
  let least = tolerance;
  eachBoxed(
    tree,
    between.x - beside,
    between.y - beside,
    between.x + beside,
    between.y + beside,
    (source) => {
      // A neighbour's circle may pass nearer by a hair, but its arc has ended before.
      if (distanceToPiece(sources[source]!, between) > beside) return;
      for (const c of bySource[source]!) {
        const far = Math.max(off(c, a), off(c, b), share * off(c, between));
        if (far < least) {
          least = far;
          best = c;
        }
      }
    },
  );
  return best;
};

const same = (a: Carrier | undefined, b: Carrier | undefined): boolean => {
  if (a === b) return true;
  if (!a || !b || a.kind !== b.kind) return false;
  if (a.kind === 'line' && b.kind === 'line')
    return off(a, b.at) < SAME && Math.abs(cross(a.along, b.along)) < SAME;
  if (a.kind === 'circle' && b.kind === 'circle')
    return distance(a.center, b.center) < SAME && Math.abs(a.radius - b.radius) < SAME;
  return false;
};

/** Carriers nearer than this (mm) are one: the pieces of a split arc. */
const SAME = 1e-9;

/** Runs of chords on one carrier, each with its first and last point; the first run starts at a change. */
const runsOf = (points: readonly Point[], owners: readonly (Carrier | undefined)[]): Run[] => {
  const n = points.length;
  const change = owners.findIndex((o, i) => !o || !same(o, owners[(i + n - 1) % n]));
  if (change < 0) return [{ carrier: owners[0], points: [...points, points[0]!] }];
  const runs: Run[] = [];
  for (let k = 0; k < n; k++) {
    const i = (change + k) % n;
    const owner = owners[i];
    const last = runs.at(-1);
    const end = points[(i + 1) % n]!;
    if (last && owner && same(last.carrier, owner)) last.points.push(end);
    else runs.push({ carrier: owner, points: [points[i]!, end] });
  }
  return runs;
};

/** Where a run ends and the next one starts. */
interface Joint {
  readonly end: Point;
  readonly start: Point;
}

/**
 * Where a run begins: the crossing of its carrier with the one before that lies nearest to the polygon's corner. Where
 * they miss one another by a hair each keeps to its own: a long line led to the other would be off it all along.
 */
const jointOf = (before: Run, run: Run): Joint => {
  const corner = run.points[0]!;
  const at = jointAt(before.carrier, run.carrier, corner);
  const isOn = (c: Carrier | undefined): boolean => !c || at === corner || off(c, at) <= LEAST_PIECE;
  return {
    end: isOn(before.carrier) ? at : onto(before.carrier!, at),
    start: isOn(run.carrier) ? at : onto(run.carrier!, at),
  };
};

const jointAt = (before: Carrier | undefined, after: Carrier | undefined, corner: Point): Point => {
  if (!before || !after) {
    const only = before ?? after;
    return only ? onto(only, corner) : corner;
  }
  let best: Point | undefined;
  for (const c of crossings(probeOf(before, corner), probeOf(after, corner), JOINT_SLACK))
    if (!best || distance(c.point, corner) < distance(best, corner)) best = c.point;
  return best && distance(best, corner) <= JOINT_REACH ? best : corner;
};

/**
 * Where carriers touch, the polygon's corner may lie some way from the touching point (the two part slowly),
 * but not farther than this (mm).
 */
const JOINT_REACH = 2;

/** Carriers that should touch may miss one another by rounding (mm). */
const JOINT_SLACK = 1e-6;

const probeOf = (c: Carrier, near: Point): Piece => {
  if (c.kind === 'circle') return arc(c.center, c.radius, angleOf(subtract(near, c.center)) + Math.PI, TURN);
  const at = onto(c, near);
  return line(add(at, scale(c.along, -PROBE)), add(at, scale(c.along, PROBE)));
};

/** Half the length (mm) of the stretch of a line that is tried for crossings. */
const PROBE = 10;

const sweptAbout = (center: Point, points: readonly Point[]): number => {
  let swept = 0;
  for (let i = 1; i < points.length; i++)
    swept += turnBetween(subtract(points[i - 1]!, center), subtract(points[i]!, center));
  return swept;
};

const piecesOf = (run: Run, from: Point, to: Point): Piece[] => {
  if (!run.carrier) return distance(from, to) > 0 ? [line(from, to)] : [];
  if (run.carrier.kind === 'line') return distance(from, to) > LEAST_PIECE ? [line(from, to)] : [];
  const { center, radius } = run.carrier;
  const sweep = sweptAbout(center, [from, ...run.points.slice(1, -1), to]);
  if (!(Math.abs(sweep) * radius > 0)) return [];
  return [{ kind: 'arc', center, radius, start: angleOf(subtract(from, center)), sweep, from, to }];
};

/** Shorter pieces (mm) are what is left between two joints that fell on one place. */
const LEAST_PIECE = 1e-9;

/** A loop on one carrier: a whole circle, or a polygon that nothing was found for. */
const wholeLoop = (run: Run): Piece[] => {
  const { carrier, points } = run;
  const swept = carrier?.kind === 'circle' ? sweptAbout(carrier.center, points) : 0;
  // A crumb as thin as the tolerance can lie on one circle without going round it.
  if (carrier?.kind === 'circle' && Math.abs(Math.abs(swept) - TURN) < 0.1) {
    const start = angleOf(subtract(points[0]!, carrier.center));
    const whole: Arc = arc(carrier.center, carrier.radius, start, Math.sign(swept) * TURN);
    return [{ ...whole, to: whole.from }];
  }
  return points.slice(1).map((p, i) => line(points[i]!, p));
};
