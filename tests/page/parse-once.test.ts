/** However many fields ask for what a plan says, its text is parsed once, and no field sees another text's values. */

import { expect, test, vi } from 'vitest';

vi.mock('yaml', async (original) => {
  const yaml = await original<typeof import('yaml')>();
  return { ...yaml, parseDocument: vi.fn(yaml.parseDocument) };
});

// Test files share their modules: those that were loaded before have not what counts here.
vi.resetModules();
const { parseDocument } = await import('yaml');
const { groupAt, keysAt, listAt, textAt, withValue } = await import('../../src/page/plan/plan-text.ts');
const { FIRST_PLAN } = await import('../../src/page/plan/state.ts');
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
  expect(before).toBeGreaterThan(0);
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
