/** Regions to try fills on: those a swag leaves, and some that no fill likes. Sizes in mm. */

import {
  arc,
  arcByRise,
  closedPath,
  EMPTY_REGION,
  insetRegion,
  intersectRegions,
  line,
  type Path,
  type Piece,
  type Point,
  point,
  polyline,
  type Region,
  regionOf,
} from '../../src/geometry/index.ts';
import { subtractRegion, uniteRegions } from '../../src/geometry/region-boolean.ts';

export const rect = (x: number, y: number, w: number, h: number): Path =>
  polyline([point(x, y), point(x + w, y), point(x + w, y + h), point(x, y + h)], true);

export const disc = (x: number, y: number, r: number): Path => {
  const whole = arc(point(x, y), r, 0, 2 * Math.PI);
  return closedPath([{ ...whole, to: whole.from }]);
};

const WIDTH = 203.2;
const DEPTH = 76.2;

/** Points of a swag's outline over the seam y = 0: half an ellipse, cut into lobes of equal angle. */
const swagPoints = (lobes: number): Point[] =>
  Array.from({ length: lobes + 1 }, (_, i) => {
    const a = (Math.PI * i) / lobes;
    const y = i === 0 || i === lobes ? 0 : DEPTH * Math.sin(a);
    return point(WIDTH / 2 + (WIDTH / 2) * Math.cos(a), y);
  });

/** A half moon with a scalloped edge: arcs that bulge outwards, and meet in notches. */
const lobedSwag = (lobes: number, bulge: number): Path => {
  const points = swagPoints(lobes);
  const pieces: Piece[] = [line(points.at(-1)!, points[0]!)];
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    pieces.push(arcByRise(a, b, -bulge * Math.hypot(a.x - b.x, a.y - b.y)));
  }
  return closedPath(pieces);
};

const swag = regionOf([lobedSwag(7, 0.2)]);
const smoothSwag = regionOf([lobedSwag(9, 0.09)]);

const band = (() => {
  const outer = insetRegion(swag, -12.7);
  const above = regionOf([rect(-30, 0, WIDTH + 60, 200)]);
  return subtractRegion(intersectRegions(outer, above), swag);
})();

const background = (() => {
  const repeat = regionOf([rect(0, 0, WIDTH, 140)]);
  const neighbours = [-WIDTH, 0, WIDTH].map((dx) => regionOf([polylineShift(lobedSwag(7, 0.2), dx)]));
  return neighbours.reduce((left, s) => subtractRegion(left, insetRegion(s, -6.35)), repeat);
})();

function polylineShift(path: Path, dx: number): Path {
  return {
    closed: true,
    pieces: path.pieces.map((p) => {
      const [from, to] = [point(p.from.x + dx, p.from.y), point(p.to.x + dx, p.to.y)];
      return p.kind === 'line'
        ? line(from, to)
        : { ...p, center: point(p.center.x + dx, p.center.y), from, to };
    }),
  };
}

const corner = subtractRegion(
  regionOf([rect(0, 0, 140, 140)]),
  regionOf([disc(140, 140, 95), disc(0, 140, 20)]),
);

export const SWAG_REGIONS = { swag, smoothSwag, band, background, corner } satisfies Record<string, Region>;

/** Two discs joined by a neck, narrower than any line's room. */
const neck = uniteRegions(regionOf([disc(0, 0, 30), disc(100, 0, 25)]), regionOf([rect(0, -1.5, 100, 3)]));

/** A disc with a slit from outside to its middle. */
const slit = subtractRegion(regionOf([disc(0, 0, 40)]), regionOf([rect(0, -1, 50, 2)]));

export const HARD_REGIONS = {
  neck,
  slit,
  'deep notch': regionOf([
    polyline(
      [point(0, 0), point(100, 0), point(100, 60), point(51, 60), point(50, 2), point(49, 60), point(0, 60)],
      true,
    ),
  ]),
  sliver: regionOf([polyline([point(0, 0), point(150, 0), point(150, 1.2)], true)]),
  thin: regionOf([rect(0, 0, 150, 4)]),
  'two parts': regionOf([rect(0, 0, 40, 50), disc(80, 25, 22)]),
  ring: regionOf([disc(0, 0, 50), disc(5, 0, 30)]),
  dot: regionOf([disc(0, 0, 0.2)]),
  nothing: EMPTY_REGION,
} satisfies Record<string, Region>;
