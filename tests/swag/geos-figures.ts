/** What GEOS makes of lines and areas: buffers, what they share, how large it is. A reference for channels. */

import initGeos from 'geos-wasm';
import type { Point } from '../../src/geometry/index.ts';

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
  const geos = await initGeos();
  const { Module } = geos;
  const sequenceOf = (points: readonly Point[]): number => {
    const buffer = Module._malloc(16 * points.length);
    new Float64Array(Module.HEAPF64.buffer, buffer, 2 * points.length).set(points.flatMap((p) => [p.x, p.y]));
    const sequence = geos.GEOSCoordSeq_copyFromBuffer(buffer, points.length, 0, 0);
    Module._free(buffer);
    return sequence;
  };
  const lineOf = (points: readonly Point[]): number => geos.GEOSGeom_createLineString(sequenceOf(points));
  const polygonOf = (ring: readonly Point[]): number =>
    geos.GEOSGeom_createPolygon(geos.GEOSGeom_createLinearRing(sequenceOf([...ring, ring[0]!])), 0, 0);
  const numberFrom = (ask: (pointer: number) => unknown): number => {
    const pointer = Module._malloc(8);
    ask(pointer);
    const value = Module.getValue(pointer, 'double');
    Module._free(pointer);
    return value;
  };
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
          const spot = geos.GEOSGeom_createPoint(sequenceOf([at]));
          return numberFrom((p) => geos.GEOSDistance(edge, spot, p));
        }),
      );
    },
    isValid: (ring) => Number(geos.GEOSisValid(polygonOf(ring))) === 1,
  };
};
