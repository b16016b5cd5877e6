/** Changes to a plan's text: read back by the program's own reader, which knows nothing of how they were written. */

import { describe, expect, test } from 'vitest';
import { paperIn, withFiguresIn } from '../../src/page/plan/first-figures.ts';
import { keysAt, listAt, textAt, withUnits, withValue, withValues } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';
import { type Plan, readPlan } from '../../src/plan/index.ts';

const read = (text: string): Plan => {
  const reading = readPlan(text, 'plan.yaml');
  if (!reading.ok) throw new Error(reading.problems.map((p) => p.message).join('; '));
  return reading.parts[0].plan;
};

const INNER = ['layout', 'border', 'inner'];

describe('one key changed', () => {
  test('a figure as she writes it stands there as she wrote it', () => {
    const text = withValue(FIRST_PLAN, [...INNER, 'top'], '59 7/8');
    expect(text).toContain('top: 59 7/8,');
    // 59 7/8 in are 59.875 × 25.4 mm.
    expect(read(text).layout).toMatchObject({ inner: { top: 1520.825, right: 1828.8 } });
    expect(textAt(text, [...INNER, 'top'])).toBe('59 7/8');
  });

  test('comments, order and other lines stay', () => {
    const plan = `# measured twice\ntitle: Ours # of course\n${FIRST_PLAN.replace(/^title.*\n/, '')}`;
    const text = withValue(plan, ['layout', 'border', 'width'], '7');
    expect(text).toContain('# measured twice');
    expect(text).toContain('title: Ours # of course');
    expect(text.split('\n').filter((line, i) => line !== plan.split('\n')[i])).toEqual(['    width: 7']);
  });

  test('a title that looks like a number stays as she wrote it, and so does all else', () => {
    for (const title of ['007', '1e3', '12345678901234567890']) {
      const plan = FIRST_PLAN.replace(/^title.*/m, `title: ${title}   # ours`);
      const text = withValue(plan, ['layout', 'border', 'width'], '7');
      expect(text).toBe(plan.replace(/width: .*/, 'width: 7'));
      expect(withUnits(plan, 'in', 'mm')).toContain(`title: ${title}   # ours\n`);
    }
  });

  test('a key taken out takes its empty group along', () => {
    const some = withValue(FIRST_PLAN, ['swag', 'from'], 2);
    expect(keysAt(some, ['swag'])).toEqual(['from']);
    expect(withValue(some, ['swag', 'from'], undefined)).toBe(FIRST_PLAN);
  });

  test('a group is made where there is none, and what is no group gives way to one', () => {
    expect(read(withValue(FIRST_PLAN, ['fills', 'swag'], 'feather')).fills.swag).toEqual({ kind: 'feather' });
    const square = withValue(FIRST_PLAN, INNER, '60');
    expect(read(square).layout).toMatchObject({ inner: { left: 1524 } });
    expect(textAt(square, INNER)).toBe('60');
  });

  test('words that look like something else are written so that they stay words', () => {
    for (const title of ['yes', '1e3', '- a', '#', '"quoted"', "it's: here", '<b>', '007', 'null'])
      expect(read(withValue(FIRST_PLAN, ['title'], title)).title).toBe(title);
  });

  test('lists stand on one line and are read back', () => {
    const text = withValue(FIRST_PLAN, ['channels', 'outward'], ['1/4', '3/8']);
    expect(listAt(text, ['channels', 'outward'])).toEqual(['1/4', '3/8']);
    expect(read(text).channels.outward).toEqual([6.35, 9.525]);
    expect(listAt(withValue(text, ['template'], 'newel'), ['template'])).toEqual(['newel']);
  });

  test('a plan in JSON stays a plan', () => {
    const json = JSON.stringify({ template: 'newel', layout: { strip: { length: 40, width: 5 } } });
    expect(read(withValue(json, ['layout', 'strip', 'width'], '5 1/2')).layout).toMatchObject({
      width: 139.7,
    });
  });

  test('several changes at once', () => {
    const text = withValues(FIRST_PLAN, [
      [['layout'], { strip: { length: '40', width: '5 1/2', margin: '1/4' } }],
      [['paper'], 'a4'],
    ]);
    expect(read(text)).toMatchObject({ paper: 'a4', layout: { kind: 'strip', length: 1016, width: 139.7 } });
  });
});

