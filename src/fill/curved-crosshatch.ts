/**
 * Curved crosshatch: one arc moved along by equal steps, and the same arcs in the looking glass. The arc has the radius of
 * the template's own widest arc, as if its edge were laid down again and again; wider where that would not reach across.
 */

import { arc, openPath, type Path } from '../geometry/index.ts';
import { checked, type FieldSide, type Fill, MOST_ELEMENTS, nothing, TOO_FINE } from './fill.ts';
import { laidOn } from './on-frames.ts';

/** Arcs go across on the diagonal, and turn by no more than this (radians) to either side of it. */
const MOST_TURN = 0.35;

export const curvedCrosshatch: Fill = checked({
  name: 'curved crosshatch',
  about: 'two families of arcs like the template’s own, crossing on the diagonal',
  suits: 'area',
  sewn: 'sew one family of arcs, each back beside the one before, then the other; between two arcs the needle travels along the edge',
  crowd: 0.2,
  takes: [],
  fill: (region, options, context) => {
    let many = false;
    const paths = laidOn(region, options, context, (side) => {
      const arcs = arcsAcross(side, options.spacing, context?.radius ?? 0);
      many ||= !arcs;
      return arcs ?? [];
    });
    if (many) return nothing(TOO_FINE);
    if (paths.length === 0) return nothing('the area is too small for a line at this spacing');
    return { paths, continuous: false, messages: [] };
  },
});

const arcsAcross = (
  { length, from, to, mitre }: FieldSide,
  spacing: number,
  radius: number,
): Path[] | undefined => {
  const height = to - from;
  const chord = height * Math.SQRT2;
  const r = Math.max(radius, chord / 2 / Math.sin(MOST_TURN));
  const pitch = spacing * Math.SQRT2;
  const beyond =
    height + (mitre === undefined ? 0 : Math.abs(Math.max(Math.abs(from), Math.abs(to)) / Math.tan(mitre)));
  const half = Math.ceil((length / 2 + beyond) / pitch) + 1;
  if (!(4 * half < MOST_ELEMENTS)) return undefined;
  // The arc over the chord that rises on the diagonal from the lower line to the upper one, its middle in the frame's.
  const turn = Math.asin(chord / 2 / r);
  const middle = { x: length / 2, y: (from + to) / 2 };
  const centre = {
    x: middle.x + r * Math.cos(turn) * Math.SQRT1_2,
    y: middle.y - r * Math.cos(turn) * Math.SQRT1_2,
  };
  return [1, -1].flatMap((way) =>
    Array.from({ length: 2 * half }, (_, k) => {
      const x = centre.x + (k + 0.5 - half) * pitch;
      const [at, start, sweep] =
        way === 1
          ? [{ x, y: centre.y }, (3 * Math.PI) / 4 + turn, -2 * turn]
          : [{ x: length - x, y: centre.y }, Math.PI / 4 - turn, 2 * turn];
      return openPath([k % 2 === 0 ? arc(at, r, start, sweep) : arc(at, r, start + sweep, -sweep)]);
    }),
  );
};
