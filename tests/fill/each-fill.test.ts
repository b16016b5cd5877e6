/** What each fill promises of its own. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crosshatch } from '../../src/fill/crosshatch.ts';
import { echo } from '../../src/fill/echo.ts';
import { feather } from '../../src/fill/feather.ts';
import { lines, UNEVEN_GAPS } from '../../src/fill/lines.ts';
import { pearls } from '../../src/fill/pearls.ts';
import { PEBBLE_RADII, pebbles } from '../../src/fill/pebbles.ts';
import { randomOf } from '../../src/fill/random.ts';
import { ribbon } from '../../src/fill/ribbon.ts';
import { spreadPoints } from '../../src/fill/spread.ts';
import { STIPPLE_EDGE_GAP, STIPPLE_GAP, stipple } from '../../src/fill/stipple.ts';
import { swirls } from '../../src/fill/swirls.ts';
import { componentsOf, growTree, type Tree } from '../../src/fill/tree.ts';
import { tourBeside } from '../../src/fill/tree-tour.ts';
import {
  distance,
  type Path,
  type Point,
  pathLength,
  polyline,
  type Region,
  regionArea,
  regionOf,
} from '../../src/geometry/index.ts';
import { runs } from '../support/runs.ts';
import { crossingsOf, depthIn, leastGap, polygonsOf, sample, segmentsOf } from './checks.ts';
import { disc, HARD_REGIONS, rect, SWAG_REGIONS } from './sample-regions.ts';

const S = 6.35;
const options = { spacing: S, seed: 11 };

const treeLength = ({ points, next }: Tree): number => {
  const all = next.flatMap((to, a) => to.map((b) => distance(points[a]!, points[b]!)));
  return all.reduce((sum, length) => sum + length, 0) / 2;
};

/** The distinct circles that arcs lie on. */
const circlesOf = (paths: readonly Path[]): { x: number; y: number; r: number; length: number }[] => {
  const found = new Map<string, { x: number; y: number; r: number; length: number }>();
  for (const path of paths)
    for (const p of path.pieces) {
      if (p.kind !== 'arc') throw new Error('not a circle');
      const key = `${p.center.x.toFixed(6)} ${p.center.y.toFixed(6)}`;
      const c = found.get(key) ?? { ...p.center, r: p.radius, length: 0 };
      found.set(key, { ...c, length: c.length + Math.abs(p.sweep) * p.radius });
    }
  return [...found.values()];
};

describe('crosshatch and lines', () => {
  it('lines lie at their angles, whole spacings apart, and end on the edge', () => {
    const region = SWAG_REGIONS.swag;
    const { paths } = crosshatch.fill(region, options);
    expect(paths.length).toBeGreaterThan(40);
    const polygons = polygonsOf(region);
    for (const path of paths) {
      const [a, b] = [path.pieces[0]!.from, path.pieces.at(-1)!.to];
      const angle = Math.atan2(b.y - a.y, b.x - a.x);
      expect(Math.abs(Math.sin(2 * (angle - Math.PI / 4)))).toBeLessThan(1e-9);
      const rising = (b.x - a.x) * (b.y - a.y) > 0;
      // Counted from the middle of the region's box, which is where the test takes it from the outline.
      const xs = region.loops.flatMap((l) => sample(l, 0.05)).map((p) => p.x);
      const ys = region.loops.flatMap((l) => sample(l, 0.05)).map((p) => p.y);
      const mid = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
      const off = ((a.x - mid.x) * (rising ? -1 : 1) + (a.y - mid.y)) * Math.SQRT1_2;
      expect(Math.abs(off / S - Math.round(off / S))).toBeLessThan(1e-3);
      for (const end of [a, b]) expect(Math.abs(depthIn(polygons, end))).toBeLessThan(0.01);
    }
  });

  it('in a square of twenty spacings the length is the known one', () => {
    // Upright lines at −10 … 10 spacings from the middle: the two outermost lie on the edge, 21 lines of 20
    // spacings.
    const square = regionOf([rect(0, 0, 20 * S, 20 * S)]);
    const { paths } = lines.fill(square, options);
    expect(paths.reduce((sum, p) => sum + pathLength(p), 0)).toBeCloseTo(19 * 20 * S, 6);
    // On the diagonal, lines k spacings from the centre are 2(R − k·s) long, R half the diagonal: 14 either
    // way.
    const half = 10 * S * Math.SQRT2;
    let expected = 0;
    for (let k = -14; k <= 14; k++) expected += 2 * (half - Math.abs(k) * S);
    const hatched = crosshatch.fill(square, options).paths;
    expect(hatched.reduce((sum, p) => sum + pathLength(p), 0)).toBeCloseTo(2 * expected, 6);
  });

  it('uneven gaps stay in their range and average to the spacing', () => {
    const { paths } = lines.fill(regionOf([rect(0, 0, 2000, 20)]), { ...options, uneven: true });
    const xs = paths.map((p) => p.pieces[0]!.from.x).sort((a, b) => a - b);
    const gaps = xs.slice(1).map((x, i) => (x - xs[i]!) / S);
    expect(Math.min(...gaps)).toBeGreaterThan(UNEVEN_GAPS[0] - 1e-9);
    expect(Math.max(...gaps)).toBeLessThan(UNEVEN_GAPS[1] + 1e-9);
    expect(gaps.reduce((a, b) => a + b, 0) / gaps.length).toBeGreaterThan(0.95);
    expect(gaps.reduce((a, b) => a + b, 0) / gaps.length).toBeLessThan(1.05);
  });
});

