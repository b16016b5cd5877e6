/** How an etched line is laid, said of what the swags lie round. */

import { expect, test } from 'vitest';
import { settingWords } from '../../../src/output/text/index.ts';
import { planOf, profile, search } from '../../swag/fit-helpers.ts';

test.each([
  ['border: { width: 8 in, inner: 60 in }', 'line A square to seam'],
  ['strip: { length: 48 in, width: 8 in }', 'line A square to seam'],
  ['frame: { block: 14 in, clearance: 1/2 in, within: 24 in }', 'line A square to block'],
  // A ray from the centre is square to the circle round the motif.
  ['frame: { around: 11 in, clearance: 1/2 in }', 'line A along ray'],
])('%s: %s', (layout, words) => {
  const plan = planOf(`layout: { ${layout} }\nswag: { setting: alignment-line, laid: square }`);
  const { fit, field } = search(plan, [profile('finial')]).results[0]!;
  expect(settingWords(fit, field)).toBe(words);
});
