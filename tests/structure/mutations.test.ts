/** A mutation whose place is gone proves nothing, and would only be missed in the long run that makes them all. */

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '../..');
const { MUTATIONS } = (await import(join(root, 'scripts/mutation-table.mjs'))) as {
  MUTATIONS: readonly { name: string; file: string; from: string; to: string; test: string }[];
};

test('there are mutations', () => {
  expect(MUTATIONS.length).toBeGreaterThan(20);
});

test.each(MUTATIONS.map((m) => [m.name, m] as const))(
  '%s: once in its file, and seen by a test that is there',
  (_, m) => {
    expect(readFileSync(join(root, m.file), 'utf8').split(m.from)).toHaveLength(2);
    expect(m.to).not.toBe(m.from);
    expect(existsSync(join(root, m.test))).toBe(true);
  },
);
