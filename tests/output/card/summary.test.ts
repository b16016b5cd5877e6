/** The lines under a card's title, word by word, beside what the plan asks for and what the card's own marks say. */

import { describe, expect, test } from 'vitest';
import { MM_PER_INCH } from '../../../src/length/index.ts';
import { cardOf } from '../../../src/output/card/index.ts';
import { readPlan } from '../../../src/plan/index.ts';
import { designFromPlan, type MarkKind } from '../../../src/swag/index.ts';
import { profile } from '../../swag/fit-helpers.ts';

const cardFor = (text: string, template = 'baluster') => {
  const reading = readPlan(`template: ${template}\n${text}`, 'plan.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const [{ plan }] = reading.parts;
  const made = designFromPlan(plan, plan.templates.map(profile));
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return cardOf(made.design, plan, []);
};
const summaryOf = (text: string, template?: string): readonly string[] => cardFor(text, template).summary;

/** Few ways to try. */
const PLAIN = 'setting: crown-on-centre, side: inside, direction: heel-first, from: heel';
const STRIP = 'layout: { strip: { length: 36, width: 6, margin: 1/4 } }\n';
const BORDER = 'layout: { border: { width: 6, inner: 40, margin: 1/2, corners: turn } }\n';

describe('what is at the corners', () => {
  test.each([
    ['turn', 'inner', ', one round each corner. '],
    ['across', 'outer', ', one across each corner. '],
    ['half', 'inner', ', and half a swag at each end of every side; the corner squares left free. '],
    ['open', 'inner', ', corners left open. '],
    ['meet', 'inner', '. '],
  ])('%s, from the %s seam', (corners, from, said) => {
    const [, swags] = summaryOf(
      `${BORDER.replace('corners: turn', `corners: ${corners}, from: ${from}`)}swag: { ${PLAIN} }\n`,
    );
    expect(swags!.match(/^Swags: top \d+, right \d+, bottom \d+, left \d+(.*?)Span /)?.[1]).toBe(said);
  });
});

test('a side of two halves has no whole swag', () => {
  const [, swags] = summaryOf(
    'layout: { border: { width: 6, inner: { top: 12, right: 36, bottom: 12, left: 36 }, margin: 1/2, corners: half } }\nswag: { repeats: [1, 3, 1, 3] }\n',
  );
  expect(swags).toMatch(/^Swags: top none, right 2, bottom none, left 2, and half a swag at each end/);
});

test('span, gap and what is kept clear are those of the marks', () => {
  const { summary, marks } = cardFor(
    `${STRIP.replace('margin: 1/4', 'margin: 1/4, ends: 2')}swag: { ${PLAIN}, repeats: 3, gap: 1/2 }\n`,
  );
  const at = (kind: MarkKind, repeat: number): number =>
    marks[0]!.marks.find((m) => m.kind === kind && m.repeat === repeat)!.at / MM_PER_INCH;
  const found = summary[1]!.match(
    /^Swags: (\d)\. Span ([\d/ ]+) in, .* deep.*, ([\d/ ]+) in between neighbours, ([\d/ ]+) in kept clear at both ends\.$/,
  );
  const [count, span, gap, ends] = found!.slice(1).map((text) =>
    text.split(' ').reduce((sum, part) => {
      const [top, bottom = '1'] = part.split('/');
      return sum + Number(top) / Number(bottom);
    }, 0),
  ) as [number, number, number, number];
  expect(count).toBe(3);
  // Told to a sixteenth of an inch.
  expect(Math.abs(at('stop', 2) - at('start', 2) - span)).toBeLessThanOrEqual(1 / 32);
  expect(Math.abs(at('start', 3) - at('stop', 2) - gap)).toBeLessThanOrEqual(1 / 32);
  expect(at('start', 1)).toBeGreaterThan(ends - 1e-9);
  expect(at('stop', 3)).toBeLessThan(36 - ends + 1e-9);
  expect(summaryOf(`${STRIP}swag: { ${PLAIN}, gap: 0 }\n`)[1]).not.toMatch(/neighbours|clear/);
});

test('templates are told by what they are of, and the foot by its outer edge', () => {
  const foot = 'Foot: 1/4 in from the needle to its outer edge.';
  expect(summaryOf(`${STRIP}swag: { ${PLAIN}, to: crown }\n`, 'newel')[0]).toBe(
    `Template: Newel, 1/4 in thick, heel to crown end. ${foot}`,
  );
  const [kinds, swags] = summaryOf(
    `${STRIP}swag: { ${PLAIN}, alternate: [{ template: newel }, { template: finial }] }\n`,
    '[newel, finial]',
  );
  expect(kinds).toMatch(/^Template of kind 1: Newel, .* Template of kind 2: Finial, /);
  expect(kinds!.endsWith(foot)).toBe(true);
  expect(swags).toMatch(/^Swags: \d, of two kinds in turn\. Kind 1: span .* deep.*\. Kind 2: span .* deep/);
  const [own] = summaryOf(`${BORDER}swag: { ${PLAIN} }\ncorner: { template: finial, ${PLAIN} }\n`, 'newel');
  expect(own).toMatch(/^Template of the sides: Newel, .* Template of the corners: Finial, /);
});

test('a frame says how large it is and what it leaves free', () => {
  const frame = 'layout: { frame: { count: 8, around: 9, clearance: 1/2 } }\n';
  const sizeOf = (text: string): string | undefined => summaryOf(text).find((line) => /^Finished/.test(line));
  const alone = sizeOf(frame)!.match(
    /^Finished frame: ([\d/ ]+) in across; 10 in across is free inside it\.$/,
  );
  const channels = sizeOf(`${frame}channels: { outward: [1/4] }\n`)!.match(
    /^Finished frame: ([\d/ ]+) in across, channels included; 10 in across is free inside it\.$/,
  );
  const [small, large] = [alone, channels].map((found) =>
    found![1]!.split(' ').map((part) => part.split('/')),
  );
  // A channel of 1/4 in on both sides of it: half an inch more, to a sixteenth.
  const inches = (parts: readonly (readonly string[])[]): number =>
    parts.reduce((sum, [top, bottom = '1']) => sum + Number(top) / Number(bottom), 0);
  expect(Math.abs(inches(large!) - inches(small!) - 1 / 2)).toBeLessThanOrEqual(1 / 16);
});

test('what is sewn several times says how often, and that its figures are for one', () => {
  const line = 'Sewn 3 times on the quilt; stitching and thread are for one.';
  expect(
    summaryOf(`parts:\n  blocks: { swag: { ${PLAIN} }, ${STRIP.trim()}, at: [[0, 0], [40, 0], [80, 0]] }\n`),
  ).toContain(line);
  expect(summaryOf(STRIP)).not.toContain(line);
});
