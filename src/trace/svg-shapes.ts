/**
 * The shapes of an SVG document, each as path data with the matrix from its own units to mm of the drawing, as a
 * browser paints them. What is not followed is said of the shapes that it concerns, with its place.
 */

import { type Problem, quoted } from '../document/index.ts';
import { lengthsOf, notNegative, SHAPES, shapeData } from './svg-basic-shapes.ts';
import { CUT_OFF, type Cut, cutsOf } from './svg-cut.ts';
import { FLATTEN, NotFollowed, shown } from './svg-fault.ts';
import { userLength, type Viewport } from './svg-lengths.ts';
import { type Matrix, multiply, readTransform, SAME } from './svg-matrix.ts';
import { INKED, isLeftOut, isPainted, type Paint, PLAIN, paintOf } from './svg-paint.ts';
import { type SvgSize, sizeOfDrawing } from './svg-root.ts';
import {
  addStyleSheet,
  type Declared,
  declaredOf,
  emptySheet,
  refuseUnfollowed,
  type StyleSheet,
} from './svg-style.ts';
import {
  MOST_DEPTH,
  MOST_ELEMENTS,
  MOST_SHAPES,
  readSvgTree,
  type SvgNode,
  type SvgTree,
  TOO_MUCH,
} from './svg-tree.ts';
import { viewBoxMatrix, viewBoxOf } from './svg-viewbox.ts';

export interface SvgShape {
  readonly id: string | undefined;
  /** `path`, `polygon` and so on. */
  readonly element: string;
  readonly data: string;
  /** From the shape's units to mm of the drawing, y down, from its upper left corner. */
  readonly matrix: Matrix;
  /** Not seen as it stands, and taken only by its id. */
  readonly hidden: boolean;
  /** Why it cannot be read as a browser paints it. */
  readonly fault: Problem | undefined;
  /** What may take a part of it away. */
  readonly cuts: readonly Cut[];
  /** A problem of its own data, with its place. */
  readonly place: (problem: Problem) => Problem;
}

export interface SvgShapes {
  readonly shapes: readonly SvgShape[];
  readonly size: SvgSize['size'];
}

export type SvgShapesResult =
  | { readonly ok: true; readonly drawing: SvgShapes }
  | { readonly ok: false; readonly problem: Problem };

export interface SvgReading {
  /** What one unit of the drawing measures (mm), where a person has said it. */
  readonly unitMm?: number | undefined;
  /** The file's name in what is said of it; without one no place is said. */
  readonly file?: string | undefined;
}

/** What an element has from those around it. */
interface Around {
  readonly matrix: Matrix;
  readonly viewport: Viewport | undefined;
  readonly hidden: boolean;
  readonly paint: Paint;
  readonly fault: Problem | undefined;
  readonly cuts: readonly Cut[];
  /** The elements around it, through copies too. */
  readonly trail: readonly SvgNode[];
  readonly isCopy: boolean;
}

interface Walk {
  readonly tree: SvgTree;
  readonly sheet: StyleSheet;
  readonly shapes: SvgShape[];
  readonly placer: (node: SvgNode) => (problem: Problem) => Problem;
  visited: number;
}

/** Thrown to end the walk; never leaves this file. */
class Stop extends Error {}

