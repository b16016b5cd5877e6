/**
 * What is made is made by the same jobs; what terminal and page each do themselves is to read a plan and its templates,
 * to choose a fit, and to say what is wanted of the job. There they could still differ.
 */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Answers } from '../../src/page/engine/messages.ts';
import { QUICK } from '../../src/page/engine/quick.ts';
import { answer } from '../../src/page/engine/serve.ts';
import { THOROUGH } from '../../src/page/engine/thorough.ts';
import { withValue, withValues } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';
import { emptyFolder, run } from '../cli/run.ts';
import { FONTS, rawPages } from '../output/pdf/read-back.ts';
import { long } from '../support/runs.ts';
import { ask, inputOf } from './ask.ts';

const STRIP = `title: Practice\ntemplate: baluster\nlayout: { strip: { length: 36, width: 5, margin: 1/4 } }\nswag: { repeats: 3 }\n`;
const FILLED = `${STRIP}channels: { outward: [1/4], inward: [1/4] }\nfills: { swag: echo, background: lines, channels: [pearls] }\n`;
const SAMPLES = join(import.meta.dirname, '../../samples');
const sample = (name: string): string => readFileSync(join(SAMPLES, name), 'utf8');
const RING = sample('wreath-frame.yaml');

const command = async (plan: string, ...argv: readonly string[]) => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), plan);
  const ran = await run(folder, [argv[0]!, 'plan.yaml', ...argv.slice(1)]);
  expect(ran.code, ran.err).toBe(0);
  return { ran, file: (name: string) => new Uint8Array(readFileSync(join(folder, name))) };
};

const expectSamePages = async (ours: Uint8Array, theirs: Uint8Array): Promise<void> => {
  const [a, b] = [await rawPages(ours), await rawPages(theirs)];
  expect(a.length).toBe(b.length);
  expect(a.length).toBeGreaterThan(0);
  a.forEach((page, i) => {
    expect(page.mediaBox).toEqual(b[i]!.mediaBox);
    expect(page.content === b[i]!.content, `page ${i + 1}`).toBe(true);
    expect(page.forms).toEqual(b[i]!.forms);
  });
};

const choices = { paper: 'letter', measured: undefined, show: undefined } as const;

describe('what is noted', () => {
  test('how channels go round points, in a plan that has none', async () => {
    const plan = withValues(FIRST_PLAN, [[['channels'], { points: 'pivot' }]]);
    const { ran } = await command(plan, 'fit');
    const why = 'this changes nothing, because the plan has no channels';
    expect(ran.lines.some((line) => line.endsWith(`channels.points: ${why}`))).toBe(true);
    // Its opposite sides differ, and the picture says where it stands open for that.
    const notesOf = async (text: string) =>
      (await ask({ kind: 'look', input: inputOf(text) })).chosen?.messages.filter(
        (message) => !message.includes('stands open'),
      );
    expect(await notesOf(plan)).toEqual([`The choice of how channels go round points: ${why}.`]);
    expect(await notesOf(FIRST_PLAN)).toEqual([]);
  });
});

describe('what is asked of swags', () => {
  const asking = (swag: string): string => `${FIRST_PLAN}swag: { ${swag} }\n`;

  test.each([
    'span: about 10, use: at least 3/4',
    'depth: 3 to 4, repeats: odd',
    'gap: about 1/4, span: 9 or more',
  ])('is answered in the same words: %s', async (swag) => {
    const { ran } = await command(asking(swag), 'fit', '--most', '1');
    const looked = await ask({ kind: 'look', input: inputOf(asking(swag)) });
    const told = looked.chosen!.lines.filter((line) => line.includes('(asked: '));
    expect(told).toHaveLength(2);
    expect(ran.out.replace(/\s+/g, ' ')).toContain(told.join('; '));
  });

  test.each(['depth: at least 5, span: about 9', 'span: 40, repeats: 7'])(
    'and refused in the same words: %s',
    async (swag) => {
      const folder = emptyFolder();
      writeFileSync(join(folder, 'plan.yaml'), asking(swag));
      const ran = await run(folder, ['fit', 'plan.yaml', '--most', '1']);
      expect(ran.code).toBe(1);
      const { problems } = await ask({ kind: 'look', input: inputOf(asking(swag)) });
      const words = /: ([^:]* cannot both be had.*)$/.exec(ran.lines.at(-1)!)![1]!;
      expect(problems[0]!.text.toLowerCase()).toContain(words.split('; ')[0]!.toLowerCase());
      expect(problems[0]!.text.toLowerCase()).toContain(words.split('; ')[1]!.toLowerCase());
    },
  );
});

