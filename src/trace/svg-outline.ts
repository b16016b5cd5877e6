/** One path of an SVG drawing as an outline of lines and arcs in mm: chosen by its id, or the longest. */

import { SVGPathData } from 'svg-pathdata';
import { nearestOf, type Problem, quoted } from '../document/index.ts';
import {
  boxHeight,
  boxWidth,
  CURVE_TOLERANCE,
  closedPath,
  distance,
  line,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathBox,
  pathLength,
  piecesFromSvgPath,
  reversePath,
  signedArea,
  spacedPathData,
} from '../geometry/index.ts';
import { numberApart } from '../length/index.ts';
import { cutOf } from './svg-cut.ts';
import { isSimilarity, type Matrix, multiply, sizeOf, throughSimilarity } from './svg-matrix.ts';
import { readSvgShapes, type SvgShape, type SvgShapes } from './svg-shapes.ts';

export interface SvgOutlineOptions {
  readonly id?: string | undefined;
  /** What one unit of the drawing measures, mm. */
  readonly unitMm?: number | undefined;
  /** mm that curves may lie from their arcs. */
  readonly tolerance?: number;
  /** The drawing's file, as it is called in what is said about it; without it no place is said. */
  readonly file?: string | undefined;
}

export interface SvgOutline {
  /** In mm, y up, the drawing's upper left corner at (0, 0); clockwise where it is closed. */
  readonly path: Path;
  readonly id: string | undefined;
  readonly element: string;
  /** How far apart the ends were that were joined (mm): 0 where the path was closed, or is open. */
  readonly joined: number;
  /** Puts a problem where the path stands in the file. */
  readonly placed: (problem: Problem) => Problem;
  /** How many there were to choose from. */
  readonly choices: number;
  readonly size: SvgShapes['size'];
}

export type SvgOutlineResult =
  | { readonly ok: true; readonly outline: SvgOutline }
  | { readonly ok: false; readonly problem: Problem };

/** Ends nearer than this (mm) are one: drawing programs write three decimals. */
const CLOSING = 0.01;
/** Ends nearer than this share of the length were meant to meet: no edge comes back to where it began. */
const NEARLY_CLOSED = 0.02;
/** A template is between this and that long (mm). */
const SHORTEST = 10;
const LONGEST = 10_000;
/** Curves and arcs that all shapes together may hold, before the longest is sought. */
const MOST_COMMANDS = 60_000;
/** Lines and arcs that come of them: one curve that runs off to a kilometre comes to hundreds. */
const MOST_PIECES = 60_000;

export const svgOutline = (text: string, options: SvgOutlineOptions = {}): SvgOutlineResult => {
  const read = readSvgShapes(text, options);
  if (!read.ok) return read;
  const { shapes, size } = read.drawing;
  const { id } = options;
  const chosen = id === undefined ? shapes.filter((s) => !s.hidden) : shapes.filter((s) => s.id === id);
  if (chosen.length === 0) return refuse(id === undefined ? noShape(shapes) : noSuchId(id, shapes));
  // Any of them may be the longest.
  const unread = chosen.find((s) => s.fault !== undefined)?.fault;
  if (unread) return refuse(unread);
  const tolerance = options.tolerance ?? CURVE_TOLERANCE;
  let commands = 0;
  let pieces = 0;
  let nothing: Problem | undefined;
  let best: Found | undefined;
  /** The longest of those that are no rectangle. */
  let other: Found | undefined;
  let choices = 0;
  for (const shape of chosen) {
    const parts = subpaths(shape.data);
    if (typeof parts === 'string') return refuse(badPath(shape, parts));
    for (const part of parts) {
      commands += part.length;
      if (commands > MOST_COMMANDS) return refuse(TOO_MANY);
      const made = pathOf(part, shape.matrix, tolerance);
      if (!made.ok) {
        if (!made.drawsNothing) return refuse(badPath(shape, made.reason));
        nothing ??= badPath(shape, made.reason);
        continue;
      }
      choices++;
      pieces += made.path.pieces.length;
      if (pieces > MOST_PIECES) return refuse(TOO_MANY);
      const length = pathLength(made.path);
      const found = { shape, path: made.path, joined: made.joined, length };
      if (!best || length > best.length) best = found;
      if (length > (other?.length ?? 0) && !isUpright(made.path)) other = found;
    }
  }
  if (!best) return refuse(nothing ?? noShape(shapes));
  if (other && id === undefined && isFrameOf(best, other)) best = other;
  const cut = cutOf(best.path, best.shape.cuts, turnOver);
  if (cut) return refuse(cut);
  const box = pathBox(best.path);
  const longer = Math.max(boxWidth(box), boxHeight(box));
  if (!(longer >= SHORTEST && best.length <= LONGEST))
    return refuse({
      code: 'svg-scale',
      message: 'the path is not of a size that a template has',
      ...(longer >= SHORTEST
        ? { found: `${lengthWords(best.length)} of line`, expected: 'at most 10 m' }
        : { found: `${numberApart(longer, SHORTEST, 1)} mm across`, expected: 'at least 10 mm' }),
      hint: 'say what one unit of the drawing measures, such as --scale 1mm',
    });
  const { path, shape } = best;
  return {
    ok: true,
    outline: {
      path: path.closed && signedArea(path) > 0 ? reversePath(path) : path,
      id: shape.id,
      element: shape.element,
      joined: best.joined,
      placed: shape.place,
      choices,
      size,
    },
  };
};

