/** `audition` as people call it: its files, its words, and its mistakes, one line each. */

import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { describe, expect, test } from 'vitest';
import { rawPages } from '../output/pdf/read-back.ts';
import { emptyFolder, run } from './run.ts';

const STRIP =
  'title: Guild strip\ntemplate: baluster\nlayout: { strip: { length: 36, width: 6, margin: 1/2 } }\n';
const BORDER =
  'title: Guild border\ntemplate: newel\nlayout: { border: { width: 6, inner: 60, margin: 1/2, corners: turn } }\n';

const folderWith = async (plan: string): Promise<string> => {
  const folder = emptyFolder();
  await writeFile(join(folder, 'strip.yaml'), plan);
  return folder;
};

/** How often a page sets its pen to a colour, here that of the ways. */
const strokesInColor = (content: string, color: string): number => content.split(`${color} RG`).length - 1;

const pagesOf = async (folder: string, file: string): Promise<number> =>
  (await PDFDocument.load(await readFile(join(folder, file)))).getPageCount();

describe('audition', () => {
  test('writes sheets named after the plan, and says how many and to which scale', async () => {
    const folder = await folderWith(STRIP);
    const ran = await run(folder, ['audition', 'strip.yaml', '--fills', 'lines,crosshatch']);
    expect(ran).toMatchObject({ code: 0, out: '', left: ['strip-audition.pdf', 'strip.yaml'] });
    expect(ran.lines.at(-1)).toMatch(
      /^strip-audition\.pdf: 4 fills to choose from, 1 page of Letter, (portrait|landscape), to the scale 1:[\d.]+$/,
    );
    expect(await pagesOf(folder, 'strip-audition.pdf')).toBe(1);
    const all = await run(folder, ['audition', 'strip.yaml', '--json', '-o', 'all.pdf']);
    const { together, fills, pages } = JSON.parse(all.out);
    expect(together[0]).toEqual({
      letter: 'A',
      inside: 'feather',
      channels: '',
      background: 'crosshatch, open',
      asInPlan: false,
    });
    expect(together.length).toBeGreaterThanOrEqual(4);
    expect(all.lines.at(-1)).toContain(
      `${together.length} sets and ${fills.length} fills to choose from, ${pages} pages`,
    );
  });

  test('one region, several spacings, as JSON', async () => {
    const folder = await folderWith(`${STRIP}channels: { outward: [3/8] }\n`);
    const ran = await run(folder, [
      ...['audition', 'strip.yaml', '--region', 'channel', '--fills', 'pearls'],
      ...['--spacing', '1/4,3/8', '--paper', 'a4', '--json', '-o', 'pearls.pdf'],
    ]);
    expect(ran.code).toBe(0);
    expect(JSON.parse(ran.out)).toMatchObject({
      file: 'pearls.pdf',
      paper: expect.stringMatching(/^A4/),
      empty: 0,
      fills: [
        { number: 1, fill: 'pearls', region: 'channel', spacing: 6.35 },
        { number: 2, fill: 'pearls', region: 'channel', spacing: 9.525 },
      ],
    });
  });

  test('empty frames have a file of their own', async () => {
    const folder = await folderWith(STRIP);
    const ran = await run(folder, ['audition', 'strip.yaml', '--empty', '6']);
    expect(ran).toMatchObject({ code: 0, left: ['strip-frames.pdf', 'strip.yaml'] });
    expect(ran.lines.at(-1)).toMatch(/^strip-frames\.pdf: 6 empty frames, 1 page of Letter, /);
    expect(await pagesOf(folder, 'strip-frames.pdf')).toBe(1);
  });

  test('inside a corner', async () => {
    const folder = await folderWith(`${BORDER}channels: { inward: [1/4] }\n`);
    const ran = await run(folder, [
      'audition',
      'strip.yaml',
      '--region',
      'corner',
      '--fills',
      'lines',
      '--json',
    ]);
    expect(ran.code).toBe(0);
    const { shows, fills } = JSON.parse(ran.out);
    expect(shows).toContain('corner');
    expect(fills).toMatchObject([{ fill: 'lines', region: 'corner' }]);
  });

  test('the square that is free at a corner', async () => {
    const folder = await folderWith(BORDER.replace('corners: turn', 'corners: half'));
    const asked = ['--region', 'corner', '--fills', 'lines,stipple', '--json'];
    const ran = await run(folder, ['audition', 'strip.yaml', ...asked]);
    expect(ran.code).toBe(0);
    const { shows, fills } = JSON.parse(ran.out);
    expect(shows).toContain('corner');
    expect(fills).toMatchObject([
      { fill: 'lines', region: 'corner' },
      { fill: 'stipple', region: 'corner' },
    ]);
    for (const { stitchedPerSwag } of fills) expect(stitchedPerSwag).toBeGreaterThan(100);
  });

  test('true size, when it is asked for and the paper holds it', async () => {
    const folder = await folderWith(STRIP);
    const ran = await run(folder, [
      'audition',
      'strip.yaml',
      '--empty',
      '1',
      '--scale',
      '1',
      '--paper',
      'a3',
    ]);
    expect(ran.code).toBe(0);
    expect(ran.lines.at(-1)).toContain('at true size');
  });

  test('true size on as many sheets as it takes, to tape together, with a cover', async () => {
    const folder = await folderWith(STRIP);
    const ran = await run(folder, ['audition', 'strip.yaml', '--empty', '1', '--scale', '1']);
    expect(ran).toMatchObject({ code: 0, left: ['strip-frames.pdf', 'strip.yaml'] });
    expect(ran.lines.at(-1)).toMatch(
      /^strip-frames\.pdf: an empty frame at true size, 2 sheets of Letter, .*; 3 pages with the cover$/,
    );
    expect(await pagesOf(folder, 'strip-frames.pdf')).toBe(3);
  });

  test('dots and arrows are left out where they are not wanted', async () => {
    const folder = await folderWith(STRIP);
    const lengths = await Promise.all(
      [[], ['--without', 'way']].map(async (more, i) => {
        const name = `${i}.pdf`;
        const ran = await run(folder, ['audition', 'strip.yaml', '--fills', 'lines', ...more, '-o', name]);
        expect(ran.code).toBe(0);
        const pages = await rawPages(await readFile(join(folder, name)));
        return pages.map(({ content }) => strokesInColor(content, '0.173 0.431 0.416'));
      }),
    );
    expect(Math.min(...lengths[0]!)).toBeGreaterThan(0);
    expect(lengths[1]).toEqual(lengths[0]!.map(() => 0));
  });
});

