/** Two kinds of swag that take turns in a plan: what they mean, and what is said where they cannot be. */

import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { readPlan } from '../../src/plan/index.ts';

const STRIP = 'layout: { strip: { length: 60, width: 8, margin: 1/2 } }';
const reading = (rest: string, layout = STRIP) =>
  readPlan(`template: [a, b]\n${layout}\n${rest}\n`, 'plan.yaml');
const planOf = (rest: string) => {
  const read = reading(rest);
  if (!read.ok) throw new Error(read.problems.map(describeProblem).join('\n'));
  return read.parts[0].plan;
};

describe('two kinds', () => {
  test('are searched among the plan’s templates, and what stands beside them holds for both', () => {
    const { alternate } = planOf(
      'swag: { side: inside, depth: 2, alternate: [{ from: 2 }, { depth: 3 }] }',
    ).swag;
    const shared = { templates: ['a', 'b'], side: 'inside', to: undefined };
    expect(alternate).toEqual([
      expect.objectContaining({ ...shared, from: { kind: 'section', number: 2 }, depth: 50.8 }),
      expect.objectContaining({ ...shared, from: undefined, depth: 76.2 }),
    ]);
  });

  test('may have a template and wishes of their own', () => {
    const plan = planOf(
      'swag: { alternate: [{ template: c, span: about 9 }, { template: [b, c], side: outside }] }',
    );
    expect(plan.templates).toEqual(['a', 'b', 'c']);
    expect(plan.swag.templates).toEqual(['a', 'b']);
    expect(plan.swag.alternate).toEqual([
      expect.objectContaining({ templates: ['c'], span: { about: 228.6 }, side: undefined }),
      expect.objectContaining({ templates: ['b', 'c'], span: undefined, side: 'outside' }),
    ]);
  });
});

const ROUND = 'layout: { frame: { around: 8 } }';
const border = (corners: string): string =>
  `layout: { border: { width: 8, inner: 60, corners: ${corners} } }`;
const TWO = 'alternate: [{}, {}]';

const MISTAKES: readonly (readonly [rest: string, line: string, layout?: string])[] = [
  [
    'swag: { alternate: [{}] }',
    'plan.yaml:3:20: swag.alternate: two kinds of swag take turns; found 1 kind; expected a list of two',
  ],
  [
    'swag: { alternate: [{}, {}, {}] }',
    'plan.yaml:3:20: swag.alternate: two kinds of swag take turns; found 3 kinds; expected a list of two',
  ],
  [
    'swag: { alternate: [{}, { gap: 1 }] }',
    'plan.yaml:3:27: swag.alternate.2: the key "gap" is not known here; it belongs under swag',
  ],
  [
    `swag: { ${TWO} }`,
    'plan.yaml:3:20: swag.alternate: a round frame has one kind of swag, because it closes where all take the same share of the circle; expected a strip, a border or a frame round a block',
    ROUND,
  ],
  [
    `swag: { ${TWO} }`,
    'plan.yaml:3:20: swag.alternate: kinds that take turns end beside a corner, because a swag over it would be of neither kind; found corners: turn; expected corners: meet, open or half',
    border('turn'),
  ],
  [
    `swag: { ${TWO} }\nrows: [{}]`,
    'plan.yaml:3:20: swag.alternate: kinds that take turns stand in one row, because a second row has one kind, and their marks are of two widths; found a second row under rows; expected either alternate or rows',
  ],
  [
    `swag: { ${TWO} }\nchannels: { outward: [1/4] }`,
    'plan.yaml:4:22: channels.outward: beyond two kinds that take turns no channels are laid yet; expected inward channels, or swags of one kind',
  ],
  [
    `swag: { gap: auto, ${TWO} }`,
    'plan.yaml:3:14: swag.gap: kinds that take turns have the gap that is given and touch without one, because how wide both are depends on it; found auto; expected 0, or a length',
  ],
  [
    `swag: { repeats: 4, ${TWO} }`,
    'plan.yaml:3:18: swag.repeats: a side that begins and ends with the same of two kinds has an odd number of swags; found 4; expected an odd number, 3 at least',
  ],
  [
    `swag: { repeats: 1, ${TWO} }`,
    'plan.yaml:3:18: swag.repeats: a side that begins and ends with the same of two kinds has an odd number of swags; found 1; expected an odd number, 3 at least',
  ],
  [
    `swag: { repeats: even, ${TWO} }`,
    'plan.yaml:3:18: swag.repeats: a side that begins and ends with the same of two kinds has an odd number of swags; found even; expected an odd number, 3 at least',
  ],
  [
    `swag: { repeats: 5, ${TWO} }`,
    'plan.yaml:3:18: swag.repeats: with half a swag at both ends of a side two kinds that take turns are an even number; found 5; expected an even number, 2 at least',
    border('half'),
  ],
  [
    `swag: { setting: flat-on-guide, ${TWO} }`,
    'plan.yaml:3:7: swag: kinds that take turns are set with their crowns on the centre line, because only so each takes the width that its share of the side leaves it; found setting: flat-on-guide; expected setting: crown-on-centre',
  ],
  [
    'swag: { alternate: [{ laid: along }, {}] }',
    'plan.yaml:3:21: swag.alternate.1: kinds that take turns are set with their crowns on the centre line, because only so each takes the width that its share of the side leaves it; found laid: along; expected setting: crown-on-centre',
  ],
  [
    'swag: { alternate: [{}, { from: crown }] }',
    'plan.yaml:3:33: swag.alternate.2.from: nothing of the edge is left after the crown end; found crown; expected a section, or heel; to begin at the crown end write direction: crown-first',
  ],
  [
    'swag: { from: crown, alternate: [{}, {}] }',
    'plan.yaml:3:15: swag.from: nothing of the edge is left after the crown end; found crown; expected a section, or heel; to begin at the crown end write direction: crown-first',
  ],
  [
    'swag: { alternate: [{ template: [c, c] }, {}] }',
    'plan.yaml:3:37: swag.alternate.1.template.2: "c" is listed twice; expected each template once',
  ],
];

test.each(MISTAKES.map(([rest, line, layout = STRIP]) => ({ rest, line, layout })))(
  '$rest',
  ({ rest, line, layout }) => {
    const read = reading(rest, layout);
    expect(read.ok ? [] : read.problems.map(describeProblem)).toEqual([line]);
  },
);

const FINE: readonly (readonly [words: string, layout: string])[] = [
  ['repeats: 5', border('meet')],
  ['repeats: odd', border('open')],
  ['repeats: 6', border('half')],
  ['repeats: 6', border('auto')],
  ['repeats: 5 to 9', border('meet')],
  ['gap: about 1/2', border('meet')],
];

test.each(FINE)('%s is nothing to complain of', (words, layout) => {
  expect(reading(`swag: { ${words}, ${TWO} }`, layout).ok).toBe(true);
});