export const readSvgShapes = (text: string, { unitMm, file }: SvgReading = {}): SvgShapesResult => {
  const read = readSvgTree(text);
  if (!read.ok) return read;
  const { tree } = read;
  const { root } = tree;
  const placer =
    ({ line, column }: SvgNode) =>
    (problem: Problem): Problem =>
      file === undefined ? problem : { ...problem, place: { file, line, column } };
  const refuse = (error: unknown, node: SvgNode): SvgShapesResult => {
    if (error instanceof NotFollowed) return { ok: false, problem: placer(node)(error.problem) };
    throw error;
  };
  const sheet = emptySheet();
  for (const style of tree.styles)
    try {
      addStyleSheet(sheet, style);
    } catch (error) {
      return refuse(error, style);
    }
  if (tree.moving) return { ok: false, problem: placer(tree.moving)(MOVING) };
  let size: SvgSize;
  let hidden: boolean;
  let paint: Paint;
  let cuts: readonly Cut[];
  try {
    const declared = declaredOf(root, sheet);
    refuseUnfollowed(declared, true);
    if (ownTransform(root, declared) !== SAME) throw new NotFollowed(ROOT_TRANSFORM);
    hidden = isLeftOut(declared);
    paint = paintOf(declared, PLAIN);
    size = sizeOfDrawing(root, declared, unitMm);
    cuts = cutsOf(root, declared, tree, size.matrix, placer(root));
  } catch (error) {
    return refuse(error, root);
  }
  const walk: Walk = { tree, sheet, shapes: [], placer, visited: 0 };
  const { matrix, viewport } = size;
  const around = { matrix, viewport, hidden, paint, fault: undefined, cuts, trail: [root], isCopy: false };
  try {
    for (const child of root.children) visit(walk, child, around);
  } catch (error) {
    if (error instanceof Stop) return { ok: false, problem: TOO_MUCH };
    throw error;
  }
  return { ok: true, drawing: { shapes: walk.shapes, size: size.size } };
};

const MOVING: Problem = {
  code: 'svg-moving',
  message: 'the drawing moves or changes by itself, which is not followed',
  hint: 'save it without animation',
};
const ROOT_TRANSFORM: Problem = {
  code: 'svg-transform',
  message: 'the drawing as a whole has a transform, which is not followed',
  hint: FLATTEN,
};
const badTransform = (text: string): Problem => ({
  code: 'svg-transform',
  message: 'a transform cannot be read',
  found: shown(text),
  hint: FLATTEN,
});

/** A copy's own name, and the size that it gives to an inner drawing. */
interface Copy {
  readonly id: string | undefined;
  readonly width: string | undefined;
  readonly height: string | undefined;
}

/** Elements whose children are painted where they stand. */
const GROUPS = new Set(['g', 'a', 'svg', 'switch', 'use']);

const visit = (walk: Walk, node: SvgNode, around: Around, copy?: Copy): void => {
  if (++walk.visited > MOST_ELEMENTS || around.trail.length >= MOST_DEPTH) throw new Stop();
  const isShape = SHAPES.has(node.name);
  if (!isShape && !GROUPS.has(node.name) && !(copy && node.name === 'symbol')) {
    visitAside(walk, node, around);
    return;
  }
  const here = enter(walk, node, around, copy);
  if (isShape)
    addShape(walk, node, here, copy ? copy.id : around.isCopy ? undefined : node.attributes.get('id'));
  else if (node.name === 'use') followCopy(walk, node, here);
  else if (node.name === 'switch') visitChoices(walk, node, here);
  else for (const child of node.children) visit(walk, child, here);
};

/** Where it is not known which child a switch paints, it may be any of them. */
const visitChoices = (walk: Walk, node: SvgNode, here: Around): void => {
  let chosen: SvgNode | undefined;
  let { fault } = here;
  try {
    chosen = firstChoice(node);
  } catch (error) {
    fault ??= faultOf(error, walk.placer(node));
  }
  for (const child of node.children)
    visit(walk, child, { ...here, fault, hidden: here.hidden || (!fault && child !== chosen) });
};

const addShape = (walk: Walk, node: SvgNode, here: Around, id: string | undefined): void => {
  const place = walk.placer(node);
  let { fault } = here;
  let data: string | undefined = '';
  if (!fault)
    try {
      data = shapeData(node, here.viewport);
    } catch (error) {
      fault = faultOf(error, place);
    }
  if (data === undefined) return;
  if (walk.shapes.length >= MOST_SHAPES) throw new Stop();
  const { matrix, cuts } = here;
  const hidden = here.hidden || !isPainted(here.paint, node.name);
  walk.shapes.push({ id, element: node.name, data, matrix, hidden, fault, cuts, place });
};

/** Something that may hold shapes, and is not followed, is in the place of a shape. */
const addFault = (walk: Walk, node: SvgNode, here: Around, problem: Problem): void => {
  const place = walk.placer(node);
  const { matrix, hidden, cuts } = here;
  if (walk.shapes.length >= MOST_SHAPES) throw new Stop();
  const id = here.isCopy ? undefined : node.attributes.get('id');
  walk.shapes.push({ id, element: node.name, data: '', matrix, hidden, fault: place(problem), cuts, place });
};

