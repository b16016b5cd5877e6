import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewestFor } from '../../src/pagination/covering.ts';
import { runs } from '../support/runs.ts';

/** All sets by size: the least one that meets every group. */
const bruteForce = (groups: readonly (readonly number[])[], universe: number): number => {
  let least = universe + 1;
  for (let set = 0; set < 1 << universe; set++) {
    const size = set.toString(2).replaceAll('0', '').length;
    if (size < least && groups.every((g) => g.some((n) => (set >> n) & 1))) least = size;
  }
  return least;
};

describe('the fewest sheets for ink in bands', () => {
  it('needs none for nothing, one for one', () => {
    expect(fewestFor([])).toEqual([]);
    expect(fewestFor([[3, 5]])).toHaveLength(1);
  });

  it('is as small as the best of all subsets', () => {
    const group = fc.uniqueArray(fc.integer({ min: 0, max: 8 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(group, { minLength: 1, maxLength: 9 }), (groups) => {
        const found = fewestFor(groups);
        expect(groups.every((g) => g.some((n) => found.includes(n)))).toBe(true);
        expect(found.length).toBe(bruteForce(groups, 9));
      }),
      runs(400, 5),
    );
  });

  it('beats the greedy choice where that is not the best', () => {
    // Greedy takes 0, which is in most groups, and then needs two more; 1 and 2 alone are enough.
    const groups = [
      [0, 1],
      [0, 1],
      [0, 2],
      [0, 2],
      [1, 3],
      [2, 4],
    ];
    expect(fewestFor(groups)).toHaveLength(2);
  });
});
