/**
 * The working edge from its steps, or from SVG path data: one path of lines and arcs in mm, and for every
 * piece the step that it came from, so that whatever is said about the edge later can name a line of the file.
 *
 * An arc through a point: the turn at that point, from one chord to the other, is half the arc's sweep (the
 * inscribed angle), so the rise over the whole chord c is −(c/2)·tan(turn/2), positive to the left.
 */

import { quoted } from '../document/index.ts';
import {
  arcByRise,
  CURVE_TOLERANCE,
  cubicToArcs,
  distance,
  line,
  openPath,
  type Path,
  type Piece,
  type Point,
  pieceLength,
  piecesFromSvgPath,
  riseThrough,
} from '../geometry/index.ts';
import type { NamedPlace } from './breaks.ts';

/** Points in mm. */
export type EdgeStep =
  | { readonly kind: 'start'; readonly at: Point }
  | { readonly kind: 'line'; readonly to: Point }
  | { readonly kind: 'arc'; readonly to: Point; readonly rise: number }
  | { readonly kind: 'arc-through'; readonly to: Point; readonly through: Point }
  | { readonly kind: 'curve'; readonly to: Point; readonly handles: readonly [Point, Point] }
  | { readonly kind: 'break'; readonly name: string };

export interface Edge {
  readonly path: Path;
  /** For each piece the index of its step; for path data all zero. */
  readonly stepOfPiece: readonly number[];
  /** Where named breaks stand. */
  readonly named: readonly NamedPlace[];
}

export type EdgeReading =
  | { readonly ok: true; readonly edge: Edge }
  | { readonly ok: false; readonly faults: readonly EdgeStepFault[] };

export interface EdgeStepFault {
  /** The step, or the measured point, counted from 0; undefined for the edge as a whole. */
  readonly step: number | undefined;
  readonly message: string;
  readonly found?: string;
  readonly expected?: string;
  readonly hint?: string;
}

/** A step shorter than this (mm) is a slip: 0.1 mm is a pencil line's fifth part. */
const SHORTEST_STEP = 0.1;

/** Lines and arcs; a traced drawing has some hundreds. */
export const MOST_PIECES = 5000;

export const edgeFromSteps = (steps: readonly EdgeStep[]): EdgeReading => {
  const faults: EdgeStepFault[] = [];
  const pieces: Piece[] = [];
  const stepOfPiece: number[] = [];
  const named: NamedPlace[] = [];
  // Without a start the origin stands in for it, so that the other steps are still checked.
  let at: Point = { x: 0, y: 0 };
  let length = 0;
  if (steps[0]?.kind !== 'start')
    faults.push({ step: 0, message: 'the edge has no start', expected: 'start: [0, 0] as the first step' });
  for (const [i, step] of steps.entries()) {
    if (step.kind === 'start') {
      if (i > 0)
        faults.push({ step: i, message: 'a second start', expected: 'one start, as the first step' });
      else at = step.at;
    } else if (step.kind === 'break') {
      const wrong = breakFault(step.name, length, named, i === steps.length - 1);
      if (wrong) faults.push({ ...wrong, step: i });
      else named.push({ at: length, name: step.name });
    } else {
      const made = piecesOf(at, step);
      at = step.to;
      if (!Array.isArray(made)) {
        faults.push({ ...made, step: i });
        // As if it had some length, so that a break after it is not called one at the heel.
        length += 1;
        continue;
      }
      for (const piece of made) {
        pieces.push(piece);
        stepOfPiece.push(i);
        length += pieceLength(piece);
      }
      // Curves with far-flung handles come to thousands of arcs each, and hundreds of them take a minute.
      if (pieces.length > MOST_PIECES)
        return {
          ok: false,
          faults: [
            {
              step: i,
              message: 'the edge is too finely drawn',
              found: `more than ${MOST_PIECES} lines and arcs up to this step`,
              expected: `at most ${MOST_PIECES} in all`,
            },
          ],
        };
    }
  }
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, edge: { path: openPath(pieces), stepOfPiece, named } };
};

/** What is wrong, in words; the caller adds where. */
type Fault = Omit<EdgeStepFault, 'step'>;

const breakFault = (
  name: string,
  at: number,
  named: readonly NamedPlace[],
  isLast: boolean,
): Fault | undefined => {
  const between = 'a break between two steps';
  if (!(at > 0)) return { message: 'a break at the heel', expected: between };
  if (isLast) return { message: 'a break at the crown end', expected: between };
  if (named.some((n) => n.name === name))
    return { message: `two sections are named ${quoted(name)}`, expected: 'a name of its own for each' };
  if (named.some((n) => n.at === at)) return { message: 'two breaks at one place', expected: 'one name' };
  return undefined;
};

const piecesOf = (from: Point, step: Exclude<EdgeStep, { kind: 'start' | 'break' }>): Piece[] | Fault => {
  if (!(distance(from, step.to) >= SHORTEST_STEP))
    return { message: 'this step ends where it begins', expected: 'steps of at least 0.1 mm' };
  switch (step.kind) {
    case 'line':
      return [line(from, step.to)];
    case 'arc': {
      if (!(Math.abs(step.rise) <= distance(from, step.to) * HIGHEST_RISE))
        return { message: 'the rise is too high for this chord', expected: 'at most 50 chords' };
      return [arcByRise(from, step.to, step.rise)];
    }
    case 'arc-through': {
      const rise = plainRise(from, step.through, step.to);
      if (rise === undefined)
        return {
          message: 'no arc goes through this point',
          expected: 'a point on the arc, between its ends',
        };
      return [arcByRise(from, step.to, rise)];
    }
    case 'curve':
      return cubicToArcs(from, step.handles[0], step.handles[1], step.to, CURVE_TOLERANCE);
    default:
      return step satisfies never;
  }
};

/** An arc whose middle is farther out than this many chords is nearly a full circle, and surely a slip. */
const HIGHEST_RISE = 50;

/** The rise of the arc through a point; undefined where the point is at an end, or beyond one in line with both. */
const plainRise = (from: Point, through: Point, to: Point): number | undefined => {
  const apart = Math.min(distance(from, through), distance(through, to));
  if (!(apart >= SHORTEST_STEP / 2)) return undefined;
  const rise = riseThrough(from, through, to);
  return Math.abs(rise) <= distance(from, to) * HIGHEST_RISE ? rise : undefined;
};

/**
 * The edge from path data of the SVG standard, `size` mm to its unit. The standard's y points down; the edge
 * is turned over, so that it lies as it was drawn and the foot is on the left of its way as it was drawn.
 */
export const edgeFromSvg = (data: string, size: number): EdgeReading => {
  const read = piecesFromSvgPath(data, CURVE_TOLERANCE / size);
  if (!read.ok) return { ok: false, faults: [{ step: undefined, message: read.reason }] };
  if (read.closed) {
    const message = 'the edge is closed';
    return {
      ok: false,
      faults: [{ step: undefined, message, expected: 'path data without Z, from heel to crown end' }],
    };
  }
  const pieces = read.pieces.map((p) => enlarged(p, size));
  return { ok: true, edge: { path: openPath(pieces), stepOfPiece: pieces.map(() => 0), named: [] } };
};

/** A piece made `size` times as large and turned over in the x axis. */
const enlarged = (p: Piece, size: number): Piece => {
  const put = (q: Point): Point => ({ x: q.x * size, y: -q.y * size });
  const from = put(p.from);
  const to = put(p.to);
  if (p.kind === 'line') return line(from, to);
  return { ...p, center: put(p.center), radius: p.radius * size, start: -p.start, sweep: -p.sweep, from, to };
};
