/** `card` from outside: text, PDF and data that agree. */

import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { emptyFolder, run } from './run.ts';

const PLAN = `title: Guild sampler
template: baluster
layout:
  strip: { length: 36, width: 6, margin: 1/4 }
swag: { repeats: 3, gap: 0, setting: crown-on-centre, side: inside, direction: heel-first, from: 1, to: crown }
`;

const folderWith = async (plan = PLAN): Promise<string> => {
  const folder = emptyFolder();
  await writeFile(join(folder, 'sampler.yaml'), plan);
  return folder;
};

describe('card', () => {
  it('prints the card as text', async () => {
    const ran = await run(await folderWith(), ['card', 'sampler.yaml']);
    expect(ran).toMatchObject({ code: 0, err: '', left: ['sampler.yaml'] });
    expect(ran.out).toMatch(/^Guild sampler\n=+\n/);
    // Three swags on 36 in without a gap: every 6 in a mark.
    expect(ran.out).toMatch(/1 +0 +6 +12\n2 +12 +18 +24\n3 +24 +30 +end\n/);
    expect(ran.out).toMatch(/fingers flat/i);
  });

  it('gives data in mm', async () => {
    const ran = await run(await folderWith(), ['card', 'sampler.yaml', '--json']);
    const data = JSON.parse(ran.out);
    expect(data.units).toBe('mm and degrees');
    expect(data.sides[0].marks.map((m: { at: number }) => m.at / 25.4)).toEqual(
      [0, 6, 12, 12, 18, 24, 24, 30, 36, 36].map((n) => expect.closeTo(n, 9)),
    );
  });

  it('writes a PDF for the paper asked for, the same bytes each time, and a text file', async () => {
    const folder = await folderWith();
    for (const name of ['a.pdf', 'b.pdf'])
      expect((await run(folder, ['card', 'sampler.yaml', '-o', name, '--paper', 'a4'])).code).toBe(0);
    const [a, b] = await Promise.all(['a.pdf', 'b.pdf'].map((name) => readFile(join(folder, name))));
    expect(Buffer.compare(a!, b!)).toBe(0);
    const pdf = await PDFDocument.load(a!);
    expect(pdf.getPageCount()).toBeLessThanOrEqual(2);
    expect(pdf.getPage(0).getWidth()).toBeCloseTo(595.276, 2);
    const ran = await run(folder, ['card', 'sampler.yaml', '-o', 'card.txt']);
    expect(ran.lines).toEqual(['card.txt: the marking card']);
    expect(await readFile(join(folder, 'card.txt'), 'utf8')).toBe(
      (await run(folder, ['card', 'sampler.yaml'])).out,
    );
  });

  it.each([
    [['--paper', 'a4'], /^--paper: it is for a PDF; name one with -o/],
    [['-o', 'card.svg'], /^--output: what is written is /],
    [['-o', '-', '--json'], /^--output: the file and --json cannot both go to stdout/],
  ])('%j is wrong use', async (options, line) => {
    const ran = await run(await folderWith(), ['card', 'sampler.yaml', ...options]);
    expect(ran).toMatchObject({ code: 2, out: '', left: ['sampler.yaml'] });
    expect(ran.lines).toEqual([expect.stringMatching(line)]);
  });
});
