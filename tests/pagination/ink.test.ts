import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arc, line, openPath, point, polyline } from '../../src/geometry/index.ts';
import { inkOf, shownIn } from '../../src/pagination/index.ts';
import { holdsInk } from '../../src/pagination/ink.ts';
import { countInside, countTouched, occupancyOf } from '../../src/pagination/occupancy.ts';
import { runs } from '../support/runs.ts';
import { drawingOf, scatter, seeded, stroked } from './sample-drawings.ts';

const black = { width: 2, color: '#000000' };
const window = (minX: number, minY: number, maxX: number, maxY: number) => ({ minX, minY, maxX, maxY });

describe('ink', () => {
  it('counts a stroke with its width, up to the edge of the pen and no farther', () => {
    const ink = inkOf(
      drawingOf('line', { stitch: [stroked(openPath([line(point(0, 0), point(10, 0))]), black)] }),
    );
    expect(ink.box).toEqual(window(-1, -1, 11, 1));
    expect(holdsInk(ink, window(3, 0.999, 4, 5))).toBe(true);
    expect(holdsInk(ink, window(3, 1, 4, 5))).toBe(false);
    // A round pen: at 45° from the end the ink ends at 1/√2 = 0.7071 both ways.
    expect(holdsInk(ink, window(10.7, 0.7, 12, 2))).toBe(true);
    expect(holdsInk(ink, window(10.71, 0.71, 12, 2))).toBe(false);
  });

  it('fills areas even-odd: a ring is inked, its hole is not', () => {
    const ring = (radius: number) => ({ closed: true, pieces: [arc(point(0, 0), radius, 0, 2 * Math.PI)] });
    const ink = inkOf(
      drawingOf('ring', { fill: [{ kind: 'area', loops: [ring(20), ring(10)], color: '#cccccc' }] }),
    );
    expect(holdsInk(ink, window(-5, -5, 5, 5))).toBe(false);
    expect(holdsInk(ink, window(14, -1, 16, 1))).toBe(true);
    expect(holdsInk(ink, window(-16, -1, -14, 1))).toBe(true);
    expect(holdsInk(ink, window(15, 15, 25, 25))).toBe(false);
  });

  it('takes an area that was left open as closed', () => {
    const open = polyline([point(0, 0), point(10, 0), point(10, 10), point(0, 10)]);
    const ink = inkOf(drawingOf('open', { fill: [{ kind: 'area', loops: [open], color: '#cccccc' }] }));
    expect(holdsInk(ink, window(4, 4, 5, 5))).toBe(true);
  });

  it('gives text the width that it is told, turned as it is drawn', () => {
    const drawing = drawingOf('text', {
      notes: [
        {
          kind: 'text',
          text: 'newel',
          at: point(0, 0),
          size: 10,
          align: 'middle',
          angle: Math.PI / 2,
          color: '#000000',
        },
      ],
    });
    const ink = inkOf(drawing, (text) => 4 * text.length);
    // 20 mm of text centred on the origin and running up; letters reach to the left of the base line.
    expect(holdsInk(ink, window(-5, 9, -4, 9.9))).toBe(true);
    expect(holdsInk(ink, window(-5, 10.1, -4, 12))).toBe(false);
    expect(holdsInk(ink, window(3, -5, 5, 5))).toBe(false);
  });

  it('has no ink where there is nothing to draw', () => {
    const ink = inkOf(drawingOf('empty', { stitch: [stroked(openPath([]), black)] }));
    expect(ink.items).toEqual([]);
    expect(holdsInk(ink, window(-1e6, -1e6, 1e6, 1e6))).toBe(false);
  });

  it('refuses a coordinate that is no number', () => {
    const bad = drawingOf('bad', {
      stitch: [stroked(openPath([line(point(0, 0), point(Number.POSITIVE_INFINITY, 0))]), black)],
    });
    expect(() => inkOf(bad)).toThrow(/not a finite number/);
  });
});

