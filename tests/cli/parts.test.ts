/** A plan with parts at the command line: every command takes all of them, or those that are named. */

import { copyFile, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { emptyFolder, run } from './run.ts';

const SAMPLE = join(import.meta.dirname, '../../samples/lathe-street-quilt.yaml');
const NAMES = ['wreath', 'corner blocks', 'inner border', 'outer border'];
const COPIES = [1, 4, 1, 1];

const folderWithQuilt = async (): Promise<string> => {
  const folder = emptyFolder();
  await copyFile(SAMPLE, join(folder, 'quilt.yaml'));
  return folder;
};

const jsonOf = async (folder: string, ...argv: string[]) => {
  const { code, out, err } = await run(folder, [...argv, '--json']);
  expect(code, err).toBe(0);
  return JSON.parse(out);
};

describe('mockup', () => {
  test('prints all parts in one file: a cover, the maps, and each part’s sheets under its number', async () => {
    const folder = await folderWithQuilt();
    const bare = ['--without', 'fill,template,channel'];
    const whole = await jsonOf(folder, 'mockup', 'quilt.yaml', ...bare);
    expect(whole.file).toBe('quilt-mockup.pdf');
    expect(whole.parts.map((p: { part: string }) => p.part)).toEqual(NAMES);
    const labels: string[] = ['Cover', 'Maps'];
    for (const [i, name] of NAMES.entries()) {
      const alone = await jsonOf(folder, 'mockup', 'quilt.yaml', '--part', name, ...bare);
      expect(alone.file).toBe(`quilt-${name.replace(' ', '-')}-mockup.pdf`);
      const { part: _, ...same } = whole.parts[i];
      expect({ units: alone.units, file: alone.file, ...same }).toEqual(alone);
      labels.push(...alone.labels.map((label: string) => `${i + 1}-${label}`));
    }
    const data = new Uint8Array(await readFile(join(folder, 'quilt-mockup.pdf')));
    const doc = await getDocument({ data, verbosity: 0 }).promise;
    expect(await doc.getPageLabels()).toEqual(labels);
    // Each sheet says its own label, large, and what it is of.
    for (const [i, label] of labels.entries()) {
      const { items } = await (await doc.getPage(i + 1)).getTextContent();
      const texts = items.flatMap((item) => ('str' in item ? [item.str] : []));
      if (i < 2) continue;
      expect(texts).toContain(label);
      expect(texts.join(' ')).toContain(`Lathe Street lap quilt: ${NAMES[Number(label[0]) - 1]}`);
    }
  });

  test('prints several parts that are named, and leaves the others out', async () => {
    const folder = await folderWithQuilt();
    const some = await jsonOf(
      folder,
      'mockup',
      'quilt.yaml',
      '--part',
      'wreath,inner border',
      '-o',
      'some.pdf',
    );
    expect(some.parts.map((p: { part: string }) => p.part)).toEqual(['wreath', 'inner border']);
  });
});

describe('draw', () => {
  test('lays all parts on the quilt, each line with its part, and of copies which', async () => {
    const folder = await folderWithQuilt();
    const halves: string[] = [];
    for (const name of NAMES) {
      await run(folder, [
        'draw',
        'quilt.yaml',
        '--part',
        name,
        '-o',
        'one.svg',
        '--without',
        'fill,template',
      ]);
      const one = await readFile(join(folder, 'one.svg'), 'utf8');
      halves.push(String([...one.matchAll(/data-half="first"/g)].length));
    }
    const { code } = await run(folder, ['draw', 'quilt.yaml', '--without', 'fill,template']);
    expect(code).toBe(0);
    const svg = await readFile(join(folder, 'quilt.svg'), 'utf8');
    for (const [i, name] of NAMES.entries()) {
      const own = [...svg.matchAll(/<path [^>]*data-half="first"[^>]*>/g)].filter(([path]) =>
        path.includes(`data-part="${name}"`),
      );
      expect(own.length).toBe(COPIES[i]! * Number(halves[i]));
      const copies = new Set(own.map(([path]) => /data-copy="(\d)"/.exec(path)?.[1]));
      expect(copies).toEqual(COPIES[i] === 1 ? new Set([undefined]) : new Set(['1', '2', '3', '4']));
    }
  });

  test('one part alone is drawn once, and says in how many places it lies', async () => {
    const folder = await folderWithQuilt();
    const { lines } = await run(folder, [
      'draw',
      'quilt.yaml',
      '--part',
      'corner blocks',
      '--without',
      'fill',
    ]);
    expect(lines.at(-1)).toBe(
      'quilt-corner-blocks.svg: the whole frame once, of 4 on the quilt, a drawing at true size',
    );
  });

  test('one part alone is called after it', async () => {
    const folder = await folderWithQuilt();
    const { left } = await run(folder, ['draw', 'quilt.yaml', '--part', 'corner blocks']);
    expect(left).toContain('quilt-corner-blocks.svg');
  });
});

describe('card', () => {
  test('has each part’s card as it is by itself, and the thread of all', async () => {
    const folder = await folderWithQuilt();
    const all = (await run(folder, ['card', 'quilt.yaml'])).out;
    const stitched = (text: string): number => Number(/([\d.]+) yd/.exec(text)![1]);
    let sum = 0;
    for (const [i, name] of NAMES.entries()) {
      const alone = (await run(folder, ['card', 'quilt.yaml', '--part', name])).out;
      expect(all).toContain(alone);
      expect(alone.includes('Sewn 4 times on the quilt')).toBe(COPIES[i] === 4);
      sum += COPIES[i]! * stitched(alone.slice(alone.indexOf('Stitched length:')));
    }
    const together = all.slice(all.indexOf('Stitching and thread of the whole quilt'));
    // Each figure is rounded to a tenth of a yard, and one of them counts four times.
    expect(Math.abs(stitched(together) - sum)).toBeLessThan(0.05 * (1 + 7));
    expect(together).toMatch(
      /- corner blocks, 4 times: [\d.]+ yd of stitching; [\d.]+ yd on top and [\d.]+ yd in the bobbin/,
    );
  });

  test('on paper each begins a page of its own', async () => {
    const folder = await folderWithQuilt();
    const { lines, err } = await run(folder, ['card', 'quilt.yaml', '-o', 'card.pdf']);
    expect(lines.at(-1), err).toMatch(
      /^card.pdf: 4 marking cards, and the thread of the whole quilt, \d+ pages of Letter, portrait$/,
    );
    const data = new Uint8Array(await readFile(join(folder, 'card.pdf')));
    const labels = await (await getDocument({ data, verbosity: 0 }).promise).getPageLabels();
    expect(labels?.filter((label) => label.endsWith('-Card'))).toEqual([
      '1-Card',
      '2-Card',
      '3-Card',
      '4-Card',
      '5-Card',
    ]);
  });
});

describe('fit', () => {
  test('ranks each part, and takes a result into its part alone', async () => {
    const folder = await folderWithQuilt();
    const all = await jsonOf(folder, 'fit', 'quilt.yaml', '--most', '3');
    expect(all.parts.map((p: { part: string }) => p.part)).toEqual(NAMES);
    const name = 'inner border';
    const alone = await jsonOf(folder, 'fit', 'quilt.yaml', '--part', name, '--most', '3');
    expect(all.parts[2]).toEqual({
      part: name,
      found: alone.found,
      kinds: alone.kinds,
      results: alone.results,
    });
    const { left } = await run(folder, ['fit', 'quilt.yaml', '--part', name, '--take', '3']);
    expect(left).toContain('quilt-inner-border-fit-3.yaml');
    const taken = await readFile(join(folder, 'quilt-inner-border-fit-3.yaml'), 'utf8');
    const written = await readFile(join(folder, 'quilt.yaml'), 'utf8');
    const from = written.indexOf('  inner border:');
    const to = written.indexOf('  outer border:');
    expect(taken.startsWith(written.slice(0, from))).toBe(true);
    expect(taken.endsWith(written.slice(to))).toBe(true);
    const again = await jsonOf(folder, 'fit', 'quilt-inner-border-fit-3.yaml', '--part', name);
    expect(again.results[0].sides).toEqual(alone.results[2].sides);
  });

  test('of parts that nothing fits each is told, and the others are ranked', async () => {
    const folder = emptyFolder();
    const strip = (repeats: number, at: number): string =>
      `{ at: [0, ${at}], layout: { strip: { length: 40, width: 5 } }, swag: { repeats: ${repeats} } }`;
    await writeFile(
      join(folder, 'q.yaml'),
      `template: baluster\nparts:\n  few: ${strip(4, 0)}\n  many: ${strip(300, 10)}\n`,
    );
    const { code, out, err } = await run(folder, ['fit', 'q.yaml']);
    expect(code).toBe(1);
    expect(out).toMatch(/^few:\n/);
    expect(err).toMatch(/^q\.yaml:4:\d+: parts\.many\.layout: nothing fits this layout/m);
    expect(err).toMatch(
      /^q\.yaml:4:\d+: parts\.many\.swag\.repeats: 300 repeats and a side of 40 in cannot both be had/m,
    );
    expect(out).toMatch(/^many:\n(.*\n)+-+\nNone meets all that is asked: the nearest/m);
  });
});

test('frames without a limit that lie on one another once their swags are known are refused', async () => {
  const folder = emptyFolder();
  const frames = (apart: string): string => `template: baluster
parts:
  left: { layout: { frame: { count: 8, around: 9, clearance: 1/2 } } }
  right: { at: [${apart}, 0], layout: { frame: { count: 8, around: 9, clearance: 1/2 } } }
`;
  await writeFile(join(folder, 'q.yaml'), frames('40'));
  const alone = (await jsonOf(folder, 'draw', 'q.yaml')).parts[0].frame.width / 25.4;
  expect(alone).toBeGreaterThan(10);
  for (const [apart, code] of [
    [alone + 0.01, 0],
    [alone - 0.2, 1],
  ] as const) {
    await writeFile(join(folder, 'q.yaml'), frames(apart.toFixed(4)));
    const ran = await run(folder, ['card', 'q.yaml']);
    expect(ran.code).toBe(code);
    if (code === 1)
      expect(ran.err).toMatch(
        /^q\.yaml:4:\d+: parts\.right\.layout: the part "right" lies on the part "left"/,
      );
  }
});

test('a result is not taken into another folder where other parts name templates by their paths', async () => {
  const folder = emptyFolder();
  const strip = (at: number, template: string): string =>
    `{ at: [0, ${at}], template: ${template}, layout: { strip: { length: 40, width: 5 } } }`;
  const profiles = join(import.meta.dirname, '../../profiles');
  await copyFile(join(profiles, 'finial.yaml'), join(folder, 'mine.yaml'));
  await writeFile(
    join(folder, 'q.yaml'),
    `parts:\n  one: ${strip(0, 'baluster')}\n  other: ${strip(10, './mine.yaml')}\n`,
  );
  const refused = await run(folder, [
    'fit',
    'q.yaml',
    '--part',
    'one',
    '--take',
    '1',
    '-o',
    '../elsewhere.yaml',
  ]);
  expect([refused.code, ...refused.lines]).toEqual([
    2,
    '--output: other parts name templates by paths, which are meant from the folder of their plan; found ' +
      '"./mine.yaml"; write the plan into the folder of the first one',
  ]);
  const taken = await run(folder, ['fit', 'q.yaml', '--part', 'one', '--take', '1', '-o', 'near.yaml']);
  expect(taken.lines).toEqual([
    'near.yaml: the plan with result 1 for one, the other parts as they were',
    expect.stringMatching(/^\d+ swags, .* wide, .* deep, /),
  ]);
  expect((await run(folder, ['fit', 'near.yaml'])).code).toBe(0);
});

describe('audition', () => {
  test('makes a file for each part', async () => {
    const folder = await folderWithQuilt();
    const { left, code } = await run(folder, [
      'audition',
      'quilt.yaml',
      '--empty',
      '1',
      '--part',
      'wreath,corner blocks',
    ]);
    expect(code).toBe(0);
    expect(left).toEqual(['quilt-corner-blocks-frames.pdf', 'quilt-wreath-frames.pdf', 'quilt.yaml']);
  });
});

test('measures that do not agree are told on the terminal, the cards and the cover', async () => {
  const folder = emptyFolder();
  await writeFile(
    join(folder, 'q.yaml'),
    `template: finial
parts:
  inner border: { layout: { border: { width: 3, inner: 16, corners: meet } } }
  outer border: { layout: { border: { width: 5, inner: { top: 22 1/2, right: 22, bottom: 22, left: 23 1/8 }, corners: meet } } }
`,
  );
  const seam =
    /The outer seam of the part .* do not measure the same: top 22 in and 22 1\/2 in, left 22 in and 23 1\/8 in; more than 1\/8 in to the foot cannot be eased in: one of the two measures is a mistake;/;
  const side = /The right side is 1 1\/8 in shorter than the left side, 22 in and 23 1\/8 in;/;
  const card = await run(folder, ['card', 'q.yaml']);
  expect(card.lines.join(' ')).toMatch(new RegExp(seam.source.replace('The', 'the')));
  const [inner, outer] = card.out.split('q: outer border').map((text) => text.replace(/\s+/g, ' '));
  expect(inner).toMatch(seam);
  expect(inner).not.toMatch(side);
  expect(outer).toMatch(seam);
  expect(outer).toMatch(side);
  await run(folder, ['mockup', 'q.yaml', '--without', 'fill,template,channel', '-o', 'all.pdf']);
  await run(folder, [
    'mockup',
    'q.yaml',
    '--part',
    'outer border',
    '--without',
    'fill,template',
    '-o',
    'one.pdf',
  ]);
  for (const name of ['all.pdf', 'one.pdf']) {
    const data = new Uint8Array(await readFile(join(folder, name)));
    const cover = await (await getDocument({ data, verbosity: 0 }).promise).getPage(1);
    const { items } = await cover.getTextContent();
    const words = items.flatMap((item) => ('str' in item ? [item.str] : [])).join(' ');
    expect(words.replace(/\s+/g, ' ')).toMatch(seam);
    expect(words.replace(/\s+/g, ' ')).toMatch(side);
  }
});

test('templates that are not there are all told, each with its part', async () => {
  const folder = emptyFolder();
  const strip = (at: number, template = ''): string =>
    `{ at: [0, ${at}], ${template}layout: { strip: { length: 40, width: 4 } } }`;
  await writeFile(
    join(folder, 'q.yaml'),
    `template: [finial, corbl]
parts:
  one: ${strip(0, 'template: balustre, ')}
  two: ${strip(10, 'template: [newell, ./mine.yaml], ')}
  three: ${strip(20)}
  four: ${strip(30)}
`,
  );
  const along = 'expected one of baluster, finial, newel, or a path';
  const { code, lines } = await run(folder, ['card', 'q.yaml']);
  expect([code, ...lines]).toEqual([
    1,
    `q.yaml:3:32: parts.one.template: there is no template named "balustre"; ${along}; did you mean "baluster"?`,
    `q.yaml:4:34: parts.two.template.1: there is no template named "newell"; ${along}; did you mean "newel"?`,
    'mine.yaml: there is no such file; q.yaml:4 names it under parts.two.template.2',
    `q.yaml:1:20: template.2: there is no template named "corbl"; ${along}; a file of your own is named by its path`,
  ]);
});

describe('before the first audition is written', () => {
  const strips = (...fills: string[]): string =>
    `template: finial\nparts:\n${fills
      .map(
        (fill, i) =>
          `  strip ${i}: { at: [0, ${10 * i}], layout: { strip: { length: 40, width: 5 } }, fills: { swag: ${fill} } }\n`,
      )
      .join('')}`;

  test('the names of all fills are looked at', async () => {
    const folder = emptyFolder();
    await writeFile(join(folder, 'q.yaml'), strips('feather', 'fether', 'stiple'));
    const { code, lines, left } = await run(folder, ['audition', 'q.yaml']);
    expect([code, ...lines.map((line) => line.split(';')[0])]).toEqual([
      1,
      'q.yaml:4:87: parts.strip 1.fills.swag: no fill named "fether"',
      'q.yaml:5:87: parts.strip 2.fills.swag: no fill named "stiple"',
    ]);
    expect(left).toEqual(['q.yaml']);
  });

  test('what is to be shown is looked for in all parts', async () => {
    const { code, lines, left } = await run(await folderWithQuilt(), [
      'audition',
      'quilt.yaml',
      '--show',
      'block',
      '--part',
      'wreath,corner blocks',
    ]);
    expect([code, ...lines.map((line) => line.split(';')[0])]).toEqual([
      2,
      '--show: wreath: not in this design',
      '--show: corner blocks: not in this design',
    ]);
    expect(left).toEqual(['quilt.yaml']);
  });

  test('somebody else’s file is seen, whichever part would be written over it', async () => {
    const folder = emptyFolder();
    await writeFile(join(folder, 'q.yaml'), strips('feather', 'feather'));
    await writeFile(join(folder, 'q-strip-1-frames.pdf'), 'hers');
    const { code, left } = await run(folder, ['audition', 'q.yaml', '--empty', '1']);
    expect(code).toBe(1);
    expect(left).toEqual(['q-strip-1-frames.pdf', 'q.yaml']);
  });
});

test.each<[string, string[], string]>([
  [
    'several parts that are not there',
    ['card', 'quilt.yaml', '--part', 'wreth,spokes,corner block'],
    '--part: this plan has no such parts; found "wreth", "spokes" and "corner block"; expected one of wreath, corner blocks, inner border, outer border; did you mean "wreath" and "corner blocks"?',
  ],
  [
    'a part that is not there',
    ['mockup', 'quilt.yaml', '--part', 'wreth'],
    '--part: this plan has no such part; found "wreth"; expected one of wreath, corner blocks, inner border, outer border; did you mean "wreath"?',
  ],
  [
    'what to show, of several',
    ['draw', 'quilt.yaml', '--show', 'top'],
    '--show: it is for one part at a time, and the plan has several; name one with --part',
  ],
  [
    'a result to take, of several',
    ['fit', 'quilt.yaml', '--take', '1'],
    '--take: it is for one part at a time, and the plan has several; name one with --part',
  ],
  [
    'one output for several',
    ['audition', 'quilt.yaml', '-o', 'a.pdf'],
    '--output: the plan has several parts, and each gets a file of its own; name one with --part',
  ],
])('%s', async (_, argv, expected) => {
  const { code, lines, left } = await run(await folderWithQuilt(), argv);
  expect(code).toBe(2);
  expect(lines).toEqual([expected]);
  expect(left).toEqual(['quilt.yaml']);
});

test('a part of a plan without parts', async () => {
  const folder = emptyFolder();
  await writeFile(
    join(folder, 'strip.yaml'),
    'template: baluster\nlayout: { strip: { length: 36, width: 5 } }\n',
  );
  const { code, lines } = await run(folder, ['card', 'strip.yaml', '--part', 'top']);
  expect([code, ...lines]).toEqual([2, '--part: this plan is one design, without parts']);
});
