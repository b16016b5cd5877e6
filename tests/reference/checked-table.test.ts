/** The table of outside checks says what is there: its files, its tests by name, and their sources. */

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '../..');
const rows = readFileSync(join(import.meta.dirname, 'README.md'), 'utf8')
  .split('\n')
  .filter((line) => line.startsWith('| ') && !/^\| (check |--)/.test(line))
  .map((line) => line.slice(1, -1).split(' | '))
  .map(([check, source, tolerance, where]) => {
    const [, file, name] = /^`([^`]+)` "(.*)"$/.exec(where?.trim() ?? '') ?? [];
    return { check: check!.trim(), source, tolerance, file, name };
  });

/** Names of persons, books and tools: what can be looked for. "Handbook" and "Steiner's" are, "exact" is not. */
const namesIn = (source: string): readonly string[] =>
  (
    source.match(/\p{Lu}[\p{L}.-]{3,}|\p{L}+(?:-(?:wasm|js)|\.js)\b|svg-path-properties|no source/gu) ?? []
  ).map((word) => word.toLowerCase());

test('the table was read', () => {
  expect(rows.length).toBeGreaterThan(25);
  expect(rows.filter((row) => namesIn(row.source ?? '').length > 0).length).toBeGreaterThan(20);
});

test.each(rows)('$check', ({ source, tolerance, file, name }) => {
  expect(tolerance?.trim()).toBeTruthy();
  expect(existsSync(join(root, file ?? 'nothing named'))).toBe(true);
  const text = readFileSync(join(root, file!), 'utf8');
  expect(text).toContain(name);
  // Comments are wrapped: a name may stand at a line's end, not across two.
  for (const word of namesIn(source!)) expect(text.toLowerCase()).toContain(word);
});

test('every file of this folder is in it', () => {
  const here = readdirSync(import.meta.dirname).filter(
    (n) => n.endsWith('.test.ts') && !n.startsWith('checked-'),
  );
  expect(here.length).toBeGreaterThan(2);
  for (const name of here) expect(rows.some((row) => row.file === `tests/reference/${name}`)).toBe(true);
});
