/** What is typed keeps its length, whatever units the page is in later. */

import { describe, expect, test } from 'vitest';
import { readLength } from '../../src/length/index.ts';
import { pointsTypedIn } from '../../src/page/plan/point-text.ts';
import { typedIn } from '../../src/page/plan/typed-in.ts';

describe('a figure', () => {
  test.each([
    ['3 1/4', 'in', 'cm', '3 1/4 in'],
    ['8.25', 'cm', 'mm', '8.25 cm'],
    ['5 mm', 'in', 'cm', '5 mm'],
    ['0', 'in', 'cm', '0'],
    ['', 'in', 'cm', ''],
    ['about 3', 'in', 'cm', 'about 3'],
    ['6', 'in', 'in', '6'],
  ] as const)('%s in %s, then %s: %s', (figure, then, now, said) => {
    expect(typedIn(figure, then, now)).toBe(said);
    const [before, after] = [readLength(figure, then), readLength(said, now)];
    expect(after.ok && after.mm).toBe(before.ok && before.mm);
  });
});

test('points keep their lines, corners and what cannot be read', () => {
  expect(pointsTypedIn('0, 0\n\n[1, 3/4, corner]\nabout 3\n2 cm\t1', 'in', 'mm')).toBe(
    '0, 0\n\n1 in, 3/4 in, corner\nabout 3\n2 cm, 1 in',
  );
});
