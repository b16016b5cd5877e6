/** The regions of a repeat: they make it up without gap or overlap, and their edges are the channels' own lines. */

import { beforeAll, describe, expect, test } from 'vitest';
import {
  containsPoint,
  flatten,
  isEmptyRegion,
  type Point,
  pieceAt,
  polyline,
  type Region,
  regionArea,
  regionBox,
  regionOf,
  regionPieces,
  signedArea,
} from '../../src/geometry/index.ts';
import {
  alikeRepeats,
  bandMiddle,
  type Cell,
  cornerSwag,
  type Design,
  groundArea,
  regionsOf,
  swagArea,
  WITHOUT_SWAG,
  wholeSwag,
} from '../../src/swag/index.ts';
import { designs, type Named } from './channel-designs.ts';
import { type GeosFigures, geosFigures } from './geos-figures.ts';
import { distanceToPiece } from './laid.ts';

let geos: GeosFigures;
beforeAll(async () => {
  geos = await geosFigures();
});

const EXACT = 1e-6;
const WIDE = 'channels: { outward: [1/4, 3/8, 1/4], inward: [3/8, 3/8, 1/4] }';
const PIVOTED = 'channels: { outward: [1/4, 1/2], inward: [1/4, 1/2], points: pivot }';
const PLAIN = designs();
/** One of every layout is enough for other channels. */
const some = (channels: string): readonly Named[] => designs(channels).filter((_, i) => i % 3 === 1);
const CASES = [
  ...PLAIN,
  ...some(WIDE).map((d) => ({ ...d, name: `${d.name}, six channels` })),
  ...some(PIVOTED).map((d) => ({ ...d, name: `${d.name}, pivoted` })),
];

const cellsOf = (design: Design): readonly Cell[] => [...new Set([design.cells[0]!, design.cells.at(-1)!])];

const ringsOf = (region: Region): Point[][] => region.loops.map((l) => flatten(l, 1e-5).slice(0, -1));

/** By the exact distance to every piece of the swag. */
const awayFrom = (cell: Cell, p: Point): number =>
  Math.min(...wholeSwag(cell).pieces.map((piece) => distanceToPiece(piece, p)));

describe.each(CASES)('$name', ({ design, plan }) => {
  const known = new Map(cellsOf(design).map((cell) => [cell, regionsOf(cell, design, plan.channels)]));

  test.each(cellsOf(design))('$name: areas add up to the repeat', (cell) => {
    const regions = known.get(cell)!;
    expect(regions.length).toBe(2 + plan.channels.outward.length + plan.channels.inward.length);
    const sum = regions.reduce((total, r) => total + regionArea(r.region), 0);
    // The repeat by its own corners: two cells, each a trapezium between its mirrors (shoelace formula).
    expect(Math.abs(sum - repeatArea(cell, design))).toBeLessThan(1e-5);
    for (const { region } of regions) expect(regionArea(region)).toBeGreaterThanOrEqual(0);
  });

  test.each(cellsOf(design))('$name: every region is sound', (cell) => {
    for (const { region } of known.get(cell)!) {
      for (const ring of ringsOf(region)) expect(geos.isValid(ring)).toBe(true);
      for (const { pieces } of region.loops)
        pieces.forEach((piece, i) => {
          const before = pieces.at(i - 1)!;
          expect(piece.from).toEqual(before.to);
        });
      // Outer loops counterclockwise, holes clockwise: sorted by size, the largest is an outer one.
      const areas = region.loops.map(signedArea).sort((a, b) => Math.abs(b) - Math.abs(a));
      if (areas[0] !== undefined) expect(areas[0]).toBeGreaterThan(0);
    }
  });

  test.each(cellsOf(design))(
    '$name: edges are the channels’ lines, the stitching, or the repeat’s edge',
    (cell) => {
      if (plan.channels.points === 'pivot') return;
      const edge = [...regionPieces(groundArea(cell, design)), ...regionPieces(swagArea(cell, design))];
      for (const r of known.get(cell)!) {
        if (r.kind !== 'channel') continue;
        for (const piece of regionPieces(r.region))
          for (const t of [0.3, 0.7]) {
            const p = pieceAt(piece, t);
            const away = awayFrom(cell, p);
            const off = Math.min(Math.abs(away - r.from), Math.abs(away - r.from - r.width));
            const onEdge = Math.min(...edge.map((e) => distanceToPiece(e, p)));
            expect(Math.min(off, onEdge)).toBeLessThan(EXACT);
            expect(away).toBeGreaterThan(r.from - EXACT);
            expect(away).toBeLessThan(r.from + r.width + EXACT);
          }
      }
    },
  );
});

