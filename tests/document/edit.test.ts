/** Changes to a text by single keys: what they say afterwards, and that not a byte else is another. */

import { describe, expect, it } from 'vitest';
import { parse, parseDocument } from 'yaml';
import { type Change, withValue, withValues } from '../../src/document/index.ts';

/** Each text, a change, and what a person would have written by hand. */
const BY_HAND: readonly (readonly [text: string, ...change: Change, after: string])[] = [
  ['a: 1   # one\nb: 007\n', ['a'], 2, 'a: 2   # one\nb: 007\n'],
  ['a: 1   # one\nb: 007\n', ['a'], 1, 'a: 1   # one\nb: 007\n'],
  ['a: 1\nb: 1e3', ['c'], 'x', 'a: 1\nb: 1e3\nc: x'],
  ['a: 1 # one\r\n# end\r\n', ['c'], 'x', 'a: 1 # one\r\nc: x\r\n# end\r\n'],
  ['a: |\n  one\n  two\n\nb: >\n  three\n', ['c'], 'x', 'a: |\n  one\n  two\n\nb: >\n  three\nc: x\n'],
  ['a: |\n  one\n\n  two\nb: 2\n', ['a'], 'x', 'a: x\nb: 2\n'],
  ['g:\n    a: 1\n\nb: 2\n', ['g', 'c'], 'x', 'g:\n    a: 1\n    c: x\n\nb: 2\n'],
  ['g: # a group\nb: 2\n', ['g', 'c'], 'x', 'g: # a group\n  c: x\nb: 2\n'],
  ['g:\n', ['g'], 'x', 'g: x\n'],
  ['b: 2\n', ['g', 'h', 'c'], 'x', 'b: 2\ng:\n  h:\n    c: x\n'],
  ['g: {  a: 1,b: 2  } # here\n', ['g', 'c'], 'x', 'g: {  a: 1,b: 2, c: x  } # here\n'],
  ['g: {  a: 1,b: 2, } # here\n', ['g', 'c'], 'x', 'g: {  a: 1,b: 2, c: x, } # here\n'],
  ['g: {}\n', ['g', 'c'], 'x', 'g: { c: x }\n'],
  ['g: { }\n', ['g', 'c', 'd'], 'x', 'g: { c: { d: x } }\n'],
  ['g: { a: , b }\n', ['g', 'a'], 'x', 'g: { a: x, b }\n'],
  ['g: { a: , b }\n', ['g', 'b'], 'x', 'g: { a: , b: x }\n'],
  [
    'g: {\n  a: 1, # one\n  b: 2 # two\n}\n',
    ['g', 'c'],
    3,
    'g: {\n  a: 1, # one\n  b: 2, # two\n  c: 3\n}\n',
  ],
  ['g: {\n  b: 2, # two\n}\n', ['g', 'c'], 3, 'g: {\n  b: 2, # two\n  c: 3,\n}\n'],
  ['t: [a, b]  # which\n', ['t'], 'b', 't: b  # which\n'],
  ['t: [a, b]  # which\n', ['t', 1], { c: 2 }, 't: [a, { c: 2 }]  # which\n'],
  ['t: [a, { c: 2 }]\n', ['t', 1], 'b', 't: [a, b]\n'],
  ['t:\n- a # one\n- b # two\nz: 1\n', ['t', 0], 'c', 't:\n- c # one\n- b # two\nz: 1\n'],
  ['t:\n  - c: 1 # one\n    d: 2\n  - b\n', ['t', 0], 'a', 't:\n  - a\n    # one\n  - b\n'],
  ['{"t": ["a", "b"]}', ['t', 0], { c: 2 }, '{"t": [{ "c": 2 }, "b"]}'],
  [
    't:\n- a # one\n# between\n- b # two\n\nz: 1\n',
    ['t'],
    'b',
    't: b\n  # one\n  # between\n  # two\n\nz: 1\n',
  ],
  ['t: # which\n  - a\n  - "# b"\nz: 1\n', ['t'], 'b', 't: b # which\nz: 1\n'],
  ['g: { t: [ a, # one\n  b ], z: 1 }\n', ['g', 't'], 'b', 'g: { t: b\n       # one\n       , z: 1 }\n'],
  ['n: 4 # each\n', ['n'], [5, 6], 'n: [5, 6] # each\n'],
  ['g: 60\n', ['g', 'top'], '59 7/8', 'g: { top: 59 7/8 }\n'],
  ['a: 1\nb: 2 # two\nc: 3\n', ['b'], undefined, 'a: 1\nc: 3\n'],
  ['a: 1\ng:\n  b: 2', ['g', 'b'], undefined, 'a: 1\n'],
  ['g: { a: 1, b: 2, c: 3 }\n', ['g', 'b'], undefined, 'g: { a: 1, c: 3 }\n'],
  ['g: { a: 1, b: 2 }\n', ['g', 'b'], undefined, 'g: { a: 1 }\n'],
  ['a: 1\n', ['b'], undefined, 'a: 1\n'],
  ['', ['a', 'b'], 1, 'a:\n  b: 1\n'],
  ['# only words', ['a'], 1, '# only words\na: 1\n'],
  ['a: 1\n', ['t'], '007', 'a: 1\nt: "007"\n'],
  ['a: 1\n', ['t'], 'one, two: three', 'a: 1\nt: "one, two: three"\n'],
  ['{"a":1.10,\n "g":{}}', ['g', 'c'], 'x', '{"a":1.10,\n "g":{ "c": "x" }}'],
  ['{\n    "a": 1e3\n}\n', ['g', 'c'], 2, '{\n    "a": 1e3,\n    "g": { "c": 2 }\n}\n'],
  // Entries of a list by their place.
  [
    'g:\n  - a: 1\n  - b: 2 # two\nz: 1\n',
    ['g', 1, 'c'],
    3,
    'g:\n  - a: 1\n  - b: 2 # two\n    c: 3\nz: 1\n',
  ],
  ['g: [{ a: 1 }]\n', ['g', 0, 's', 'c'], 'x', 'g: [{ a: 1, s: { c: x } }]\n'],
  ['g: [{}]\n', ['g', 0, 'c'], 'x', 'g: [{ c: x }]\n'],
  ['g: [{ a: 1, b: 2 }]\n', ['g', 0, 'a'], undefined, 'g: [{ b: 2 }]\n'],
  ['a: &x { b: 1 }\ng: [*x]\n', ['g', 0, 'c'], 2, 'a: { b: 1 }\ng: [{ b: 1, c: 2 }]\n'],
  // An alias is followed only where a change would reach through it.
  ['a: &x 007\nb: *x\nc: 1\n', ['c'], 2, 'a: &x 007\nb: *x\nc: 2\n'],
  ['a: &x 007\nb: *x\nc: 1\n', ['a'], 2, 'a: 2\nb: 007\nc: 1\n'],
  ['a: &x 007\nb: *x\nc: 1\n', ['b'], 2, 'a: 007\nb: 2\nc: 1\n'],
  ['a: &x { b: 1.50 }\ng: *x\n', ['g', 'c'], 2, 'a: { b: 1.50 }\ng: { b: 1.5, c: 2 }\n'],
];

