/** Two kinds that take turns on the page: both are told, a plan that is opened again is the same, and neither is dragged by itself. */

import { expect, test } from 'vitest';
import { decided, look, words } from '../../src/page/engine/look.ts';
import { dragged, swagView } from '../../src/page/engine/swag-view.ts';
import { inputOf } from './ask.ts';

const PLAN = `template: [baluster, newel]
layout: { strip: { length: 60, width: 8, margin: 1/2 } }
swag: { alternate: [{ template: baluster, span: about 9 }, { template: newel }] }
`;

test('both kinds are told, and the plan that is kept gives them again', () => {
  const input = inputOf(PLAN);
  const answer = look(input);
  expect(answer.problems).toEqual([]);
  const { chosen } = answer;
  expect(chosen?.lines.join('\n')).toMatch(/kind 1, Baluster: [\s\S]*, and in turn [\s\S]*kind 2: Newel, /);
  expect(words(input).map(({ heading }) => heading)).toEqual(
    expect.arrayContaining(['Kind 1: set the template', 'Kind 2: set the template']),
  );
  const kept = decided(input);
  const again = look(inputOf(kept)).chosen;
  expect([again?.lines, again?.sides]).toEqual([chosen?.lines, chosen?.sides]);
  expect(decided(inputOf(kept))).toBe(kept);
});

test('a swag of two kinds is shown, and not turned by itself', () => {
  const input = inputOf(PLAN);
  const view = swagView(input, 'strip');
  expect(view?.turns).toBe(false);
  expect(dragged(input, 'strip', 100)).toBeUndefined();
});
