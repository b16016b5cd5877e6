/** The page's answers of a plan with parts: those of the open part, the picture of the rest, and pages of all. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Input, LookAnswer, OtherPart } from '../../src/page/engine/messages.ts';
import { pathIn, withValue } from '../../src/page/plan/plan-text.ts';
import { withTaken } from '../../src/page/plan/state.ts';
import { emptyFolder, run } from '../cli/run.ts';
import { FONTS, rawPages } from '../output/pdf/read-back.ts';
import { ask } from './ask.ts';

const QUILT = readFileSync(join(import.meta.dirname, '../../samples/lathe-street-quilt.yaml'), 'utf8');
const INCH = 25.4;

const opened = (part: string, plan = QUILT): Input => ({ plan, own: [], taken: undefined, part });
const changed = (part: string, path: readonly string[], value: number | string, plan = QUILT): string =>
  withValue(plan, pathIn(opened(part, plan), path), value);
const look = (input: Input): Promise<LookAnswer> => ask({ kind: 'look', input });
const others = (input: Input): Promise<readonly OtherPart[]> => ask({ kind: 'others', input });

const command = async (plan: string, ...argv: string[]) => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), plan);
  return { folder, ran: await run(folder, [argv[0]!, 'plan.yaml', ...argv.slice(1)]) };
};

describe('the open part', () => {
  test.each(['wreath', 'inner border'])('has the fits that the command finds: %s', async (part) => {
    const { ran } = await command(QUILT, 'fit', '--json', '--most', '1', '--part', part);
    const { found, chosen, facts } = await look(opened(part));
    expect(found).toBe((JSON.parse(ran.out) as { found: number }).found);
    expect(chosen?.round).toBe(part === 'wreath' ? 'motif' : 'quilt');
    expect(facts?.title).toBe('Lathe Street lap quilt');
  });

  test('is decided with the others where the plan is saved, each as it was taken', async () => {
    const cards = await ask({ kind: 'fits', input: opened('inner border'), from: 0, count: 4 });
    const taken = withTaken(opened('inner border'), cards[3]!.key);
    expect((await look(taken)).chosen?.key).toBe(cards[3]!.key);
    expect((await look({ ...taken, part: 'outer border' })).chosen?.number).toBe(1);
    const saved = await ask({ kind: 'decided', input: { ...taken, part: 'wreath' } });
    for (const part of ['wreath', 'corner blocks', 'inner border', 'outer border']) {
      const [before, after] = [await look({ ...taken, part }), await look(opened(part, saved))];
      expect(after.found, part).toBe(1);
      expect(after.chosen?.lines, part).toEqual(before.chosen?.lines);
    }
  });
});

describe('the picture of the quilt', () => {
  test('says where it stands open because opposite sides differ, as the command says it', async () => {
    const plan = readFileSync(join(import.meta.dirname, '../../samples/raffle-border.yaml'), 'utf8');
    const { messages } = (await look({ plan, own: [], taken: undefined })).chosen!;
    const open = messages.filter((message) => message.includes('stands open'));
    // The right side is 1/4 in shorter than the left one, and the bottom 1/8 in than the top.
    expect(open.map((message) => /the (right|bottom) by ([^,]+),/.exec(message)!.slice(1))).toEqual([
      ['right', '1/4 in'],
      ['bottom', '1/8 in'],
    ]);
    const { ran } = await command(plan, 'draw', '-o', 'border.svg');
    for (const message of open) expect(ran.out + ran.err).toContain(message);
    // Where opposite sides are as long there is nothing to say.
    const even = plan.replace(/inner: \{[^}]*\}/, 'inner: { top: 60, right: 72, bottom: 60, left: 72 }');
    expect((await look({ plan: even, own: [], taken: undefined })).chosen!.messages).toEqual([]);
  });

  test('has the other parts where the plan says that they lie, to scale', async () => {
    const round = await others(opened('inner border'));
    expect(round.map(({ name }) => name)).toEqual(['wreath', 'corner blocks', 'outer border']);
    // 45 1/8 in and 45 in along the inner seam, 6 in of border on both sides, and some mm of room for the lines' width.
    const { box } = round[2]!.drawn!;
    expect(Math.abs(box.maxX - box.minX - 57.125 * INCH)).toBeLessThan(5);
    expect(Math.abs(box.maxY - box.minY - 57 * INCH)).toBeLessThan(5);
    // The blocks: 12 in right and left, up and down of the middle; y points down on a screen.
    const blocks = round[1]!.drawn!;
    expect(blocks.places.length).toBe(4);
    const reach = 12 * INCH + (10.5 / 2) * INCH;
    expect(Math.abs(blocks.box.maxX - reach)).toBeLessThan(INCH);
    expect(blocks.box.minY).toBeCloseTo(-blocks.box.maxY, 6);
    const first = blocks.places[0]!;
    const second = blocks.places[1]!;
    expect(second[4]! - first[4]!).toBeCloseTo(24 * INCH, 9);
    expect(second[5]!).toBeCloseTo(first[5]!, 9);
    expect(blocks.places[2]![5]! - second[5]!).toBeCloseTo(24 * INCH, 9);
    expect((await look(opened('corner blocks'))).chosen?.laid?.places).toEqual(blocks.places);
  });

  test('a part that is turned is turned the other way where y points down', async () => {
    const strip = (more: string): string =>
      `{ ${more}, layout: { strip: { length: 40, width: 5 } }, swag: { repeats: 4 } }`;
    const plan = `template: baluster\nparts:\n  a: ${strip('at: [0, 20]')}\n  b: ${strip('at: [0, -30], turn: 90')}\n`;
    const { drawn } = (await others(opened('a', plan)))[0]!;
    // A quarter turn counterclockwise with y up: x goes to up, which is −y on a screen.
    const [a = 0, b = 0, c = 0, d = 0] = drawn!.places[0]!;
    [a, b + 1, c - 1, d].forEach((off) => {
      expect(off).toBeCloseTo(0, 9);
    });
    expect(drawn!.box.maxY - drawn!.box.minY).toBeGreaterThan(39 * INCH);
    expect(drawn!.box.maxX - drawn!.box.minX).toBeLessThan(9 * INCH);
    expect((drawn!.box.minY + drawn!.box.maxY) / 2).toBeCloseTo(30 * INCH, -1);
  });

  test('while only the open part changes, the others are what they were', async () => {
    const before = await others(opened('inner border'));
    const narrower = changed('inner border', ['layout', 'border', 'margin'], '3/8');
    const after = await others(opened('inner border', narrower));
    after.forEach((part, i) => {
      expect(part).toBe(before[i]);
    });
    const outer = changed('outer border', ['layout', 'border', 'margin'], '5/8', narrower);
    const third = await others(opened('inner border', outer));
    expect([third[0], third[1]]).toEqual([before[0], before[1]]);
    expect(third[0]).toBe(before[0]);
    expect(third[2]!.drawn?.inks).not.toEqual(before[2]!.drawn?.inks);
    // Neither what is shared nor what was taken goes by.
    const foot = withValue(outer, ['foot', 'clearance'], '3/8');
    expect((await others(opened('inner border', foot)))[0]!.drawn?.inks).not.toEqual(before[0]!.drawn?.inks);
    const cards = await ask({ kind: 'fits', input: opened('wreath'), from: 0, count: 3 });
    const other = { ...withTaken(opened('wreath'), cards.at(-1)!.key), part: 'inner border' };
    expect(cards.length).toBeGreaterThan(1);
    expect(await others(opened('inner border'))).toEqual(before);
    expect((await others(other))[0]!.drawn?.inks).not.toEqual(before[0]!.drawn?.inks);
  });
});

describe('what is in the way', () => {
  test('in the open part is told at its field, in another under its name', async () => {
    const plan = changed('inner border', ['layout', 'border', 'width'], 'wide');
    const here = await look(opened('inner border', plan));
    expect(here.problems.map(({ key }) => key)).toEqual(['layout.border.width']);
    expect(here.problems[0]!.text).toMatch(/^“wide” cannot be read as the border width/);
    const there = await look(opened('wreath', plan));
    expect(there.problems.map(({ key }) => key)).toEqual([undefined]);
    expect(there.problems[0]!.text).toMatch(/^Inner border: “wide” cannot be read as the border width/);
  });

  test('what nothing fits in another part is told, and not printed with all', async () => {
    const strip = (repeats: number, at: number): string =>
      `{ at: [0, ${at}], layout: { strip: { length: 40, width: 5 } }, swag: { repeats: ${repeats} } }`;
    const plan = `template: baluster\nparts:\n  few: ${strip(4, 0)}\n  many: ${strip(300, 10)}\n`;
    const input = opened('few', plan);
    expect((await look(input)).problems).toEqual([]);
    const [many] = await others(input);
    expect(many!.drawn).toBeUndefined();
    expect(many!.problems[0]!.text).toMatch(/^Many: /);
    const choices = { paper: 'letter', measured: undefined, show: undefined } as const;
    await expect(ask({ kind: 'print', input, what: 'quilt-card', choices, fonts: FONTS })).rejects.toThrow(
      /^Many: /,
    );
    // Opened, it is told at its own fields; and the plan can be saved with what fits decided.
    expect((await look(opened('many', plan))).problems[0]!.text).not.toMatch(/Many/);
    const saved = await ask({ kind: 'decided', input });
    expect(saved).toContain('repeats: 300');
    expect((await look(opened('few', saved))).found).toBe(1);
  });

  test('seams that differ, and parts that lie on one another, are told as the command tells them', async () => {
    const plan = changed('outer border', ['layout', 'border', 'inner', 'top'], '45 1/4');
    const { ran } = await command(plan, 'fit', '--part', 'inner border');
    for (const part of ['wreath', 'outer border']) {
      const [note] = (await look(opened(part, plan))).chosen!.messages;
      expect(note).toMatch(
        /^The outer seam .* top 45 1\/8 in and 45 1\/4 in; up to 1\/8 in to the foot can be eased in .*$/,
      );
      expect(ran.err.replace(/\s+/g, ' ').toLowerCase()).toContain(note!.toLowerCase());
    }
    const lying = QUILT.replace('[[-12, 12]', '[[-2, 2]');
    const told = (await command(lying, 'fit')).ran.err.toLowerCase();
    const { problems } = await look(opened('inner border', lying));
    expect(problems.length).toBeGreaterThan(0);
    for (const { text } of problems) expect(told).toContain(text.split('.')[0]!.toLowerCase());
  });

  test('a template of any part that the page does not have keeps the plan out, and names the part', async () => {
    const plan = changed('outer border', ['template'], './mine.yaml');
    await expect(ask({ kind: 'check', input: opened('wreath', plan) })).rejects.toThrow(/^Outer border: /);
    expect(await ask({ kind: 'check', input: opened('wreath') })).toBe('Lathe Street lap quilt');
  });
});

describe('pages', () => {
  const strip = (at: number): string =>
    `{ at: [0, ${at}], layout: { strip: { length: 24, width: 5 } }, swag: { repeats: 2 } }`;
  const STRIPS = `title: Two strips\ntemplate: baluster\nparts:\n  upper: ${strip(10)}\n  lower: ${strip(-10)}\n`;
  const choices = { paper: 'letter', measured: undefined, show: undefined } as const;

  test.each([
    ['quilt-sheets', 'two-strips-mockup.pdf', ['mockup']],
    ['quilt-card', 'two-strips-card.pdf', ['card']],
    ['sheets', 'two-strips-lower-mockup.pdf', ['mockup', '--part', 'lower']],
    ['card', 'two-strips-lower-card.pdf', ['card', '--part', 'lower']],
  ] as const)('are those of the command, under its name: %s', async (what, name, argv) => {
    const input = opened('lower', STRIPS);
    const printed = await ask({ kind: 'print', input, what, choices, fonts: FONTS });
    expect(printed.name).toBe(name);
    if (what === 'quilt-sheets') {
      const told = await ask({ kind: 'count-quilt-sheets', input, choices });
      expect(told.map((line) => line.replace(/, \d.*/, ''))).toEqual([
        'upper: the whole strip',
        'lower: the whole strip',
      ]);
      const sum = told.reduce((n, line) => n + Number(/(\d+) sheets/.exec(line)![1]), 0);
      expect(Number(/(\d+) sheets/.exec(printed.words)![1]), printed.words).toBe(sum);
    }
    const { folder, ran } = await command(STRIPS, ...argv, '-o', 'out.pdf');
    expect(ran.code, ran.err).toBe(0);
    expect(`${ran.out}${ran.err}`).toContain(`out.pdf: ${printed.words}`);
    const theirs = await rawPages(new Uint8Array(readFileSync(join(folder, 'out.pdf'))));
    const ours = await rawPages(printed.bytes);
    expect(ours.map(({ content }) => content)).toEqual(theirs.map(({ content }) => content));
  });
});
