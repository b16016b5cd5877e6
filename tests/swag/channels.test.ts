/**
 * Channels: as far from the stitching as they say, wherever they are not cut. The distances are taken on the
 * quilt, to all stitching of the whole design, by a search over every piece.
 */

import { beforeAll, describe, expect, test } from 'vitest';
import {
  flatten,
  line,
  movePath,
  openPath,
  type Path,
  type Point,
  pathEnd,
  pathStart,
  polyline,
} from '../../src/geometry/index.ts';
import {
  type Cell,
  type Channel,
  channelsOf,
  cornerSwag,
  type Design,
  placedChannels,
  placedPath,
  WITHOUT_SWAG,
  wholeSwag,
} from '../../src/swag/index.ts';
import { designs } from './channel-designs.ts';
import { pointsAlong } from './fit-helpers.ts';
import { type GeosFigures, geosFigures } from './geos-figures.ts';
import { distanceToPiece } from './laid.ts';

const EXACT = 1e-6;
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The distance to the nearest of many pieces, each tried. */
const distanceTo = (paths: readonly Path[], p: Point): number =>
  Math.min(...paths.flatMap((path) => path.pieces.map((piece) => distanceToPiece(piece, p))));

const ALL = designs();

test('every profile fits somewhere, and most layouts', () => {
  expect(ALL.length).toBeGreaterThanOrEqual(9);
  for (const name of ['baluster', 'finial', 'newel'])
    expect(ALL.some((d) => d.name.startsWith(name))).toBe(true);
});

/** How far a place in a cell lies from its side's start line: at 45° to that of a swag that stands across a corner. */
const levelIn = (design: Design, cell: Cell, p: Point): number => {
  const corner = cornerSwag(design);
  return corner?.kind === 'across' && corner.cell === cell ? (p.x + p.y) * Math.SQRT1_2 : p.y;
};

describe.each(ALL)('$name', ({ design, plan }) => {
  const placed = placedChannels(design, plan.channels);

  test('lies at its distance from all stitching of the design', () => {
    const stitching = design.halves.map((h) => ({ half: h, path: placedPath(h) }));
    const done = new Set<readonly Channel[]>();
    let [points, most] = [0, 0];
    for (const [half, channels] of placed) {
      if (done.has(channels)) continue;
      done.add(channels);
      // Everything within reach of this half; the rest of the design is farther than any channel.
      const middle = pathEnd(placedPath(half))!;
      const around = stitching.filter((s) => apart(pathEnd(s.path)!, middle) < 600).map((s) => s.path);
      for (const channel of channels)
        for (const path of channel.paths)
          for (const p of pointsAlong(movePath(path, half.motion), 8)) {
            points++;
            most = Math.max(most, Math.abs(distanceTo(around, p) - channel.distance));
          }
    }
    expect(most).toBeLessThan(EXACT);
    expect(points).toBeGreaterThan(100);
  });

  test('stays between the start line and the far margin', () => {
    // Halves of one cell share their channels.
    const cells = new Map([...placed].map(([{ cell }, channels]) => [channels, cell]));
    let [low, high] = [0, 0];
    for (const [channels, cell] of cells)
      for (const p of channels.flatMap(({ paths }) => paths.flatMap((path) => pointsAlong(path, 2)))) {
        const level = levelIn(design, cell, p);
        low = Math.min(low, level);
        high = Math.max(high, level);
      }
    expect(low).toBeGreaterThan(-EXACT);
    expect(high).toBeLessThan(design.field.room + EXACT);
    expect(high).toBeGreaterThan(0);
  });

  test('runs from the start line to the centre mirror, and hangs together', () => {
    for (const channels of new Set(placed.values()))
      for (const { paths } of channels)
        for (const { pieces } of paths)
          pieces.slice(1).forEach((piece, i) => {
            expect(piece.from).toEqual(pieces[i]!.to);
          });
  });

  test('ends where its neighbours begin', () => {
    // Every end of a channel that is not on the start line or the margin is an end of another half's channel.
    const ends = [...placed].flatMap(([half, channels]) =>
      channels.flatMap((c) =>
        c.paths.flatMap((path) =>
          [pathStart(path)!, pathEnd(path)!]
            .filter((p) => levelIn(design, half.cell, p) > EXACT)
            .filter((p) => levelIn(design, half.cell, p) < design.field.room - EXACT)
            .map((p) => ({ half, name: `${c.side} ${c.number}`, at: moved(p, half) })),
        ),
      ),
    );
    // A strip's first and last swag, and the join that is drawn open, have no neighbour.
    const torn = design.sides.filter((s) => s.tear).length;
    // Beside a free corner square a side's stitching ends at a crown.
    const crowns = design.corner.kind === 'half' ? 2 * design.sides.length : 0;
    const most = (design.sides.length === 1 ? 2 : 2 * torn + crowns) * 2 * 2;
    const alone = ends.filter(
      (e) => !ends.some((o) => o.half !== e.half && o.name === e.name && apart(o.at, e.at) < EXACT),
    );
    expect(ends.length).toBeGreaterThan(20);
    expect(alone.length).toBeLessThanOrEqual(most);
  });
});

