/** A mutation whose place is gone proves nothing, and would only be missed in the long run that makes them all. */

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

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

const { ROOMS } = (await import(join(root, 'scripts/mutants/rooms.mjs'))) as {
  ROOMS: Readonly<Record<string, { mutate: readonly string[]; tests: readonly string[] }>>;
};

test.each(Object.entries(ROOMS))(
  '%s: what is made wrong is there, and so is each test',
  (_, { mutate, tests }) => {
    for (const file of [...mutate, ...tests])
      expect(existsSync(join(root, file.replace('/*.ts', ''))), file).toBe(true);
  },
);

describe('a word that has an opposite', () => {
  /** What a string, or the texts between a template's figures, becomes. */
  const swaps = async (...texts: readonly string[]): Promise<readonly string[]> => {
    const { wordSwap } = await import(join(root, 'scripts/mutants/word-swap.mjs'));
    const node =
      texts.length === 1
        ? { type: 'StringLiteral', value: texts[0] }
        : { type: 'TemplateLiteral', quasis: texts.map((raw) => ({ value: { raw } })), expressions: [] };
    const path = {
      node,
      parent: { type: 'ReturnStatement' },
      isStringLiteral: () => texts.length === 1,
      isTemplateLiteral: () => texts.length > 1,
    };
    type Made = { value?: string; quasis?: readonly { value: { raw: string } }[] };
    return [...(wordSwap.mutate(path) as Iterable<Made>)].map(
      ({ value, quasis }) => value ?? quasis!.map((one) => one.value.raw).join('$'),
    );
  };

  test('is swapped by itself, wherever it stands, and keeps its capital', async () => {
    expect(await swaps('Above the line, first left.')).toEqual([
      'Below the line, first left.',
      'Above the line, second left.',
      'Above the line, first right.',
    ]);
  });

  test('is a word, and no part of one', async () => expect(await swaps('a firsthand upright')).toEqual([]));

  test('is a unit behind a figure only', async () =>
    expect(await swaps('in the ditch, ', ' in')).toEqual(['in the ditch, $ mm']));
});
