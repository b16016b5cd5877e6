/** What GEOS makes of lines and areas: buffers, what they share, how large it is. A reference for channels. */

import type { Point } from '../../src/geometry/index.ts';
import { geosByPoints } from '../support/geos.ts';

/** Chords to a quarter turn: GEOS's circles are then within 1e-3 mm of round at an inch and less. */
const QUARTER = 256;

export interface GeosFigures {
  /** The area (mm²) nearer than `by` to a line through points, inside a polygon. */
  readonly areaNear: (line: readonly Point[], by: number, within: readonly Point[]) => number;
  /** How far (mm) points lie from the edge of what is nearer than `by` to a line, at most. */
  readonly farthestFromBuffer: (line: readonly Point[], by: number, points: readonly Point[]) => number;
  readonly isValid: (ring: readonly Point[]) => boolean;
}

export const geosFigures = async (): Promise<GeosFigures> => {
  const { geos, pointOf, lineOf, polygonOf, numberFrom } = await geosByPoints();
  return {
    areaNear: (line, by, within) => {
      const near = geos.GEOSBuffer(lineOf(line), by, QUARTER);
      const shared = geos.GEOSIntersection(near, polygonOf(within));
      return numberFrom((p) => geos.GEOSArea(shared, p));
    },
    farthestFromBuffer: (line, by, points) => {
      const edge = geos.GEOSBoundary(geos.GEOSBuffer(lineOf(line), by, QUARTER));
      return Math.max(
        ...points.map((at) => {
          const spot = pointOf(at);
          return numberFrom((p) => geos.GEOSDistance(edge, spot, p));
        }),
      );
    },
    isValid: (ring) => Number(geos.GEOSisValid(polygonOf(ring))) === 1,
  };
};