const moved = (p: Point, half: Design['halves'][number]): Point =>
  pathStart(movePath(openPath([line(p, { x: p.x + 1, y: p.y })]), half.motion))!;

test('bands of equal width lie the same way apart all along', () => {
  for (const { design, plan } of ALL)
    for (const cell of design.cells) {
      const [first, second] = channelsOf(cell, design, plan.channels);
      if (!first || !second) throw new Error('two outward channels were asked for');
      // The second is the first's own parallel at the second width, wherever neither is cut.
      for (const p of second.paths.flatMap((path) => pointsAlong(path, 4))) {
        const away = distanceTo(first.paths, p);
        const swag = distanceTo([wholeSwag(cell)], p);
        expect(swag).toBeCloseTo(first.distance + second.width, 6);
        expect(away).toBeGreaterThan(second.width - EXACT);
      }
    }
});

describe('corners', () => {
  const borders = ALL.filter((d) => cornerSwag(d.design));
  test.each(borders)('$name: the halves of every channel meet on the mitre', ({ design, plan }) => {
    const corner = cornerSwag(design)!.cell;
    const at = placedChannels(design, plan.channels);
    const halves = design.halves.filter((h) => h.cell === corner);
    expect(halves.length).toBe(8);
    let met = 0;
    for (const first of halves.filter((h) => h.half === 'first')) {
      const second = halves.find((h) => h.repeat === first.repeat && h.half === 'second')!;
      for (const [k, channel] of at.get(first)!.entries()) {
        const other = at.get(second)![k]!;
        if (channel.paths.length === 0) continue;
        const a = moved(pathEnd(channel.paths.at(-1)!)!, first);
        const b = moved(pathEnd(other.paths.at(-1)!)!, second);
        // A channel that leaves the border before the mitre ends at the margin instead.
        const atMargin = levelIn(design, corner, pathEnd(channel.paths.at(-1)!)!) > design.field.room - EXACT;
        if (atMargin) continue;
        // Or it goes over into the cell of the side's last swag, where a narrow one stands across the corner.
        if (offSide(design, pathEnd(channel.paths.at(-1)!)!) < EXACT) continue;
        met++;
        expect(offMitre(corner, pathEnd(channel.paths.at(-1)!)!)).toBeLessThan(EXACT);
        expect(apart(a, b)).toBeLessThan(EXACT);
      }
    }
    expect(met).toBeGreaterThanOrEqual(8);
  });
});

/** How far off the line at 67.5° that parts a swag across a corner from its neighbours, in the middle of the least gap. */
const offSide = (design: Design, p: Point): number => {
  if (cornerSwag(design)?.kind !== 'across') return Number.POSITIVE_INFINITY;
  const back = (Math.min(...design.sides.map((s) => s.fit.seat.gap)) / 2) * Math.SQRT1_2;
  const angle = (67.5 * Math.PI) / 180;
  return Math.abs((p.x + back) * Math.sin(angle) - (p.y - back) * Math.cos(angle));
};

const offMitre = ({ crown, mirror }: Cell, p: Point): number =>
  Math.abs((p.x - crown.x) * Math.sin(mirror) - (p.y - crown.y) * Math.cos(mirror));

/** A cell and a design of nothing but what channels ask for. */
const made = (path: Path, room: number, gap = 0) => {
  const crown = pathEnd(path)!;
  const cell = { name: 'made', path, join: -gap / 2, crown, mirror: Math.PI / 2 } as unknown as Cell;
  const field = { room, near: 0, far: room };
  const design = { field, cells: [cell], sides: [], corner: WITHOUT_SWAG } as unknown as Design;
  return { cell, design };
};
const at = (x: number, y: number): Point => ({ x, y });

