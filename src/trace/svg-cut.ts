/** What may cut off a part of a shape: clip paths, masks, filters, and inner drawings (CSS Masking 1; SVG 2, 8.4). */

import type { Problem } from '../document/index.ts';
import { type Path, type Point, pieceAt } from '../geometry/index.ts';
import { lengthsOf } from './svg-basic-shapes.ts';
import { NotFollowed } from './svg-fault.ts';
import { applyMatrix, inverseMatrix, type Matrix } from './svg-matrix.ts';
import type { Declared } from './svg-style.ts';
import type { SvgNode, SvgTree } from './svg-tree.ts';

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Cut {
  /** What to say of a shape that it cuts. */
  readonly problem: Problem;
  /** Nothing inside it is cut; where there is none, everything may be. */
  readonly frame?: { readonly rectangle: Rectangle; readonly matrix: Matrix };
}

const cutBy = (what: string): Problem => ({
  code: 'svg-cut',
  message: `the path is cut or changed by a ${what}, which is not followed`,
  hint: `take the ${what} off it in the drawing program, or save the template alone as a plain path`,
});

export const CUT_OFF: Problem = {
  code: 'svg-cut',
  message: 'the path reaches beyond the inner drawing that it stands in, which cuts it off',
  hint: 'save the template alone as a plain path',
};

/** What an element's own clip path, mask and filter do; `matrix` is from its units to mm. */
export const cutsOf = (
  node: SvgNode,
  declared: Declared,
  tree: SvgTree,
  matrix: Matrix,
  place: (problem: Problem) => Problem,
): readonly Cut[] => {
  const cuts: Cut[] = [];
  const clip = declared('clip-path') || 'none';
  if (clip !== 'none') {
    // What an inner drawing's own clip path is measured in depends on who reads it.
    const rectangle = node.name === 'svg' || node.name === 'symbol' ? undefined : rectangleOf(clip, tree);
    cuts.push({ problem: place(cutBy('clip path')), ...(rectangle && { frame: { rectangle, matrix } }) });
  }
  for (const property of ['mask', 'filter'])
    if ((declared(property) || 'none') !== 'none') cuts.push({ problem: place(cutBy(property)) });
  return cuts;
};

/** Attributes with which a clip path is still a plain rectangle in the units of what it clips. */
const OF_CLIP = new Set(['id', 'clipPathUnits']);
const OF_RECTANGLE = new Set(['id', 'x', 'y', 'width', 'height', 'fill']);

/** The rectangle that a drawing program clips its whole sheet with; undefined for any other clip path. */
const rectangleOf = (clip: string, tree: SvgTree): Rectangle | undefined => {
  const name = /^url\(\s*["']?#([^"')\s]+)["']?\s*\)$/i.exec(clip)?.[1];
  const found = name === undefined ? undefined : tree.byId.get(name);
  const [rect, ...more] = found?.children ?? [];
  // A style sheet could change either of them.
  if (found?.name !== 'clipPath' || rect?.name !== 'rect' || more.length > 0 || tree.styles.length > 0)
    return undefined;
  if ((found.attributes.get('clipPathUnits') ?? 'userSpaceOnUse') !== 'userSpaceOnUse') return undefined;
  const isPlain =
    [...found.attributes.keys()].every((key) => OF_CLIP.has(key)) &&
    [...rect.attributes.keys()].every((key) => OF_RECTANGLE.has(key)) &&
    rect.children.length === 0;
  if (!isPlain) return undefined;
  const lengthOf = lengthsOf(rect, undefined);
  try {
    const [width, height] = [lengthOf('width', 'x') ?? 0, lengthOf('height', 'y') ?? 0];
    return { x: lengthOf('x', 'x') ?? 0, y: lengthOf('y', 'y') ?? 0, width, height };
  } catch (error) {
    if (error instanceof NotFollowed) return undefined;
    throw error;
  }
};

/** Points of each line or arc that are looked at. */
const LOOKS = 32;
/** How far (mm) a path may stand over the frame: rounding in a file. */
const OVER = 0.01;

/** The first of the cuts that takes something of the path away; `matrix` is from mm of the drawing to those of the path. */
export const cutOf = (
  path: Path,
  cuts: readonly Cut[],
  toDrawing: (p: Point) => Point,
): Problem | undefined =>
  cuts.find(({ frame }) => {
    const back = frame && inverseMatrix(frame.matrix);
    if (!frame || !back) return true;
    const { x, y, width, height } = frame.rectangle;
    const [a, b, c, d] = back;
    const [overX, overY] = [OVER * Math.hypot(a, c), OVER * Math.hypot(b, d)];
    const isIn = (p: Point): boolean =>
      p.x >= x - overX && p.x <= x + width + overX && p.y >= y - overY && p.y <= y + height + overY;
    return !path.pieces.every((piece) => {
      const looks = piece.kind === 'line' ? 1 : LOOKS;
      return Array.from({ length: looks + 1 }, (_, i) => i / looks).every((share) =>
        isIn(applyMatrix(back, toDrawing(pieceAt(piece, share)))),
      );
    });
  })?.problem;
