/** `class`: each student gets on paper what her own plan would give, and the teacher is told where it is. Read from the PDF. */

import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { PDFDocumentProxy } from 'pdfjs-dist';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openPages, readTexts, walkPaths } from '../output/pdf/read-back.ts';
import { long } from '../support/runs.ts';
import { emptyFolder, run } from './run.ts';

const PLAN = (title: string, length: string, width: string): string =>
  `title: "${title}"\nunits: in\ntemplate: baluster\nlayout:\n  strip: { length: ${length}, width: ${width}, margin: 1/4 }\nswag: { repeats: 3 }\nchannels: { outward: [1/4] }\n`;

const STUDENTS = [
  ['Ada', '36', '6'],
  ['Berit', '30 1/2', '6'],
  ['Carmen', '42', '5'],
] as const;

const open = async (folder: string, name: string): Promise<PDFDocumentProxy> =>
  openPages(new Uint8Array(await readFile(join(folder, name))));

const linesOf = async (doc: PDFDocumentProxy, number: number): Promise<readonly string[]> =>
  (await readTexts(await doc.getPage(number))).map(({ text }) => text.trim());

describe('a class', () => {
  let folder: string;
  let doc: PDFDocumentProxy;
  let told: string;
  let code: number;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'swagwright-test-'));
    await writeFile(join(folder, 'plan.yaml'), PLAN('Saturday', '36', '6'));
    // Berit's piece is as wide as the plan's; nothing can be made for Dunja.
    const rows = STUDENTS.map((s) => (s[0] === 'Berit' ? `${s[0]},${s[1]},` : s.join(',')));
    await writeFile(join(folder, 'class.csv'), ['name,length,width', ...rows, 'Dunja,1/100,6'].join('\n'));
    ({ err: told, code } = await run(folder, ['class', 'plan.yaml', 'class.csv', '-o', 'class.pdf']));
    doc = await open(folder, 'class.pdf');
  });
  afterAll(() => rm(folder, { recursive: true }));

  test('is made for all but those that nothing can be made for, who are told of', async () => {
    expect(code).toBe(1);
    expect(told).toMatch(/^class\.csv:5: length: Dunja: /m);
    expect(told).toMatch(
      new RegExp(`class.pdf: 3 students, ${doc.numPages} pages, \\d+ sheets of them to tape`),
    );
    expect(await linesOf(doc, 1)).toContain('Not in it: Dunja.');
  });

  test('has a page for the teacher that says who is on which pages', async () => {
    const texts = await readTexts(await doc.getPage(1));
    let next = 2;
    for (const [name] of STUDENTS) {
      const { from: at } = texts.find(({ text }) => text.trim() === name)!;
      const row = texts.filter((t) => Math.abs(t.from.y - at.y) < 0.1).map(({ text }) => text.trim());
      const [, pages] = row.join(' ').match(/ in × \d in 3 of .* in \d+ (\d+–\d+)$/)!;
      const [from, to] = pages!.split('–').map(Number) as [number, number];
      expect(from).toBe(next);
      for (let n = from; n <= to; n++)
        expect((await linesOf(doc, n)).join(' '), `${name}, ${n}`).toContain(name);
      next = to + 1;
    }
    expect(next).toBe(doc.numPages + 1);
    const labels = (await doc.getPageLabels())!;
    expect(labels[0]).toBe('Teacher');
    expect(new Set(labels).size).toBe(labels.length);
  });

  test.each(STUDENTS)(
    'gives %s the mock-up and the card that a plan of her own gives',
    async (name, length, width) => {
      await writeFile(join(folder, `${name}.yaml`), PLAN(`Saturday: ${name}`, length, width));
      await run(folder, ['mockup', `${name}.yaml`]);
      await run(folder, ['card', `${name}.yaml`, '-o', `${name}-card.pdf`]);
      const labels = (await doc.getPageLabels())!;
      let compared = 0;
      for (const file of [`${name}-mockup.pdf`, `${name}-card.pdf`]) {
        const own = await open(folder, file);
        const ownLabels = (await own.getPageLabels())!;
        for (const [i, label] of ownLabels.entries()) {
          const page = await doc.getPage(labels.indexOf(`${name}: ${label}`) + 1);
          const alone = await own.getPage(i + 1);
          expect(page.view, label).toEqual(alone.view);
          expect(
            (await readTexts(page)).map((t) => t.text),
            label,
          ).toEqual((await readTexts(alone)).map((t) => t.text));
          expect(await walkPaths(page), label).toEqual(await walkPaths(alone));
          compared++;
        }
      }
      expect(compared).toBeGreaterThan(4);
      // The outline with its spacer, and an empty frame, on sheets with names of their own.
      for (const number of [2, 3]) expect(labels).toContain(`${name}: ${number}-A1`);
    },
  );
});

