/**
 * Path data of the SVG standard (the `d` attribute) as lines and arcs.
 *
 * svg-pathdata does the reading: it keeps the arc commands as they were written, where paper turns them into
 * cubics of a quarter turn, which miss a circle of 40 mm radius by 0.011 mm. So circles come out as circles,
 * and only true curves go through biarcs. Numbers are taken as they stand, one unit one millimetre; the
 * standard's y points down, and turning the result over is the caller's choice.
 */

import { SVGPathData } from 'svg-pathdata';
import { CURVE_TOLERANCE, cubicToArcs } from './biarc.ts';
import { ellipseCubics } from './cubic.ts';
import { line, type Piece, pieceLength } from './piece.ts';
import { add, angleOf, distance, leftOf, type Point, scale, subtract, TURN } from './point.ts';
import { spacedPathData } from './svg-numbers.ts';

export type SvgPathResult =
  | { readonly ok: true; readonly pieces: Piece[]; readonly closed: boolean }
  | { readonly ok: false; readonly reason: string };

/** Longer path data (characters) is no template's edge but a picture, and is refused. */
const MOST_CHARACTERS = 100_000;

/** As many commands as anyone traces by hand, ten times over. */
const MOST_SEGMENTS = 10_000;

/** Lines and arcs of all commands together: a few far-flung curves come to as many, and no template does. */
const MOST_PIECES = 20_000;

/** Coordinates beyond this (mm) are a kilometre away; the exactness of the rest would suffer. */
const FARTHEST = 1e6;

const refuse = (reason: string): SvgPathResult => ({ ok: false, reason });

/**
 * One subpath of SVG path data as pieces, in the data's own units and axes. Curves come within `tolerance`;
 * lines and circular arcs are exact. Nonsense gives a reason in plain words, never an exception.
 */
export const piecesFromSvgPath = (d: string, tolerance: number = CURVE_TOLERANCE): SvgPathResult => {
  if (d.length > MOST_CHARACTERS)
    return refuse(`path data is ${d.length} characters long; at most ${MOST_CHARACTERS} are read`);
  if (d.trim() === '') return refuse('path data is empty');
  if (!/^\s*m/i.test(d)) return refuse('path data must start with a move (M or m)');
  // The reader would join such a number to the next command's.
  if (/z[\s,]*[-+.\d]/i.test(d)) return refuse('a number follows Z, which takes none');
  // The reader itself takes 007 for three numbers, and 1. for one.
  const spaced = spacedPathData(d);
  let commands: SVGPathData['commands'];
  try {
    commands = new SVGPathData(spaced ?? d).toAbs().normalizeST().commands;
  } catch (error) {
    return refuse(error instanceof Error ? plainReason(error.message) : 'path data cannot be read');
  }
  if (spaced === undefined)
    return refuse('path data is not written as the SVG standard says; save it again from a drawing program');
  if (commands.length > MOST_SEGMENTS)
    return refuse(`path data has ${commands.length} commands; at most ${MOST_SEGMENTS} are read`);
  const far = commands.some((c) =>
    Object.values(c).some((v) => typeof v === 'number' && !(Math.abs(v) <= FARTHEST)),
  );
  if (far) return refuse(`path data has a number that is not finite or is beyond ${FARTHEST}`);
  return walk(commands, tolerance);
};

const plainReason = (message: string): string => {
  // What it says after the character is its own guess at why.
  const first = message.replace(/\. .*$|\.$/s, '');
  return `path data cannot be read: ${first.charAt(0).toLowerCase()}${first.slice(1)}`;
};

