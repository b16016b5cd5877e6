/** A shelf as a file: what is in it comes back, and what is not right with it is said, each thing once. */

import { describe, expect, test } from 'vitest';
import { shelfFrom, shelfText, unpackedWords } from '../../src/page/plan/shelf-file.ts';
import { MOST_OWN, MOST_TEXT } from '../../src/page/plan/state.ts';

const file = { name: './corbel.yaml', text: 'title: Corbel\n' };
const shelfOf = (...templates: readonly unknown[]): string =>
  JSON.stringify({ swagwright: 'templates', templates });

describe('a file of templates', () => {
  test('comes back as it went', () => {
    expect(shelfFrom(shelfText([file]))).toEqual({ templates: [file], refused: [], beyond: 0 });
    expect(shelfFrom(shelfOf())).toEqual({ templates: [], refused: [], beyond: 0 });
  });

  test('is none where it is another text, or a plan or a template written in the same way', () => {
    const others = ['', '{', file.text, '{"layout":3}', '{"edge":[]}', '{"title":"Corbel"}'];
    for (const text of others) expect(shelfFrom(text)).toBeUndefined();
  });

  test.each(['[]', 'null', '3', '{"a":1}', '{"templates":3}', '{"swagwright":"templates","templates":"x"}'])(
    'is nothing that the page reads: %s',
    (text) => expect(shelfFrom(text)).toBe('stray'),
  );

  test('with something else among its templates says where', () => {
    const found = shelfFrom(shelfOf(null, file, 1, { name: 3, text: '' }, { name: 'a' }));
    expect(found).toMatchObject({
      templates: [file],
      refused: [1, 3, 4, 5].map((n) => ({ where: `number ${n}`, text: 'This is no template.' })),
    });
  });

  test('with one that is too large says which, and reads the others', () => {
    const large = { name: './long.yaml', text: '#'.repeat(MOST_TEXT + 1) };
    const most = { name: './most.yaml', text: '#'.repeat(MOST_TEXT) };
    expect(shelfFrom(shelfOf(large, most, file))).toMatchObject({
      templates: [most, file],
      refused: [{ where: 'long.yaml', text: 'This is too large for a template.' }],
    });
  });

  test('with more than two windows can have put there is read that far', () => {
    const found = shelfFrom(shelfOf(...Array.from({ length: 2 * MOST_OWN + 3 }, () => file)));
    expect(found).toMatchObject({ beyond: 3 });
  });
});

describe('what is said of it', () => {
  const nothing = { added: [], notes: [], there: 0, bad: 0, beyond: 0 };
  const words = (what: Partial<Parameters<typeof unpackedWords>[1]>): string =>
    unpackedWords('mine.json', { ...nothing, ...what });

  test('all that was added', () => {
    expect(words({ added: ['Good'], notes: [''] })).toBe('“Good” of mine.json is on the shelf, and ticked.');
    expect(words({ added: ['Good', 'Urn 2'], notes: ['', ' There is a “Urn” already.'] })).toBe(
      '“Good” and “Urn 2” of mine.json are on the shelf, and ticked. There is a “Urn” already.',
    );
  });

  test('what was there before, or could not be put there, beside it', () => {
    expect(words({ there: 2 })).toBe('All templates of mine.json are on the shelf already.');
    expect(words({ added: ['Good'], there: 1, bad: 2, beyond: 1 })).toBe(
      '“Good” of mine.json is on the shelf, and ticked. 1 template of mine.json is on the shelf already. 2 templates of mine.json could not be put on the shelf. 1 more was not looked at.',
    );
    expect(words({ there: 2, bad: 1 })).toBe(
      '2 templates of mine.json are on the shelf already. 1 template of mine.json could not be put on the shelf.',
    );
    expect(words({ bad: 1 })).toBe('1 template of mine.json could not be put on the shelf.');
  });

  test('that there is nothing in it', () => {
    expect(words({})).toBe('mine.json holds no template.');
  });
});
