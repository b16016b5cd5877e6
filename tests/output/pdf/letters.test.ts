/** What is printed can be searched and copied: a reader finds its letters again, whatever was printed before. */

import { expect, test } from 'vitest';
import { line, openPath, point } from '../../../src/geometry/index.ts';
import { writeSheets } from '../../../src/output/pdf/index.ts';
import { layOut } from '../../../src/pagination/index.ts';
import { drawingOf, STITCH, stroked } from '../../pagination/sample-drawings.ts';
import { openPages, readTexts, WORDS } from './read-back.ts';

/** Fonts of its own, in which no other test has looked for a letter. */
const fonts = {
  regular: new Uint8Array(WORDS.fonts.regular),
  bold: new Uint8Array(WORDS.fonts.bold),
};

const wordsOnCover = async (summary: string): Promise<string> => {
  const path = openPath([line(point(0, 0), point(60, 40))]);
  const drawing = drawingOf('A line', { stitch: [stroked(path, STITCH)] });
  const plan = layOut(drawing, { paper: 'letter', orientation: 'portrait' });
  const doc = await openPages(await writeSheets(drawing, plan, { ...WORDS, fonts, summary: [summary] }));
  return (await readTexts(await doc.getPage(1))).map(({ text }) => text).join(' ');
};

test.each([
  ['a letter is a part of another', 'Ükgj Ýñ', 'Unpick. Use. Yes, none.'],
  ['a letter that may join with its neighbours', 'Ὠή', 'Ωη Greek'],
])('%s', async (_, first, second) => {
  expect(await wordsOnCover(first)).toContain(first);
  expect(await wordsOnCover(second)).toContain(second);
});