describe('what is printed', () => {
  test('sheets', async () => {
    const { file } = await command(FIRST_PLAN, 'mockup', '-o', 'out.pdf');
    const input = inputOf(FIRST_PLAN);
    const ours = await ask({ kind: 'print', input, what: 'sheets', choices, fonts: FONTS });
    await expectSamePages(ours.bytes, file('out.pdf'));
  });

  test('card', async () => {
    const { file } = await command(RING, 'card', '-o', 'out.pdf');
    const ours = await ask({ kind: 'print', input: inputOf(RING), what: 'card', choices, fonts: FONTS });
    await expectSamePages(ours.bytes, file('out.pdf'));
  });

  long(
    'what fits in pictures',
    async () => {
      const { file } = await command(RING, 'fit', '--most', '12', '--sheet', 'out.pdf');
      const ours = await ask({ kind: 'print', input: inputOf(RING), what: 'contact', choices, fonts: FONTS });
      await expectSamePages(ours.bytes, file('out.pdf'));
    },
    120_000,
  );

  long(
    'audition and empty frames',
    async () => {
      const input = inputOf(STRIP);
      const { file } = await command(STRIP, 'audition', '-o', 'out.pdf');
      const ours = await ask({ kind: 'print', input, what: 'audition', choices, fonts: FONTS });
      await expectSamePages(ours.bytes, file('out.pdf'));
      const { file: empty } = await command(STRIP, 'audition', '--empty', '3', '-o', 'out.pdf');
      const frames = await ask({ kind: 'print', input, what: 'frames', choices, fonts: FONTS });
      await expectSamePages(frames.bytes, empty('out.pdf'));
    },
    120_000,
  );

  test('on other paper, another part, with a measured correction', async () => {
    const { file } = await command(
      STRIP,
      'mockup',
      '--paper',
      'a4',
      '--show',
      'repeat',
      '--measured',
      '1.98,2.01',
      '-o',
      'out.pdf',
    );
    const ours = await ask({
      kind: 'print',
      input: inputOf(STRIP),
      what: 'sheets',
      // The square is 2 in.
      choices: { paper: 'a4', measured: { short: 1.98 / 2, long: 2.01 / 2 }, show: 'repeat' },
      fonts: FONTS,
    });
    await expectSamePages(ours.bytes, file('out.pdf'));
  });

  const TABLE = 'name,length,width\nAda,36,5\nBerit,1/16,5\nCarmen,,5\nDunja,42,6\n';

  test('a class, and what is told of who is not in it', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'plan.yaml'), STRIP);
    writeFileSync(join(folder, 'class.csv'), TABLE);
    const { code, err } = await run(folder, ['class', 'plan.yaml', 'class.csv', '-o', 'out.pdf']);
    expect(code).toBe(1);
    const input = inputOf(STRIP);
    const ours = await ask({ kind: 'class', input, table: TABLE, choices, fonts: FONTS });
    await expectSamePages(ours.bytes, new Uint8Array(readFileSync(join(folder, 'out.pdf'))));
    expect(ours.name).toBe('practice-class.pdf');
    expect(err).toContain(`out.pdf: ${ours.words}\n`);
    const { words, troubles } = await ask({ kind: 'class-count', input, table: TABLE, choices });
    // 2 students, 27 pages, 18 sheets of them to tape
    expect(words).toBe(ours.words.replace(/ \d+ pages,| of them/g, ''));
    expect(troubles.map(({ where }) => where)).toEqual(['Line 3', 'Line 4']);
    for (const { text, where } of troubles)
      expect(err).toContain(`class.csv:${where!.slice('Line '.length)}: ${text}\n`);
  });

  test('a class of which a fit was taken sews that fit, with as many swags as each piece takes', async () => {
    const free = STRIP.replace('swag: { repeats: 3 }\n', '').replace('baluster', '[ baluster, finial ]');
    const cards = await ask({ kind: 'fits', input: inputOf(free), from: 0, count: 20 });
    const isFinial = cards[0]!.caption.join(' ').includes('Finial');
    const other = cards.find(({ caption }) => caption.join(' ').includes(isFinial ? 'Baluster' : 'Finial'))!;
    const table = 'name,length\nAda,36\nBerit,72\n';
    const rowsOf = async (input: ReturnType<typeof inputOf>) =>
      (await ask({ kind: 'class-count', input, table, choices })).table.rows;
    const taken = await rowsOf(inputOf(free, other.key));
    const [ada, berit] = taken.map((row) => Number(/^\d+/.exec(row[2]!)?.[0]));
    expect(berit!).toBeGreaterThan(ada!);
    const decided = await ask({ kind: 'decided', input: inputOf(free, other.key) });
    if (decided === undefined) throw new Error('nothing is decided');
    // Hers of 36 in is the very one that was taken.
    const alone = await ask({
      kind: 'class-count',
      input: inputOf(decided),
      table: 'name,length\nAda,36\n',
      choices,
    });
    expect(alone.table.rows).toEqual(taken.slice(0, 1));
    expect(await rowsOf(inputOf(free))).not.toEqual(taken);
  });

  test.each([
    [
      'a border',
      FIRST_PLAN,
      'A class sews strips: each piece is told by its length and width. It is border, and it should be a strip.',
    ],
    [
      'a plan with parts',
      `template: baluster\nparts: { inner: { layout: { strip: { length: 36, width: 6 } } } }\n`,
      'A class sews one design, and this plan has parts; make a plan of the strip alone',
    ],
  ])('%s is no class’s', async (_, plan, words) => {
    await expect(ask({ kind: 'class-count', input: inputOf(plan), table: TABLE, choices })).rejects.toThrow(
      words,
    );
  });

  test('the comparison sees a difference', async () => {
    const { file } = await command(
      withValue(STRIP, ['layout', 'strip', 'width'], '5 1/64'),
      'mockup',
      '-o',
      'out.pdf',
    );
    const ours = await ask({ kind: 'print', input: inputOf(STRIP), what: 'sheets', choices, fonts: FONTS });
    await expect(expectSamePages(ours.bytes, file('out.pdf'))).rejects.toThrow();
  });
});

