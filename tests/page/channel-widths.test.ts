/** Widths of channels as a quilter types them. What each is to mean is what quilters asked for; no lengths are computed. */

import { describe, expect, test } from 'vitest';
import { readWidths } from '../../src/page/plan/channel-widths.ts';

const fault = (text: string, units: 'in' | 'cm' | 'mm'): string => {
  const read = readWidths(text, units);
  return read.ok ? `taken as ${read.widths.join(' and ')}` : read.fault;
};

describe('widths of channels', () => {
  test('one, or several with a comma between them', () => {
    for (const [text, units, widths] of [
      ['1/4', 'in', ['1/4']],
      ['1/4, 1/8', 'in', ['1/4', '1/8']],
      ['1/4,1/8', 'in', ['1/4', '1/8']],
      ['1 1/4,1 1/8', 'in', ['1 1/4', '1 1/8']],
      ['0.6, 0.6', 'cm', ['0.6', '0.6']],
      ['0.6,0.6', 'cm', ['0.6', '0.6']],
      ['5, 10', 'mm', ['5', '10']],
      ['5; 10;', 'mm', ['5', '10']],
      // No channel is 0 wide.
      ['0,6', 'cm', ['0.6']],
      ['0,6, 0,55', 'cm', ['0.6', '0.55']],
      ['0,6;0,6', 'cm', ['0.6', '0.6']],
      ['1/4, 0,25', 'in', ['1/4', '0.25']],
      ['0,6 cm', 'in', ['0.6 cm']],
    ] as const)
      expect(readWidths(text, units)).toEqual({ ok: true, widths });
  });

  test('a decimal comma is told as one', () => {
    expect(fault('1,6', 'cm')).toMatch(/comma in a number.*decimal point, such as 1\.6;/);
    expect(fault('0.5, 1,6', 'cm')).toMatch(/“1,6” has a comma/);
    expect(fault('10,6', 'mm')).toMatch(/“10,6” has a comma/);
    for (const [text, found] of [
      ['1/4, ,6', ',6'],
      ['0.6; ,6', ',6'],
      ['1,0,6', '1,0'],
      ['0,6,0,6', '0,6'],
    ])
      expect(fault(text!, 'cm'), text).toMatch(new RegExp(`^“${found}” has a comma`));
    expect(fault(' ,6', 'cm')).toMatch(/“,6” has a comma in a number.*decimal point, such as 0\.6;/);
    expect(fault('1,6 cm', 'in')).toMatch(/comma in a number/);
  });

  test('two numbers without a comma: how several are written, in her units', () => {
    expect(fault('0.6 0.6', 'cm')).toMatch(/comma and a space between them, such as 0\.6, 0\.6\./);
    expect(fault('1/4 1/8', 'in')).toMatch(/comma and a space between them, such as 1\/4, 1\/8\./);
  });

  test('what is none is told of the field', () => {
    expect(fault('', 'in')).toMatch(/is empty/);
    expect(fault('0', 'in')).toMatch(/^The width of a channel cannot be 0/);
    expect(fault('1/4, abc', 'in')).toMatch(/^“abc” cannot be read as the width of a channel/);
    expect(fault('-1/4', 'in')).toMatch(/cannot be less than 0/);
  });
});
