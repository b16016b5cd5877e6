/** What is looked up once stands in columns, and a section goes on in the next only where the page has no room for it whole. Read from the PDF. */

import { expect, test } from 'vitest';
import { cardOf } from '../../../src/output/card/index.ts';
import { readTexts } from '../pdf/read-back.ts';
import { lineOnFigure, printedCard } from './printed.ts';

/** mm: a list’s text stands in from its heading, and the next column is farther off than this. */
const INDENT = 12;

/** mm: what is left white at the least, and how high letter is (ANSI/ASME Y14.1: 11 in). */
const MARGIN = 0.25 * 25.4;
const LETTER_HEIGHT = 11 * 25.4;

/** The first words of a section and of its last line. */
const SECTIONS: readonly (readonly [heading: string, last: RegExp])[] = [
  ['Take care', /^Printer ink can come/],
  ['Stitching and thread', /a measured length to be sure|^Thread, an estimate/],
];

test.each([
  'strip: { length: 36, width: 5, margin: 1/4 }',
  'border: { width: 6, inner: 60, margin: 1/2, corners: turn }',
])('%s', async (layout) => {
  const { doc } = await printedCard(`layout: { ${layout} }`);
  let seen = 0;
  for (let number = 1; number <= doc.numPages; number++) {
    const texts = await readTexts(await doc.getPage(number));
    for (const [heading, last] of SECTIONS) {
      const head = texts.find(({ text }) => text.trim() === heading);
      const end = texts.find(({ text }) => last.test(text.trim()));
      if (!head || !end) continue;
      expect(Math.abs(end.from.x - head.from.x), heading).toBeLessThan(INDENT);
      seen++;
    }
  }
  expect(seen).toBe(2);
});

/** Wide apart, since it is their words that count here. */
const FILLED = `fills: { swag: { kind: loops, spacing: 1 }, corner: { kind: stipple, spacing: 1 }, background: { kind: echo, spacing: 1 }, channels: [ribbon, pearls] }
channels: { outward: [1/2], inward: [1/2] }`;

/** As many channels as a plan may have, each of a width of its own and so with words of its own: more than a page of them. */
const widths = (from: number): string =>
  Array.from({ length: 20 }, (_, i) => `${(from + i / 100).toFixed(2)} mm`).join(', ');

test.each([
  [
    'more than a page of channels',
    `layout: { strip: { length: 36, width: 9, margin: 1/4 } }\nchannels: { outward: [${widths(1.01)}], inward: [${widths(1.21)}] }`,
  ],
  ['a strip', 'layout: { strip: { length: 36, width: 5, margin: 1/4 } }'],
  [
    'fills and channels',
    `layout: { border: { width: 8, inner: 40, margin: 1/2, corners: turn } }\n${FILLED}`,
  ],
  [
    'two kinds',
    'layout: { strip: { length: 60, width: 7, margin: 1/4 } }\nswag: { alternate: [{ template: baluster }, { template: newel }] }',
  ],
])('all that a card says is on its pages: %s', async (_, text) => {
  const { design, plan, doc } = await printedCard(text);
  const pages = await Promise.all(
    Array.from({ length: doc.numPages }, async (_, i) => readTexts(await doc.getPage(i + 1))),
  );
  for (const { text: words, from } of pages.flat()) {
    expect(from.y, words).toBeGreaterThan(MARGIN);
    expect(from.y, words).toBeLessThan(LETTER_HEIGHT - MARGIN);
  }
  // A paragraph may go on over the foot of a page, where the card's name and the page's number stand.
  const isFoot = (text: string): boolean => text === plan.title || /^marking card, page/.test(text);
  const lines = pages.flatMap((page) => page.map((t) => t.text.trim()).filter((text) => !isFoot(text)));
  const written = lines.join(' ');
  const { sections } = cardOf(design, plan, ['Fingers flat.']);
  expect(sections.length).toBeGreaterThan(4);
  for (const { heading, blocks, id } of sections) {
    // Where the template stands is told on the figure, with a few words below it.
    if (id === 'prepare')
      expect(written).toContain(
        `${heading}: ${blocks.map((b) => (b.kind === 'table' ? '' : b.text)).join(' ')}`.slice(0, 60),
      );
    else if (id !== 'stands') expect(lines).toContain(heading);
    for (const block of id === 'cautions' ? [] : blocks)
      if (block.kind === 'place') expect(lines).toContain(lineOnFigure(block));
      else if (block.kind !== 'table')
        expect(written.replaceAll(/\s+/g, '')).toContain(block.text.replaceAll(/\s+/g, ''));
  }
});
