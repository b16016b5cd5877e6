/** Transforms of the SVG standard as matrices a b c d e f (SVG 2, 8.5; CSS Transforms 1, 8: transform as an attribute). */

import {
  angleOf,
  distance,
  line,
  type Piece,
  type Point,
  readSvgNumbers,
  subtract,
} from '../geometry/index.ts';

export type Matrix = readonly [number, number, number, number, number, number];

export const SAME: Matrix = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export const multiply = (outer: Matrix, inner: Matrix): Matrix => {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
};

export const applyMatrix = ([a, b, c, d, e, f]: Matrix, { x, y }: Point): Point => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

/** Undefined where it squeezes flat. */
export const inverseMatrix = ([a, b, c, d, e, f]: Matrix): Matrix | undefined => {
  const size = a * d - b * c;
  if (!(Math.abs(size) > 0 && Number.isFinite(size))) return undefined;
  const [p, q, r, s] = [d / size, -b / size, -c / size, a / size];
  return [p, q, r, s, -(p * e + r * f), -(q * e + s * f)];
};

/** A similar figure stays one: circles stay circles. Compared with rounding in the sixth digit of a file. */
export const isSimilarity = ([a, b, c, d]: Matrix): boolean => {
  const size = Math.hypot(a, b);
  const near = (u: number, v: number): boolean => Math.abs(u - v) <= size * SIMILAR;
  return size > 0 && ((near(a, d) && near(b, -c)) || (near(a, -d) && near(b, c)));
};

const SIMILAR = 1e-9;

/** The square root of how much larger areas become. */
export const sizeOf = ([a, b, c, d]: Matrix): number => Math.sqrt(Math.abs(a * d - b * c));

/** A line or arc through a similarity. */
export const throughSimilarity = (p: Piece, m: Matrix): Piece => {
  const from = applyMatrix(m, p.from);
  const to = applyMatrix(m, p.to);
  if (p.kind === 'line') return line(from, to);
  const center = applyMatrix(m, p.center);
  const turnsOver = m[0] * m[3] - m[1] * m[2] < 0;
  return {
    kind: 'arc',
    center,
    radius: distance(center, from),
    start: angleOf(subtract(from, center)),
    sweep: turnsOver ? -p.sweep : p.sweep,
    from,
    to,
  };
};

/** A list of more transforms than this on one element was not made by a person or a drawing program. */
const MOST_TRANSFORMS = 100;

/** Undefined where the text is no list of transforms. */
export const readTransform = (text: string | undefined): Matrix | undefined => {
  if (text === undefined) return SAME;
  let m = SAME;
  let rest = text.trim();
  if (rest === 'none') return SAME;
  for (let i = 0; rest !== ''; i++) {
    const found = /^(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]{0,400})\)\s*(,\s*(?=\S))?/.exec(
      rest,
    );
    if (!found || i >= MOST_TRANSFORMS) return undefined;
    const values = readSvgNumbers(found[2]!);
    const next = values && matrixOf(found[1]!, values);
    if (!next?.every(Number.isFinite)) return undefined;
    m = multiply(m, next);
    rest = rest.slice(found[0].length);
  }
  return m;
};

/** How many numbers each takes. */
const TAKES: Readonly<Record<string, readonly number[]>> = {
  matrix: [6],
  translate: [1, 2],
  scale: [1, 2],
  rotate: [1, 3],
  skewX: [1],
  skewY: [1],
};

const matrixOf = (name: string, v: readonly number[]): Matrix | undefined => {
  if (!TAKES[name]?.includes(v.length)) return undefined;
  const [p = Number.NaN, q, r] = v;
  const angle = (p * Math.PI) / 180;
  switch (name) {
    case 'matrix':
      return v as unknown as Matrix;
    case 'translate':
      return [1, 0, 0, 1, p, q ?? 0];
    case 'scale':
      return [p, 0, 0, q ?? p, 0, 0];
    case 'rotate': {
      const turn: Matrix = [Math.cos(angle), Math.sin(angle), -Math.sin(angle), Math.cos(angle), 0, 0];
      if (q === undefined || r === undefined) return turn;
      return multiply(multiply([1, 0, 0, 1, q, r], turn), [1, 0, 0, 1, -q, -r]);
    }
    case 'skewX':
      return [1, 0, Math.tan(angle), 1, 0, 0];
    case 'skewY':
      return [1, Math.tan(angle), 0, 1, 0, 0];
    default:
      return undefined;
  }
};
