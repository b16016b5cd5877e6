/** What a tape measured on the cloth, as a scale: the picture is then as large as the quilt, whatever the projector does. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  barFor,
  isFault,
  leanOf,
  scaleAt,
  scaleFrom,
  scaleKept,
  scaleText,
} from '../../src/page/plan/projected-scale.ts';
import { runs } from '../support/runs.ts';

const BARS = { across: 1000, up: 400 };
const scaleOf = (across: string, up: string, units: 'in' | 'cm' | 'mm' = 'in') =>
  scaleFrom(BARS, { across, up }, units, 1);

describe('a bar that was measured', () => {
  test('gives the pixels of a millimetre, each way by itself', () => {
    // 1000 px over 40 in: 25 px to the inch; 400 px over 20 in: 20 px to the inch.
    const scale = scaleOf('40', '20');
    if (!scale || isFault(scale)) throw new Error('no scale');
    expect(25.4 * scale.across).toBeCloseTo(25, 9);
    expect(25.4 * scale.up).toBeCloseTo(20, 9);
    expect(scaleOf('101.6', '50.8', 'cm')).toEqual(scale);
    expect(scaleOf('1016 mm', '50,8 cm', 'cm')).toEqual(scale);
  });

  test('holds for both ways where only the long one was', () => {
    const scale = scaleOf('39 3/8', ' ');
    expect(scale).toMatchObject({ across: 1000 / (39.375 * 25.4), up: 1000 / (39.375 * 25.4) });
  });

  test('makes the picture true: what is so many mm on the quilt is so many under the tape', () => {
    const mm = fc.double({ min: 300, max: 3000, noNaN: true });
    fc.assert(
      fc.property(mm, fc.double({ min: 0.67, max: 1.49, noNaN: true }), (across, lean) => {
        // On a cloth on which the long bar is `across` mm, and a pixel up is `lean` times one across.
        const pixel = { across: across / BARS.across, up: (lean * across) / BARS.across };
        const typed = { across: String(BARS.across * pixel.across), up: String(BARS.up * pixel.up) };
        const scale = scaleFrom(BARS, typed, 'mm', 1.5);
        if (!scale || isFault(scale)) throw new Error(JSON.stringify(typed));
        const now = scaleAt(scale, 1.5);
        expect(254 * now.across * pixel.across).toBeCloseTo(254, 3);
        expect(254 * now.up * pixel.up).toBeCloseTo(254, 3);
      }),
      runs(200, 41),
    );
  });

  test.each([
    ['a', '', 'across', /^“a” cannot be read as the length of the long bar/],
    ['', '20', 'across', /^The length of the long bar is empty/],
    ['0', '20', 'across', /^The length of the long bar cannot be 0/],
    ['40', 'x', 'up', /^“x” cannot be read as the length of the upright bar/],
    // 1000 px at 10 and at 0.05 px to the mm: 100 mm and 20 m.
    ['3', '', 'across', /^A projector makes this bar between 3 15\/16 in and 787 3\/8 in long\./],
    ['4000', '1600', 'across', /^A projector makes this bar/],
    ['4', '1', 'up', /^A projector makes this bar between 1 9\/16 in and 314 15\/16 in long\./],
    ['40', '40', 'up', /more than half as large again/],
    ['40', '10', 'up', /more than half as large again/],
  ])('%s and %s is wrong, at its field', (across, up, at, words) => {
    const found = scaleOf(across, up);
    if (!isFault(found)) throw new Error('taken');
    expect(found.at).toBe(at);
    expect(found.words).toMatch(words);
  });

  test('is believed until one way is half as large again as the other, and asks for nothing while both are empty', () => {
    expect(scaleOf('', ' ')).toBeUndefined();
    for (const up of ['11', '16', '23.9']) expect(isFault(scaleOf('40', up)), up).toBe(false);
  });
});

test('a zoom of the browser changes nothing on the cloth', () => {
  const scale = scaleFrom(BARS, { across: '40', up: '' }, 'in', 1);
  if (!scale || isFault(scale)) throw new Error('no scale');
  // At twice the zoom a CSS pixel is twice as large, and half as many make an inch.
  expect(25.4 * scaleAt(scale, 2).across).toBeCloseTo(12.5, 9);
});

test('a projector that leans is told of from 2 in a hundred', () => {
  expect(leanOf({ across: 1, up: 1.01 })).toBeUndefined();
  expect(leanOf({ across: 1, up: 1.02 })).toBe(2);
  expect(leanOf({ across: 1.25, up: 1 })).toBe(25);
});

test('a bar is as long as there is room for, in round figures', () => {
  expect(barFor(1280)).toBe(1000);
  expect(barFor(390)).toBe(300);
  expect(barFor(10)).toBe(100);
});

test('what a browser keeps comes back, and what is damaged does not', () => {
  const scale = { across: 0.984252, up: 0.787402, ratio: 1.25 };
  expect(scaleKept(scaleText(scale))).toEqual(scale);
  for (const text of [null, '', '1', '1 1', 'a b c', '1 1 0', '1 9 1', '1e9 1e9 1', '1 1 1000'])
    expect(scaleKept(text), String(text)).toBeUndefined();
});
