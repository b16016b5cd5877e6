/** What is left of a sheet when slots are cut out of it, as GEOS has it. */

import type { Point } from '../../src/geometry/index.ts';
import { geosByPoints } from '../support/geos.ts';

export interface Land {
  /** In how many pieces the land is, and how large (mm²) it is. */
  readonly pieces: number;
  readonly area: number;
  /** mm of lines that lie in the slots, and of all of them. */
  readonly lineInSlots: number;
  readonly line: number;
  /** mm between two slots at their nearest, by their numbers. */
  readonly apart: (i: number, k: number) => number;
}

export const landOf = async (
  sheet: readonly Point[],
  slots: readonly (readonly Point[])[],
  lines: readonly (readonly Point[])[],
): Promise<Land> => {
  const { geos, lineOf, polygonOf, numberFrom } = await geosByPoints();
  const cut = slots.map(polygonOf);
  /** Of halves, because what many have been joined to takes as long to join again. */
  const joined = (parts: readonly number[]): number =>
    parts.length === 1
      ? parts[0]!
      : geos.GEOSUnion(joined(parts.slice(0, parts.length >> 1)), joined(parts.slice(parts.length >> 1)));
  const all = joined(cut);
  const land = geos.GEOSDifference(polygonOf(sheet), all);
  let [line, lineInSlots] = [0, 0];
  for (const points of lines) {
    const one = lineOf(points);
    line += numberFrom((p) => geos.GEOSLength(one, p));
    lineInSlots += numberFrom((p) => geos.GEOSLength(geos.GEOSIntersection(one, all), p));
  }
  return {
    pieces: Number(geos.GEOSGetNumGeometries(land)),
    area: numberFrom((p) => geos.GEOSArea(land, p)),
    line,
    lineInSlots,
    apart: (i, k) => numberFrom((p) => geos.GEOSDistance(cut[i]!, cut[k]!, p)),
  };
};
