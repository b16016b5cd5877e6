/** The cover and the maps of a quilt's sheets, read as a person reads them: words, and where numbers stand. */

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { deflateSync } from 'node:zlib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { quiltMockup } from '../../../src/jobs/quilt-mockup.ts';
import { readPlan } from '../../../src/plan/index.ts';
import { designFromPlan } from '../../../src/swag/index.ts';
import { profile } from '../../swag/fit-helpers.ts';

const require = createRequire(import.meta.url);
const font = (name: string): Promise<Uint8Array> => readFile(require.resolve(`dejavu-fonts-ttf/ttf/${name}`));
const MEANS = {
  deflate: (bytes: Uint8Array): Uint8Array => deflateSync(bytes),
  fonts: async () => ({ regular: await font('DejaVuSans.ttf'), bold: await font('DejaVuSans-Bold.ttf') }),
};

/** A border 30 in square with 4 in of width, and a block at each corner of its inside, none in the middle. */
const QUILT = `title: Guild cushion
template: finial
parts:
  border: { layout: { border: { width: 4, inner: 30, margin: 1/4, corners: meet } } }
  blocks:
    at: [[-10, 10], [10, 10], [10, -10], [-10, -10]]
    layout: { frame: { block: 4, within: 8, corners: meet } }
`;

interface Word {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

let pages: Word[][] = [];
const sayOf = (page: number): string => (pages[page] ?? []).map(({ text }) => text).join(' ');

beforeAll(async () => {
  const reading = readPlan(QUILT, 'quilt.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const parts = reading.parts.map(({ plan }) => {
    const templates = plan.templates.map(profile);
    const made = designFromPlan(plan, templates);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    return {
      name: plan.part?.name,
      plan,
      templates,
      design: made.design,
      placed: <P>(problem: P) => problem,
    };
  });
  const wanted = { without: ['fill', 'template'], layout: { paper: 'letter' } } as const;
  const { bytes } = await quiltMockup(reading.title, parts, wanted, MEANS);
  const doc = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  pages = [];
  for (let i = 1; i <= doc.numPages; i++) {
    const { items } = await (await doc.getPage(i)).getTextContent();
    pages.push(
      items.flatMap((item) =>
        'str' in item && item.str.trim() !== ''
          ? [{ text: item.str, x: item.transform[4] as number, y: item.transform[5] as number }]
          : [],
      ),
    );
  }
});

describe('the cover', () => {
  test('says how much paper there is, how large the quilt is, and which number is which part', () => {
    const sheets = pages.length - 2;
    expect(sayOf(0)).toContain(`True size: ${sheets} sheets of Letter for 2 parts, each with a map overleaf`);
    // 30 in and twice 4 in of width.
    expect(sayOf(0)).toMatch(/The quilt, about \d+ % of true size: 38 in × 38 in\./);
    expect(sayOf(0)).toContain('1 border, 2 blocks (4 times).');
  });

  test('the numbers stand at their parts: the border’s at its corner, the blocks’ in a square round the middle', () => {
    // A number with a white rim is written twice in one place.
    const at = (number: string): readonly Word[] =>
      (pages[0] ?? []).filter(
        (word, i, all) =>
          word.text === number &&
          !all.slice(0, i).some((w) => w.text === number && w.x === word.x && w.y === word.y),
      );
    // The steps of the instructions are numbered too, beyond 2, each row of them below one another.
    const steps = new Set(at('3').map(({ x }) => x));
    const [corner] = at('1').filter(({ x }) => !steps.has(x));
    const blocks = at('2')
      .filter(({ x }) => !steps.has(x))
      .sort((a, b) => Math.round(b.y - a.y) || a.x - b.x);
    expect(blocks).toHaveLength(4);
    const [nw, ne, sw, se] = blocks as [Word, Word, Word, Word];
    for (const block of blocks) {
      expect(block.x).toBeGreaterThan(corner!.x);
      expect(block.y).toBeLessThan(corner!.y);
    }
    const side = ne.x - nw.x;
    expect(nw.y - sw.y).toBeCloseTo(side, 1);
    expect([ne.y, se.y]).toEqual([expect.closeTo(nw.y, 1), expect.closeTo(sw.y, 1)]);
    expect(se.x).toBeCloseTo(ne.x, 1);
    // Blocks are 20 in apart; the border's corner lies 19 in from the middle, a block's own corner 10 + 4 in.
    expect((nw.x - corner!.x) / side).toBeCloseTo((19 - 14) / 20, 2);
  });
});

test('the map of each part says what was designed, its sheets, and how large it is', () => {
  const say = sayOf(1);
  for (const [number, name] of [
    [1, 'border'],
    [2, 'blocks'],
  ] as const) {
    expect(say).toContain(`${number} ${name}`);
    const label = new RegExp(`^${number}-[A-Z]+\\d+$`);
    const own = pages.slice(2).filter((page) => page.some(({ text }) => label.test(text)));
    expect(say).toMatch(
      new RegExp(`${number} ${name} Printed here: .*\\. Finial: .*True size: ${own.length} sheets of Letter`),
    );
    for (const page of own) expect(say).toContain(page.find(({ text }) => label.test(text))?.text);
  }
});
