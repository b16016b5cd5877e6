/** A kind of picture is one row: whoever adds one writes no more than it, and is given what every writer is. */

import { expect, test } from 'vitest';
import { COMMANDS } from '../../src/cli/command-list.ts';
import { LAYERS } from '../../src/drawing/index.ts';
import { picture } from '../../src/jobs/picture.ts';
import { WRITERS, type Writer } from '../../src/output/writers/index.ts';
import { FONTS } from '../output/pdf/read-back.ts';
import { partOf } from '../support/part-of.ts';

const PART = partOf(
  'title: 漢\ntemplate: baluster\nlayout: { strip: { length: 36, width: 5, margin: 1/4 } }\nswag: { repeats: 3 }\n',
);
const MEANS = { deflate: (bytes: Uint8Array) => bytes, fonts: async () => FONTS };

/** Counts what is on each layer. */
const COUNTER: Writer = {
  name: 'Count',
  ending: 'txt',
  takes: [],
  hasOurLetters: false,
  write: async ({ layers }, { title, summary, without }) => ({
    bytes: [title, summary[0], without.join(), layers.stitch.length].join('; '),
    size: 'numbers',
  }),
};

test('a new kind of picture needs its own row and nothing else', async () => {
  const made = await picture(PART, { writer: COUNTER, without: ['notes'] }, MEANS);
  // Three swags, each of two halves.
  expect(made.bytes).toMatch(/^漢; Baluster: .*; notes; 6$/);
  expect(made.words).toBe('the whole strip, numbers');
  expect(made.notices).toEqual([]);
  const lettered = await picture(PART, { writer: { ...COUNTER, hasOurLetters: true } }, MEANS);
  expect(lettered.notices).toEqual(['the font has no “漢”: another sign is printed in their place']);
});

test('where nothing is left to draw, nothing is written', async () => {
  await expect(picture(PART, { writer: COUNTER, without: [...LAYERS] }, MEANS)).rejects.toMatchObject({
    problems: [{ code: 'nothing-to-draw', found: `left out: ${LAYERS.join(', ')}` }],
  });
  // A clean one has the stitching alone.
  await expect(
    picture(
      PART,
      { writer: COUNTER, transfer: { kind: 'clean', mirrored: false }, without: ['stitch'] },
      MEANS,
    ),
  ).rejects.toMatchObject({ problems: [{ code: 'nothing-to-draw' }] });
});

test('every kind has an ending and a name of its own', () => {
  expect(new Set(WRITERS.map((w) => w.ending)).size).toBe(WRITERS.length);
  expect(new Set(WRITERS.map((w) => w.name)).size).toBe(WRITERS.length);
  for (const { ending } of WRITERS) expect(ending).toMatch(/^[a-z]+$/);
});

test('the list of commands names every kind', () => {
  const { summary } = COMMANDS.find(({ name }) => name === 'draw')!;
  expect(summary.split(': ')[1]?.split(/, | or /)).toEqual(WRITERS.map((w) => w.name));
});
