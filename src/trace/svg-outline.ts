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
  pathBox,
  pathLength,
  piecesFromSvgPath,
  reversePath,
  signedArea,
} from '../geometry/index.ts';
import { isSimilarity, type Matrix, multiply, sizeOf, throughSimilarity } from './svg-matrix.ts';
import { readSvgShapes, type SvgShape, type SvgShapes } from './svg-shapes.ts';

export interface SvgOutlineOptions {
  readonly id?: string | undefined;
  /** What one unit of the drawing measures, mm. */
  readonly unitMm?: number | undefined;
  /** mm that curves may lie from their arcs. */
  readonly tolerance?: number;
}

export interface SvgOutline {
  /** In mm, y up, the drawing's upper left corner at (0, 0); clockwise where it is closed. */
  readonly path: Path;
  readonly id: string | undefined;
  readonly element: string;
  /** How many there were to choose from. */
  readonly choices: number;
  readonly size: SvgShapes['size'];
}

export type SvgOutlineResult =
  | { readonly ok: true; readonly outline: SvgOutline }
  | { readonly ok: false; readonly problem: Problem };

/** Ends nearer than this (mm) are one: drawing programs write three decimals. */
const CLOSING = 0.01;
/** A template is between this and that long (mm). */
const SHORTEST = 10;
const LONGEST = 10_000;
/** Curves and arcs that all shapes together may hold, before the longest is sought. */
const MOST_COMMANDS = 60_000;
/** Lines and arcs that come of them: one curve that runs off to a kilometre comes to hundreds. */
const MOST_PIECES = 60_000;

export const svgOutline = (text: string, options: SvgOutlineOptions = {}): SvgOutlineResult => {
  const read = readSvgShapes(text, options.unitMm);
  if (!read.ok) return read;
  const { shapes, size, hasUse } = read.drawing;
  const { id } = options;
  const chosen = id === undefined ? shapes.filter((s) => !s.hidden) : shapes.filter((s) => s.id === id);
  if (chosen.length === 0) return refuse(id === undefined ? noShape(hasUse) : noSuchId(id, shapes));
  const tolerance = options.tolerance ?? CURVE_TOLERANCE;
  let commands = 0;
  let pieces = 0;
  let fault: string | undefined;
  let best: { shape: SvgShape; path: Path; length: number } | undefined;
  let choices = 0;
  for (const shape of chosen) {
    for (const data of subpaths(shape.data)) {
      commands += data.commands;
      if (commands > MOST_COMMANDS) return refuse(TOO_MANY);
      const made = pathOf(data.text, shape.matrix, tolerance);
      if (typeof made === 'string') {
        fault ??= made;
        continue;
      }
      choices++;
      pieces += made.pieces.length;
      if (pieces > MOST_PIECES) return refuse(TOO_MANY);
      const length = pathLength(made);
      if (!best || length > best.length) best = { shape, path: made, length };
    }
  }
  if (!best)
    return refuse({ code: 'svg-path', message: fault ?? 'the drawing has no path that can be read' });
  const box = pathBox(best.path);
  const longer = Math.max(boxWidth(box), boxHeight(box));
  if (!(longer >= SHORTEST && best.length <= LONGEST))
    return refuse({
      code: 'svg-scale',
      message: 'the path is not of a size that a template has',
      ...(longer >= SHORTEST
        ? { found: `${lengthWords(best.length)} of line`, expected: 'at most 10 m' }
        : { found: `${longer.toFixed(1)} mm across`, expected: 'at least 10 mm' }),
      hint: 'say what one unit of the drawing measures, such as --scale 1mm',
    });
  const { path, shape } = best;
  return {
    ok: true,
    outline: {
      path: path.closed && signedArea(path) > 0 ? reversePath(path) : path,
      id: shape.id,
      element: shape.element,
      choices,
      size,
    },
  };
};

const lengthWords = (mm: number): string =>
  mm <= 1e6 ? `${(mm / 1000).toFixed(1)} m` : 'more than a kilometre';

const refuse = (problem: Problem): SvgOutlineResult => ({ ok: false, problem });

const TOO_MANY: Problem = {
  code: 'svg-too-many',
  message: 'the drawing holds too many curves to look through',
  hint: 'name the path with --id, or save it alone',
};

const noShape = (hasUse: boolean): Problem => ({
  code: 'svg-no-path',
  message: 'the drawing has no path in it',
  ...(hasUse ? { hint: 'copies (use) are not followed: save the template as a path of its own' } : {}),
});

const noSuchId = (id: string, shapes: readonly SvgShape[]): Problem => {
  const ids = shapes.flatMap((s) => (s.id === undefined ? [] : [s.id]));
  const near = nearestOf(id, ids);
  return {
    code: 'svg-no-id',
    message: `no path of the drawing has the id ${quoted(id)}`,
    ...(ids.length > 0 && ids.length <= 10 ? { expected: `one of ${ids.join(', ')}` } : {}),
    ...(near === undefined ? {} : { hint: `did you mean ${quoted(near)}?` }),
  };
};

/** The subpaths of path data, each by itself, in absolute commands; data that cannot be read stays as it is. */
const subpaths = (data: string): readonly { readonly text: string; readonly commands: number }[] => {
  if (data.length > MOST_DATA) return [{ text: data, commands: 0 }];
  let commands: SVGPathData['commands'];
  try {
    commands = new SVGPathData(data).toAbs().commands;
  } catch {
    return [{ text: data, commands: 0 }];
  }
  const found: SVGPathData['commands'][] = [];
  for (const c of commands) {
    if (c.type === SVGPathData.MOVE_TO || found.length === 0) found.push([]);
    found.at(-1)!.push(c);
  }
  return found
    .filter((part) => part.length > 1)
    .map((part) => ({ text: new SVGPathData(part).encode(), commands: part.length }));
};

/** As much as is read of one path anyway. */
const MOST_DATA = 100_000;

/** y up. */
const TURNED_OVER: Matrix = [1, 0, 0, -1, 0, 0];

const pathOf = (data: string, matrix: Matrix, tolerance: number): Path | string => {
  const whole = multiply(TURNED_OVER, matrix);
  const size = sizeOf(whole);
  if (!(size > 0 && Number.isFinite(size))) return 'a transform squeezes the path flat';
  let pieces: readonly Piece[];
  let isClosed: boolean;
  if (isSimilarity(whole)) {
    const read = piecesFromSvgPath(data, tolerance / size);
    if (!read.ok) return read.reason;
    pieces = read.pieces.map((p) => throughSimilarity(p, whole));
    isClosed = read.closed;
  } else {
    // Circles become ellipses: the commands themselves go through the matrix.
    const [a, b, c, d, e, f] = whole;
    let text: string;
    try {
      text = new SVGPathData(data).toAbs().matrix(a, b, c, d, e, f).encode();
    } catch {
      return 'path data cannot be read';
    }
    const read = piecesFromSvgPath(text, tolerance);
    if (!read.ok) return read.reason;
    pieces = read.pieces;
    isClosed = read.closed;
  }
  const first = pieces[0];
  const last = pieces.at(-1);
  if (!first || !last) return 'path data draws nothing';
  if (!isClosed && distance(first.from, last.to) > CLOSING) return openPath(pieces);
  const gap = distance(first.from, last.to);
  return closedPath(gap > 0 ? [...pieces, line(last.to, first.from)] : pieces);
};
