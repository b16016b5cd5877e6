/** The way round closed outlines, against two unlike polygon offsetters fed with fine polygons. */

import { describe, expect, test } from 'vitest';
import { flatten, type Path, reversePath } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';
import { rollFootRound } from '../../src/geometry/rolling-foot.ts';
import { areaOf, deviation, distanceToPieces, samplesOf, selfCrossing, totalLength } from './foot-checks.ts';
import { clipperOffsetter, geosOffsetter, largestRing, type PolygonOffsetter } from './offset-libraries.ts';
import { LOBES, SLOTTED, WAVES } from './sample-outlines.ts';

const C = 6.35;

/** Chords this near (mm) to their arcs: the polygons then differ from the outlines by less. */
const FINE = 1e-4;

/** GEOS's round joins are inscribed: 256 segments a quadrant keep them within c(1 − cos(π/1024)) = 3e-5 mm. */
const libraries: readonly PolygonOffsetter[] = [await geosOffsetter(256), await clipperOffsetter(6, 1e-5)];

const outlines: readonly (readonly [string, Path])[] = [
  ['lobes', LOBES],
  ['waves', WAVES],
  ['slotted', SLOTTED],
];

const open = (ring: readonly Point[]): readonly Point[] => ring.slice(0, -1);

const ways = (outline: Path, inside: boolean) => {
  const r = rollFootRound(inside ? outline : reversePath(outline), C);
  if (!r.ok) throw new Error(r.fault.kind);
  return r.value;
};

describe.each(libraries)('$name', (library) => {
  test.each(outlines)('outside %s', (_, outline) => {
    const [way] = ways(outline, false);
    const { pieces } = way!.path;
    const theirs = largestRing(library.offset(open(flatten(outline, FINE)), C));
    expect(Math.abs(areaOf(pieces)) / Math.abs(areaOf(theirs.pieces))).toBeCloseTo(1, 5);
    expect(totalLength(pieces) / totalLength(theirs.pieces)).toBeCloseTo(1, 5);
    // Hausdorff distance, both ways, sampled between vertices as well.
    for (const q of samplesOf(pieces, 1)) expect(distanceToPieces(q, theirs.pieces)).toBeLessThan(5 * FINE);
    const some = theirs.pieces.filter((_piece, i) => i % 7 === 0);
    for (const q of samplesOf(some, 1)) expect(distanceToPieces(q, pieces)).toBeLessThan(5 * FINE);
  });

  test.each(outlines)('inside %s', (_, outline) => {
    const mine = ways(outline, true);
    const theirs = library.offset(open(flatten(outline, FINE)), -C);
    expect(mine).toHaveLength(theirs.length);
    const sum = (of: (pieces: Path['pieces']) => number, paths: readonly Path[]): number =>
      paths.reduce((s, p) => s + Math.abs(of(p.pieces)), 0);
    const rings = theirs.map((ring) => largestRing([ring]));
    const paths = mine.map((w) => w.path);
    expect(sum(areaOf, paths) / sum(areaOf, rings)).toBeCloseTo(1, 5);
    expect(sum(totalLength, paths) / sum(totalLength, rings)).toBeCloseTo(1, 5);
  });
});

test('two libraries, three outlines', () => {
  expect(libraries.map((l) => l.name)).toEqual(['geos-wasm', 'clipper2-wasm']);
  expect(outlines).toHaveLength(3);
});

test.each(outlines)('%s: c from the outline, no crossing, the narrow places reported', (_, outline) => {
  const [way] = ways(outline, false);
  const edge = reversePath(outline).pieces;
  expect(deviation(way!.path.pieces, edge, C, 0.05)).toBeLessThan(1e-9);
  expect(selfCrossing(way!.path.pieces, true)).toBeUndefined();
  // Five notches; four hollows; a slot, and the notch beside the bulge.
  const narrow = outline === LOBES ? 5 : outline === WAVES ? 4 : 2;
  const found = way!.unreached.filter((u) => u.away > C + 0.01);
  expect(found).toHaveLength(narrow);
  // The lobes start in a notch: its stretch goes on past the start, and lies like the four others.
  if (outline === LOBES) {
    const sizes = found.map((u) => u.to - u.from);
    for (const size of sizes) expect(size).toBeCloseTo(sizes[0]!, 9);
    expect(Math.max(...found.map((u) => u.to))).toBeGreaterThan(way!.edgeLength);
  }
});
