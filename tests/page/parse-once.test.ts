/** However many fields ask for what a plan says, its text is parsed once, and no field sees another text's values. */

import { expect, test, vi } from 'vitest';
import { parseDocument } from 'yaml';
import { groupAt, keysAt, listAt, textAt, withValue } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';

vi.mock('yaml', async (original) => {
  const yaml = await original<typeof import('yaml')>();
  return { ...yaml, parseDocument: vi.fn(yaml.parseDocument) };
});

const parsed = vi.mocked(parseDocument);

const askAll = (plan: string) => [
  textAt(plan, ['units']),
  textAt(plan, ['layout', 'border', 'width']),
  listAt(plan, ['template']),
  keysAt(plan, ['layout', 'border']),
  groupAt(plan, ['foot']),
];

test('one parsing for all that is asked of a plan', () => {
  const first = askAll(FIRST_PLAN);
  const before = parsed.mock.calls.length;
  for (let i = 0; i < 20; i++) expect(askAll(FIRST_PLAN)).toEqual(first);
  expect(parsed.mock.calls.length).toBe(before);
});

test('a change is made on a text of its own, and seen at once', () => {
  const wider = withValue(FIRST_PLAN, ['layout', 'border', 'width'], '8');
  expect(textAt(wider, ['layout', 'border', 'width'])).toBe('8');
  expect(textAt(FIRST_PLAN, ['layout', 'border', 'width'])).toBe('6');
  const other = withValue(FIRST_PLAN, ['layout', 'border', 'width'], '9');
  expect(textAt(FIRST_PLAN, ['layout', 'border', 'width'])).toBe('6');
  expect(textAt(other, ['layout', 'border', 'width'])).toBe('9');
});
