/** How a design gets onto cloth, from the command line: what is made, what it is called, and what is refused. */

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { expect, it } from 'vitest';
import { openPages, readTexts } from '../output/pdf/read-back.ts';
import { emptyFolder, run } from './run.ts';

const PLAN =
  'title: Guild strip\ntemplate: baluster\nlayout: { strip: { length: 24, width: 5, margin: 1/4 } }\nswag: { repeats: 2 }\nchannels: { inward: [1/4] }\nfills: { swag: lines }\n';

const folderWithPlan = (): string => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), PLAN);
  return folder;
};

it('each is named after what it is, and says what was made', async () => {
  const folder = folderWithPlan();
  const made = async (...argv: string[]) => {
    const ran = await run(folder, [argv[0]!, 'plan.yaml', ...argv.slice(1)]);
    expect(ran.code).toBe(0);
    return ran.lines.at(-1);
  };
  expect(await made('draw', '--as', 'stencil')).toBe(
    'plan-stencil.svg: the whole strip, a stencil of the stitching and the channels, slots of 1/16 in and bridges of 1/8 in, a drawing at true size',
  );
  expect(await made('draw', '--as', 'pounce', '--every', '3mm', '--format', 'dxf')).toBe(
    'plan-pounce.dxf: the whole strip, as holes 3 mm apart, lines at true size in mm, without words',
  );
  expect(await made('mockup', '--as', 'clean', '--mirrored')).toMatch(
    /^plan-clean\.pdf: the whole strip, what is stitched and nothing else, mirrored, left for right, /,
  );
});

it('a stencil has no fills, and as many slots in each kind of file', async () => {
  const folder = folderWithPlan();
  for (const ending of ['svg', 'dxf', 'pdf'])
    expect((await run(folder, ['draw', 'plan.yaml', '--as', 'stencil', '-o', `s.${ending}`])).code).toBe(0);
  const svg = readFileSync(join(folder, 's.svg'), 'utf8');
  const dxf = readFileSync(join(folder, 's.dxf'), 'utf8');
  const slots = svg.match(/<path /g)!.length;
  expect(slots).toBeGreaterThan(10);
  expect(dxf.match(/POLYLINE/g)!.length).toBe(slots);
  expect(svg).toContain('<g id="fill">\n  </g>');
  expect(readFileSync(join(folder, 's.pdf'), 'latin1')).toMatch(/^%PDF/);
});

it('a projector gets one picture: dark to its edges, at true size, and nothing round it', async () => {
  const folder = folderWithPlan();
  const ran = await run(folder, [
    'draw',
    'plan.yaml',
    '--as',
    'projector',
    '--without',
    'notes',
    '-o',
    'p.pdf',
  ]);
  expect(ran.lines.at(-1)).toBe(
    'p.pdf: the whole strip, for a projector, on a grid of 1 in, one page at true size',
  );
  const page = await (await openPages(new Uint8Array(readFileSync(join(folder, 'p.pdf'))))).getPage(1);
  const texts = await readTexts(page);
  const words = texts.map(({ text }) => text);
  // Large enough to be read, and apart: where two swags meet, one stops left of the mark and the next starts right of it.
  const [stop] = texts.filter(({ text }) => text === 'stop').sort((a, b) => a.from.x - b.from.x);
  const next = texts.filter(({ text }) => text === 'start').find(({ from }) => from.x > stop!.from.x);
  expect(stop!.size).toBeGreaterThanOrEqual(6 - 1e-6);
  expect(next!.from.x).toBeGreaterThan(stop!.to.x + 1);
  expect(words).toContain('The square is 4 in each way, the grid 1 in.');
  expect(words.join(' ')).not.toContain('Print');
  await run(folder, ['draw', 'plan.yaml', '--as', 'projector', '-o', 'p.png', '--width', '200']);
  const png = await loadImage(join(folder, 'p.png'));
  const canvas = createCanvas(png.width, png.height);
  const context = canvas.getContext('2d');
  context.drawImage(png, 0, 0);
  for (const [x, y] of [
    [0, 0],
    [png.width - 1, png.height - 1],
  ] as const)
    expect([...context.getImageData(x, y, 1, 1).data]).toEqual([5, 8, 12, 255]);
  await run(folder, ['draw', 'plan.yaml', '--as', 'projector', '-o', 'p.svg']);
  expect(readFileSync(join(folder, 'p.svg'), 'utf8')).toContain('style="background: #05080c"');
});

