/** Path data of the shapes of the SVG standard (SVG 2, chapter 10). */

import { readSvgNumbers } from '../geometry/index.ts';
import { NotFollowed, shown } from './svg-fault.ts';
import { type Axis, userLength, type Viewport } from './svg-lengths.ts';
import type { SvgNode } from './svg-tree.ts';

export const SHAPES = new Set(['path', 'polyline', 'polygon', 'line', 'rect', 'circle', 'ellipse']);

/** One of its lengths in user units; undefined where it is not there. */
export type LengthOf = (key: string, axis: Axis) => number | undefined;

export const lengthsOf =
  (node: SvgNode, viewport: Viewport | undefined): LengthOf =>
  (key, axis) =>
    userLength(node.attributes.get(key), axis, viewport);

/** Widths, heights and radii that are less than nothing are mistakes (SVG 2, 7.4). */
export const notNegative =
  (lengthOf: LengthOf): LengthOf =>
  (key, axis) => {
    const length = lengthOf(key, axis);
    if (length !== undefined && length < 0)
      throw new NotFollowed({
        code: 'svg-negative',
        message: `a ${key} is less than 0`,
        found: String(length),
        hint: 'save the template as a plain path',
      });
    return length;
  };

/** Undefined for what draws nothing. Throws NotFollowed. */
export const shapeData = (node: SvgNode, viewport: Viewport | undefined): string | undefined => {
  const any = lengthsOf(node, viewport);
  const size = notNegative(any);
  const x = (key: string): number => any(key, 'x') ?? 0;
  const y = (key: string): number => any(key, 'y') ?? 0;
  switch (node.name) {
    case 'path': {
      const d = node.attributes.get('d')?.trim();
      return d === '' || d === 'none' ? undefined : d;
    }
    case 'polyline':
    case 'polygon': {
      const points = pointsOf(node.attributes.get('points') ?? '');
      return points.length < 2 ? undefined : `M ${points.join(' ')}${node.name === 'polygon' ? ' Z' : ''}`;
    }
    case 'line':
      return `M ${x('x1')} ${y('y1')} L ${x('x2')} ${y('y2')}`;
    case 'rect':
      return rectData(x('x'), y('y'), size);
    case 'circle':
    case 'ellipse': {
      const [cx, cy] = [x('cx'), y('cy')];
      const [rx, ry] = radii(size, node.name === 'circle');
      if (!(rx > 0 && ry > 0)) return undefined;
      const arc = `A ${rx} ${ry} 0 0 1`;
      return `M ${cx + rx} ${cy} ${arc} ${cx} ${cy + ry} ${arc} ${cx - rx} ${cy} ${arc} ${cx} ${cy - ry} ${arc} ${cx + rx} ${cy} Z`;
    }
    default:
      return undefined;
  }
};

/** The one that is not said is as the other (SVG 2, 7.4 and 10.2). */
const radii = (size: LengthOf, isCircle: boolean): readonly [number, number] => {
  const rx = isCircle ? size('r', 'both') : size('rx', 'x');
  const ry = isCircle ? rx : size('ry', 'y');
  return [rx ?? ry ?? 0, ry ?? rx ?? 0];
};

/** SVG 2, 10.2, step by step: corners are no rounder than half of the side. */
const rectData = (x: number, y: number, size: LengthOf): string | undefined => {
  const [w, h] = [size('width', 'x') ?? 0, size('height', 'y') ?? 0];
  if (!(w > 0 && h > 0)) return undefined;
  const [a, b] = radii(size, false);
  const [rx, ry] = [Math.min(a, w / 2), Math.min(b, h / 2)];
  const [right, bottom] = [x + w, y + h];
  if (!(rx > 0 && ry > 0)) return `M ${x} ${y} L ${right} ${y} L ${right} ${bottom} L ${x} ${bottom} Z`;
  const arc = `A ${rx} ${ry} 0 0 1`;
  return (
    `M ${x + rx} ${y} L ${right - rx} ${y} ${arc} ${right} ${y + ry} L ${right} ${bottom - ry} ` +
    `${arc} ${right - rx} ${bottom} L ${x + rx} ${bottom} ${arc} ${x} ${bottom - ry} L ${x} ${y + ry} ${arc} ${x + rx} ${y} Z`
  );
};

/** SVG 2, 10.6: pairs of numbers; a browser draws as far as the first mistake. */
const pointsOf = (text: string): readonly string[] => {
  const numbers = readSvgNumbers(text);
  if (!numbers || numbers.length % 2 !== 0)
    throw new NotFollowed({
      code: 'svg-points',
      message: 'the points of a shape cannot be read',
      found: shown(text),
      expected: 'pairs of numbers',
    });
  return Array.from({ length: numbers.length / 2 }, (_, i) => `${numbers[2 * i]},${numbers[2 * i + 1]}`);
};