interface Found {
  readonly shape: SvgShape;
  readonly path: Path;
  readonly joined: number;
  readonly length: number;
}

/** A rectangle along the page's own sides: its area is that of its box. */
const isUpright = (path: Path): boolean => {
  if (!path.closed || path.pieces.some((p) => p.kind !== 'line')) return false;
  const box = pathBox(path);
  const area = boxWidth(box) * boxHeight(box);
  return Math.abs(area - Math.abs(signedArea(path))) <= RECTANGULAR * area;
};

/** Round what is drawn a page often has a frame; a template's outline in it is no small thing beside that. */
const isFrameOf = (frame: Found, inside: Found): boolean => {
  if (!isUpright(frame.path) || !(inside.length >= LEAST_IN_FRAME * frame.length)) return false;
  const [a, b] = [pathBox(frame.path), pathBox(inside.path)];
  return b.minX >= a.minX && b.maxX <= a.maxX && b.minY >= a.minY && b.maxY <= a.maxY;
};

/** Of its box's area, what a rectangle may differ by: rounding in a file. */
const RECTANGULAR = 0.001;
/** Of the frame's length. */
const LEAST_IN_FRAME = 0.2;

const lengthWords = (mm: number): string =>
  mm <= 1e6 ? `${numberApart(mm / 1000, LONGEST / 1000, 1)} m` : 'more than a kilometre';

const refuse = (problem: Problem): SvgOutlineResult => ({ ok: false, problem });

const TOO_MANY: Problem = {
  code: 'svg-too-many',
  message: 'the drawing holds too many curves to look through',
  hint: 'name the path with --id, or save it alone',
};

/** Where only what is not seen is there, its names are said. */
const noShape = (shapes: readonly SvgShape[]): Problem => {
  const ids = shapes.flatMap((s) => (s.id === undefined || s.fault ? [] : [s.id]));
  return {
    code: 'svg-no-path',
    message: shapes.length === 0 ? 'the drawing has no path in it' : 'no path of the drawing is seen',
    ...(ids.length > 0 && ids.length <= MOST_IDS ? { hint: `name one with --id: ${ids.join(', ')}` } : {}),
  };
};

/** A list of more names helps nobody. */
const MOST_IDS = 10;

const badPath = ({ place }: SvgShape, reason: string): Problem =>
  place({ code: 'svg-path', message: reason });

