/** What a legend calls the lines of cloth: a border has seams, and a frame has none. */

import { describe, expect, test } from 'vitest';
import { drawDesign, legendOf, scopeOf } from '../../src/drawing/index.ts';
import { designOf } from '../../src/swag/index.ts';
import { planOf, search } from '../swag/fit-helpers.ts';

const words = (layout: string): string => {
  const [best] = search(planOf(`layout: ${layout}`)).results;
  const design = designOf(best!.field, best!.fit);
  const scope = scopeOf(design, 'all');
  if (!scope.ok) throw new Error('no scope');
  return legendOf(drawDesign(design, scope.scope, { title: '' }))
    .map((e) => e.words)
    .join('; ');
};

describe('the legend', () => {
  test.each([
    ['{ strip: { length: 60, width: 6 } }', /\bseams\b/, /motif|block|limit/],
    [
      '{ frame: { count: 8, around: 9, clearance: 1/2, within: 18 } }',
      /the motif's edge; .*the circle kept clear, and the limit/,
      /seam/,
    ],
    ['{ frame: { count: 8, around: 9, clearance: 1/2 } }', /the circle kept clear(;|$)/, /seam|limit/],
    [
      '{ frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 22 } }',
      /the block's edge, and the limit/,
      /seam/,
    ],
  ])('of %s', (layout, has, hasNot) => {
    expect(words(layout)).toMatch(has);
    expect(words(layout)).not.toMatch(hasNot);
  });
});
