/** A corner's own swag in a plan: what it means, and what is said where it cannot be. */

import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { readPlan } from '../../src/plan/index.ts';

const border = (more: string): string => `layout: { border: { width: 8, inner: 60${more} } }`;
const reading = (rest: string, layout = border(', corners: turn')) =>
  readPlan(`template: [a, b]\n${layout}\n${rest}\n`, 'plan.yaml');
const planOf = (rest: string) => {
  const read = reading(rest);
  if (!read.ok) throw new Error(read.problems.map(describeProblem).join('\n'));
  return read.parts[0].plan;
};

describe('a corner', () => {
  test('is made as the sides are where nothing is said of it', () => {
    expect(planOf('').corner).toBeUndefined();
  });

  test('is searched among the plan’s templates, and what is said of the sides is not said of it', () => {
    expect(planOf('swag: { from: 2, side: inside }\ncorner: {}').corner).toMatchObject({
      templates: ['a', 'b'],
      from: undefined,
      side: undefined,
    });
  });

  test('may have a part and a template of its own', () => {
    const { templates, swag, corner } = planOf('corner: { template: c, from: 2, to: crown, side: outside }');
    expect([templates, swag.templates]).toEqual([
      ['a', 'b', 'c'],
      ['a', 'b'],
    ]);
    expect(corner).toMatchObject({
      templates: ['c'],
      from: { kind: 'section', number: 2 },
      to: { kind: 'crown' },
      side: 'outside',
    });
  });
});

const MISTAKES: readonly (readonly [rest: string, line: string, layout?: string])[] = [
  [
    'corner: { template: c }',
    'plan.yaml:3:9: corner: a strip has no corners; expected a border, or a frame round a block',
    'layout: { strip: { length: 60, width: 8 } }',
  ],
  [
    'corner: {}',
    'plan.yaml:3:9: corner: a round frame has no corners; expected a border, or a frame round a block',
    'layout: { frame: { around: 8 } }',
  ],
  [
    'corner: {}',
    'plan.yaml:3:9: corner: no swag lies over the corners; found corners: half; expected corners: turn',
    border(', corners: half'),
  ],
  [
    'corner: {}',
    'plan.yaml:3:9: corner: no swag lies over the corners; found corners: open; expected corners: turn or corners: across',
    border(', from: outer, corners: open'),
  ],
  [
    'corner: {}\nswag: { alternate: [{}, {}] }',
    'plan.yaml:3:9: corner: kinds that take turns end beside a corner, and no swag lies over it; expected either corner or alternate',
    border(''),
  ],
  [
    'corner: {}\nrows: [{ at: 1 }]',
    'plan.yaml:3:9: corner: a corner with a swag of its own has one row, because a second row is fitted only to corners that are made as the sides are; found a second row under rows; expected either corner or rows',
  ],
  [
    'corner: { setting: flat-on-guide }',
    'plan.yaml:3:9: corner: where the corner has a swag of its own, all are set with their crowns on the centre line, because only so both can be as deep; found setting: flat-on-guide; expected setting: crown-on-centre',
  ],
  [
    'swag: { flat: 1 }\ncorner: { from: 2 }',
    'plan.yaml:3:7: swag: where the corner has a swag of its own, all are set with their crowns on the centre line, because only so both can be as deep; found flat: 1; expected setting: crown-on-centre',
  ],
  [
    'corner: { from: 3, to: 2 }',
    'plan.yaml:3:24: corner.to: the swag ends before it starts; found from 3 to 2; expected sections counted from the heel',
  ],
  [
    'corner: { template: [c, c] }',
    'plan.yaml:3:25: corner.template.2: "c" is listed twice; expected each template once',
  ],
  [
    'corner: { repeats: 3 }',
    'plan.yaml:3:11: corner: the key "repeats" is not known here; it belongs under swag',
  ],
  [
    'swag: { corner: { from: 2 } }',
    'plan.yaml:3:9: swag: the key "corner" is not known here; it belongs beside swag: a corner’s swag is a group of its own',
  ],
];

test.each(MISTAKES)('%s', (rest = '', line, layout) => {
  const read = reading(rest, layout);
  expect(read.ok ? [] : read.problems.map(describeProblem)).toEqual([line]);
});
