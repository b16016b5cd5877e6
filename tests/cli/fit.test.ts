/** `fit` from outside: its table, its data, its contact sheet, and plans that are taken from it. */

import { link, mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { printJson } from '../../src/cli/messages.ts';
import { readLength } from '../../src/length/index.ts';
import { emptyFolder, run, testIo } from './run.ts';

const ARC = `title: Spindle
units: in
thickness: 1/4
edge:
  - start: [0, 0]
  - arc: { to: [6, 0], rise: 1 1/2 }
`;

const PLAN = `# measured on the wall
units: in
template: [./spindle.yaml, finial]
layout:
  border: { width: 5, inner: { top: 60 1/8, right: 48, bottom: 60, left: 47 3/4 }, margin: 1/4 }
`;

const folderWith = async (plan: string): Promise<string> => {
  const folder = emptyFolder();
  await writeFile(join(folder, 'raffle.yaml'), plan);
  await writeFile(join(folder, 'spindle.yaml'), ARC);
  return folder;
};

it('gives what arithmetic leaves of nothing as nothing in data, which a plan may then hold', async () => {
  const { io, kept } = testIo(emptyFolder());
  const gap = [8.526512829121202e-14, -4.3e-14, 137.23456789012346];
  await printJson(io, { gap });
  expect(JSON.parse(kept.out)).toEqual({ gap: [0, 0, 137.23456789012346] });
  for (const mm of JSON.parse(kept.out).gap) expect(readLength(mm, 'mm')).toEqual({ ok: true, mm });
});

const INPUTS = ['raffle.yaml', 'spindle.yaml'];

interface Side {
  readonly side: string;
  readonly length: number;
  readonly repeats: number;
  readonly span: number;
  readonly depth: number;
  readonly gap: number;
  readonly tilt: number;
}

interface Result {
  readonly number: number;
  readonly template: string;
  readonly corners: string;
  readonly setting: string;
  readonly repeats: number[];
  readonly like: number;
  readonly corner: { readonly offset: number; readonly depth: number } | null;
  readonly sides: readonly Side[];
}

const fitData = async (folder: string, file = 'raffle.yaml', ...more: string[]) => {
  const ran = await run(folder, ['fit', file, '--json', ...more]);
  expect(ran.code).toBe(0);
  return JSON.parse(ran.out) as { units: string; found: number; kinds: number; results: Result[] };
};

describe('fit', () => {
  it('prints a table that fits a terminal, best first, and says how it was ranked', async () => {
    const folder = await folderWith(PLAN);
    const ran = await run(folder, ['fit', 'raffle.yaml', '--most', '7']);
    expect(ran).toMatchObject({ code: 0, err: '', left: INPUTS });
    const lines = ran.out.split('\n');
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(100);
    const sentence =
      /^ *\d+ {2}[\d, and]+ swags.*, [\d /to]+ in wide, [\d /to]+ in deep, (touching|.* apart)/;
    // A long one goes on in the next line, farther in.
    const whole = ran.out.replace(/\n {4,}(?=\S)/g, ' ').split('\n');
    expect(whole.filter((l) => sentence.test(l)).map((l) => Number.parseInt(l, 10))).toEqual([
      1, 2, 3, 4, 5, 6, 7,
    ]);
    const made = lines.filter((l) => /^ {3}(Spindle|Finial), .*; .* (heel|crown) first; corners /.test(l));
    expect(made).toHaveLength(7);
    expect(ran.out).toMatch(/and \d+ like\s+it/);
    expect(ran.out).toMatch(/inches, to 1\/16/);
    expect(ran.out).toMatch(/Best first: swags that fill the border count most/);
  });

  it('gives data that satisfies the equations, in mm and degrees', async () => {
    const { units, results } = await fitData(await folderWith(PLAN), 'raffle.yaml', '--most', '40');
    expect(units).toBe('mm and degrees');
    expect(results.map((r) => r.number)).toEqual(results.map((_, i) => i + 1));
    let corners = 0;
    for (const r of results)
      for (const s of r.sides) {
        // L = n(2h + g), and with corners that turn 2a more; the line is the inner side and twice the margin.
        const a = r.corner ? r.corner.offset + (s.gap - r.sides[0]!.gap) / 2 : 0;
        expect(s.repeats * (s.span + s.gap) + 2 * a).toBeCloseTo(s.length, 5);
        expect(s.depth).toBeGreaterThan(0);
        if (r.corner) corners++;
      }
    expect(corners).toBeGreaterThan(0);
    expect(results[0]!.sides.map((s) => s.length / 25.4)).toEqual(
      [60.625, 48.5, 60.5, 48.25].map((n) => expect.closeTo(n, 9)),
    );
  });

  it('writes a contact sheet', async () => {
    const folder = await folderWith(PLAN);
    const ran = await run(folder, [
      'fit',
      'raffle.yaml',
      '--sheet',
      'choices.pdf',
      '--paper',
      'a4',
      '--most',
      '8',
    ]);
    expect(ran).toMatchObject({ code: 0, left: ['choices.pdf', ...INPUTS] });
    expect(ran.lines).toEqual([
      expect.stringMatching(/^choices\.pdf: 8 pictures on \d pages? of A4, .*one scale, 1 : \d+\.$/),
    ]);
    const pdf = await PDFDocument.load(await readFile(join(folder, 'choices.pdf')));
    const [short, long] = [pdf.getPage(0).getWidth(), pdf.getPage(0).getHeight()].sort((a, b) => a - b);
    expect([short, long]).toEqual([expect.closeTo(595.276, 2), expect.closeTo(841.89, 2)]);
  });

  it.each([
    ['--margin', '99'],
    ['--paper', 'a4'],
    ['--orientation', 'landscape'],
  ])('refuses %s where nothing goes on paper', async (option, value) => {
    const folder = await folderWith(PLAN);
    expect(await run(folder, ['fit', 'raffle.yaml', option, value])).toMatchObject({
      code: 2,
      out: '',
      err: `${option}: it is for a contact sheet; name one with --sheet, such as --sheet choices.pdf\n`,
    });
  });

  it('says that no page holds a picture before it prints anything', async () => {
    const folder = await folderWith(PLAN);
    const ran = await run(folder, ['fit', 'raffle.yaml', '--sheet', 'choices.pdf', '--margin', '90 mm']);
    expect(ran).toMatchObject({ out: '', left: INPUTS });
    expect(ran.code).not.toBe(0);
    expect(ran.lines).toEqual([expect.stringMatching(/not even one picture fits the page/)]);
  });

  it('writes the chosen one back as a plan that gives the same again', async () => {
    const folder = await folderWith(PLAN);
    const { results } = await fitData(folder);
    for (const number of [1, 4]) {
      const ran = await run(folder, ['fit', 'raffle.yaml', '--take', String(number), '-o', 'chosen.yaml']);
      expect(ran).toMatchObject({ code: 0, out: '', left: ['chosen.yaml', ...INPUTS] });
      const again = await fitData(folder, 'chosen.yaml');
      // All but what it is one of many of.
      const alone = { gap: 0, like: 0, number };
      expect({ ...again.results[0], ...alone }).toEqual({ ...results[number - 1], ...alone });
    }
    expect(await readFile(join(folder, 'raffle.yaml'), 'utf8')).toBe(PLAN);
    expect(await readFile(join(folder, 'chosen.yaml'), 'utf8')).toMatch(/^# measured on the wall\n/);
  });

  it('shows what looks alike once, and with --all each by itself', async () => {
    const folder = await folderWith(PLAN);
    const once = await fitData(folder, 'raffle.yaml', '--most', '100');
    const each = await fitData(folder, 'raffle.yaml', '--most', '100', '--all');
    expect(each.found).toBe(once.found);
    expect(each.kinds).toBe(each.found);
    expect(once.kinds).toBeLessThan(once.found);
    expect(each.results.every((r) => r.like === 0)).toBe(true);
    const folded = once.results.reduce((sum, r) => sum + r.like, 0);
    expect(folded).toBeGreaterThan(0);
    expect(once.results.length + folded).toBeLessThanOrEqual(once.found);
    // The first of all is the first of its kind.
    expect({ ...each.results[0], like: 0 }).toEqual({ ...once.results[0], like: 0 });
    const table = (await run(folder, ['fit', 'raffle.yaml', '--all'])).out;
    expect(table).not.toMatch(/like\s+it/);
    // Numbers are those that are shown.
    const [, second] = each.results;
    await run(folder, ['fit', 'raffle.yaml', '--all', '--take', '2', '-o', 'second.yaml']);
    const { results } = await fitData(folder, 'second.yaml');
    expect(results[0]!.sides).toEqual(second!.sides);
  });

  it("says the template's path from where the new plan lies", async () => {
    const folder = await folderWith(PLAN.replace('[./spindle.yaml, finial]', './spindle.yaml'));
    await mkdir(join(folder, 'plans'));
    const ran = await run(folder, ['fit', 'raffle.yaml', '--take', '1', '-o', 'plans/chosen.yaml']);
    expect(ran.code).toBe(0);
    expect(parse(await readFile(join(folder, 'plans/chosen.yaml'), 'utf8')).template).toBe('../spindle.yaml');
    expect((await run(folder, ['fit', 'plans/chosen.yaml'])).code).toBe(0);
  });

  it('never writes over the plan, unless asked', async () => {
    const folder = await folderWith(PLAN);
    await link(join(folder, 'raffle.yaml'), join(folder, 'other.yaml'));
    for (const name of ['raffle.yaml', 'other.yaml', 'spindle.yaml']) {
      const ran = await run(folder, ['fit', 'raffle.yaml', '--take', '1', '-o', name]);
      expect(ran.code).toBe(1);
      expect(ran.lines).toEqual([expect.stringMatching(/would write over it/)]);
    }
    expect(await readFile(join(folder, 'raffle.yaml'), 'utf8')).toBe(PLAN);
    const ran = await run(folder, ['fit', 'raffle.yaml', '--take', '1', '--in-place']);
    expect(ran.code).toBe(0);
    expect(parse(await readFile(join(folder, 'raffle.yaml'), 'utf8')).swag.setting).toBeDefined();
  });

  it('says in one line that nothing fits on the marks of the first row, and which comes nearest', async () => {
    const folder = await folderWith(`${PLAN}rows:\n  - at: 2\n    apart: 2\n    template: ./spindle.yaml\n`);
    for (const command of ['fit', 'card']) {
      const ran = await run(folder, [command, 'raffle.yaml']);
      expect(ran).toMatchObject({ code: 1, out: '', left: INPUTS });
      expect(ran.lines).toHaveLength(1);
      expect(ran.lines[0]).toMatch(
        /^raffle\.yaml:7:5: rows\.1: the first row fits, and no second one on its marks; nearest: Spindle, .*; try another at, a smaller apart, /,
      );
    }
  });

  it('tells of a second row in the table and in its data', async () => {
    const folder = await folderWith(`${PLAN.replace('width: 5', 'width: 8')}rows: [{ at: 1 }]\n`);
    const table = await run(folder, ['fit', 'raffle.yaml', '--most', '1']);
    expect(table.out.replace(/\s+/g, ' ')).toMatch(
      /row 2, starting 1 in beyond row 1: (Spindle|Finial), .* deep/,
    );
    const data = await run(folder, ['fit', 'raffle.yaml', '--json', '--most', '1']);
    const [best] = JSON.parse(data.out).results;
    expect(best.rows).toHaveLength(1);
    expect(best.rows[0]).toMatchObject({ row: 2, at: 25.4, setting: expect.any(String) });
    // On the same marks, each as wide as the first row's.
    expect(best.rows[0].sides.map((s: { span: number }) => s.span)).toEqual(
      best.sides.map((s: { span: number }) => expect.closeTo(s.span, 6)),
    );
  });

  it('says what came nearest where nothing fits, and what would help', async () => {
    const narrow = PLAN.replace('width: 5', 'width: 3/4')
      .replace('margin: 1/4', 'margin: 1/8')
      .replace(', finial', '');
    const folder = await folderWith(
      `${narrow}swag: { setting: crown-on-centre, repeats: 4, side: inside }\n`,
    );
    const ran = await run(folder, ['fit', 'raffle.yaml']);
    expect(ran).toMatchObject({ code: 1, out: '', left: INPUTS });
    expect(ran.lines[0]).toMatch(/^raffle\.yaml:5:\d+: layout: nothing fits this layout$/);
    expect(ran.lines.length).toBeGreaterThan(1);
    for (const line of ran.lines.slice(1)) expect(line).toMatch(/^nearest \d: Spindle, .*; .+/);
    const data = await run(folder, ['fit', 'raffle.yaml', '--json']);
    expect(data.code).toBe(1);
    expect(JSON.parse(data.out)).toMatchObject({
      found: 0,
      results: [],
      nearest: [{ template: 'spindle' }, ...JSON.parse(data.out).nearest.slice(1)],
    });
  });

  it.each([
    [['--take', '0'], /^--take: /],
    [['--take', '99999'], /^--take: there are not so many; found 99999; expected a number from 1 to \d+$/],
    [['--most', 'all'], /^--most: /],
    [['-o', 'chosen.yaml'], /^--output: it says where --take writes, and there is no --take; .*--sheet$/],
    [['--in-place'], /^--in-place: there is no --take$/],
    [
      ['--take', '1', '-o', 'a.pdf'],
      /^--output: what is written is YAML; found the ending .pdf; expected .yaml$/,
    ],
    [['--sheet', 'x.yaml'], /^--sheet: what is written is PDF; found the ending .yaml; expected .pdf$/],
    [['--sheet', ''], /^--sheet: the name of the file is empty$/],
    [['--sheet', 'a.svg'], /^--output|^--sheet/],
    [['--take', '1', '-o', 'a.yaml', '--in-place'], /^--in-place: it cannot go with --output$/],
    [['--sheet', 'a.pdf', '--paper', 'a5'], /^--paper: not known/],
  ])('%j is wrong use', async (options, line) => {
    const folder = await folderWith(PLAN);
    const ran = await run(folder, ['fit', 'raffle.yaml', ...options]);
    expect(ran).toMatchObject({ code: 2, left: INPUTS });
    expect(ran.lines).toEqual([expect.stringMatching(line)]);
  });
});