const noSuchId = (id: string, shapes: readonly SvgShape[]): Problem => {
  const ids = shapes.flatMap((s) => (s.id === undefined ? [] : [s.id]));
  const near = nearestOf(id, ids);
  return {
    code: 'svg-no-id',
    message: `no path of the drawing has the id ${quoted(id)}`,
    ...(ids.length > 0 && ids.length <= MOST_IDS ? { expected: `one of ${ids.join(', ')}` } : {}),
    ...(near === undefined ? {} : { hint: `did you mean ${quoted(near)}?` }),
  };
};

type Commands = SVGPathData['commands'];

/** As much as is read of one path anyway. */
const MOST_DATA = 100_000;

/**
 * The subpaths of path data, each by itself, in absolute commands. Horizontal and vertical lines become lines, which
 * they no longer are after a skew; what follows Z begins where the closed part began (SVG 2, 9.3.4).
 */
const subpaths = (data: string): readonly Commands[] | string => {
  if (data.length > MOST_DATA)
    return `path data is ${data.length} characters long; at most ${MOST_DATA} are read`;
  const spaced = spacedPathData(data);
  if (spaced === undefined) {
    const read = piecesFromSvgPath(data);
    return read.ok ? 'path data cannot be read' : read.reason;
  }
  const { commands } = new SVGPathData(spaced).toAbs().normalizeHVZ(false).normalizeST();
  const found: Commands[] = [];
  let start: Commands[number] | undefined;
  let isClosed = true;
  for (const c of commands) {
    if (c.type === SVGPathData.MOVE_TO) {
      start = c;
      found.push([]);
    } else if (isClosed && start) found.push([start]);
    isClosed = c.type === SVGPathData.CLOSE_PATH;
    found.at(-1)?.push(c);
  }
  return found.filter((part) => part.length > 1);
};

/** y up. */
const TURNED_OVER: Matrix = [1, 0, 0, -1, 0, 0];
const turnOver = ({ x, y }: Point): Point => ({ x, y: -y });

type PathResult =
  | { readonly ok: true; readonly path: Path; readonly joined: number }
  | { readonly ok: false; readonly reason: string; readonly drawsNothing: boolean };

const pathOf = (part: Commands, matrix: Matrix, tolerance: number): PathResult => {
  const whole = multiply(TURNED_OVER, matrix);
  const size = sizeOf(whole);
  if (!(size > 0 && Number.isFinite(size)))
    return { ok: false, reason: 'a transform squeezes the path flat', drawsNothing: true };
  const isSimilar = isSimilarity(whole);
  const [a, b, c, d, e, f] = whole;
  // Where circles become ellipses the commands themselves go through the matrix.
  const data = new SVGPathData(part);
  // A number beyond all would be written as a word; it is as far off as one that is refused for that.
  const written = (isSimilar ? data : data.matrix(a, b, c, d, e, f)).encode().replace(/Infinity|NaN/g, '1e9');
  const read = piecesFromSvgPath(written, isSimilar ? tolerance / size : tolerance);
  if (!read.ok) return { ok: false, reason: read.reason, drawsNothing: read.reason === DRAWS_NOTHING };
  const pieces: readonly Piece[] = isSimilar
    ? read.pieces.map((p) => throughSimilarity(p, whole))
    : read.pieces;
  const gap = distance(pieces[0]!.from, pieces.at(-1)!.to);
  const open = openPath(pieces);
  if (!read.closed && gap > Math.max(CLOSING, NEARLY_CLOSED * pathLength(open)))
    return { ok: true, path: open, joined: 0 };
  return {
    ok: true,
    joined: gap > CLOSING && !read.closed ? gap : 0,
    path: closedPath(gap > 0 ? joinedEnds(pieces) : pieces),
  };
};

/** A straight side is led on to where the path began; where none is last, a short one joins the ends. */
const joinedEnds = (pieces: readonly Piece[]): readonly Piece[] => {
  const [start, last] = [pieces[0]!.from, pieces.at(-1)!];
  return last.kind === 'line'
    ? [...pieces.slice(0, -1), line(last.from, start)]
    : [...pieces, line(last.to, start)];
};

const DRAWS_NOTHING = 'path data draws nothing';
