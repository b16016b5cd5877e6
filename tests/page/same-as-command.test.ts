/** The page computes nothing by itself: for one plan it finds, says and prints what the commands do. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Answers, Input, Kind, Question } from '../../src/page/engine/messages.ts';
import { QUICK } from '../../src/page/engine/quick.ts';
import { answer } from '../../src/page/engine/serve.ts';
import { THOROUGH } from '../../src/page/engine/thorough.ts';
import { withValue, withValues } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';
import { emptyFolder, run } from '../cli/run.ts';
import { FONTS, rawPages } from '../output/pdf/read-back.ts';
import { long } from '../support/runs.ts';

const ask = async <K extends Kind>(question: Extract<Question, { kind: K }>): Promise<Answers[K]> => {
  const answered = await answer({ ...QUICK, ...THOROUGH }, { id: 1, question });
  if (!answered.ok) throw new Error(answered.problems.map((p) => p.text).join('; '));
  return answered.answer as Answers[K];
};

const inputOf = (plan: string, taken?: string): Input => ({ plan, own: [], taken });
const STRIP = `title: Practice\ntemplate: baluster\nlayout: { strip: { length: 36, width: 5, margin: 1/4 } }\nswag: { repeats: 3 }\n`;
const FILLED = `${STRIP}channels: { outward: [1/4], inward: [1/4] }\nfills: { swag: echo, background: lines, channels: [pearls] }\n`;
const SAMPLES = join(import.meta.dirname, '../../samples');
const sample = (name: string): string => readFileSync(join(SAMPLES, name), 'utf8');
const PLANS = {
  border: FIRST_PLAN,
  strip: STRIP,
  filled: FILLED,
  ring: sample('wreath-frame.yaml'),
  'frame of a block': sample('medallion-frame.yaml'),
};

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

describe('what is printed', () => {
  for (const [name, plan] of Object.entries(PLANS)) {
    test(`${name}: sheets`, async () => {
      const { file } = await command(plan, 'mockup', '-o', 'out.pdf');
      const ours = await ask({ kind: 'print', input: inputOf(plan), what: 'sheets', choices, fonts: FONTS });
      await expectSamePages(ours.bytes, file('out.pdf'));
    });

    test(`${name}: card`, async () => {
      const { file } = await command(plan, 'card', '-o', 'out.pdf');
      const ours = await ask({ kind: 'print', input: inputOf(plan), what: 'card', choices, fonts: FONTS });
      await expectSamePages(ours.bytes, file('out.pdf'));
    });
  }

  for (const name of ['ring', 'frame of a block'] as const)
    long(
      `${name}: audition, and what fits in pictures`,
      async () => {
        const plan = PLANS[name];
        const { file } = await command(plan, 'audition', '-o', 'out.pdf');
        const ours = await ask({
          kind: 'print',
          input: inputOf(plan),
          what: 'audition',
          choices,
          fonts: FONTS,
        });
        await expectSamePages(ours.bytes, file('out.pdf'));
        const { file: pictures } = await command(plan, 'fit', '--most', '12', '--sheet', 'out.pdf');
        const contact = await ask({
          kind: 'print',
          input: inputOf(plan),
          what: 'contact',
          choices,
          fonts: FONTS,
        });
        await expectSamePages(contact.bytes, pictures('out.pdf'));
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
      results: { title: string; sides: { repeats: number }[] }[];
    };
    const looked = await ask({ kind: 'look', input: inputOf(FIRST_PLAN) });
    expect(looked.found).toBe(found.found);
    const cards = await ask({ kind: 'fits', input: inputOf(FIRST_PLAN), from: 0, count: 20 });
    expect(cards.map((c) => c.caption[0]!.split(',')[0])).toEqual(found.results.map((r) => r.title));
    const { file } = await command(FIRST_PLAN, 'fit', '--take', '3', '-o', 'taken.yaml');
    const decided = await ask({ kind: 'decided', input: inputOf(FIRST_PLAN, cards[2]!.key) });
    expect(decided).toBe(Buffer.from(file('taken.yaml')).toString());
  });

  test('a taken fit stays taken while other things change, and is looked for where it is gone', async () => {
    const cards = await ask({ kind: 'fits', input: inputOf(FIRST_PLAN), from: 0, count: 5 });
    const taken = cards[4]!.key;
    const wider = await ask({ kind: 'look', input: inputOf(withValue(FIRST_PLAN, ['paper'], 'a4'), taken) });
    expect(wider.chosen?.key).toBe(taken);
    const other = withValues(FIRST_PLAN, [
      [['layout', 'border', 'inner', 'top'], '30'],
      [['layout', 'border', 'inner', 'bottom'], '30'],
    ]);
    const moved = await ask({ kind: 'look', input: inputOf(other, taken) });
    expect(moved.chosen?.key).not.toBe(taken);
    expect(moved.chosen?.key.split('|')[0]).toBe(taken.split('|')[0]);
  });

  test('every count of a ring that fits is there, and each is its own', async () => {
    const open = withValue(PLANS.ring, ['layout', 'frame', 'count'], undefined);
    const { ran } = await command(open, 'fit', '--json', '--most', '100');
    const { found } = JSON.parse(ran.out) as { found: number };
    const cards = await ask({ kind: 'fits', input: inputOf(open), from: 0, count: 1000 });
    expect(cards.length).toBe(found);
    expect(new Set(cards.map((c) => c.key)).size).toBe(found);
    const swag = (await ask({ kind: 'swag', input: inputOf(open), side: 'frame' }))!;
    expect(swag.stops.length).toBeGreaterThan(1);
    for (const stop of swag.stops) {
      const taken = await ask({ kind: 'look', input: inputOf(open, stop.key) });
      expect(taken.chosen?.key).toBe(stop.key);
      expect(taken.chosen?.sides[0]?.repeats).toBe(stop.repeats);
    }
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

describe('one swag, dragged', () => {
  test('the template is rigid: half span and depth keep to the chord, h² + d² = C²', async () => {
    const input = inputOf(FIRST_PLAN);
    const swag = (await ask({ kind: 'swag', input, side: 'top' }))!;
    for (const share of [0.3, 0.5, 0.7, 0.9]) {
      const pose = (await ask({ kind: 'drag', input, side: 'top', halfSpan: share * swag.chord }))!;
      expect(pose.halfSpan).toBeCloseTo(share * swag.chord, 9);
      expect(Math.hypot(pose.halfSpan, pose.depth)).toBeCloseTo(swag.chord, 9);
      expect(pose.inks.map((ink) => ink.name)).toEqual(
        expect.arrayContaining(['stitch', 'channel', 'ghostEdge']),
      );
    }
  });

  test('a corner swag keeps its crown on the mitre, and both its ends on their seams', async () => {
    for (const from of ['inner', 'outer']) {
      const input = inputOf(withValue(FIRST_PLAN, ['layout', 'border', 'from'], from));
      const { pose, chord, turns, kind } = (await ask({ kind: 'swag', input, side: 'corner' }))!;
      expect([kind, turns]).toEqual(['corner', true]);
      for (const share of [0.75, 0.8, 0.9]) {
        const now = (await ask({ kind: 'drag', input, side: 'corner', halfSpan: share * chord }))!;
        // The crown: h along the seam from the start and d into the border, and that on the diagonal of the corner.
        const crown = {
          x: now.ground.x + now.deeper.x * now.depth,
          y: now.ground.y + now.deeper.y * now.depth,
        };
        expect(now.ground.x).toBeCloseTo(pose.ground.x, 9);
        expect(now.ground.y).toBeCloseTo(pose.ground.y, 9);
        for (const end of now.ends)
          expect(Math.hypot(crown.x - end.x, crown.y - end.y)).toBeCloseTo(chord, 9);
        expect(Math.abs(crown.x)).toBeCloseTo(Math.abs(crown.y - now.ground.y), 9);
        expect(Math.min(...now.ends.map((e) => Math.abs(e.x)))).toBeCloseTo(0, 9);
        expect(Math.min(...now.ends.map((e) => Math.abs(e.y - now.ground.y)))).toBeCloseTo(0, 9);
      }
    }
  });

  test('a hand may pull anywhere: the pose stays one that the template can have', async () => {
    const input = inputOf(FIRST_PLAN);
    const { chord } = (await ask({ kind: 'swag', input, side: 'top' }))!;
    for (const halfSpan of [-1e9, 0, 1e-9, 1e9, Number.POSITIVE_INFINITY]) {
      const pose = (await ask({ kind: 'drag', input, side: 'top', halfSpan }))!;
      expect(pose.halfSpan).toBeGreaterThan(0);
      expect(pose.halfSpan).toBeLessThan(chord);
    }
    expect(await ask({ kind: 'drag', input, side: 'top', halfSpan: Number.NaN })).toBeUndefined();
  });

  test('it lets go only where a whole number of swags fits the side', async () => {
    const input = inputOf(FIRST_PLAN);
    const { stops } = (await ask({ kind: 'swag', input, side: 'top' }))!;
    expect(stops.length).toBeGreaterThan(1);
    for (const stop of stops) {
      const taken = await ask({ kind: 'look', input: { ...input, taken: stop.key } });
      expect(taken.chosen?.key).toBe(stop.key);
      expect(taken.chosen?.sides.find((s) => s.name === 'top')?.repeats).toBe(stop.repeats);
    }
    expect(stops.map((s) => s.halfSpan)).toEqual(stops.map((s) => s.halfSpan).toSorted((a, b) => a - b));
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

  test('is told to be without a size where it counts in pixels', async () => {
    const pixels = svg.replace('width="250mm" height="80mm" ', 'width="250" height="80" ');
    const made = await ask({ kind: 'drawing', fileName: 'corbel.svg', svg: pixels, units: 'in' });
    expect(made.words).toMatch(/does not say how large it is/);
    const none = svg.replace('width="250mm" height="80mm" ', '');
    await expect(ask({ kind: 'drawing', fileName: 'corbel.svg', svg: none, units: 'in' })).rejects.toThrow(
      /^The drawing does not say how large it is\W.*in mm or inches\W?$/,
    );
  });
});
