/** Whether the figures are still those of the example. */

import { expect, test } from 'vitest';
import { isExample, newPlan, withFiguresIn } from '../../src/page/plan/first-figures.ts';
import { withValue } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';

test('the first figures are an example in any units, until a side is typed over', () => {
  expect(isExample(FIRST_PLAN)).toBe(true);
  for (const units of ['cm', 'mm'] as const) {
    expect(isExample(newPlan(units, 'a4'))).toBe(true);
    expect(isExample(withFiguresIn(FIRST_PLAN, 'in', units))).toBe(true);
    expect(isExample(withFiguresIn(withFiguresIn(FIRST_PLAN, 'in', units), units, 'in'))).toBe(true);
  }
  for (const side of ['top', 'right', 'bottom', 'left']) {
    expect(isExample(withValue(FIRST_PLAN, ['layout', 'border', 'inner', side], '61'))).toBe(false);
    // A sixteenth of an inch is hers.
    expect(isExample(withValue(FIRST_PLAN, ['layout', 'border', 'inner', side], '60 1/16'))).toBe(false);
  }
  expect(isExample('layout: { strip: { length: 60, width: 6 } }\n')).toBe(false);
  expect(isExample('layout: [')).toBe(false);
});