const faultOf = (error: unknown, place: (problem: Problem) => Problem): Problem => {
  if (error instanceof NotFollowed) return place(error.problem);
  throw error;
};

/** What the elements inside have from this one; where it is not followed, they have that from it. */
const enter = (walk: Walk, node: SvgNode, around: Around, copy: Copy | undefined): Around => {
  const place = walk.placer(node);
  let here: Around = {
    ...around,
    paint: INKED,
    trail: [...around.trail, node],
    isCopy: around.isCopy || copy !== undefined,
  };
  try {
    const declared = declaredOf(node, walk.sheet);
    const isOut = isLeftOut(declared) || !isWanted(node);
    here = { ...here, hidden: here.hidden || isOut };
    here = { ...here, paint: paintOf(declared, around.paint) };
    refuseUnfollowed(declared, false);
    const own = multiply(around.matrix, ownTransform(node, declared));
    const cuts = [...around.cuts, ...cutsOf(node, declared, walk.tree, own, place)];
    here = { ...here, matrix: own, cuts };
    if (node.name === 'svg' || node.name === 'symbol') return enterDrawing(node, declared, here, copy, place);
    if (node.name === 'use') {
      const lengthOf = lengthsOf(node, here.viewport);
      const [x, y] = [lengthOf('x', 'x') ?? 0, lengthOf('y', 'y') ?? 0];
      return { ...here, matrix: multiply(own, [1, 0, 0, 1, x, y]) };
    }
    return here;
  } catch (error) {
    return { ...here, fault: here.fault ?? faultOf(error, place) };
  }
};

/** SAME itself where it does nothing. Throws NotFollowed. */
const ownTransform = (node: SvgNode, declared: Declared): Matrix => {
  // A style's "none" stands above the attribute.
  const text = declared('transform') === undefined ? node.attributes.get('transform') : undefined;
  const own = readTransform(text);
  if (!own) throw new NotFollowed(badTransform(text ?? ''));
  if (own.every((v, i) => v === SAME[i])) return SAME;
  const [origin, box] = [declared('transform-origin') || '0 0', declared('transform-box') || 'view-box'];
  const isPlain = /^0(?:px)?(?:\s+0(?:px)?){0,2}$/.test(origin) && box === 'view-box';
  if (isPlain) return own;
  throw new NotFollowed({
    code: 'svg-transform-origin',
    message: 'a transform is about a point of its own (transform-origin), which is not followed',
    found: shown(`${origin} of the ${box}`),
    hint: FLATTEN,
  });
};

/** An inner drawing: its place, its own viewBox, and what it cuts off (SVG 2, 5.1, 5.5 and 8.2). */
const enterDrawing = (
  node: SvgNode,
  declared: Declared,
  here: Around,
  copy: Copy | undefined,
  place: (problem: Problem) => Problem,
): Around => {
  const { attributes } = node;
  const isSymbol = node.name === 'symbol';
  const unread = isSymbol
    ? ['x', 'y', 'width', 'height', 'refX', 'refY', 'transform'].find(
        (key) => attributes.get(key) !== undefined,
      )
    : undefined;
  if (unread !== undefined)
    throw new NotFollowed({
      code: 'svg-symbol',
      message: `a symbol has its own ${unread}, which is not followed`,
      hint: FLATTEN,
    });
  const side = (key: 'width' | 'height', axis: 'x' | 'y'): number => {
    const own = copy?.[key];
    const texts = own === undefined ? attributes : new Map(attributes).set(key, own);
    const length = notNegative(lengthsOf({ ...node, attributes: texts }, here.viewport))(key, axis);
    return length ?? userLength('100%', axis, here.viewport)!;
  };
  const viewport = { width: side('width', 'x'), height: side('height', 'y') };
  const lengthOf = lengthsOf(node, here.viewport);
  const [x, y] = [lengthOf('x', 'x') ?? 0, lengthOf('y', 'y') ?? 0];
  const matrix = multiply(here.matrix, [1, 0, 0, 1, x, y]);
  const box = viewBoxOf(node);
  if (!(viewport.width > 0 && viewport.height > 0)) return { ...here, hidden: true };
  const frame = { rectangle: { x: 0, y: 0, ...viewport }, matrix };
  const cuts =
    declared('overflow') === 'visible' ? here.cuts : [...here.cuts, { problem: place(CUT_OFF), frame }];
  if (!box) return { ...here, matrix, viewport, cuts };
  const inner = viewBoxMatrix(box, viewport, attributes.get('preserveAspectRatio'));
  return { ...here, matrix: multiply(matrix, inner), viewport: box, cuts };
};

