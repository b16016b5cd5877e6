/** What the page keeps of a measured print: by the paper's edges, and nothing that may have been either of them. */

import { describe, expect, test } from 'vitest';
import { factorsOf, keptMeasured, measuredText } from '../../src/page/plan/measured.ts';

describe('what was measured', () => {
  test('comes back as it was typed', () => {
    const typed = { short: '1 31/32', long: '2' };
    expect(keptMeasured(measuredText(typed), null)).toEqual({ typed });
    expect(keptMeasured(measuredText(typed), '2|1.98')).toEqual({ typed });
    expect(keptMeasured(null, null)).toEqual({ typed: { short: '', long: '' } });
  });

  test('and kept as across and up is not used for an edge, and is told', () => {
    // On a landscape print 1.98 across was along the long edge, on a portrait one along the short edge.
    expect(keptMeasured(null, '1.98|2')).toEqual({
      typed: { short: '', long: '' },
      unclear: '1.98 across and 2 up',
    });
    expect(keptMeasured(null, '|1.98')).toMatchObject({ unclear: 'nothing across and 1.98 up' });
  });

  test('but is used where both were the same', () => {
    expect(keptMeasured(null, '1.98|1.98')).toEqual({ typed: { short: '1.98', long: '1.98' } });
  });

  test('is a factor for each edge; an empty field is a side that is right', () => {
    // The square is 2 in, 50.8 mm.
    expect(factorsOf({ short: '1.98', long: '' }, 'in')).toEqual({
      short: expect.closeTo(0.99, 12),
      long: 1,
    });
    const metric = factorsOf({ short: '', long: '50.3' }, 'mm');
    expect(metric).toMatchObject({ short: 1 });
    expect(metric).toHaveProperty('long', expect.closeTo(50.3 / 50.8, 12));
    expect(factorsOf({ short: ' ', long: '' }, 'in')).toBeUndefined();
    expect(factorsOf({ short: '1.98', long: '3' }, 'in')).toBe('wrong');
  });
});