describe('a line through a corner of the edge', () => {
  /** A square with a bite out of its lower side, up to a point at `tip` (mm from the middle, and up from that side). */
  const bitten = (tip: number, up: number): Region =>
    regionOf([
      polyline(
        [
          { x: -50, y: 0 },
          { x: tip - 9, y: 0 },
          { x: tip, y: up },
          { x: tip + 9, y: 0 },
          { x: 50, y: 0 },
          { x: 50, y: 90 },
          { x: -50, y: 90 },
        ],
        true,
      ),
    ]);

  it('is not left out where that corner is its very middle', () => {
    // Through the point of the bite, level: 100 mm from side to side, and its middle is the point itself.
    const level = { ...options, angle: 0 };
    const context = { axis: { at: { x: 0, y: 40 }, angle: Math.PI / 2 } };
    const through = lines.fill(bitten(0, 40), level, context).paths.filter((p) => {
      const { from, to } = p.pieces[0]!;
      return Math.abs(from.y - 40) < 1e-9 && Math.abs(to.y - 40) < 1e-9;
    });
    expect(through.map(pathLength)).toEqual([expect.closeTo(100, 9)]);
  });

  it('leaves out only the stretch that falls on the edge', () => {
    // A step halfway along the upper side: the level line through it is inside on the left, on the edge on the right.
    const stepped = regionOf([
      polyline(
        [
          { x: 0, y: 0 },
          { x: 80, y: 0 },
          { x: 80, y: 20 },
          { x: 30, y: 20 },
          { x: 30, y: 45 },
          { x: 0, y: 45 },
        ],
        true,
      ),
    ]);
    const context = { axis: { at: { x: 30, y: 20 }, angle: Math.PI / 2 } };
    const { paths } = lines.fill(stepped, { ...options, angle: 0 }, context);
    const through = paths.filter((p) => Math.abs(p.pieces[0]!.from.y - 20) < 1e-9);
    expect(through.map(pathLength)).toEqual([expect.closeTo(30, 9)]);
  });

  it('every line is as long as sampling says, wherever the lines are counted from', () => {
    const place = fc.oneof(fc.constant(0), fc.double({ min: -35, max: 35, noNaN: true }));
    const angles = fc.constantFrom(0, Math.PI / 4, Math.PI / 2, 3, 2.2);
    let checked = 0;
    fc.assert(
      fc.property(place, fc.double({ min: 3, max: 80, noNaN: true }), angles, (tip, up, angle) => {
        const region = bitten(tip, up);
        const at = { x: tip, y: up };
        const { paths } = lines.fill(region, { ...options, angle }, { axis: { at, angle: Math.PI / 2 } });
        const along = { x: Math.cos(angle), y: Math.sin(angle) };
        for (let k = -18; k <= 18; k++) {
          const foot = { x: at.x - k * S * along.y, y: at.y + k * S * along.x };
          let expected = 0;
          for (let s = -150; s < 150; s += 0.5) {
            const [x, y] = [foot.x + (s + 0.25) * along.x, foot.y + (s + 0.25) * along.y];
            const isInBite = y < up - (up * Math.abs(x - tip)) / 9;
            if (Math.abs(x) < 50 - 1e-6 && y > 1e-6 && y < 90 - 1e-6 && !isInBite) expected += 0.5;
          }
          const found = paths
            .filter(({ pieces: [p] }) => {
              const off = (q: Point): number => along.x * (q.y - foot.y) - along.y * (q.x - foot.x);
              return Math.abs(off(p!.from)) + Math.abs(off(p!.to)) < 1e-6;
            })
            .reduce((sum, p) => sum + pathLength(p), 0);
          checked++;
          // Four ends at most, each known to a step.
          expect(Math.abs(found - expected)).toBeLessThan(2.01);
        }
      }),
      runs(60, 30118),
    );
    expect(checked).toBeGreaterThan(2000);
  });
});

