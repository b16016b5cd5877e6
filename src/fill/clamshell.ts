/** Clamshell: rows of half circles, each row half a shell aside, so that every shell stands on the joins of two others. */

import { arc, openPath, type Path } from '../geometry/index.ts';
import { checked, type FieldSide, type Fill, MOST_ELEMENTS, nothing, TOO_FINE } from './fill.ts';
import { laidOn } from './on-frames.ts';

/** A shell is a half circle of this radius, in spacings: the largest disc in one is then one spacing in radius. */
const RADIUS = 1.5;

export const clamshell: Fill = checked({
  name: 'clamshell',
  about: 'rows of half circles, each row half a shell aside',
  suits: 'area',
  sewn: 'sew row after row, each back beside the one before; at the end of a row the needle travels along the edge to the next',
  crowd: 1 / (2 * RADIUS * RADIUS),
  takes: [],
  fill: (region, options, context) => {
    const radius = RADIUS * options.spacing;
    let many = false;
    const paths = laidOn(region, options, context, (side) => {
      const rows = shellRows(side, radius);
      many ||= !rows;
      return rows ?? [];
    });
    if (many) return nothing(TOO_FINE);
    if (paths.length === 0) return nothing('the area is too small for a line at this spacing');
    return { paths, continuous: false, messages: [] };
  },
});

/** One scalloped line for each row, from below; every other one runs backwards. */
const shellRows = ({ length, from, to, mitre }: FieldSide, radius: number): Path[] | undefined => {
  // Towards a mitre a side is longer than its own line.
  const beyond = mitre === undefined ? 0 : Math.abs(Math.max(Math.abs(from), Math.abs(to)) / Math.tan(mitre));
  const half = Math.ceil((length / 2 + beyond) / (2 * radius)) + 1;
  const rows = Math.ceil((to - from) / radius) + 1;
  if (!(rows * half < MOST_ELEMENTS)) return undefined;
  return Array.from({ length: rows }, (_, k) => {
    const y = from + (k - 1) * radius;
    const aside = k % 2 === 0 ? 0 : radius;
    const centres = Array.from(
      { length: 2 * half + 1 },
      (_, i) => length / 2 + (i - half) * 2 * radius + aside,
    );
    return openPath(
      k % 2 === 0
        ? centres.map((x) => arc({ x, y }, radius, Math.PI, -Math.PI))
        : centres.reverse().map((x) => arc({ x, y }, radius, 0, Math.PI)),
    );
  });
};
