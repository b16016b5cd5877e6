/** How a design gets onto cloth, from the command line: what is made, what it is called, and what is refused. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
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
