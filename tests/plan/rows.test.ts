/** A second row in a plan: what it means, and what is said where it cannot be. */

import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { readPlan } from '../../src/plan/index.ts';

const STRIP = 'layout: { strip: { length: 60, width: 8, margin: 1/2 } }';
const reading = (rows: string, layout = STRIP) =>
  readPlan(`template: [a, b]\n${layout}\n${rows}\n`, 'plan.yaml');
const planOf = (rows: string) => {
  const read = reading(rows);
  if (!read.ok) throw new Error(read.problems.map(describeProblem).join('\n'));
  return read.parts[0].plan;
};
const lines = (rows: string, layout?: string): readonly string[] => {
  const read = reading(rows, layout);
  return read.ok ? [] : read.problems.map(describeProblem);
};

describe('a second row', () => {
  test('starts on the first one’s marks, a clearance apart, and is searched among the plan’s templates', () => {
    const [row] = planOf('rows: [{}]').rows;
    expect(row).toMatchObject({ at: 0, apart: 6.35, swag: { templates: ['a', 'b'] } });
    expect(planOf('foot: { clearance: 1/8 }\nrows: [{}]').rows[0]?.apart).toBe(3.175);
  });

  test('may have a template, a start line and a way of its own', () => {
    const plan = planOf(
      'rows: [{ at: 1, marks: as row 1, apart: 1/2, template: [c, b], swag: { from: 2, side: outside } }]',
    );
    expect(plan.rows).toEqual([
      {
        at: 25.4,
        apart: 12.7,
        swag: expect.objectContaining({
          templates: ['c', 'b'],
          from: { kind: 'section', number: 2 },
          side: 'outside',
        }),
      },
    ]);
    // The first row is searched among its own, and all are read.
    expect(plan.templates).toEqual(['a', 'b', 'c']);
    expect(plan.swag.templates).toEqual(['a', 'b']);
  });
});

const ROUND = 'layout: { frame: { around: 8 } }';

const MISTAKES: readonly (readonly [rows: string, line: string, layout?: string])[] = [
  [
    'rows: [{}, {}]',
    'plan.yaml:3:7: rows: too many rows; found 2 beyond the first; expected at most 1: 2 rows in all',
  ],
  [
    'rows: [{ at: 1/4, apart: 1/2 }]',
    'plan.yaml:3:14: rows.1.at: the rows start nearer to each other than they are to keep apart; found 1/4 in, to be 1/2 in apart; expected at least 1/2 in, or 0 to start both on one mark',
  ],
  [
    'rows: [{ at: 7 }]',
    'plan.yaml:3:14: rows.1.at: the row starts where the margin leaves no room for it; found 7 in; expected at most 6 3/4 in',
  ],
  [
    'rows: [{ marks: own }]',
    'plan.yaml:3:17: rows.1.marks: this does not fit here; found "own"; expected as row 1: a further row shares the marks of the first',
  ],
  [
    'rows: [{ swag: { repeats: 7 } }]',
    'plan.yaml:3:18: rows.1.swag: the key "repeats" is not known here; it belongs under the plan’s own swag: further rows share the marks of the first',
  ],
  [
    'rows: [{ at: 2, spna: 9 }]',
    'plan.yaml:3:17: rows.1: the key "spna" is not known here; did you mean "span"? It belongs under the plan’s own swag: further rows share the marks of the first',
  ],
  [
    'rows: [{ swag: { from: 3, to: 2 } }]',
    'plan.yaml:3:31: rows.1.swag.to: the swag ends before it starts; found from 3 to 2; expected sections counted from the heel',
  ],
  [
    'rows: [{ template: [a, a] }]',
    'plan.yaml:3:24: rows.1.template.2: "a" is listed twice; expected each template once',
  ],
  [
    'rows: [{ at: 1 }]',
    'plan.yaml:3:8: rows.1: a round frame has one row of swags; expected a strip, a border or a frame round a block; lay a second frame round the first, as a part of its own',
    ROUND,
  ],
];

test.each(MISTAKES.map(([rows, line, layout = STRIP]) => ({ rows, line, layout })))(
  '$rows',
  ({ rows, line, layout }) => expect(lines(rows, layout)).toEqual([line]),
);
