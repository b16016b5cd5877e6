/** Designs that are kept: written and read as they were, called by names that are free, and nothing else taken for one. */

import { describe, expect, test } from 'vitest';
import {
  called,
  type Design,
  designFrom,
  designOf,
  designsFrom,
  designsText,
  designText,
  freeTitleIn,
} from '../../src/page/plan/designs.ts';
import { textAt } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN, type State } from '../../src/page/plan/state.ts';

const URN = { name: './urn.yaml', text: 'title: Urn\n' };
const COVE = { name: './cove.yaml', text: 'title: Cove\n' };
const state = (plan: string): State => ({ plan, own: [URN, COVE], taken: 'a key' });

const made = (title = 'Lathe Street', more: Partial<Design> = {}): Design =>
  designOf(state(FIRST_PLAN.replace('baluster', './urn.yaml')), title, {
    id: 'one',
    at: 12,
    words: ['6 and 7 swags', '4 in deep'],
    ...more,
  });

describe('a design', () => {
  test('holds its plan under its own name, and the templates that it uses', () => {
    const { state: kept } = made();
    expect(textAt(kept.plan, ['title'])).toBe('Lathe Street');
    expect(kept.own).toEqual([URN]);
    expect(kept.taken).toBe('a key');
  });

  test('is written and read as it was', () => {
    expect(designFrom(designText(made()))).toEqual(made());
  });

  test('goes by another name, which its plan has too', () => {
    const other = called(made(), 'Wheel Lane');
    expect([other.title, textAt(other.state.plan, ['title'])]).toEqual(['Wheel Lane', 'Wheel Lane']);
    expect(freeTitleIn([made(), other], 'wheel lane')).toBe('wheel lane 2');
  });

  const text = designText(made());
  test.each([
    '',
    'null',
    '[]',
    '{}',
    text.slice(0, -5),
    JSON.stringify({ ...JSON.parse(text), id: 3 }),
    JSON.stringify({ ...JSON.parse(text), state: { plan: 7 } }),
    JSON.stringify({ ...JSON.parse(text), state: { plan: 'x\n'.repeat(2000), own: [] } }),
  ])('that was damaged is none: %j', (damaged) => expect(designFrom(damaged)).toBeUndefined());
});

test('all of them as one file, with entries that are none counted', () => {
  const all = [made(), called({ ...made(), id: 'two' }, 'Wheel Lane')];
  expect(designsFrom(designsText(all))).toEqual({ designs: all, bad: 0 });
  const damaged = JSON.parse(designsText(all));
  damaged.designs.push({ title: 'none' }, 7);
  expect(designsFrom(JSON.stringify(damaged))).toEqual({ designs: all, bad: 2 });
  for (const other of ['', '{}', '{"swagwright":"templates","templates":[]}', '{"swagwright":"designs"}'])
    expect(designsFrom(other)).toBeUndefined();
});