describe('echo', () => {
  it('every line is whole spacings from the edge', () => {
    for (const region of [SWAG_REGIONS.swag, SWAG_REGIONS.corner, HARD_REGIONS.ring!]) {
      const polygons = polygonsOf(region);
      const { paths } = echo.fill(region, options);
      expect(paths.length).toBeGreaterThan(1);
      for (const path of paths)
        for (const p of sample(path, 2)) {
          const steps = depthIn(polygons, p) / S;
          expect(Math.abs(steps - Math.round(steps)) * S).toBeLessThan(0.02);
          expect(Math.round(steps)).toBeGreaterThan(0);
        }
    }
  });

  it('in a disc its lines are the circles there is room for', () => {
    const { paths } = echo.fill(regionOf([disc(0, 0, 4.5 * S)]), options);
    const expected = [3.5, 2.5, 1.5, 0.5].map((r) => 2 * Math.PI * r * S);
    expect(paths).toHaveLength(4);
    paths.forEach((p, i) => {
      expect(pathLength(p)).toBeCloseTo(expected[i]!, 4);
    });
  });
});

describe('pebbles', () => {
  const region = SWAG_REGIONS.swag;
  const made = pebbles.fill(region, options);
  const circles = circlesOf(made.paths);

  it('touch and never overlap', () => {
    let touching = 0;
    circles.forEach((a, i) => {
      let contacts = 0;
      circles.forEach((b, j) => {
        if (i === j) return;
        const gap = Math.hypot(a.x - b.x, a.y - b.y) - a.r - b.r;
        if (gap < -1e-6) expect(gap).toBeGreaterThan(-1e-6);
        if (gap < 1e-5) contacts++;
      });
      if (contacts > 0) touching++;
    });
    expect(circles.length).toBeGreaterThan(300);
    expect(touching).toBe(circles.length);
  });

  it('are of the stated sizes, and each is stitched once', () => {
    for (const c of circles) {
      expect(c.r).toBeLessThanOrEqual(PEBBLE_RADII.largest * S + 1e-9);
      expect(c.r).toBeGreaterThanOrEqual(PEBBLE_RADII.least * S - 1e-9);
      expect(c.length).toBeCloseTo(2 * Math.PI * c.r, 5);
    }
    expect(made.continuous).toBe(true);
  });

  it('cover more than chance would, and less than the densest packing', () => {
    // Equal discs: 0.9069 for the hexagonal packing (Lagrange, Thue, Fejes Tóth), 0.547 for random sequential
    // addition.
    const covered = circles.reduce((sum, c) => sum + Math.PI * c.r * c.r, 0) / regionArea(region);
    expect(covered).toBeLessThan(0.9069);
    expect(covered).toBeGreaterThan(0.7);
  });
});

describe('stippling', () => {
  it.each(['swag', 'background', 'corner'] as const)('in %s: a line that keeps its gap', (name) => {
    const region = SWAG_REGIONS[name];
    const polygons = polygonsOf(region);
    for (let seed = 1; seed <= 5; seed++) {
      const made = stipple.fill(region, { spacing: S, seed });
      // What lies behind the corner's neck, through which no line goes and comes back, has one of its own.
      expect(made.paths.length).toBeLessThanOrEqual(name === 'corner' ? 2 : 1);
      expect(made.continuous).toBe(made.paths.length === 1);
      const [first, second] = made.paths.map((path) => sample(path, 1));
      if (second) {
        const apart = second.map((p) => Math.min(...first!.map((q) => Math.hypot(p.x - q.x, p.y - q.y))));
        expect(Math.min(...apart)).toBeGreaterThan(STIPPLE_GAP * S - 0.05);
      }
      for (const path of made.paths) {
        // Stretches nearer along the line than two spacings are one bend.
        const segments = segmentsOf([path], 0.5);
        expect(crossingsOf(segments, 0.5)).toEqual([]);
        const gap = leastGap(segments, 2 * S, S, pathLength(path));
        expect(gap).toBeGreaterThan(STIPPLE_GAP * S - 0.05);
        const depths = sample(path, 1).map((p) => depthIn(polygons, p));
        expect(Math.min(...depths)).toBeGreaterThan(STIPPLE_EDGE_GAP * S - 0.02);
      }
    }
  });

  it('leaves no large place empty', () => {
    for (const name of ['swag', 'corner'] as const) {
      const region = SWAG_REGIONS[name];
      const polygons = polygonsOf(region);
      const path = stipple.fill(region, options).paths[0]!;
      const points = sample(path, 1);
      let worst = 0;
      for (let x = 0; x < 210; x += 3)
        for (let y = 0; y < 145; y += 3) {
          if (depthIn(polygons, { x, y }) < 2.2 * S) continue;
          worst = Math.max(worst, Math.min(...points.map((p) => Math.hypot(p.x - x, p.y - y))));
        }
      expect(worst).toBeLessThan(2.2 * S);
    }
  });
});

