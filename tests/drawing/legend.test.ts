/** What a legend calls the lines of cloth: a border has seams, and a frame has none. */

import { describe, expect, test } from 'vitest';
import { drawDesign, type LegendEntry, legendOf, SHEET, scopeOf, styled } from '../../src/drawing/index.ts';
import { designOf } from '../../src/swag/index.ts';
import { planOf, search } from '../swag/fit-helpers.ts';

const entries = (layout: string): readonly LegendEntry[] => {
  const [best] = search(planOf(`layout: ${layout}`)).results;
  const design = designOf(best!.field, best!.fit);
  const scope = scopeOf(design, 'all');
  if (!scope.ok) throw new Error('no scope');
  return legendOf(styled(drawDesign(design, scope.scope, { title: '' }), SHEET));
};

const words = (layout: string): string =>
  entries(layout)
    .map((e) => e.words)
    .join('; ');

describe('the legend', () => {
  test.each([
    ['{ strip: { length: 60, width: 6 } }', /\bseams\b/, /motif|block|limit/],
    [
      '{ frame: { count: 8, around: 9, clearance: 1/2, within: 18 } }',
      /the motif's edge, the limit; the circle kept clear(;|$)/,
      /seam/,
    ],
    ['{ frame: { count: 8, around: 9, clearance: 1/2 } }', /the circle kept clear(;|$)/, /seam|limit/],
    [
      '{ frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 22 } }',
      /the block's edge, the limit(;|$)/,
      /seam/,
    ],
  ])('of %s', (layout, has, hasNot) => {
    expect(words(layout)).toMatch(has);
    expect(words(layout)).not.toMatch(hasNot);
    const looks = entries(layout).map((e) => JSON.stringify(e.stroke));
    expect(new Set(looks).size).toBe(looks.length);
  });

  test('tells the line that swags start on from the margin and the seam', () => {
    const found = entries('{ strip: { length: 60, width: 6, margin: 1/2 } }');
    const look = (about: string) => found.find((e) => e.words.startsWith(about))?.stroke;
    const [seam, start, margin] = [look('seams'), look('the line that swags start on'), look('margin')];
    expect(seam?.dash).toBeUndefined();
    expect(start?.dash).not.toEqual(margin?.dash);
    expect(Math.max(...(start?.dash ?? [0]))).toBeGreaterThan(0);
  });
});