describe('a text with one key changed', () => {
  it.each(BY_HAND)('%j with %j as %j', (text, path, value, after) => {
    expect(withValue(text, path, value)).toBe(after);
  });

  it('says what the yaml package would say, had it written the text anew', () => {
    for (const [text, path, value] of BY_HAND) {
      if (value === undefined || text.includes('*')) continue;
      const doc = parseDocument(text, { version: '1.2', schema: 'core' });
      const plain = (doc.contents === null ? {} : doc.toJS()) as Record<string, unknown>;
      let group = plain;
      for (const key of path.slice(0, -1)) {
        if (typeof group[key] !== 'object' || group[key] === null) group[key] = {};
        group = group[key] as Record<string, unknown>;
      }
      group[path.at(-1)!] = value;
      expect(parse(withValue(text, path, value), { version: '1.2', schema: 'core' }), text).toEqual(plain);
    }
  });

  it('takes several changes one after the other', () => {
    const changes: readonly Change[] = [
      [['g', 'a'], 1],
      [['g', 'b'], 2],
      [['g', 'a'], undefined],
      [['t'], { s: { u: 1, v: undefined }, w: [1, 'x'] }],
    ];
    expect(withValues('z: 1\n', changes)).toBe('z: 1\ng:\n  b: 2\nt: { s: { u: 1 }, w: [1, x] }\n');
  });

  it('changes nothing in a text whose writing is wrong, and says so', () => {
    expect(() => withValue('a: [1', ['b'], 1)).toThrow();
  });
});