describe('points, trees and tours', () => {
  it('spread points keep apart, and fill the place', () => {
    const region = regionOf([rect(0, 0, 200, 150)]);
    const { points } = spreadPoints(region, 8, 5, randomOf(2));
    let least = Number.POSITIVE_INFINITY;
    points.forEach((p, i) => {
      for (const q of points.slice(i + 1)) least = Math.min(least, Math.hypot(p.x - q.x, p.y - q.y));
    });
    // Relaxing may take a little of the distance; from memory: density n·r²/A of any such set is at most
    // 2/√3, of a maximal one at least 2/(3√3) (Fejes Tóth; Kershner). Edge points lie on the edge, which adds
    // a share.
    expect(least).toBeGreaterThan(8 * 0.75);
    const density = (points.length * 64) / (190 * 140);
    expect(density).toBeGreaterThan(0.385);
    expect(density).toBeLessThan(1.1548);
  });

  const straight: Tree = {
    points: [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 25, y: 0 },
    ],
    next: [[1], [0, 2], [1]],
  };
  it('the way round a straight tree is the outline of its parallel set', () => {
    // Steiner: the set at distance r round a segment of length L has the perimeter 2L + 2πr.
    expect(pathLength(tourBeside(straight, 0, 2, 0))).toBeCloseTo(50 + 4 * Math.PI, 9);
    expect(pathLength(tourBeside({ points: [{ x: 3, y: 4 }], next: [[]] }, 0, 2, 0))).toBeCloseTo(
      4 * Math.PI,
      9,
    );
  });

  it('round a right angle, the inner corner takes 2r, or a fillet', () => {
    const bent: Tree = {
      points: [
        { x: 20, y: 0 },
        { x: 0, y: 0 },
        { x: 0, y: 30 },
      ],
      next: [[1], [0, 2], [1]],
    };
    // 2L + 2πr (caps and the outer corner make π + π/2 of it, the rest is missing inside): 2·50 + (2π + π/2)r
    // − 2r.
    const expected = 100 + 2.5 * Math.PI * 2 - 4;
    expect(pathLength(tourBeside(bent, 0, 2, 0))).toBeCloseTo(expected, 9);
    // A fillet of radius f saves 2f − πf/2.
    expect(pathLength(tourBeside(bent, 0, 2, 3))).toBeCloseTo(expected - 3 * (2 - Math.PI / 2), 9);
  });

  it('a tour is at most twice its tree, but for the way round its ends', () => {
    const region = SWAG_REGIONS.swag;
    for (let seed = 0; seed < 10; seed++) {
      const random = randomOf(seed);
      const { points } = spreadPoints(region, 11, 5, random);
      const pass = { angle: 1.3, apart: 8, longest: 25 };
      const tree = growTree(points, { passes: [pass], allowed: () => true }, random);
      const part = componentsOf(tree)[0]!;
      const inPart = new Set(part);
      const alone: Tree = { points, next: tree.next.map((n, i) => (inPart.has(i) ? n : [])) };
      const away = 2.5;
      const tour = pathLength(tourBeside(alone, part[0]!, away, 20));
      // Steiner's bound for a connected set of length L: perimeter of the parallel set at most 2L + 2πr.
      expect(tour).toBeLessThan(2 * treeLength(alone) + 2 * Math.PI * away);
      expect(tour).toBeGreaterThan(treeLength(alone));
      // A tree: one branch fewer than points.
      expect(part.reduce((sum, i) => sum + alone.next[i]!.length, 0)).toBe(2 * (part.length - 1));
    }
  });
});