describe('what is found', () => {
  test('the same fits in the same order, and a taken one is written as the command writes it', async () => {
    const { ran } = await command(FIRST_PLAN, 'fit', '--json', '--most', '20');
    const found = JSON.parse(ran.out) as {
      found: number;
      kinds: number;
      results: { words: string }[];
    };
    const looked = await ask({ kind: 'look', input: inputOf(FIRST_PLAN) });
    expect(looked.found).toBe(found.found);
    const cards = await ask({ kind: 'fits', input: inputOf(FIRST_PLAN), from: 0, count: 20 });
    expect(cards.map((c) => c.caption[0])).toEqual(found.results.map((r) => r.words));
    expect(cards[0]!.of).toBe(found.kinds);
    const { file } = await command(FIRST_PLAN, 'fit', '--take', '3', '-o', 'taken.yaml');
    const decided = await ask({ kind: 'decided', input: inputOf(FIRST_PLAN, cards[2]!.key) });
    expect(decided).toBe(Buffer.from(file('taken.yaml')).toString());
  });

  test('as many fits of a round frame whose count is left open', async () => {
    const open = withValue(RING, ['layout', 'frame', 'count'], undefined);
    const { ran } = await command(open, 'fit', '--json', '--most', '1');
    const looked = await ask({ kind: 'look', input: inputOf(open) });
    expect(looked.found).toBe((JSON.parse(ran.out) as { found: number }).found);
  });

  test('where nothing fits it says what the command says', async () => {
    const plan = withValue(FIRST_PLAN, ['swag', 'repeats'], 1);
    const folder = emptyFolder();
    writeFileSync(join(folder, 'plan.yaml'), plan);
    const ran = await run(folder, ['mockup', 'plan.yaml']);
    const looked = await ask({ kind: 'look', input: inputOf(plan) });
    expect(ran.code).toBe(1);
    expect(looked.problems.length).toBe(1);
    expect(ran.err.toLowerCase()).toContain(looked.problems[0]!.text.toLowerCase());
  });

  for (const [name, plan, able] of [
    ['without fills', FIRST_PLAN, QUICK],
    ['with fills', FILLED, THOROUGH],
  ] as const)
    test(`the card on the screen is the card, ${name}`, async () => {
      const { ran } = await command(plan, 'card');
      const answered = await answer(able, { id: 1, question: { kind: 'words', input: inputOf(plan) } });
      if (!answered.ok) throw new Error('no answer');
      const sections = answered.answer as Answers['words'];
      const text = ran.out.replace(/\s+/g, ' ');
      expect(sections.length).toBeGreaterThan(5);
      for (const section of sections) {
        expect(text).toContain(section.heading);
        for (const block of section.blocks)
          if (block.kind !== 'table') expect(text).toContain(block.text.replace(/\s+/g, ' '));
      }
    });
});

describe('a template from a drawing', () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="250mm" height="80mm" viewBox="0 0 250 80"><path d="M5 75 L5 60 C60 60 70 20 125 15 S200 55 245 60 L245 75 Z"/></svg>';

  test.each([
    ['in', 'in'],
    ['mm', 'mm'],
    ['cm', 'mm'],
  ] as const)('is the file that the command writes, where her figures are in %s', async (units, ofFile) => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'corbel.svg'), svg);
    const ran = await run(folder, ['template', 'import', 'corbel.svg', '--units', ofFile]);
    expect(ran.code, ran.err).toBe(0);
    const made = await ask({ kind: 'drawing', fileName: 'corbel.svg', svg, units });
    expect(made.name).toBe('corbel.yaml');
    expect(made.text).toBe(readFileSync(join(folder, 'corbel.yaml'), 'utf8'));
  });
});
