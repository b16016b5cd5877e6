/** Which words of a text are explained. */

import { expect, test } from 'vitest';
import { termIn, WORDS } from '../../src/page/ui/terms.ts';

const found = (text: string): readonly (readonly [string, string | undefined])[] =>
  text
    .split(WORDS)
    .filter((_, i) => i % 2 === 1)
    .map((word) => [word, termIn(word)]);

test('words of the trade are found as designs and cards say them', () => {
  expect(found('Finial: heel to crown end, crown on centre, heel first, template inside the swags')).toEqual([
    ['heel', 'heel'],
    ['crown end', 'crown'],
    ['crown on centre', 'setting'],
    ['heel', 'heel'],
    ['inside', 'inside'],
  ]);
  expect(found('Newel: section 2 (vase) to end of section 3, flat 1 on a guide line, outside')).toEqual([
    ['section', 'section'],
    ['section', 'section'],
    ['flat 1 on a guide line', 'setting'],
    ['outside', 'inside'],
  ]);
  for (const words of ['line A along seam', 'line near heel square to ray', 'settings'])
    expect(found(words)).toEqual([[words, 'setting']]);
  expect(found('the wheel, sectioned, crowned')).toEqual([]);
});
