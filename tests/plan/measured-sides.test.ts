/** A border is measured along one of its two edges; what it lies on is then known from its width alone. */

import { expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { inWidth, type PlanReading, readPlan } from '../../src/plan/index.ts';

const read = (layout: string, units = 'in'): PlanReading =>
  readPlan(`units: ${units}\ntemplate: x\nlayout: ${layout}\n`, 'p.yaml');
const good = (layout: string, units?: string): Extract<PlanReading, { ok: true }> => {
  const reading = read(layout, units);
  if (!reading.ok) throw new Error(reading.problems.map(describeProblem).join('\n'));
  return reading;
};
const borderOf = (layout: string) => {
  const found = good(layout).parts[0].plan.layout;
  if (found.kind !== 'border') throw new Error('Not a border');
  return found;
};
const notes = (layout: string, units?: string): string[] => good(layout, units).notes.map(describeProblem);
const mistakes = (layout: string, units?: string): string[] => {
  const reading = read(layout, units);
  return reading.ok ? [] : reading.problems.map(describeProblem);
};

test('the finished outside is two widths longer than the inner seam, on every side', () => {
  const outside = borderOf(
    '{ border: { width: 6, outer: { top: 72 1/8, right: 84, bottom: 72, left: 84 1/4 } } }',
  );
  const seam = borderOf(
    '{ border: { width: 6, inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 } } }',
  );
  for (const side of ['top', 'right', 'bottom', 'left'] as const)
    expect(outside.inner[side]).toBeCloseTo(seam.inner[side], 9);
  expect([outside.measured, seam.measured]).toEqual(['outer', 'inner']);
  expect(outside).toMatchObject({ width: 152.4, from: 'inner', round: 'quilt' });
  expect(outside).not.toHaveProperty('outer');
});

test('one length is that of all four sides', () => {
  expect(borderOf('{ border: { width: 6, outer: 72 } }').inner.left).toBeCloseTo(60 * 25.4, 9);
});

test('another width leaves what was measured as it is', () => {
  const outside = borderOf('{ border: { width: 6, outer: 72 } }');
  expect(inWidth(outside, 7 * 25.4).inner.top).toBeCloseTo(58 * 25.4, 9);
  expect(inWidth(borderOf('{ border: { width: 6, inner: 60 } }'), 7 * 25.4).inner.top).toBe(60 * 25.4);
});

test.each<[string, string, string[]]>([
  [
    'both edges, which do not agree',
    '{ border: { width: 6, inner: 60, outer: { top: 72, right: 72 3/8, bottom: 71, left: 72 } } }',
    [
      'p.yaml:3:19: layout.border: the sides of the border are given twice; found inner and outer, which differ with ' +
        'twice the width between them: right by 3/8 in, bottom by 1 in; expected inner for the sides along the inner ' +
        'seam, or outer for those of the finished outside',
    ],
  ],
  [
    'both edges, which agree',
    '{ border: { width: 6, inner: 60, outer: 72 } }',
    [
      'p.yaml:3:19: layout.border: the sides of the border are given twice; found inner and outer, which agree; expected ' +
        'inner for the sides along the inner seam, or outer for those of the finished outside',
    ],
  ],
  [
    'neither, beside another mistake',
    '{ border: { width: 0 } }',
    [
      'p.yaml:3:19: layout.border: nothing says how long the sides of the border are; expected inner for the sides ' +
        'along the inner seam, or outer for those of the finished outside',
      'p.yaml:3:28: layout.border.width: a length of nothing; found 0; expected a length above zero, such as 5 1/2 or 140 mm',
    ],
  ],
  [
    'an edge misspelt',
    '{ border: { width: 6, outr: 60 } }',
    ['p.yaml:3:31: layout.border: the key "outr" is not known here; did you mean "outer"?'],
  ],
  [
    'an outside within its own border',
    '{ border: { width: 6, outer: { top: 12, right: 14, bottom: 12, left: 14 } } }',
    [
      'p.yaml:3:38: layout.border.outer: the finished outside leaves no quilt inside a border that is 6 in wide all ' +
        'round; found top 12 in and bottom 12 in; expected at least 13 in; the sides of the seam that the border is ' +
        'sewn to stand under inner',
    ],
  ],
  [
    'one that is too small on all sides',
    '{ border: { width: 6, outer: 10 } }',
    [
      'p.yaml:3:38: layout.border.outer: the finished outside leaves no quilt inside a border that is 6 in wide all ' +
        'round; found 10 in; expected at least 13 in; the sides of the seam that the border is sewn to stand under inner',
    ],
  ],
  [
    'and on one side',
    '{ border: { width: 6, outer: { top: 13 1/4, right: 14, bottom: 12 3/4, left: 14 } } }',
    [
      'p.yaml:3:72: layout.border.outer.bottom: the finished outside leaves no quilt inside a border that is 6 in wide ' +
        'all round; found 12 3/4 in; expected at least 13 in; the sides of the seam that the border is sewn to stand ' +
        'under inner',
    ],
  ],
  [
    'opposite sides of which one was written wrong',
    '{ border: { width: 6, outer: { top: 72, right: 72, bottom: 62, left: 72 } } }',
    [
      'p.yaml:3:68: layout.border.outer.bottom: opposite sides of a quilt are nearly equal, and this one is 10 in shorter ' +
        'than the top side; found 62 in; expected about 72 in; measure both again',
    ],
  ],
  [
    'both ends that take all of a strip',
    '{ strip: { length: 20, width: 6, ends: 10 } }',
    [
      'p.yaml:3:48: layout.strip.ends: both ends together leave no room for swags in a length of 20 in; found 10 in; ' +
        'expected at most 9 7/8 in',
    ],
  ],
  [
    'the ends of a border',
    '{ border: { width: 6, inner: 60, ends: 1 } }',
    ['p.yaml:3:42: layout.border: the key "ends" is not known here; it belongs under layout.strip'],
  ],
])('%s', (_, layout, expected) => {
  expect(mistakes(layout)).toEqual(expected);
});

test.each<[string, string, string | undefined, string[]]>([
  [
    'more than an inch, along the outer edge',
    '{ border: { width: 6, outer: { top: 72, right: 84, bottom: 70 7/8, left: 84 } } }',
    undefined,
    [
      'p.yaml:3:68: layout.border.outer.bottom: the bottom side is 1 1/8 in shorter than the top side, 70 7/8 in and ' +
        '72 in; opposite sides of a quilt are nearly equal; measure both again before you cut or mark',
    ],
  ],
  [
    'both pairs, along the inner seam, in cm',
    '{ border: { width: 15, inner: { top: 150, right: 183, bottom: 153, left: 180 } } }',
    'cm',
    [
      'p.yaml:3:46: layout.border.inner.top: the top side is 3 cm shorter than the bottom side, 150 cm and 153 cm; ' +
        'opposite sides of a quilt are nearly equal; measure both again before you cut or mark',
      'p.yaml:3:82: layout.border.inner.left: the left side is 3 cm shorter than the right side, 180 cm and 183 cm; ' +
        'opposite sides of a quilt are nearly equal; measure both again before you cut or mark',
    ],
  ],
  ['an inch', '{ border: { width: 6, inner: { top: 61, right: 72, bottom: 60, left: 72 } } }', undefined, []],
])('opposite sides that differ by %s', (_, layout, units, expected) => {
  expect(notes(layout, units)).toEqual(expected);
});

test('a border that is measured outside shares the seam of the one in it', () => {
  const parts = (outer: string): PlanReading =>
    readPlan(
      `template: x\nparts:\n  in: { layout: { border: { width: 4, outer: 48 } } }\n  out: { layout: { border: { width: 7, outer: ${outer} } } }\n`,
      'p.yaml',
    );
  const told = (reading: PlanReading): string[] =>
    reading.ok ? reading.notes.map(describeProblem) : reading.problems.map(describeProblem);
  expect(told(parts('62'))).toEqual([]);
  expect(told(parts('62 1/4'))).toEqual([
    expect.stringMatching(
      /^p\.yaml:4:47: parts\.out\.layout\.border\.outer: the outer seam of the part "in" .* top 48 in and 48 1\/4 in,/,
    ),
  ]);
});