it('a roll takes one long page in place of sheets', async () => {
  const folder = folderWithPlan();
  const ran = await run(folder, ['mockup', 'plan.yaml', '--roll', '36', '--json']);
  expect(ran.lines.at(-1)).toBe(
    'plan-mockup.pdf: the whole strip, 1 page of a roll 36 in wide; 2 pages with the cover',
  );
  expect(JSON.parse(ran.out)).toMatchObject({ paper: 'roll', sheets: 1 });
  const doc = await openPages(new Uint8Array(readFileSync(join(folder, 'plan-mockup.pdf'))));
  const [cover, sheet] = await Promise.all([doc.getPage(1), doc.getPage(2)]);
  expect(cover!.getViewport({ scale: 1 })).toMatchObject({ width: 612, height: 792 });
  expect(sheet!.getViewport({ scale: 1 }).width).toBeCloseTo(36 * 72, 2);
  const said = (await readTexts(cover!)).map(({ text }) => text).join(' ');
  expect(said).toContain('This page is for a sheet of Letter paper; all after it are for the roll.');
});

it.each([
  [['draw', '-o', 'p.dxf', '--as', 'projector'], /^--as: lines for a cutting machine cannot be shone/],
  [['draw', '-o', 'p.pdf', '--as', 'projector', '--measured', '2,2'], /^--measured: a projector is set by/],
  [['mockup', '--as', 'projector'], /^--as: a projector shows one picture, and no sheets; swagwright draw/],
  [['mockup', '--roll', '36', '--paper', 'a4'], /^--roll: it cannot go with --paper$/],
  [['mockup', '--roll', '36', '--orientation', 'portrait'], /^--roll: it cannot go with --orientation$/],
  [['mockup', '--roll', '36', '--as', 'clean'], /^--roll: what is stitched through holds nothing that tells/],
  [['mockup', '--roll', '3'], /^--roll: no roll of paper is so wide; found "3"; expected 8 in to 200 in$/],
])('%s is refused, and nothing is written', async ([command, ...rest], said) => {
  const folder = folderWithPlan();
  const ran = await run(folder, [command!, 'plan.yaml', ...rest]);
  expect(ran.code).toBe(2);
  expect(ran.lines).toEqual([expect.stringMatching(said)]);
  expect(readdirSync(folder)).toEqual(['plan.yaml']);
});

it.each([
  [
    ['--as', 'stencil', '--slot', '1/4'],
    '--slot: the slots are wider than the space between the lines allows; found "1/4"; expected at most 13/64 in, which leaves 1 mm between slots',
  ],
  [
    ['--as', 'stencil', '--every', '1/2'],
    '--every: bridges so near one another leave no slots between them; found "1/2"; expected at least 9/16 in, three times as much as a bridge and a slot are wide',
  ],
  [
    ['--as', 'pounce', '--every', '1mm'],
    '--every: the paper would tear between the holes; found "1mm"; expected at least 2 mm',
  ],
])('%j is refused with one line', async (argv, line) => {
  const folder = folderWithPlan();
  const ran = await run(folder, ['draw', 'plan.yaml', ...argv]);
  expect(ran.lines).toEqual([line]);
  expect(ran).toMatchObject({ code: 2, out: '', left: ['plan.yaml'] });
});

it('how many sheets it takes is told without writing any', async () => {
  const folder = folderWithPlan();
  const counted = await run(folder, ['mockup', 'plan.yaml', '--count', '--paper', 'a4']);
  expect([counted.code, readdirSync(folder)]).toEqual([0, ['plan.yaml']]);
  const [line] = counted.lines;
  expect(line).toMatch(/^the whole strip, \d sheets of A4, (portrait|landscape), in 1 row and \d columns$/);
  // As many as are then written.
  const made = await run(folder, ['mockup', 'plan.yaml', '--paper', 'a4']);
  expect(made.lines.at(-1)).toContain(`${line}; `);
  expect((await run(folder, ['mockup', 'plan.yaml', '--count', '-o', 'x.pdf'])).lines).toEqual([
    '--count: it writes nothing, and cannot go with --output',
  ]);
});
