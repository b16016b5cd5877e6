/** Three invented closed outlines of about 300 mm, counterclockwise, that a foot of 6.35 mm goes round. */

import { cubicToArcs } from '../../src/geometry/biarc.ts';
import { closedPath, type Path, reversePath, signedArea } from '../../src/geometry/path.ts';
import { arcByRise, line, type Piece } from '../../src/geometry/piece.ts';
import { type Point, point, polar } from '../../src/geometry/point.ts';

/** mm; found by trying, for a hollow of 2.95 mm. */
const HOLLOW_HANDLE = 4.85;

const counterclockwise = (path: Path): Path => (signedArea(path) < 0 ? reversePath(path) : path);

/** Five lobes on a ring, between sharp notches. */
export const LOBES: Path = (() => {
  const notch = (i: number): Point => polar((i * 2 * Math.PI) / 5, 38);
  return counterclockwise(closedPath([0, 1, 2, 3, 4].map((i) => arcByRise(notch(i), notch(i + 1), -14))));
})();

/**
 * Reverse curves: a wave that goes round, each bulge and hollow a pair of cubics. The hollows' tightest radius
 * is about 2.95 mm, less than the foot's.
 */
export const WAVES: Path = (() => {
  const pieces: Piece[] = [];
  const waves = 4;
  const at = (k: number, radius: number): Point => polar((k * Math.PI) / waves, radius);
  const along = (k: number, length: number): Point => polar((k * Math.PI) / waves + Math.PI / 2, length);
  const plus = (a: Point, b: Point, by: number): Point => point(a.x + by * b.x, a.y + by * b.y);
  for (let k = 0; k < 2 * waves; k++) {
    const [r0, r1] = k % 2 === 0 ? [46, 30] : [30, 46];
    const [h0, h1] = k % 2 === 0 ? [16, HOLLOW_HANDLE] : [HOLLOW_HANDLE, 16];
    const from = pieces.at(-1)?.to ?? at(k, r0);
    const to = k === 2 * waves - 1 ? pieces[0]!.from : at(k + 1, r1);
    pieces.push(...cubicToArcs(from, plus(from, along(k, 1), h0), plus(to, along(k + 1, 1), -h1), to));
  }
  return counterclockwise(closedPath(pieces));
})();

/** Straight sides, round corners, a bulge, and a slot 8 mm wide. */
export const SLOTTED: Path = (() => {
  const steps: readonly (readonly [number, number, number?])[] = [
    [0, 0],
    [40, 0],
    [40, 22],
    [48, 22],
    [48, 0],
    [80, 0],
    [90, 10, 2.928932188134524],
    [90, 38],
    [70, 52, -4],
    [42, 46],
    [12, 52, 6],
    [0, 40],
    [0, 0],
  ];
  const pieces = steps.slice(1).map(([x, y, rise], i) => {
    const [x0, y0] = steps[i]!;
    return rise === undefined
      ? line(point(x0, y0), point(x, y))
      : arcByRise(point(x0, y0), point(x, y), -rise);
  });
  return counterclockwise(closedPath(pieces));
})();
