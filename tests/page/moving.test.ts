/** A slider's moves are answered from what is known to fit: by a real fit, near what the search then finds. */

import { expect, test } from 'vitest';
import { look } from '../../src/page/engine/look.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';

const input = (swag: string) => ({ plan: `${FIRST_PLAN}swag: { ${swag} }\n`, own: [], taken: undefined });
const spanIn = (lines: readonly string[]): number => {
  const [, whole, , top, bottom] = /span (\d+)( (\d+)\/(\d+))? (?:to|in)/.exec(lines.join('\n'))!;
  return Number(whole) + Number(top ?? 0) / Number(bottom ?? 1);
};

test.each(['about 8', 'about 10 1/2', 'about 14'])('span %s', (span) => {
  const first = look(input(`span: ${span}`), true);
  const searched = look(input(`span: ${span}`));
  expect(first.problems).toEqual([]);
  expect(first.chosen!.lines.join('\n')).toMatch(new RegExp(`\\(asked: ${span} in[;)]`));
  expect(Math.abs(spanIn(first.chosen!.lines) - spanIn(searched.chosen!.lines))).toBeLessThan(2);
});

test('a range that nothing meets is answered by the nearest, and then by what is in the way', () => {
  const asked = input('depth: at least 9');
  expect(look(asked, true).chosen!.lines.join('\n')).toMatch(/not met, it takes depth at least/);
  expect(look(asked).problems[0]?.text).toMatch(/cannot both be had/);
});

test('what was asked before is not kept for what is asked now', () => {
  const wide = look(input('span: about 14'), true).chosen!;
  const narrow = look(input('span: about 7'), true).chosen!;
  expect(spanIn(wide.lines)).toBeGreaterThan(spanIn(narrow.lines) + 3);
  expect(
    look(
      { ...input('span: about 7'), plan: input('span: about 7').plan.replace('width: 6', 'width: 9') },
      true,
    ).chosen!.quilt.box,
  ).not.toEqual(narrow.quilt.box);
});