describe('points', () => {
  // A gable of 45° on each side: 100 wide, 50 high.
  const gable = made(polyline([at(0, 0), at(50, 50)]), 200);
  const crownOf = (channel: Channel): Point => pathEnd(channel.paths[0]!)!;

  test('round: the line goes over the crown at its distance', () => {
    const [c] = channelsOf(gable.cell, gable.design, { outward: [10], inward: [], points: 'round' });
    expect(crownOf(c!).y).toBeCloseTo(60, 9);
  });

  test('pivot: the sides run on until they meet, d·√2 over a right angle', () => {
    const [c] = channelsOf(gable.cell, gable.design, { outward: [10], inward: [], points: 'pivot' });
    expect(crownOf(c!).y).toBeCloseTo(50 + 10 * Math.SQRT2, 9);
    expect(c!.paths.length).toBe(1);
    expect(c!.paths[0]!.pieces.every((p) => p.kind === 'line')).toBe(true);
  });

  test('inward, the crown is no point to go round: both give the same', () => {
    for (const points of ['round', 'pivot'] as const) {
      const [c] = channelsOf(gable.cell, gable.design, { outward: [], inward: [10], points });
      expect(crownOf(c!).y).toBeCloseTo(50 - 10 * Math.SQRT2, 9);
    }
  });

  test('a point sharper than the limit is rounded', () => {
    // A mitre reaches d / sin(φ/2) from the point φ: beyond 4 d where φ is less than 28.96°.
    const needle = (half: number) => made(polyline([at(0, 0), at(50 * Math.tan(half), 50)]), 400);
    const reach = (half: number): number => {
      const { cell, design } = needle(half);
      const [c] = channelsOf(cell, design, { outward: [5], inward: [], points: 'pivot' });
      return crownOf(c!).y - 50;
    };
    const limit = Math.asin(1 / 4);
    expect(reach(limit + 0.01)).toBeCloseTo(5 / Math.sin(limit + 0.01), 6);
    expect(reach(limit - 0.01)).toBeCloseTo(5, 6);
  });
});

describe('necks', () => {
  // Two rooms over one another, with a neck 16 wide between: 12 from the walls there is no way through.
  const half = polyline([at(0, 0), at(0, 60), at(42, 60), at(42, 80), at(0, 80), at(0, 140), at(50, 140)]);
  const { cell, design } = made(half, 400);

  test('an inward channel keeps the part behind the neck', () => {
    const [c] = channelsOf(cell, design, { outward: [], inward: [12], points: 'round' });
    expect(c!.paths.length).toBe(2);
    const tops = c!.paths.map((p) => Math.max(...pointsAlong(p).map((q) => q.y))).sort((a, b) => a - b);
    // Round the neck's corners, 8 mm to each side of the middle: 60 − √(12² − 8²).
    expect(tops[0]).toBeCloseTo(60 - Math.sqrt(80), 9);
    expect(tops[1]).toBeCloseTo(128, 9);
  });

  test('it goes through a neck that is wide enough', () => {
    const [c] = channelsOf(cell, design, { outward: [], inward: [6], points: 'round' });
    expect(c!.paths.length).toBe(1);
  });

  test('a neck exactly twice the distance wide has no line through it, and no stitch there and back', () => {
    const [c] = channelsOf(cell, design, { outward: [], inward: [8], points: 'round' });
    expect(c!.paths.length).toBe(2);
    for (const path of c!.paths)
      for (const p of pointsAlong(path, 0.5))
        expect(Math.abs(p.x - 50) < 1e-9 && p.y > 61 && p.y < 79).toBe(false);
  });

  test('where nothing is so far from the stitching, nothing is left', () => {
    const [, , c] = channelsOf(cell, design, { outward: [], inward: [12, 30, 20], points: 'round' });
    expect(c!.distance).toBe(62);
    expect(c!.paths).toEqual([]);
  });

  test('a channel beyond the margin is gone, and one that passes it is cut', () => {
    const low = made(half, 150);
    const [cut, gone] = channelsOf(low.cell, low.design, { outward: [12, 400], inward: [], points: 'round' });
    expect(cut!.paths.flatMap((p) => pointsAlong(p)).every((p) => p.y <= 150 + 1e-9)).toBe(true);
    expect(gone!.paths).toEqual([]);
  });
});

/**
 * mm. Before it buffers, GEOS leaves out points of a line's concave stretches that matter less than a hundredth
 * of the distance; our own distances are held to 1e-6 above.
 */
const GEOS_SLACK = 5e-3;

describe('against GEOS', () => {
  let geos: GeosFigures;
  beforeAll(async () => {
    geos = await geosFigures();
  });

  test.each(ALL)(
    '$name: channels lie on the edge of what is so near to the mirrored figure',
    ({ design, plan }) => {
      for (const cell of new Set([design.cells[0]!, design.cells.at(-1)!])) {
        const swag = flatten(wholeSwag(cell), 1e-5);
        for (const channel of channelsOf(cell, design, plan.channels)) {
          const points = channel.paths.flatMap((path) => pointsAlong(path, 5));
          expect(points.length).toBeGreaterThan(0);
          expect(geos.farthestFromBuffer(swag, channel.distance, points)).toBeLessThan(GEOS_SLACK);
        }
      }
    },
  );
});
