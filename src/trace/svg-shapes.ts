/**
 * The shapes of an SVG document, each as path data with the matrix from its own units to mm of the drawing. The
 * XML is read by saxes, which knows no external entities, loads nothing and runs nothing; documents that declare
 * entities of their own are refused.
 *
 * Bounds: 4 million characters, 100,000 elements, 100 deep.
 */

import { SaxesParser } from 'saxes';
import type { Problem } from '../document/index.ts';
import {
  type Matrix,
  multiply,
  PIXEL_MM,
  readSvgLength,
  readTransform,
  readViewBox,
  viewBoxMatrix,
} from './svg-matrix.ts';

export interface SvgShape {
  readonly id: string | undefined;
  /** `path`, `polygon` and so on. */
  readonly element: string;
  readonly data: string;
  /** From the shape's units to mm of the drawing, y down, from its upper left corner. */
  readonly matrix: Matrix;
  /** Inside defs, a clip path or the like: not seen as it stands, and taken only by its id. */
  readonly hidden: boolean;
}

export interface SvgShapes {
  readonly shapes: readonly SvgShape[];
  /** How the drawing's size is known: it states it, it counts in px of 1/96 in, or the person said it. */
  readonly size: 'stated' | 'pixels' | 'given';
  /** Whether something was left out that this reader does not follow (`use`). */
  readonly hasUse: boolean;
}

export type SvgShapesResult =
  | { readonly ok: true; readonly drawing: SvgShapes }
  | { readonly ok: false; readonly problem: Problem };

const MOST_CHARACTERS = 4_000_000;
const MOST_ELEMENTS = 100_000;
const MOST_DEPTH = 100;
/** Shapes that are looked at; a drawing of more is no drawing of a template. */
const MOST_SHAPES = 5000;

const HIDING = new Set(['defs', 'symbol', 'clipPath', 'mask', 'pattern', 'marker', 'script', 'style']);

interface Level {
  readonly matrix: Matrix;
  readonly hidden: boolean;
}

/** Thrown to stop the parser; never leaves this file. */
class Stop extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

/** `unitMm` is what one unit of the drawing measures, where a person has said it. */
export const readSvgShapes = (text: string, unitMm: number | undefined): SvgShapesResult => {
  if (text.length > MOST_CHARACTERS)
    return refuse({
      code: 'svg-too-large',
      message: 'the drawing is too large',
      expected: 'at most 4 million characters',
    });
  const parser = new SaxesParser();
  const levels: Level[] = [];
  const shapes: SvgShape[] = [];
  let elements = 0;
  let size: SvgShapes['size'] = 'stated';
  let hasUse = false;
  let hasRoot = false;
  parser.on('error', (error) => {
    throw new Stop({ ...NOT_XML, found: plain(error.message) });
  });
  parser.on('doctype', (doctype) => {
    if (doctype.includes('[')) throw new Stop(ENTITIES);
  });
  parser.on('opentag', ({ name, attributes }) => {
    const local = name.replace(/^svg:/, '');
    const at = (key: string): string | undefined => attributes[key] as string | undefined;
    if (++elements > MOST_ELEMENTS || levels.length >= MOST_DEPTH) throw new Stop(TOO_MUCH);
    const around = levels.at(-1);
    if (!around) {
      if (local !== 'svg') throw new Stop(NOT_SVG);
      const root = rootMatrix(at, unitMm);
      hasRoot = true;
      size = root.size;
      levels.push({ matrix: root.matrix, hidden: false });
      return;
    }
    if (STYLED.test(at('style') ?? '')) throw new Stop(STYLE_TRANSFORM);
    const own = readTransform(at('transform'));
    if (!own) throw new Stop({ ...BAD_TRANSFORM, found: JSON.stringify(at('transform')?.slice(0, 60)) });
    const hides =
      HIDING.has(local) || /(^|;)\s*display\s*:\s*none/.test(at('style') ?? '') || at('display') === 'none';
    const hidden = around.hidden || hides;
    let matrix = multiply(around.matrix, own);
    if (local === 'svg') matrix = multiply(matrix, innerMatrix(at));
    if (local === 'use') hasUse = true;
    levels.push({ matrix, hidden });
    const data = shapeData(local, at);
    if (data === undefined) return;
    if (shapes.length >= MOST_SHAPES) throw new Stop(TOO_MUCH);
    shapes.push({ id: at('id'), element: local, data, matrix, hidden });
  });
  parser.on('closetag', () => {
    levels.pop();
  });
  try {
    parser.write(text).close();
  } catch (error) {
    if (error instanceof Stop) return refuse(error.problem);
    return refuse(NOT_XML);
  }
  if (!hasRoot) return refuse(NOT_SVG);
  return { ok: true, drawing: { shapes, size, hasUse } };
};

const refuse = (problem: Problem): SvgShapesResult => ({ ok: false, problem });