describe('mistakes', () => {
  const CASES: readonly (readonly [string, readonly string[], number, string])[] = [
    [STRIP, ['--fills', 'stiple'], 2, '--fills: not known; found "stiple"; expected one of '],
    [
      STRIP,
      ['--region', 'chanel'],
      2,
      '--region: not known; found "chanel"; expected one of swag, background, channel, corner; did you mean "channel"?',
    ],
    [
      STRIP,
      ['--region', 'channel'],
      1,
      'there is nothing to fill: the channels; give the plan channels, such as channels: { outward: [1/4] }',
    ],
    [
      STRIP,
      ['--region', 'corner'],
      1,
      'there is nothing to fill: inside the corners; only a border has corners to fill: a swag that turns or goes across them, or, with corners half or open, the square that is free; and --show must hold one',
    ],
    [
      'template: finial\nlayout:\n  frame: { count: 8, around: 9, clearance: 1/2 }\n',
      ['--region', 'background'],
      1,
      'there is nothing to fill: the background; outside a frame it needs a limit, such as within: 16',
    ],
    [
      'template: finial\nlayout:\n  border: { width: 6, inner: 300, margin: 1/2 }\n',
      ['--show', 'all', '--spacing', '1/16'],
      1,
      'the fills are too fine for so many copies of so large a picture; expected at most 500000 lines and arcs in all; take a wider spacing, or show one repeat',
    ],
    [
      STRIP,
      ['--fills', 'pearls'],
      1,
      '--fills: what is named is for channels, and there are none; found pearls; to try it elsewhere say --region swag or background',
    ],
    [
      STRIP,
      ['--empty', '0'],
      2,
      '--empty: not a number that can be used; found "0"; expected a whole number from 1 to 18',
    ],
    [
      STRIP,
      ['--empty', '6', '--fills', 'lines'],
      2,
      '--empty: an empty frame is filled with nothing: it cannot go with --fills',
    ],
    [
      STRIP,
      ['--scale', 'half'],
      2,
      '--scale: not a scale; found “half”; expected a number from 1 to 100: 1 for true size, 2 for half of it',
    ],
    [
      STRIP,
      ['--empty', '2', '--scale', '1'],
      2,
      '--scale: the frame is larger than the page at this scale; found 1; take a larger number for smaller pictures, or --empty 1, which goes on as many sheets as it takes',
    ],
    [STRIP, ['--spacing', '1/64'], 2, '--spacing: no spacing for quilting; found '],
    [STRIP, ['-o', 'sheet.svg'], 2, '--output: what is written is PDF; found the ending .svg; expected .pdf'],
  ];

  test.each(CASES)('%#: %j', async (plan, options, code, message) => {
    const folder = await folderWith(plan);
    const ran = await run(folder, ['audition', 'strip.yaml', ...options]);
    expect(ran.code).toBe(code);
    expect(ran.lines.length).toBe(1);
    expect(ran.lines[0]).toContain(message);
    expect(ran.left).toEqual(['strip.yaml']);
  });

  test('a fill that the plan names and that does not exist has its place in the plan', async () => {
    const folder = await folderWith(
      `${STRIP}channels: { outward: [1/4] }\nfills:\n  swag: steam\n  channels: [pearl]\n`,
    );
    for (const command of [
      ['draw', 'strip.yaml'],
      ['mockup', 'strip.yaml'],
    ]) {
      const ran = await run(folder, command);
      expect(ran.code).toBe(1);
      expect(ran.lines[0]).toMatch(
        /^strip\.yaml:6:9: fills\.swag: no fill named "steam"; expected one of feather, /,
      );
      expect(ran.lines[1]).toMatch(
        /^strip\.yaml:7:14: fills\.channels\.1: no fill named "pearl"; .*did you mean “pearls”\?$/,
      );
      expect(ran.left).toEqual(['strip.yaml']);
    }
  });

  test('left out, a fill is not missed', async () => {
    const folder = await folderWith(`${STRIP}fills: { swag: steam }\n`);
    expect((await run(folder, ['mockup', 'strip.yaml', '--without', 'fill'])).code).toBe(0);
  });
});
