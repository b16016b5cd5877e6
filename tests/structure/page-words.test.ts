/** The page's words stand in one place, so that it can be translated: nowhere else in it is there a text to be read. */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseAst } from 'vite';
import { expect, test } from 'vitest';

const PAGE = join(import.meta.dirname, '../../src/page');

interface Node {
  readonly type: string;
  readonly [key: string]: unknown;
}

/** Attributes whose every letter is read or heard. */
const SAID =
  /^(alt|aria-(label|valuetext|description|roledescription)|title|placeholder|label|lead|hint|summary|legend|words|add|none|usualTitle|whenEmpty|more)$/;

/** Attributes that nobody reads. */
const UNSEEN =
  /^(class|d|style|transform|viewBox|points|key|id|for|href|accept|type|name|aria-(labelledby|describedby|controls)|data-.*)$/;

const LETTER = /\p{L}/u;
/** Words as people write them, with blanks between. */
const SENTENCE = /\p{L}[^\p{L}\s]*\s+[^\p{L}\s]*\p{L}/u;

/** The texts of one file that somebody would read, where they stand. */
const textsIn = (code: string, lang: 'ts' | 'tsx'): readonly string[] => {
  const found: string[] = [];
  const visit = (value: unknown, attribute: string | undefined, isOption: boolean): void => {
    if (Array.isArray(value)) {
      for (const each of value) visit(each, attribute, isOption);
      return;
    }
    if (typeof value !== 'object' || value === null) return;
    const node = value as Node;
    if (isNoText(node)) return;
    if (node.type === 'JSXText' && LETTER.test(String(node['value'])))
      found.push(trimmed(String(node['value'])));
    const text = textOf(node);
    if (text !== undefined && !UNSEEN.test(attribute ?? '')) {
      const isSaid = SAID.test(attribute ?? '') || isOption;
      if (isSaid ? LETTER.test(text) : SENTENCE.test(text)) found.push(trimmed(text));
    }
    const own = node.type === 'JSXAttribute' ? String((node['name'] as { name?: unknown }).name) : attribute;
    for (const [key, part] of Object.entries(node)) {
      // Of a pair in a list of options the second is shown.
      if (own === 'options' && node.type === 'ArrayExpression' && key === 'elements')
        (part as readonly unknown[]).forEach((each, i) => {
          visit(each, own, i === 1);
        });
      // A condition, a comparison or a place in a list is no text, wherever it stands.
      else if (
        key === 'test' ||
        node.type === 'BinaryExpression' ||
        (node.type === 'MemberExpression' && key === 'property')
      )
        visit(part, undefined, false);
      else visit(part, own, isOption);
    }
  };
  visit(parseAst(code, { lang }).body, undefined, false);
  return found;
};

/** Names of files, types, and what is thrown for those who read the program. */
const isNoText = ({ type, source, callee }: Node): boolean =>
  (/^(Import|Export).*Declaration$/.test(type) && source !== undefined && source !== null) ||
  (/^TS/.test(type) && !/^TS(As|NonNull|Satisfies)/.test(type)) ||
  (type === 'NewExpression' && (callee as { name?: unknown }).name === 'Error');

const textOf = (node: Node): string | undefined => {
  if (node.type === 'Literal' && typeof node['value'] === 'string') return node['value'];
  if (node.type !== 'TemplateLiteral') return undefined;
  return (node['quasis'] as readonly { value: { cooked: string } }[]).map((q) => q.value.cooked).join('…');
};

const trimmed = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** Read by no one: names of what is kept, steps of a history, selectors, and what plans are written in. */
const NO_WORDS: ReadonlySet<string> = new Set([
  ...['swagwright open', 'swagwright picture …', 'its points', 'any of them', 'title of …'],
  ...['(max-width: 40rem)', 'at least', 'at most', 'DejaVu Sans', 'swagwright'],
]);

/** Markup, the curves of a drawing, and a plan's text. */
const IN_A_LANGUAGE_OF_ITS_OWN = /^(<|M\d|title: … units: )/;

const files = ['ui', 'engine', 'plan'].flatMap((room) =>
  readdirSync(join(PAGE, room))
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `${room}/${name}`),
);

test.each(files)('%s says nothing but by the words of a language', (file) => {
  const code = readFileSync(join(PAGE, file), 'utf8');
  const texts = textsIn(code, file.endsWith('x') ? 'tsx' : 'ts');
  expect(texts.filter((text) => !NO_WORDS.has(text) && !IN_A_LANGUAGE_OF_ITS_OWN.test(text))).toEqual([]);
});

test('a text is found, wherever it stands', () => {
  const code = `
    const told = 'It is told.';
    const named = \`It is \${told}.\`;
    const drawn = (
      <Panel id="a b" title="Title" class="one two" lead={told ? 'Lead' : named}>
        Text
        <Choice label={words.label} options={[['in', 'inches']]} />
        <p aria-label={\`Of \${named}\`}>{words.of({ unit: 'mm' })}</p>
      </Panel>
    );`;
  expect(textsIn(code, 'tsx')).toEqual([
    ...['It is told.', 'It is ….', 'Title', 'Lead', 'Text', 'inches', 'Of …'],
  ]);
});
