import { describe, expect, test } from 'vitest';
import { closedPath, flatten, signedArea } from '../../src/geometry/path.ts';
import {
  type Arc,
  arc,
  arcByRise,
  line,
  pieceAt,
  pieceBox,
  pieceLength,
  reversePiece,
  trimPiece,
} from '../../src/geometry/piece.ts';
import { point } from '../../src/geometry/point.ts';
import { pointOn } from './curve-helpers.ts';

const overChord = (chord: number, rise: number): Arc => {
  const p = arcByRise(point(0, 0), point(chord, 0), rise);
  if (p.kind !== 'arc') throw new Error('expected an arc');
  return p;
};

/** Area between an arc and its chord, by the sector and the triangle. */
const segmentArea = (p: Arc): number => Math.abs(signedArea(closedPath([p, line(p.to, p.from)])));

type Maybe = number | undefined;
type Case = readonly [string, number, number, number, Maybe, Maybe, Maybe];

describe('an arc by its chord and rise', () => {
  // chord, rise → radius, sweep (degrees), length, segment area; undefined where the source gives none.
  const cases: readonly Case[] = [
    // Machinery's Handbook, 31st ed., p. 79: c = 16, h = 6 gives r = 8 1/3; the rest from its formulas, evaluated.
    ['handbook', 16, 6, 25 / 3, 147.47959, 21.450037, 70.7084873],
    // MatheAss, "Circular Sections", help.matheass.eu: chord 21, height 6.
    ['circular sections', 21, 6, 12.1875, 118.97953, 25.308373, 89.254148],
    // r = (c² + 4h²)/(8h) in whole numbers; length and area evaluated from 2r·asin(c/2r) and the sector.
    ['whole numbers', 10, 1, 13, undefined, 10.2645691, undefined],
    ['whole numbers', 12, 3, 7.5, undefined, 13.9094283, 25.160356],
    // Unit radius, from h = 1 − cos(a/2), c = 2 sin(a/2), l = a, A = (a − sin a)/2, evaluated to eight digits.
    ['10 degrees', 0.17431149, 0.0038053019, 1, 10, 0.17453293, 0.00044237377],
    ['60 degrees', 1, 0.1339746, 1, 60, 1.0471976, 0.090586074],
    ['120 degrees', 1.7320508, 0.5, 1, 120, 2.0943951, 0.61418485],
    ['180 degrees', 2, 1, 1, 180, Math.PI, Math.PI / 2],
  ];
  test.each(cases)('%s: chord %d, rise %d', (_, chord, rise, radius, degrees, length, area) => {
    for (const sign of [1, -1]) {
      const p = overChord(chord, sign * rise);
      expect(p.radius / radius).toBeCloseTo(1, 6);
      if (degrees !== undefined) expect((Math.abs(p.sweep) * 180) / Math.PI).toBeCloseTo(degrees, 4);
      if (length !== undefined) expect(pieceLength(p)).toBeCloseTo(length, 6);
      if (area !== undefined) expect(segmentArea(p)).toBeCloseTo(area, 6);
      expect(pointOn(p, 0.5).y).toBeCloseTo(sign * rise, 9);
    }
  });
  test('all cases ran', () => expect(cases).toHaveLength(8));

  test('a printed example: r = 60 and h = 8 give a chord of 59.86', () => {
    // Machinery's Handbook, 31st ed., p. 79, printed to a chain rounding of 0.01; exact 59.866518.
    expect(overChord(59.866518, 8).radius).toBeCloseTo(60, 5);
  });

  test('a rise beyond half the chord is an arc beyond 180°', () => {
    // h = r(1 − cos(a/2)) with r = 10, a = 270°: h = 10 + 5√2, c = 10√2.
    const p = overChord(10 * Math.SQRT2, 10 + 5 * Math.SQRT2);
    expect(p.radius).toBeCloseTo(10, 9);
    expect(Math.abs(p.sweep)).toBeCloseTo(1.5 * Math.PI, 9);
  });

  test('no rise is a line', () => expect(arcByRise(point(0, 0), point(5, 5), 0).kind).toBe('line'));
});

describe('nearly straight arcs keep their digits', () => {
  // The height over the chord at a share t is 4h·t(1 − t) for a flat arc (a parabola to order h³/c²).
  test.each([1e-2, 1e-4, 1e-6, 1e-8])('rise %d over 100 mm', (rise) => {
    const p = overChord(100, rise);
    for (const t of [0.1, 0.25, 0.5, 0.75, 0.9]) {
      const at = pieceAt(p, t);
      expect(Math.abs(at.y - 4 * rise * t * (1 - t))).toBeLessThan(1e-12 + rise * 1e-6);
      expect(Math.abs(at.x - 100 * t)).toBeLessThan(rise);
    }
    // A parabola's segment: 2/3 of chord times rise.
    expect(segmentArea(p) / ((2 / 3) * 100 * rise)).toBeCloseTo(1, 4);
    expect(pieceBox(p).maxY).toBeCloseTo(rise, 12);
  });

  test('an arc of 1e9 mm is flattened to the sagitta that was asked for', () => {
    // Chord for a sagitta s: √(8rs), 2828 mm here; an arc of 10 m needs four.
    expect(flatten({ pieces: [arc(point(0, 0), 1e9, 0, 1e-5)], closed: false }, 1e-3)).toHaveLength(5);
  });
});

test('parts of an arc lie on it, in its sense, and both ways round', () => {
  const p = arc(point(3, -2), 7, 1, -4);
  for (const q of [p, reversePiece(p)]) {
    const part = trimPiece(q, 0.2, 0.7);
    expect(pieceLength(part)).toBeCloseTo(14, 12);
    for (const t of [0, 0.3, 1]) {
      const [a, b] = [pointOn(part, t), pointOn(q, 0.2 + 0.5 * t)];
      expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1e-12);
    }
  }
});
