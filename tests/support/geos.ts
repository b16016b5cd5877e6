/** GEOS by points: its lines and polygons, and what it answers in figures. A reference that is not ours. */

import initGeos from 'geos-wasm';
import type { Point } from '../../src/geometry/index.ts';

/** What GEOS has made, by its address. */
type Made = number;

export const geosByPoints = async () => {
  const geos = await initGeos();
  const { Module } = geos;
  const sequenceOf = (points: readonly Point[]): Made => {
    const buffer = Module._malloc(16 * points.length);
    new Float64Array(Module.HEAPF64.buffer, buffer, 2 * points.length).set(points.flatMap((p) => [p.x, p.y]));
    const sequence = geos.GEOSCoordSeq_copyFromBuffer(buffer, points.length, 0, 0);
    Module._free(buffer);
    return sequence;
  };
  return {
    geos,
    pointOf: (at: Point): Made => geos.GEOSGeom_createPoint(sequenceOf([at])),
    lineOf: (points: readonly Point[]): Made => geos.GEOSGeom_createLineString(sequenceOf(points)),
    /** Of a ring that need not say its first point again. */
    polygonOf: (ring: readonly Point[]): Made =>
      geos.GEOSGeom_createPolygon(geos.GEOSGeom_createLinearRing(sequenceOf(closed(ring))), 0, 0),
    /** The number that a question writes at an address. */
    numberFrom: (ask: (pointer: number) => unknown): number => {
      const pointer = Module._malloc(8);
      ask(pointer);
      const value = Module.getValue(pointer, 'double');
      Module._free(pointer);
      return value;
    },
  };
};

const closed = (ring: readonly Point[]): readonly Point[] =>
  ring.at(-1) === ring[0] ? ring : [...ring, ring[0]!];
