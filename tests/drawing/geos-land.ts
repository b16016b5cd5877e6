/** What is left of a sheet when slots are cut out of it, as GEOS has it. */

import initGeos from 'geos-wasm';
import type { Point } from '../../src/geometry/index.ts';

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
  const geos = await initGeos();
  const { Module } = geos;
  const sequenceOf = (points: readonly Point[]): number => {
    const buffer = Module._malloc(16 * points.length);
    new Float64Array(Module.HEAPF64.buffer, buffer, 2 * points.length).set(points.flatMap((p) => [p.x, p.y]));
    const sequence = geos.GEOSCoordSeq_copyFromBuffer(buffer, points.length, 0, 0);
    Module._free(buffer);
    return sequence;
  };
  const polygonOf = (ring: readonly Point[]): number => {
    const closed = [...ring.filter((p, i) => i < ring.length - 1 || p !== ring[0]), ring[0]!];
    return geos.GEOSGeom_createPolygon(geos.GEOSGeom_createLinearRing(sequenceOf(closed)), 0, 0);
  };
  const numberFrom = (ask: (pointer: number) => unknown): number => {
    const pointer = Module._malloc(8);
    ask(pointer);
    const value = Module.getValue(pointer, 'double');
    Module._free(pointer);
    return value;
  };
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
    const one = geos.GEOSGeom_createLineString(sequenceOf(points));
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
