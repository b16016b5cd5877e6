/** Lengths in her units. Expected values: 1 in is 25.4 mm exactly (international yard and pound agreement, 1959). */

import { describe, expect, test } from 'vitest';
import { exactly, shownLength } from '../../src/page/plan/her-units.ts';

describe('a length written in other units', () => {
  test('inches have a decimal in cm and mm', () => {
    expect(exactly(61.5 * 25.4, 'cm')).toBe('156.21');
    expect(exactly(60.125 * 25.4, 'cm')).toBe('152.7175');
    expect(exactly(6.35, 'mm')).toBe('6.35');
    expect(exactly(0, 'cm')).toBe('0');
    expect(exactly(1500, 'cm')).toBe('150');
  });

  test('and centimetres only sometimes a fraction of an inch', () => {
    expect(exactly(1562.1, 'in')).toBe('61 1/2');
    expect(exactly(2.54, 'in')).toBe('0.1');
    expect(exactly(140, 'in')).toBeUndefined();
  });
});

describe('a length as it is shown', () => {
  test('in her own units it is as she wrote it', () => {
    for (const text of ['61 1/2', '61.25', '1/4', '0', 'abc', ''])
      expect(shownLength(text, 'in')).toEqual({ text });
    expect(shownLength('12.5', 'cm')).toEqual({ text: '12.5' });
  });

  test('more digits than anyone measures are rounded to a tenth of a millimetre', () => {
    expect(shownLength('152.7175', 'cm')).toEqual({ text: '152.72' });
    expect(shownLength('1527.175', 'mm')).toEqual({ text: '1527.2' });
  });

  test('what says other units is turned into hers, and the plan’s words are told where that rounds', () => {
    expect(shownLength('61 1/2 in', 'cm')).toEqual({ text: '156.21' });
    expect(shownLength('1/4 in', 'in')).toEqual({ text: '1/4' });
    // 140 mm are 5.5118 in, and 5 1/2 in to the sixteenth.
    expect(shownLength('14 cm', 'in')).toEqual({ text: '5 1/2', exact: '14 cm' });
  });
});
