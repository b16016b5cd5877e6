/** Pages for a roll: as wide as it, no longer than they must be, in as few pieces as can be, and never past a PDF's limit. */

import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ProblemError } from '../../src/document/index.ts';
import { point, polyline } from '../../src/geometry/index.ts';
import { layOut, sheetsWords } from '../../src/pagination/index.ts';
import { runs } from '../support/runs.ts';
import { drawingOf, stroked } from './sample-drawings.ts';

const INCH = 25.4;
/** ISO 32000-1, Annex C: 14,400 units of 1/72 in. */
const LONGEST = (14_400 / 72) * INCH;
const MARGIN = INCH / 2;
const PEN = 0.2;

const rectangle = (width: number, height: number) =>
  drawingOf('rectangle', {
    stitch: [
      stroked(
        polyline(
          [point(0, 0), point(width - PEN, 0), point(width - PEN, height - PEN), point(0, height - PEN)],
          true,
        ),
        { width: PEN, color: '#000000' },
      ),
    ],
  });

const page = (width: number, height: number, roll: number, more = {}) =>
  layOut(rectangle(width, height), { paper: { roll }, ...more });

describe('one page', () => {
  it('of a strip runs along the roll, and is as long as the strip, its margins and a little white', () => {
    const plan = page(60 * INCH, 8 * INCH, 36 * INCH);
    expect(plan.sheets).toHaveLength(1);
    expect(plan.width).toBeCloseTo(36 * INCH, 9);
    expect(plan.turned).toBe(true);
    expect(plan.orientation).toBe('portrait');
    // 60 in, a margin of 1/2 in and 8 mm of white at either end.
    expect(plan.height).toBeCloseTo(60 * INCH + 2 * MARGIN + 16, 6);
    expect(plan.sheets[0]!.checkIsClear).toBe(true);
    expect(sheetsWords(plan)).toBe('1 page of a roll 36 in wide');
  });

  it('of what is as wide as the roll allows is not turned, though it would be shorter in two', () => {
    const plan = page(35 * INCH, 50 * INCH, 36 * INCH);
    expect([plan.sheets.length, plan.turned]).toEqual([1, false]);
    // No room is left beside it for the check square: it stands past its end.
    expect(plan.sheets[0]!.checkIsClear).toBe(true);
    expect(page(35.1 * INCH, 50 * INCH, 36 * INCH).sheets.length).toBeGreaterThan(1);
  });

  it('may be shorter than the roll is wide', () => {
    const plan = page(30 * INCH, 8 * INCH, 36 * INCH);
    expect([plan.sheets.length, plan.orientation]).toEqual([1, 'landscape']);
    expect(plan.width).toBeCloseTo(36 * INCH, 9);
    expect(plan.height).toBeCloseTo(8 * INCH + 2 * MARGIN + 16, 6);
  });
});

it('what is longer than a page may be comes on pages of one length', () => {
  const plan = page(10_400, 200, 36 * INCH);
  expect(plan.sheets).toHaveLength(3);
  // Three windows that share an overlap of 1/2 in twice hold the length and its white.
  const live = plan.height - 2 * MARGIN;
  expect(3 * live - 2 * (INCH / 2)).toBeCloseTo(10_400 + 16, 6);
});

it('is made longer for a printer that prints too short, and stays one page', () => {
  const plan = page(60 * INCH, 8 * INCH, 36 * INCH, { measured: { short: 1, long: 0.97 } });
  expect(plan.sheets).toHaveLength(1);
});

it('the cover is for a sheet of its own', () => {
  expect(page(500, 200, 900).cover.id).toBe('letter');
  expect(page(500, 200, 900, { units: 'cm' }).cover.id).toBe('a4');
});

test.each([7.9, 201, Number.NaN])('a roll of %s in is refused', (inches) => {
  expect(() => page(500, 200, inches * INCH)).toThrow(ProblemError);
});

it('every page is as wide as the roll, none is too long, and all ink is shown', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 9000, noNaN: true }),
      fc.double({ min: 20, max: 2500, noNaN: true }),
      fc.double({ min: 8 * INCH, max: 60 * INCH, noNaN: true }),
      (width, height, roll) => {
        const plan = page(width, height, roll);
        expect(plan.width).toBeCloseTo(roll, 6);
        expect(plan.height).toBeLessThanOrEqual(LONGEST + 1e-6);
        const windows = plan.sheets.map(({ window }) => window);
        // All of the outline, looked at from place to place.
        for (let i = 0; i <= 40; i++) {
          const [x, y] = [(i / 40) * (width - PEN), (i / 40) * (height - PEN)];
          for (const at of [
            { x, y: 0 },
            { x, y: height - PEN },
            { x: 0, y },
            { x: width - PEN, y },
          ])
            expect(
              windows.some(
                (w) =>
                  at.x >= w.minX - 1e-6 &&
                  at.x <= w.maxX + 1e-6 &&
                  at.y >= w.minY - 1e-6 &&
                  at.y <= w.maxY + 1e-6,
              ),
            ).toBe(true);
        }
        // No way to lay it has fewer pieces than its area needs, and one that fits across has no lanes.
        if (
          Math.min(width, height) <= roll - 2 * MARGIN &&
          Math.max(width, height) + 16 <= LONGEST - 2 * MARGIN
        )
          expect(plan.sheets).toHaveLength(1);
      },
    ),
    runs(20, 51),
  );
});