/** Twice the half, from the join to the mirror, between the start line and the far margin. */
const repeatArea = (cell: Cell, design: Design): number => {
  const { room } = design.field;
  const corner = cornerSwag(design);
  if (corner?.kind === 'across' && corner.cell === cell) {
    // Twice the half up to a level t: its start line from the corner, and at each level as much less as the mitre at
    // 45° and the line at 67.5° leave of it, until they meet.
    const along = corner.fit.toCorner + Math.min(...design.sides.map((s) => s.fit.seat.gap)) / 2;
    const closing = 1 - Math.tan(Math.PI / 8);
    const t = Math.min(room, along / closing);
    return 2 * along * t - closing * t * t;
  }
  const gaps = design.sides.map((s) => s.fit.seat.gap);
  const join = cell === corner?.cell ? -Math.min(...gaps) / 2 : cell.join;
  const lean = Math.cos(cell.mirror) / Math.sin(cell.mirror);
  const low = cell.crown.x - cell.crown.y * lean - join;
  return (2 * low + room * lean) * room;
};

describe('runs that meet at the corners, or at a swag that stands across', () => {
  const met = PLAIN.filter(({ design: { field } }) => field.corners === 'meet' || field.corners === 'across');
  test.each(met)('$name: the regions of all repeats add up to the border', ({ design, plan }) => {
    const { field, sides, halves } = design;
    // Each side is a trapezium over its start line, with a 45° mitre at both ends: (L ± room) · room.
    const sense = field.from === 'inner' ? 1 : -1;
    const border = sides.reduce((sum, s) => sum + (s.run.length + sense * field.room) * field.room, 0);
    const repeats = alikeRepeats(design, halves);
    const sum = repeats.reduce((total, { cell, ends, halves: alike }) => {
      const regions = regionsOf(cell, design, plan.channels, ends);
      const area = regions.reduce((a, r) => a + regionArea(r.region), 0);
      for (const { region } of regions)
        for (const ring of ringsOf(region)) expect(geos.isValid(ring)).toBe(true);
      return total + (area * alike.length) / 2;
    }, 0);
    expect(repeats.length).toBeGreaterThan(4);
    expect(Math.abs(sum - border)).toBeLessThan(1e-4);
  });

  test('there are such designs', () => {
    expect(met.length).toBeGreaterThan(2);
  });
});

describe('against GEOS', () => {
  test.each(PLAIN)('$name: the area within each distance of the swag', ({ design, plan }) => {
    const cell = design.cells[0]!;
    const swag = flatten(wholeSwag(cell), 1e-5);
    const regions = regionsOf(cell, design, plan.channels);
    for (const [side, area] of [
      ['outward', groundArea(cell, design)],
      ['inward', swagArea(cell, design)],
    ] as const) {
      let sum = 0;
      for (const r of regions) {
        if (r.kind !== 'channel' || r.side !== side) continue;
        sum += regionArea(r.region);
        const theirs = geos.areaNear(swag, r.from + r.width, ringsOf(area)[0]!);
        // Chords of 1e-5 mm along a swag's length, and GEOS's own circles.
        expect(Math.abs(sum - theirs)).toBeLessThan(0.02);
      }
    }
  });
});

