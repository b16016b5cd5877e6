/** Nothing on a card is written beyond its margins, whatever the lines of its figure are called. Read from the PDF. */

import { expect, test } from 'vitest';
import { printedCard } from './printed.ts';

/** Points: 1/2 in of letter. */
const MARGIN = 36;
const WIDTH = 612;
/** A letter may lean a hair over its own width, points. */
const HAIR = 1;

const sizes = ['width: 14, height: 12', 'width: 20, height: 16', 'width: 6, height: 6'];
const cases = sizes.flatMap((block) =>
  ['turn', 'meet', 'open'].flatMap((corners) =>
    ['inner', 'outer'].map((from) => {
      const within = Number(/\d+/.exec(block)![0]) + 9;
      return `frame: { block: { ${block} }, clearance: 1/2, within: ${within}, corners: ${corners}, from: ${from} }`;
    }),
  ),
);

test.each([
  ...cases,
  'border: { width: 6, inner: 60, margin: 1/2, from: outer }',
  'strip: { length: 60, width: 5, margin: 1/4 }',
])('%s', async (layout) => {
  const { doc } = await printedCard(`layout: { ${layout} }`);
  let seen = 0;
  for (let number = 1; number <= doc.numPages; number++) {
    const { items } = await (await doc.getPage(number)).getTextContent();
    for (const item of items) {
      if (!('str' in item) || item.str.trim() === '') continue;
      const [a = 0, b = 0, , , x = 0] = item.transform as number[];
      const across = (a / Math.hypot(a, b)) * item.width;
      const [left, right] = [Math.min(x, x + across), Math.max(x, x + across)];
      expect(left, item.str).toBeGreaterThan(MARGIN - HAIR);
      expect(right, item.str).toBeLessThan(WIDTH - MARGIN + HAIR);
      seen++;
    }
  }
  expect(seen).toBeGreaterThan(50);
});
