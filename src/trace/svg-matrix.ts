/** Transforms of the SVG standard as matrices a b c d e f, and the map from a viewBox to its viewport (SVG 2, 8.5 and 8.6). */

import { angleOf, distance, line, type Piece, type Point, subtract } from '../geometry/index.ts';

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

const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi;
/** A list of more transforms than this on one element was not made by a person or a drawing program. */
const MOST_TRANSFORMS = 100;

/** Undefined where the text is no list of transforms. */
export const readTransform = (text: string | undefined): Matrix | undefined => {
  if (text === undefined) return SAME;
  let m = SAME;
  let rest = text.trim();
  for (let i = 0; rest !== ''; i++) {
    const found = /^(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]{0,400})\)[\s,]*/.exec(rest);
    if (!found || i >= MOST_TRANSFORMS) return undefined;
    const values = (found[2]!.match(NUMBER) ?? []).map(Number);
    const next = matrixOf(found[1]!, values);
    if (!next?.every(Number.isFinite)) return undefined;
    m = multiply(m, next);
    rest = rest.slice(found[0].length);
  }
  return m;
};

const matrixOf = (name: string, v: readonly number[]): Matrix | undefined => {
  const [p = Number.NaN, q, r] = v;
  const angle = (p * Math.PI) / 180;
  switch (name) {
    case 'matrix':
      return v.length === 6 ? (v as unknown as Matrix) : undefined;
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

/** mm to one of the units that CSS calls absolute (CSS Values 3, 6.2): a px is 1/96 in. */
const UNIT_MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
  '': 25.4 / 96,
};

export const PIXEL_MM = 25.4 / 96;

export interface SvgLength {
  readonly mm: number;
  /** Whether it says its unit, and not px. */
  readonly stated: boolean;
}

/** Undefined for percentages, font sizes and nonsense. */
export const readSvgLength = (text: string | undefined): SvgLength | undefined => {
  const found = /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*([a-z]*)\s*$/i.exec(text ?? '');
  const unit = found?.[2]?.toLowerCase();
  const size = unit === undefined ? undefined : UNIT_MM[unit];
  if (!found || size === undefined) return undefined;
  const mm = Number(found[1]) * size;
  return Number.isFinite(mm) ? { mm, stated: unit !== '' && unit !== 'px' } : undefined;
};

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const readViewBox = (text: string | undefined): ViewBox | undefined => {
  const v = (text?.match(NUMBER) ?? []).map(Number);
  const [x, y, width, height] = v;
  if (v.length !== 4 || !(width! > 0 && height! > 0)) return undefined;
  return v.every(Number.isFinite) ? { x: x!, y: y!, width: width!, height: height! } : undefined;
};

/** From the viewBox's units to a viewport, by preserveAspectRatio (SVG 2, 8.6 to 8.7). */
export const viewBoxMatrix = (box: ViewBox, width: number, height: number, keep = 'xMidYMid'): Matrix => {
  const sx = width / box.width;
  const sy = height / box.height;
  if (/^\s*none\b/.test(keep)) return [sx, 0, 0, sy, -box.x * sx, -box.y * sy];
  const s = /\bslice\b/.test(keep) ? Math.max(sx, sy) : Math.min(sx, sy);
  const share = (name: string): number =>
    keep.includes(`${name}Min`) ? 0 : keep.includes(`${name}Max`) ? 1 : 0.5;
  return [
    s,
    0,
    0,
    s,
    -box.x * s + (width - box.width * s) * share('x'),
    -box.y * s + (height - box.height * s) * share('Y'),
  ];
};