describe('pearls and ribbon', () => {
  it('pearls touch in a row from end to end of a band', () => {
    const band = regionOf([rect(0, 0, 180, 10)]);
    const made = pearls.fill(band, { spacing: 5, seed: 1 });
    const row = circlesOf(made.paths).sort((a, b) => a.x - b.x);
    expect(made.continuous).toBe(true);
    expect(row.length).toBeGreaterThan(17);
    for (let i = 1; i < row.length; i++) {
      const [a, b] = [row[i - 1]!, row[i]!];
      expect(Math.abs(Math.hypot(a.x - b.x, a.y - b.y) - a.r - b.r)).toBeLessThan(1e-6);
      expect(b.r).toBeCloseTo(a.r, 1);
      expect(b.length).toBeCloseTo(2 * Math.PI * b.r, 5);
    }
    expect(row[0]!.x - row[0]!.r).toBeLessThan(1);
    expect(180 - row.at(-1)!.x - row.at(-1)!.r).toBeLessThan(1);
  });

  it('pearls in a swag band do not overlap', () => {
    const row = circlesOf(pearls.fill(SWAG_REGIONS.band, options).paths);
    row.forEach((a, i) => {
      for (const b of row.slice(i + 1))
        expect(Math.hypot(a.x - b.x, a.y - b.y) - a.r - b.r).toBeGreaterThan(-1e-6);
    });
    expect(row.length).toBeGreaterThan(20);
  });

  it('round a ring the last pearl touches the first', () => {
    const row = circlesOf(pearls.fill(HARD_REGIONS.ring, options).paths);
    const contacts = row.map(
      (a) => row.filter((b) => b !== a && Math.hypot(a.x - b.x, a.y - b.y) - a.r - b.r < 1e-4).length,
    );
    expect(row.length).toBeGreaterThan(12);
    expect(contacts.every((c) => c === 2)).toBe(true);
  });

  it('a ribbon is one line that does not cross itself, and crosses the band at its spacing', () => {
    for (const region of [SWAG_REGIONS.band, HARD_REGIONS.thin!]) {
      const made = ribbon.fill(region, options);
      expect(made.paths).toHaveLength(1);
      expect(crossingsOf(segmentsOf(made.paths, 0.3), 0.3)).toEqual([]);
    }
    const made = ribbon.fill(regionOf([rect(0, 0, 127, 14)]), options);
    const middles = sample(made.paths[0]!, 0.05)
      .filter((p, i, all) => i > 0 && p.y > 7 !== all[i - 1]!.y > 7)
      .map((p) => p.x);
    const gaps = middles.slice(1).map((x, i) => x - middles[i]!);
    for (const gap of gaps.slice(1, -1)) expect(Math.abs(gap - S)).toBeLessThan(0.1 * S);
    expect(gaps.length).toBeGreaterThan(16);
  });
});

const noCrossing = (region: Region, paths: readonly Path[]): void => {
  expect(paths.length).toBeGreaterThan(0);
  expect(crossingsOf(segmentsOf(paths, 0.4), 0.4)).toEqual([]);
  expect(regionArea(region)).toBeGreaterThan(0);
};

describe('swirls', () => {
  it.each(['swag', 'smoothSwag', 'background', 'corner'] as const)(
    'in %s: one line without a crossing',
    (name) => {
      for (const seed of [1, 2]) {
        const made = swirls.fill(SWAG_REGIONS[name], { spacing: 4, seed });
        noCrossing(SWAG_REGIONS[name], made.paths);
        expect(made.continuous).toBe(true);
      }
    },
  );
});

describe('feathers', () => {
  it.each([...Object.entries(SWAG_REGIONS), ['neck', HARD_REGIONS.neck!] as const])(
    'in %s: no plume crosses another or the spine',
    (name, region) => {
      // At the widest of these spacings there is no room in the band.
      for (const spacing of name === 'band' ? [3, 4, 6.35] : [4, 6.35, 9]) {
        const made = feather.fill(region, { spacing, seed: 1 });
        noCrossing(region, made.paths);
      }
    },
  );

  it('are mirrored where the region is', () => {
    const points = feather.fill(SWAG_REGIONS.swag, options).paths.flatMap((p) => sample(p, 1));
    const xs = points.map((p) => p.x);
    const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
    const near = (p: Point): number => Math.min(...points.map((q) => Math.hypot(p.x - q.x, p.y - q.y)));
    for (const p of points.filter((_, i) => i % 9 === 0))
      expect(near({ x: 2 * middle - p.x, y: p.y })).toBeLessThan(1);
  });

  it('reach into the whole region', () => {
    const region = SWAG_REGIONS.smoothSwag;
    const polygons = polygonsOf(region);
    const points = feather.fill(region, options).paths.flatMap((p) => sample(p, 1));
    let inside = 0;
    let far = 0;
    for (let x = 0; x < 205; x += 2)
      for (let y = 0; y < 80; y += 2) {
        if (depthIn(polygons, { x, y }) < 0) continue;
        inside++;
        if (Math.min(...points.map((p) => Math.hypot(p.x - x, p.y - y))) > 1.5 * S) far++;
      }
    expect(far / inside).toBeLessThan(0.06);
  });
});
