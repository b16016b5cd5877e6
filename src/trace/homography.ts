/**
 * The map between two views of one plane: from places in a photograph to mm on the sheet that was photographed.
 *
 * Method: the direct linear transformation with normalised coordinates (Hartley and Zisserman, Multiple View
 * Geometry in Computer Vision, 2nd ed., 2003, algorithm 4.2; with the last entry 1, section 4.1.2). Four pairs give
 * it exactly, more by least squares. No three of the first four may lie on one line.
 */

import { norm, type Point, subtract } from '../geometry/index.ts';

/** Row by row: x' = (h₀x + h₁y + h₂)/(h₆x + h₇y + h₈). */
export type Homography = readonly number[];

export const applyHomography = (h: Homography, { x, y }: Point): Point => {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return { x: (h[0]! * x + h[1]! * y + h[2]!) / w, y: (h[3]! * x + h[4]! * y + h[5]!) / w };
};

/** The way back, by the matrix of cofactors; undefined where the map squeezes the plane flat. */
export const inverseHomography = (m: Homography): Homography | undefined => {
  const [a, b, c, d, e, f, g, h, i] = m as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!(Math.abs(det) > 0)) return undefined;
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ].map((v) => v / det);
};

/** Undefined where the pairs do not settle it. */
export const findHomography = (from: readonly Point[], to: readonly Point[]): Homography | undefined => {
  if (from.length < 4 || from.length !== to.length) return undefined;
  const a = normaliser(from);
  const b = normaliser(to);
  if (!a || !b) return undefined;
  // Two equations a pair, in the eight unknown entries; solved by the normal equations.
  const rows = Array.from({ length: 8 }, () => new Float64Array(9));
  from.forEach((p, i) => {
    const { x, y } = a.into(p);
    const { x: u, y: v } = b.into(to[i]!);
    const equations = [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ];
    for (const e of equations)
      for (let r = 0; r < 8; r++) for (let c = 0; c < 9; c++) rows[r]![c]! += e[r]! * e[c]!;
  });
  const h = solveRows(rows);
  if (!h) return undefined;
  return multiply(b.back, multiply([...h, 1], a.forth));
};

/** Brings points to the middle and to a mean distance of √2 from it. */
const normaliser = (points: readonly Point[]) => {
  const n = points.length;
  const middle = {
    x: points.reduce((s, p) => s + p.x, 0) / n,
    y: points.reduce((s, p) => s + p.y, 0) / n,
  };
  const mean = points.reduce((s, p) => s + norm(subtract(p, middle)), 0) / n;
  if (!(mean > 0 && Number.isFinite(mean))) return undefined;
  const k = Math.SQRT2 / mean;
  return {
    into: (p: Point): Point => ({ x: k * (p.x - middle.x), y: k * (p.y - middle.y) }),
    forth: [k, 0, -k * middle.x, 0, k, -k * middle.y, 0, 0, 1],
    back: [1 / k, 0, middle.x, 0, 1 / k, middle.y, 0, 0, 1],
  };
};

const multiply = (a: readonly number[], b: readonly number[]): number[] =>
  Array.from({ length: 9 }, (_, i) => {
    const r = 3 * Math.floor(i / 3);
    const c = i % 3;
    return a[r]! * b[c]! + a[r + 1]! * b[c + 3]! + a[r + 2]! * b[c + 6]!;
  });

/** Gauss with the largest pivot of the column; the right side stands in the last column. */
const solveRows = (rows: Float64Array[]): number[] | undefined => {
  const n = rows.length;
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[best]![c]!)) best = r;
    const pivot = rows[best]!;
    rows[best] = rows[c]!;
    rows[c] = pivot;
    if (!(Math.abs(pivot[c]!) > 1e-12)) return undefined;
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const f = rows[r]![c]! / pivot[c]!;
      for (let k = c; k <= n; k++) rows[r]![k]! -= f * pivot[k]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
};