const walk = (commands: SVGPathData['commands'], tolerance: number): SvgPathResult => {
  const pieces: Piece[] = [];
  let start: Point | undefined;
  let at: Point = { x: 0, y: 0 };
  let closed = false;
  for (const c of commands) {
    if (pieces.length > MOST_PIECES)
      return refuse(
        `path data comes to more than ${MOST_PIECES} lines and arcs; it reaches too far, or is too fine`,
      );
    if (c.type === SVGPathData.MOVE_TO) {
      // A move right after a move only changes where the path starts.
      if (pieces.length > 0) return refuse('path data has more than one subpath; one is read');
      at = { x: c.x, y: c.y };
      start = at;
      continue;
    }
    if (!start) return refuse('path data must start with a move (M or m)');
    if (closed && c.type !== SVGPathData.CLOSE_PATH)
      return refuse('path data goes on after Z; one subpath is read');
    if (c.type === SVGPathData.CLOSE_PATH) {
      if (!closed && distance(at, start) > 0) pieces.push(line(at, start));
      at = start;
      closed = true;
      continue;
    }
    const to: Point = {
      x: c.type === SVGPathData.VERT_LINE_TO ? at.x : c.x,
      y: c.type === SVGPathData.HORIZ_LINE_TO ? at.y : c.y,
    };
    if (c.type === SVGPathData.CURVE_TO) {
      append(pieces, cubicToArcs(at, { x: c.x1, y: c.y1 }, { x: c.x2, y: c.y2 }, to, tolerance));
    } else if (c.type === SVGPathData.QUAD_TO) {
      const q = { x: c.x1, y: c.y1 };
      append(pieces, cubicToArcs(at, thirds(at, q), thirds(to, q), to, tolerance));
    } else if (c.type === SVGPathData.ARC) {
      append(
        pieces,
        arcCommand(
          at,
          to,
          c.rX,
          c.rY,
          (c.xRot * Math.PI) / 180,
          c.lArcFlag === 1,
          c.sweepFlag === 1,
          tolerance,
        ),
      );
    } else if (distance(at, to) > 0) {
      pieces.push(line(at, to));
    }
    at = to;
  }
  const kept = pieces.filter((p) => pieceLength(p) > 0);
  if (kept.length === 0) return refuse('path data draws nothing');
  return { ok: true, pieces: kept, closed };
};

/** Spreading a long list into a call would fill the stack. */
const append = (pieces: Piece[], more: readonly Piece[]): void => {
  for (const piece of more) pieces.push(piece);
};

/** The handle of the cubic that is a quadratic: two thirds of the way from an end to the control point. */
const thirds = (end: Point, control: Point): Point => ({
  x: end.x + (2 / 3) * (control.x - end.x),
  y: end.y + (2 / 3) * (control.y - end.y),
});

/**
 * An A command by the standard's rules (SVG 2, appendix B.2: ends to centre; radii too small are scaled up
 * until they reach; a radius of zero means a line; equal ends mean nothing).
 */
const arcCommand = (
  from: Point,
  to: Point,
  rx: number,
  ry: number,
  tilt: number,
  large: boolean,
  counterclockwise: boolean,
  tolerance: number,
): Piece[] => {
  if (distance(from, to) === 0) return [];
  if (!(Math.abs(rx) > 0 && Math.abs(ry) > 0)) return [line(from, to)];
  if (Math.abs(rx) === Math.abs(ry)) return [circularArc(from, to, Math.abs(rx), large, counterclockwise)];
  // In the frame where the ellipse is the unit circle the same circular arc does it.
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const [a, b] = [Math.abs(rx), Math.abs(ry)];
  const squeeze = (p: Point): Point => ({ x: (c * p.x + s * p.y) / a, y: (c * p.y - s * p.x) / b });
  const unitArc = circularArc(squeeze(from), squeeze(to), 1, large, counterclockwise);
  if (unitArc.kind === 'line') return [line(from, to)];
  const { center, radius, start, sweep } = unitArc;
  const middle = { x: c * center.x * a - s * center.y * b, y: s * center.x * a + c * center.y * b };
  const cubics = ellipseCubics(middle, [a * radius, b * radius], tilt, start, sweep, tolerance / 20);
  return cubics.flatMap((q, i) =>
    cubicToArcs(i === 0 ? from : q.p0, q.p1, q.p2, i === cubics.length - 1 ? to : q.p3, tolerance * 0.95),
  );
};

const circularArc = (from: Point, to: Point, r: number, large: boolean, counterclockwise: boolean): Piece => {
  const half = distance(from, to) / 2;
  const radius = Math.max(r, half);
  const rise = Math.sqrt(Math.max(0, (radius - half) * (radius + half)));
  const mid = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const side = large === counterclockwise ? -1 : 1;
  const left = leftOf(scale(subtract(to, from), 1 / (2 * half)));
  const center = add(mid, scale(left, side * rise));
  const small = 2 * Math.atan2(half, rise);
  const size = large ? TURN - small : small;
  return {
    kind: 'arc',
    center,
    radius,
    start: angleOf(subtract(from, center)),
    sweep: counterclockwise ? size : -size,
    from,
    to,
  };
};