const NOT_XML: Problem = { code: 'not-xml', message: 'this is no well-formed SVG file' };
const NOT_SVG: Problem = {
  code: 'not-svg',
  message: 'this is no SVG drawing',
  expected: 'a file that begins with <svg>',
};
const ENTITIES: Problem = {
  code: 'svg-entities',
  message: 'the drawing declares entities, which are not read',
  hint: 'save it as plain SVG',
};
const TOO_MUCH: Problem = {
  code: 'svg-too-deep',
  message: 'the drawing holds too much',
  expected: `at most ${MOST_ELEMENTS} elements, ${MOST_SHAPES} shapes, ${MOST_DEPTH} deep`,
  hint: 'save the template alone',
};
const BAD_TRANSFORM: Problem = { code: 'svg-transform', message: 'a transform cannot be read' };
/** What styles may do to a shape's size and place (CSS Transforms 2, section 5); they are not read, and must not be passed over. */
const STYLED = /(^|;)\s*(transform|translate|rotate|scale|zoom)\s*:(?!\s*none\s*(;|$))/i;
const STYLE_TRANSFORM: Problem = {
  code: 'svg-style-transform',
  message: 'a style turns, moves or scales a part of the drawing, and styles are not read',
  hint: 'save it as plain SVG, with transform as an attribute',
};
const NO_SIZE: Problem = {
  code: 'svg-no-size',
  message: 'the drawing does not say how large it is',
  hint: 'say what one unit of it measures, such as --scale 1mm',
};

/** The parser's words without its position and full stop. */
const plain = (message: string): string =>
  message
    .replace(/^\S*?(\d+):(\d+):\s*/, 'line $1, ')
    .replace(/\.$/, '')
    .slice(0, 120);

type Attribute = (key: string) => string | undefined;

const rootMatrix = (
  at: Attribute,
  unitMm: number | undefined,
): { readonly matrix: Matrix; readonly size: SvgShapes['size'] } => {
  const box = readViewBox(at('viewBox'));
  if (unitMm !== undefined) {
    const [x, y] = box ? [box.x, box.y] : [0, 0];
    return { matrix: [unitMm, 0, 0, unitMm, -x * unitMm, -y * unitMm], size: 'given' };
  }
  const width = readSvgLength(at('width'));
  const height = readSvgLength(at('height'));
  if (!box) {
    // Without a viewBox a unit is a px, whatever the size of the sheet.
    if (!width && !height) throw new Stop(NO_SIZE);
    return { matrix: [PIXEL_MM, 0, 0, PIXEL_MM, 0, 0], size: 'pixels' };
  }
  const w = width?.mm ?? (height && (height.mm * box.width) / box.height);
  const h = height?.mm ?? (width && (width.mm * box.height) / box.width);
  if (!(w !== undefined && h !== undefined && w > 0 && h > 0)) throw new Stop(NO_SIZE);
  const size = (width ?? height)!.stated ? 'stated' : 'pixels';
  return { matrix: viewBoxMatrix(box, w, h, at('preserveAspectRatio')), size };
};

/** An svg element inside another: its place, and its own viewBox in the outer one's units. */
const innerMatrix = (at: Attribute): Matrix => {
  const inUnits = (key: string): number | undefined => {
    const length = readSvgLength(at(key));
    return length && length.mm / PIXEL_MM;
  };
  const place: Matrix = [1, 0, 0, 1, inUnits('x') ?? 0, inUnits('y') ?? 0];
  const box = readViewBox(at('viewBox'));
  const [w, h] = [inUnits('width'), inUnits('height')];
  if (!box || w === undefined || h === undefined) return place;
  return multiply(place, viewBoxMatrix(box, w, h, at('preserveAspectRatio')));
};

/** Path data of a shape (SVG 2, chapter 10); undefined for what is none, or draws nothing. */
const shapeData = (element: string, at: Attribute): string | undefined => {
  const number = (key: string): number => {
    const length = readSvgLength(at(key));
    return length ? length.mm / PIXEL_MM : 0;
  };
  switch (element) {
    case 'path':
      return at('d');
    case 'polyline':
    case 'polygon': {
      const points = at('points')?.trim();
      if (!points) return undefined;
      return `M ${points}${element === 'polygon' ? ' Z' : ''}`;
    }
    case 'line':
      return `M ${number('x1')} ${number('y1')} L ${number('x2')} ${number('y2')}`;
    case 'rect': {
      const [x, y, w, h] = [number('x'), number('y'), number('width'), number('height')];
      return w > 0 && h > 0 ? `M ${x} ${y} h ${w} v ${h} h ${-w} Z` : undefined;
    }
    case 'circle':
    case 'ellipse': {
      const [x, y] = [number('cx'), number('cy')];
      const rx = element === 'circle' ? number('r') : number('rx');
      const ry = element === 'circle' ? rx : number('ry');
      if (!(rx > 0 && ry > 0)) return undefined;
      return `M ${x - rx} ${y} A ${rx} ${ry} 0 0 1 ${x + rx} ${y} A ${rx} ${ry} 0 0 1 ${x - rx} ${y} Z`;
    }
    default:
      return undefined;
  }
};
