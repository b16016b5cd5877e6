/**
 * Libraries that offset closed polygons with round joins. Two are unlike: GEOS (floating point, by buffering) and
 * Clipper2 (whole numbers, by winding). JTS in JavaScript is GEOS's method again, so it is no third witness, but
 * what many would use. For tests and the benchmark; the program itself uses none of them.
 */

import { createRequire } from 'node:module';
import initGeos from 'geos-wasm';
import { type Path, polyline } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';

/** Offsets a simple polygon outward by `by` mm (inward when negative) and returns the rings of the result. */
export interface PolygonOffsetter {
  readonly name: string;
  readonly offset: (ring: readonly Point[], by: number) => Point[][];
}

/** GEOS: an arc is an inscribed polygon of this many segments a quadrant. */
export const geosOffsetter = async (quadrantSegments: number): Promise<PolygonOffsetter> => {
  const geos = await initGeos();
  const { Module } = geos;
  const sizePtr = Module._malloc(4);
  const xyOf = (sequence: number): Point[] => {
    geos.GEOSCoordSeq_getSize(sequence, sizePtr);
    const count = Module.getValue(sizePtr, 'i32');
    const buffer = Module._malloc(16 * count);
    geos.GEOSCoordSeq_copyToBuffer(sequence, buffer, 0, 0);
    const values = new Float64Array(Module.HEAPF64.buffer, buffer, 2 * count);
    // The last point repeats the first.
    const points = Array.from({ length: count - 1 }, (_, i) => ({
      x: values[2 * i]!,
      y: values[2 * i + 1]!,
    }));
    Module._free(buffer);
    return points;
  };
  return {
    name: 'geos-wasm',
    offset: (ring, by) => {
      const buffer = Module._malloc(16 * (ring.length + 1));
      const values = new Float64Array(Module.HEAPF64.buffer, buffer, 2 * (ring.length + 1));
      for (let i = 0; i <= ring.length; i++) {
        const p = ring[i % ring.length]!;
        values[2 * i] = p.x;
        values[2 * i + 1] = p.y;
      }
      const sequence = geos.GEOSCoordSeq_copyFromBuffer(buffer, ring.length + 1, 0, 0);
      const polygon = geos.GEOSGeom_createPolygon(geos.GEOSGeom_createLinearRing(sequence), 0, 0);
      const grown = geos.GEOSBuffer(polygon, by, quadrantSegments);
      const rings: Point[][] = [];
      const parts = geos.GEOSGetNumGeometries(grown);
      for (let i = 0; i < parts; i++) {
        const part = geos.GEOSGetGeometryN(grown, i);
        rings.push(xyOf(geos.GEOSGeom_getCoordSeq(geos.GEOSGetExteriorRing(part))));
        const holes = geos.GEOSGetNumInteriorRings(part);
        for (let k = 0; k < holes; k++)
          rings.push(xyOf(geos.GEOSGeom_getCoordSeq(geos.GEOSGetInteriorRingN(part, k))));
      }
      geos.GEOSGeom_destroy(grown);
      geos.GEOSGeom_destroy(polygon);
      Module._free(buffer);
      return rings;
    },
  };
};

interface Coordinates {
  readonly getCoordinates: () => readonly Point[];
}
interface JtsPolygon {
  readonly getNumGeometries: () => number;
  readonly getGeometryN: (i: number) => JtsPolygon;
  readonly getExteriorRing: () => Coordinates;
  readonly getNumInteriorRing: () => number;
  readonly getInteriorRingN: (i: number) => Coordinates;
}

/** JTS in JavaScript: as for GEOS, an arc is an inscribed polygon of this many segments a quadrant. */
export const jtsOffsetter = async (quadrantSegments: number): Promise<PolygonOffsetter> => {
  // It brings no types; by its parts, because the whole is half a megabyte that is not all needed.
  const part = async (name: string) => (await import(`jsts/org/locationtech/jts/${name}.js`)).default;
  const Coordinate = await part('geom/Coordinate');
  const Factory = await part('geom/GeometryFactory');
  const BufferOp = await part('operation/buffer/BufferOp');
  const factory = new Factory();
  return {
    name: 'jsts',
    offset: (ring, by) => {
      const corners = [...ring, ring[0]!].map((p) => new Coordinate(p.x, p.y));
      const polygon = factory.createPolygon(factory.createLinearRing(corners), []);
      const grown: JtsPolygon = BufferOp.bufferOp(polygon, by, quadrantSegments);
      const open = (r: Coordinates): Point[] =>
        r
          .getCoordinates()
          .slice(1)
          .map(({ x, y }) => ({ x, y }));
      const rings: Point[][] = [];
      for (let i = 0; i < grown.getNumGeometries(); i++) {
        const one = grown.getGeometryN(i);
        rings.push(open(one.getExteriorRing()));
        for (let k = 0; k < one.getNumInteriorRing(); k++) rings.push(open(one.getInteriorRingN(k)));
      }
      return rings;
    },
  };
};

interface Wrapped {
  readonly delete: () => void;
}
interface ClipperPath extends Wrapped {
  readonly size: () => number;
  readonly get: (i: number) => Point;
}
interface ClipperPaths extends Wrapped {
  readonly size: () => number;
  readonly get: (i: number) => ClipperPath;
  readonly push_back: (p: ClipperPath) => void;
}
interface Clipper {
  readonly MakePathD: (numbers: number[]) => ClipperPath;
  readonly PathsD: new () => ClipperPaths;
  readonly JoinType: { readonly Round: unknown };
  readonly EndType: { readonly Polygon: unknown };
  readonly InflatePathsD: (
    paths: ClipperPaths,
    by: number,
    join: unknown,
    end: unknown,
    miterLimit: number,
    decimals: number,
    arcTolerance: number,
  ) => ClipperPaths;
}

/** Clipper2: coordinates rounded to `decimals`, arcs within `arcTolerance` mm. */
export const clipperOffsetter = async (decimals: number, arcTolerance: number): Promise<PolygonOffsetter> => {
  // Its ES build is not one; the UMD build is.
  const load = createRequire(import.meta.url)(
    'clipper2-wasm/dist/umd/clipper2z.js',
  ) as () => Promise<Clipper>;
  const clipper = await load();
  return {
    name: 'clipper2-wasm',
    offset: (ring, by) => {
      const path = clipper.MakePathD(ring.flatMap((p) => [p.x, p.y]));
      const paths = new clipper.PathsD();
      paths.push_back(path);
      const { Round } = clipper.JoinType;
      const grown = clipper.InflatePathsD(
        paths,
        by,
        Round,
        clipper.EndType.Polygon,
        2,
        decimals,
        arcTolerance,
      );
      const rings: Point[][] = [];
      for (let i = 0; i < grown.size(); i++) {
        const one = grown.get(i);
        rings.push(
          Array.from({ length: one.size() }, (_, k) => {
            const { x, y } = one.get(k);
            return { x, y };
          }),
        );
        one.delete();
      }
      for (const used of [grown, paths, path]) used.delete();
      return rings;
    },
  };
};

/** The ring that encloses the most, as a closed path. */
export const largestRing = (rings: readonly (readonly Point[])[]): Path => {
  const area = (ring: readonly Point[]): number =>
    Math.abs(
      ring.reduce((sum, p, i) => {
        const q = ring[(i + 1) % ring.length]!;
        return sum + p.x * q.y - p.y * q.x;
      }, 0),
    );
  return polyline(
    rings.reduce((best, ring) => (area(ring) > area(best) ? ring : best), [] as readonly Point[]),
    true,
  );
};