test('points fall in the region that their distance says', () => {
  for (const { design, plan } of PLAIN.slice(0, 6)) {
    const cell = design.cells[0]!;
    const regions = regionsOf(cell, design, plan.channels);
    const inside = swagArea(cell, design);
    const box = regionBox(groundArea(cell, design));
    let seen = 0;
    for (let i = 0; i < 400; i++) {
      // A grid that meets no line of the design.
      const p = {
        x: box.minX + (((i % 20) + 0.4567) / 20) * (box.maxX - box.minX),
        y: box.minY + ((Math.floor(i / 20) + 0.5432) / 20) * (box.maxY - box.minY),
      };
      const away = awayFrom(cell, p);
      const inward = containsPoint(inside, p);
      const found = regions.filter((r) => containsPoint(r.region, p));
      expect(found.length).toBe(1);
      const [only] = found;
      if (only?.kind === 'channel') {
        expect(only.side).toBe(inward ? 'inward' : 'outward');
        expect(away).toBeGreaterThan(only.from - EXACT);
        expect(away).toBeLessThan(only.from + only.width + EXACT);
        seen++;
      } else expect(only?.kind).toBe(inward ? 'swag' : 'background');
    }
    expect(seen).toBeGreaterThan(20);
  }
});

test('a channel as wide as the swag leaves nothing inside', () => {
  for (const { design } of PLAIN.slice(0, 3)) {
    const channels = { outward: [], inward: [300], points: 'round' as const };
    const regions = regionsOf(design.cells[0]!, design, channels);
    expect(isEmptyRegion(regions[0]!.region)).toBe(true);
    expect(regionArea(regions[1]!.region)).toBeCloseTo(regionArea(swagArea(design.cells[0]!, design)), 6);
  }
});

test('a swag that lies on its start line for a while: no slit is left there', () => {
  const flat = polyline([
    { x: 0, y: 0 },
    { x: 30, y: 0 },
    { x: 60, y: 40 },
  ]);
  const cell = { name: 'flat', path: flat, join: -4, crown: { x: 60, y: 40 }, mirror: Math.PI / 2 };
  const field = { room: 100, near: 0, far: 100, isBounded: true };
  const design = { field, sides: [], corner: WITHOUT_SWAG } as unknown as Design;
  const channels = { outward: [5], inward: [5], points: 'round' as const };
  const regions = regionsOf(cell as unknown as Cell, design, channels);
  // A triangle 60 wide and 40 high over the start line, and the rest of 128 by 100.
  const inward = regions.filter((r) => r.name === 'swag' || r.name === 'inward 1');
  expect(inward.reduce((sum, r) => sum + regionArea(r.region), 0)).toBeCloseTo(1200, 6);
  expect(regions.reduce((sum, r) => sum + regionArea(r.region), 0)).toBeCloseTo(12_800, 6);
  for (const { region } of regions) for (const ring of ringsOf(region)) expect(geos.isValid(ring)).toBe(true);
});

test('the middle of a band is half its width from both sides', () => {
  for (const { design, plan } of PLAIN.slice(0, 4)) {
    const cell = design.cells[0]!;
    for (const r of regionsOf(cell, design, plan.channels)) {
      if (r.kind !== 'channel' || isEmptyRegion(r.region)) continue;
      for (const path of bandMiddle(r, cell, design, plan.channels))
        for (const piece of path.pieces)
          expect(awayFrom(cell, pieceAt(piece, 0.5))).toBeCloseTo(r.from + r.width / 2, 6);
    }
  }
});

test('all regions of a repeat come quickly', () => {
  const { design, plan } = PLAIN.find((d) => d.name.startsWith('finial'))!;
  const cell = design.cells[0]!;
  regionsOf(cell, design, plan.channels);
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    expect(regionOf(regionsOf(cell, design, plan.channels)[0]!.region.loops).loops.length).toBeGreaterThan(0);
    return performance.now() - start;
  });
  // 30 ms on an idle machine; a shared one may take several times as long.
  expect(Math.min(...times)).toBeLessThan(300);
});
