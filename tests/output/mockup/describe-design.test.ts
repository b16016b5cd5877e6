/** What is said of a gap is what a person can measure: one that rounds to nothing is not spoken of. */

import { expect, test } from 'vitest';
import { CM_TENTH } from '../../../src/length/index.ts';
import { describeDesign } from '../../../src/output/mockup/index.ts';
import { designOf } from '../../../src/swag/index.ts';
import { planOf, search } from '../../swag/fit-helpers.ts';

/** Half of the step to which centimetres are said, mm. */
const UNSAID = 0.5;

test('gaps are said where they round to something, and only there', () => {
  let unsaid = 0;
  let said = 0;
  for (const length of [500, 700, 900, 1100])
    for (const { field, fit } of search(planOf(`layout: { strip: { length: ${length} mm, width: 150 mm } }`))
      .results) {
      const { gap } = fit.sides[0]!.seat;
      const line = describeDesign(designOf(field, fit), CM_TENTH).find((l) => l.startsWith('strip:'))!;
      if (gap < UNSAID - 1e-6) {
        if (gap > 0) unsaid++;
        expect(line).not.toMatch(/between neighbours/);
      } else if (gap > UNSAID + 1e-6) {
        said++;
        expect(line).toMatch(/, (?!0 cm)[\d.]+ cm between neighbours$/);
      }
    }
  expect(unsaid).toBeGreaterThan(0);
  expect(said).toBeGreaterThan(0);
});
