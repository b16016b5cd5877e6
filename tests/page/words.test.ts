/** The words of the page: one language is a set of texts, another is the same set, and English says what it means. */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import * as english from '../../src/page/words/english/index.ts';
import type { Language } from '../../src/page/words/words.ts';
import { bracketed, outsideBrackets } from './bracketed.ts';

const FOLDER = join(import.meta.dirname, '../../src/page/words/english');

/** All texts without values, each with its place. */
const textsIn = (words: object, at: string): readonly (readonly [string, string])[] =>
  Object.entries(words).flatMap(([name, of]) => {
    if (typeof of === 'string') return [[`${at}.${name}`, of] as const];
    return typeof of === 'object' ? textsIn(of as object, `${at}.${name}`) : [];
  });

const TEXTS = textsIn(english, 'english');

test('another language is another set of the same texts', () => {
  const language: Language = bracketed({ ...english });
  expect(language.swagWords.title).toBe('⟦One swag⟧');
  expect(language.traceWords.mend.through({ count: 2 })).toBe('⟦Take it through 2 places⟧');
  expect(language.swagWords.uses({ from: 1, to: 2 })).toEqual([
    '⟦The swag uses the edge from ⟧',
    1,
    '⟦ to ⟧',
    2,
    '⟦.⟧',
  ]);
});

test('what stands outside the brackets is found, also where brackets stand in brackets', () => {
  expect(outsideBrackets('⟦It is ⟦half⟧ typed.⟧ Yet ⟦1⟧')).toBe(' Yet ');
});

test.each(TEXTS)('%s is a text without a slip', (_, text) => {
  expect(text).toMatch(/\p{L}/u);
  expect(text).toBe(text.trim());
  expect(text).not.toMatch(/ {2}|\.\.|["']| [,.;:!?](?!\.)/);
});

test('a button or a part that a text names is called so', () => {
  const titles = new Set(TEXTS.map(([, text]) => text));
  const named = readdirSync(FOLDER).flatMap((file) =>
    [...readFileSync(join(FOLDER, file), 'utf8').matchAll(/“([^”$]+)”/g)].map(([, name]) => name!),
  );
  expect(named).toContain('Any part of the edge');
  expect(named.filter((name) => !titles.has(name) && !SAID_ELSEWHERE.has(name))).toEqual([]);
});

/** What a printer's own window calls it, an entry of a list at the head of a sentence, and what another part says. */
const SAID_ELSEWHERE: ReadonlySet<string> = new Set(['actual size', 'fit to page', 'About', 'Working out …']);

describe('how many', () => {
  test('one is one, and more are more', () => {
    const { fitsWords, designsWords, filesWords, answersWords } = english;
    expect([1, 2].map((count) => fitsWords.ways({ count, best: 'touching.' }))).toEqual([
      '1 way, the best first: touching.',
      '2 ways, the best first: touching.',
    ]);
    expect([1, 2].map((count) => designsWords.taken({ count, file: 'my.json' }))).toEqual([
      '1 design of my.json is under “Your designs” now.',
      '2 designs of my.json are under “Your designs” now.',
    ]);
    expect(designsWords.takenSome({ count: 2, file: 'my.json', bad: 1 })).toMatch(/now\. 1 entry could not/);
    expect([1, 2].map((count) => filesWords.there({ count, file: 'my.json' }))).toEqual([
      '1 template of my.json is on the shelf already.',
      '2 templates of my.json are on the shelf already.',
    ]);
    expect([1, 3].map((sections) => answersWords.edge({ length: '9 in', sections }))).toEqual([
      '9 in of edge in one section',
      '9 in of edge in 3 sections',
    ]);
  });
});

test('values stand where they are meant', () => {
  const { designsWords, filesWords, handWords, measureWords, noticeWords, wishesWords } = english;
  expect(designsWords.kept({ title: 'Rose 2', asked: 'Rose' })).toBe(
    'The design “Rose 2” is kept in this browser, under “Your designs”. There is a “Rose” already.',
  );
  expect(designsWords.kept({ title: 'Rose', asked: 'Rose' })).toMatch(/under “Your designs”\.$/);
  expect(filesWords.added({ file: 'my.json', titles: ['Corbel', 'Newel'], notes: '' })).toBe(
    '“Corbel” and “Newel” of my.json are on the shelf, and ticked.',
  );
  expect(handWords.breakAdded({ name: 'waist', length: '3 in' })).toMatch(
    /^waist is added, 3 in from the heel/,
  );
  expect(measureWords.pairOff({ sides: ['top', 'bottom'], lengths: ['60', '40'] })).toMatch(
    /^Top 60 and bottom 40 differ/,
  );
  expect(noticeWords.takenOff({ titles: ['Corbel'] })).toMatch(/^“Corbel” was taken off the shelf/);
  expect(noticeWords.takenOff({ titles: ['Corbel', 'Newel'] })).toMatch(
    /^“Corbel” and “Newel” were taken off/,
  );
  expect(wishesWords.atSlider({ how: 'about', figure: '9', unit: 'in' })).toBe('about 9 in');
});