test('a plan that is no strip, or has parts, is no class’s', async () => {
  const folder = emptyFolder();
  await writeFile(join(folder, 'class.csv'), 'name,length\nAda,36\n');
  await writeFile(
    join(folder, 'border.yaml'),
    'template: finial\nlayout: { border: { width: 6, inner: 60 } }\n',
  );
  const border = await run(folder, ['class', 'border.yaml', 'class.csv']);
  expect(border.code).toBe(1);
  expect(border.err).toBe(
    'border.yaml:2:9: layout: a class sews strips: each piece is told by its length and width; found border; expected a strip\n',
  );
  await writeFile(
    join(folder, 'parts.yaml'),
    'template: finial\nparts: { inner: { layout: { strip: { length: 36, width: 6 } } } }\n',
  );
  const parts = await run(folder, ['class', 'parts.yaml', 'class.csv']);
  expect([parts.code, parts.err]).toEqual([
    1,
    expect.stringMatching(/^parts\.yaml:1: a class sews one design/),
  ]);
});

test('what is in everybody’s way is told once, where the plan says it', async () => {
  const folder = emptyFolder();
  const arcs = Array.from({ length: 100 }, (_, i) => `{ arc: { to: [${i + 1}, 0], rise: 1/8 } }`);
  await writeFile(join(folder, 'big.yaml'), `units: in\nedge: [{ start: [0, 0] }, ${arcs.join(', ')}]\n`);
  await writeFile(
    join(folder, 'plan.yaml'),
    'template: ./big.yaml\nlayout: { strip: { length: 36, width: 6 } }\n',
  );
  await writeFile(join(folder, 'class.csv'), 'name,length\nAda,36\nBerit,40\n');
  const { code, err } = await run(folder, ['class', 'plan.yaml', 'class.csv']);
  expect([code, err]).toEqual([
    1,
    expect.stringMatching(
      /^plan\.yaml:1:11: template: too many sections to try [^\n]* found 100 sections[^\n]*\n$/,
    ),
  ]);
});

test('another table of students is not written over', async () => {
  const folder = emptyFolder();
  await writeFile(join(folder, 'plan.yaml'), PLAN('Saturday', '36', '6'));
  await writeFile(join(folder, 'class.csv'), 'name,length\nAda,36\n');
  await writeFile(join(folder, 'next.csv'), 'name,length\nBerit,36\n');
  const { code, err } = await run(folder, ['class', 'plan.yaml', 'class.csv', '-o', 'next.csv']);
  expect([code, err]).toEqual([2, expect.stringMatching(/what is written is PDF; found the ending \.csv/)]);
  expect(await readFile(join(folder, 'next.csv'), 'utf8')).toContain('Berit');
});

test('however many cannot be made, the teacher is told of some and the rest are made', async () => {
  const folder = emptyFolder();
  await writeFile(join(folder, 'plan.yaml'), PLAN('Saturday', '36', '6'));
  const rows = Array.from({ length: 60 }, (_, i) =>
    i < 30 ? `Wilhelmina Good ${i},30,6` : `Berta Bad ${i},thirty-six inches long,6`,
  );
  await writeFile(join(folder, 'class.csv'), ['name,length,width', ...rows].join('\n'));
  const { code, err } = await run(folder, ['class', 'plan.yaml', 'class.csv', '-o', 'class.pdf']);
  expect(code).toBe(1);
  expect(err).toMatch(/class\.pdf: 30 students/);
  expect(err.match(/^class\.csv:\d+: length: Berta Bad/gm)).toHaveLength(30);
  const doc = await open(folder, 'class.pdf');
  const [first, second] = [await linesOf(doc, 1), await linesOf(doc, 2)];
  expect(first.join(' ')).toMatch(/Not in it: Berta Bad 30, .* and 22 more\./);
  expect([...first, ...second].filter((line) => /^Wilhelmina Good/.test(line))).toHaveLength(30);
});

long(
  'a class whose sheets nobody could print is refused before the rest of it is laid out',
  async () => {
    const folder = emptyFolder();
    await writeFile(
      join(folder, 'plan.yaml'),
      PLAN('Saturday', '36', '6').replace('swag: { repeats: 3 }\n', ''),
    );
    const rows = Array.from({ length: 60 }, (_, i) => `Student ${i},400,60`);
    await writeFile(join(folder, 'class.csv'), ['name,length,width', ...rows].join('\n'));
    const { code, err, left } = await run(folder, ['class', 'plan.yaml', 'class.csv', '-o', 'class.pdf']);
    expect([code, left]).toEqual([1, ['class.csv', 'plan.yaml']]);
    const [, sheets, students] = err.match(
      /^plan\.yaml:1:1: the sheets of the class are too many for one file; found (\d+) of the first (\d+) students; expected at most 1000 of all; take shorter pieces, or fewer students at a time\n$/,
    )!;
    expect(Number(sheets)).toBeGreaterThan(1000);
    expect(Number(students)).toBeLessThan(6);
  },
  400_000,
);