describe('the occupancy grid', () => {
  it('never contradicts the exact test, for windows anywhere', () => {
    let sure = 0;
    let none = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const ink = inkOf(scatter(seed, 150, 120, 8));
      const grid = occupancyOf(ink);
      const random = seeded(seed * 977);
      for (let i = 0; i < 250; i++) {
        const x = ink.box.minX - 10 + random() * 170;
        const y = ink.box.minY - 10 + random() * 140;
        const w = window(x, y, x + random() * 30, y + random() * 30);
        const inked = holdsInk(ink, w);
        if (countInside(grid, w) > 0) {
          sure++;
          expect(inked).toBe(true);
        }
        if (countTouched(grid, w) === 0) {
          none++;
          expect(inked).toBe(false);
        }
      }
    }
    expect(Math.min(sure, none)).toBeGreaterThan(300);
  });

  it('counts the cells of a disc: its area, but for the cells of its rim', () => {
    const disc = { closed: true, pieces: [arc(point(0, 0), 50, 0, 2 * Math.PI)] };
    const ink = inkOf(drawingOf('disc', { fill: [{ kind: 'area', loops: [disc], color: '#cccccc' }] }));
    const marked = countTouched(occupancyOf(ink), window(-60, -60, 60, 60));
    // π·50² = 7853.98; a circle of radius 50 crosses 8·50 unit cells at most, of which it covers half on average.
    expect(marked).toBeGreaterThan(7853);
    expect(marked).toBeLessThan(7854 + 400);
  });
});

describe('what a window shows of a long line', () => {
  /** A line that wanders up and down, and back over itself, as a fill does. */
  const wander = (seed: number, count: number) => {
    const random = seeded(seed);
    const points = [point(0, 0)];
    for (let i = 0; i < count; i++) {
      const { x, y } = points.at(-1)!;
      points.push(point(x + 8 * (random() - 0.45), y + 8 * (random() - 0.5)));
    }
    return polyline(points);
  };

  it('is every piece that comes into it, in stretches of the line as it was, and little else of it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 300, max: 3000 }),
        fc.double({ min: -20, max: 800, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: 1, max: 150, noNaN: true }),
        (seed, count, x, y, size) => {
          const path = wander(seed, count);
          const at = window(x, y, x + size, y + size);
          const [inked] = inkOf(
            drawingOf('wander', { fill: [stroked(path, { width: 0.4, color: '#000000' })] }),
          ).items;
          const shown = shownIn(inked!, at).flatMap((item) =>
            item.kind === 'path' ? [item.path.pieces] : [],
          );
          const all = shown.flat();
          // In the order of the line, each once.
          const places = all.map((piece) => path.pieces.indexOf(piece));
          for (let i = 1; i < places.length; i++) expect(places[i]!).toBeGreaterThan(places[i - 1]!);
          // Each piece of which a point lies in the window, looked at from place to place.
          for (const piece of path.pieces) {
            if (piece.kind !== 'line') throw new Error('a polyline');
            for (let k = 0; k <= 20; k++) {
              const px = piece.from.x + (k / 20) * (piece.to.x - piece.from.x);
              const py = piece.from.y + (k / 20) * (piece.to.y - piece.from.y);
              if (px > x && px < x + size && py > y && py < y + size) expect(all).toContain(piece);
            }
          }
          // A stretch that does not begin or end with the line itself does so where the window shows nothing.
          for (const stretch of shown)
            for (const [end, isOwn] of [
              [stretch[0]!.from, stretch[0] === path.pieces[0]],
              [stretch.at(-1)!.to, stretch.at(-1) === path.pieces.at(-1)],
            ] as const)
              expect(
                isOwn ||
                  end.x < x - 0.1 ||
                  end.x > x + size + 0.1 ||
                  end.y < y - 0.1 ||
                  end.y > y + size + 0.1,
              ).toBe(true);
        },
      ),
      runs(40, 61),
    );
  });

  it('is next to nothing where the line is far away', () => {
    const path = wander(7, 20_000);
    const [inked] = inkOf(
      drawingOf('wander', { fill: [stroked(path, { width: 0.4, color: '#000000' })] }),
    ).items;
    const { minX } = inked!.box;
    const shown = shownIn(inked!, window(minX, -1e4, minX + 50, 1e4));
    const pieces = shown.flatMap((item) => (item.kind === 'path' ? item.path.pieces : []));
    expect(pieces.length).toBeLessThan(2000);
  });

  it('is all of a dashed line, whose dashes are counted from its start', () => {
    const path = wander(7, 2000);
    const dashed = stroked(path, { width: 0.4, color: '#000000', dash: [2, 1] });
    const [inked] = inkOf(drawingOf('wander', { fill: [dashed] })).items;
    expect(shownIn(inked!, window(0, 0, 10, 10))).toEqual([dashed]);
  });
});