/** SVG 2, 5.5: the named element, painted again, with what stands on the copy. */
const followCopy = (walk: Walk, node: SvgNode, here: Around): void => {
  const { attributes } = node;
  const href = attributes.get('href') ?? '';
  const target = walk.tree.byId.get(href.slice(1));
  if (here.fault) addFault(walk, node, here, here.fault);
  else if (href !== '' && !href.startsWith('#')) addFault(walk, node, here, COPY_FROM_ELSEWHERE);
  else if (target && here.trail.includes(target)) addFault(walk, node, here, COPY_OF_ITSELF);
  else if (target && (SHAPES.has(target.name) || GROUPS.has(target.name) || target.name === 'symbol'))
    visit(walk, target, here, {
      id: here.isCopy ? undefined : attributes.get('id'),
      width: attributes.get('width'),
      height: attributes.get('height'),
    });
};

const COPY_FROM_ELSEWHERE: Problem = {
  code: 'svg-use',
  message: 'a copy (use) of a shape in another file is not followed',
  hint: 'save the template as a path of its own',
};
const COPY_OF_ITSELF: Problem = {
  code: 'svg-use',
  message: 'a copy (use) holds itself, which is not followed',
  hint: 'save the template as a path of its own',
};

/** Conditional processing (SVG 2, 5.8). Throws NotFollowed where it depends on who looks. */
const isWanted = ({ attributes }: SvgNode): boolean => {
  const systemLanguage = attributes.get('systemLanguage');
  const requiredExtensions = attributes.get('requiredExtensions');
  if (systemLanguage !== undefined || (requiredExtensions !== undefined && MAY_BE.test(requiredExtensions)))
    throw new NotFollowed({
      code: 'svg-condition',
      message: 'a part of the drawing is painted for some people only, which is not followed',
      found: shown(
        systemLanguage === undefined
          ? `requiredExtensions: ${requiredExtensions}`
          : `systemLanguage: ${systemLanguage}`,
      ),
      hint: 'save the template alone as a plain path',
    });
  return requiredExtensions === undefined;
};

/** Nothing, or what some browsers have. */
const MAY_BE = /^\s*$|w3\.org/;

/** Of a switch the first child that is wanted is painted (SVG 2, 5.8.2). Throws NotFollowed. */
const firstChoice = (node: SvgNode): SvgNode | undefined => {
  const child = node.children.find((c) => !c.name.includes(' ') && isWanted(c));
  if (!child || CHOICES.has(child.name) || SHAPES.has(child.name) || GROUPS.has(child.name)) return child;
  throw new NotFollowed({
    code: 'svg-condition',
    message: `the first choice of a switch is <${child.name}>, which is not followed`,
    hint: 'save the template alone as a plain path',
  });
};

const CHOICES = new Set(['foreignObject', 'text', 'image']);

/** What is not painted where it stands: its shapes can be named, where their size is their own. */
const visitAside = (walk: Walk, node: SvgNode, around: Around): void => {
  if (node.name === 'foreignObject' && holdsDrawing(node)) addFault(walk, node, around, FOREIGN);
  const fault =
    node.name === 'defs'
      ? around.fault
      : (around.fault ??
        walk.placer(node)({
          code: 'svg-aside',
          message: `what stands in a <${quoted(node.name).slice(1, -1)}> has no size of its own`,
          hint: 'name a path of the drawing itself',
        }));
  const inside = { ...around, hidden: true, fault, trail: [...around.trail, node] };
  for (const child of node.children) visit(walk, child, inside);
};

const FOREIGN: Problem = {
  code: 'svg-foreign',
  message: 'a drawing within a foreignObject is not followed',
  hint: 'save the template alone as a plain path',
};

const holdsDrawing = (node: SvgNode): boolean => node.name === 'svg' || node.children.some(holdsDrawing);