describe('other units', () => {
  const PLAN = `${FIRST_PLAN}swag: { from: 1, repeats: [5, 6, 5, 6], gap: 1/2 }
fills: { swag: { kind: stipple, spacing: 1/4, seed: 3, angle: 45 } }
marks: { round: 1/8 }
`;

  test('no length changes, and nothing else is taken for one', () => {
    const before = read(PLAN);
    for (const units of ['cm', 'mm'] as const) {
      const text = withUnits(PLAN, 'in', units);
      const after = read(text);
      expect(after.units).toBe(units);
      // How marks are rounded and what a stitch usually is are the new units' own where the plan is silent.
      expect({ ...after, units: 'in', marks: before.marks, stitch: before.stitch }).toEqual(before);
    }
  });

  test('the paper goes along where it is the usual one of the units', () => {
    const paper = (text: string) => textAt(text, ['paper']);
    const letter = withValue(PLAN, ['paper'], 'letter');
    expect(paper(withFiguresIn(letter, 'in', 'cm'))).toBe('a4');
    expect(paper(withFiguresIn(withFiguresIn(letter, 'in', 'mm'), 'mm', 'in'))).toBe('letter');
    expect(paper(withFiguresIn(withFiguresIn(letter, 'in', 'mm'), 'mm', 'cm'))).toBe('a4');
    // What is unsaid is the usual one.
    const silent = withValue(PLAN, ['paper'], undefined);
    expect(paper(withFiguresIn(silent, 'in', 'cm'))).toBe('a4');
    expect([paperIn(silent, 'in'), paperIn(silent, 'mm')]).toEqual(['letter', 'a4']);
    expect(paperIn(withValue(PLAN, ['paper'], 'Legal'), 'mm')).toBe('legal');
    // One that she chose stays.
    expect(paper(withFiguresIn(withValue(PLAN, ['paper'], 'legal'), 'in', 'cm'))).toBe('legal');
    expect(paper(withFiguresIn(withValue(PLAN, ['paper'], 'a4'), 'in', 'cm'))).toBe('a4');
  });

  test('and back again', () => {
    const there = withUnits(PLAN, 'in', 'mm');
    expect({ ...read(withUnits(there, 'mm', 'in')), marks: 0 }).toEqual({ ...read(PLAN), marks: 0 });
  });

  test('figures are written in the new units, and come back as they were typed', () => {
    const top = ['layout', 'border', 'inner', 'top'] as const;
    const there = withUnits(PLAN, 'in', 'cm');
    // 60.125 times 2.54, by hand.
    expect(textAt(there, top)).toBe('152.7175');
    expect(listAt(there, ['channels', 'outward'])).toEqual(['0.635']);
    const back = withUnits(there, 'cm', 'in');
    expect(textAt(back, top)).toBe('60 1/8');
    expect(listAt(back, ['channels', 'outward'])).toEqual(['1/4']);
  });

  test('what has no fraction of an inch says its own unit until it is wanted again', () => {
    const cm = withValue(PLAN.replace('units: in', 'units: cm'), ['layout', 'border', 'width'], '14');
    const inches = withUnits(cm, 'cm', 'in');
    expect(textAt(inches, ['layout', 'border', 'width'])).toBe('14 cm');
    expect(textAt(withUnits(inches, 'in', 'cm'), ['layout', 'border', 'width'])).toBe('14');
  });

  test('a length that says its own unit is left as it is', () => {
    const text = withUnits(withValue(PLAN, ['layout', 'border', 'width'], '15 cm'), 'in', 'mm');
    expect(textAt(text, ['layout', 'border', 'width'])).toBe('15 cm');
  });
});
