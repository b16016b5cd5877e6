/** Lengths on a card that are said to be parts of another: what is read adds up to it. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addingUp, longLength } from '../../../src/output/card/thread-words.ts';
import { runs } from '../../support/runs.ts';

const tenths = (text: string): number => Math.round(10 * Number.parseFloat(text));

test.each(['in', 'cm'] as const)('in %s', (units) => {
  const unit = units === 'in' ? 914.4 : 1000;
  const say = longLength(units);
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 400_000, noNaN: true }), { minLength: 1, maxLength: 12 }),
      (parts) => {
        const told = addingUp(parts, units).map((mm) => tenths(say(mm)));
        const sum = parts.reduce((a, b) => a + b, 0);
        expect(told.reduce((a, b) => a + b, 0)).toBe(tenths(say(sum)));
        // Nothing is told otherwise than by less than a tenth.
        told.forEach((t, i) => {
          expect(Math.abs(t - (10 * parts[i]!) / unit)).toBeLessThan(1 + 1e-6);
        });
      },
    ),
    runs(2000, 20261129),
  );
});

test('by hand: 1.23, 1.24 and 19.13 yd are 21.6 yd', () => {
  const say = longLength('in');
  const parts = [1.23, 1.24, 19.13].map((yd) => yd * 914.4);
  expect(say(parts.reduce((a, b) => a + b, 0))).toBe('21.6 yd');
  expect(addingUp(parts, 'in').map(say)).toEqual(['1.2 yd', '1.3 yd', '19.1 yd']);
});
