/** What a card says of how channels are sewn, read word by word: common practice, no source, where no figure settles it. */

import { expect, test } from 'vitest';
import { cardOf } from '../../../src/output/card/index.ts';
import { readPlan } from '../../../src/plan/index.ts';
import { designFromPlan } from '../../../src/swag/index.ts';
import { profile } from '../../swag/fit-helpers.ts';

/** Few ways to try. */
const PLAIN = 'setting: crown-on-centre, side: inside, direction: heel-first';
const STRIP = 'layout: { strip: { length: 36, width: 8, margin: 1/4 } }\n';

/** Without where each begins and stops, which is tried on cloth. */
const saidOf = (text: string, template = 'baluster'): readonly string[] => {
  const reading = readPlan(`template: ${template}\n${text}`, 'plan.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const [{ plan }] = reading.parts;
  const made = designFromPlan(plan, plan.templates.map(profile));
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const { blocks } = cardOf(made.design, plan, []).sections.find(({ id }) => id === 'channels')!;
  return blocks.flatMap((block) =>
    block.kind === 'table' || / begins and stops /.test(block.text) ? [] : [block.text],
  );
};

const INTRO =
  'Widths are from one line of stitching to the next. Lay the template on the side away from the new line, and slide it along as you go: in a curve it follows only a little way at a time.';
const INWARD =
  'Where the template does not lie along an inward channel, go by the channel before, a little at a time.';

test('the template lies beside the new line, and inward channels may go by the one before', () => {
  const [intro, edge, ...none] = saidOf(`${STRIP}swag: { ${PLAIN} }\nchannels: { outward: [1/4] }\n`);
  expect(intro).toBe(INTRO);
  expect(edge).toBe(
    'outward 1, 1/4 in wide: ride the foot along the last stitching, or lay the edge itself on it.',
  );
  expect(none).toEqual([]);
  expect(saidOf(`${STRIP}swag: { ${PLAIN} }\nchannels: { inward: [1/4] }\n`).at(-1)).toBe(INWARD);
});

test('of two rows the last one’s channels go out, and the first one’s in', () => {
  const rows = `${STRIP}swag: { ${PLAIN} }\nrows: [{ at: 1, swag: { ${PLAIN} } }]\nchannels: { outward: [1/4], inward: [1/4] }\n`;
  expect(saidOf(rows)[1]).toBe('Outward channels follow the last row, inward ones the first.');
});

test('what no etched line gives says how far the edge is kept, and from what', () => {
  const [, narrow, wide] = saidOf(`${STRIP}swag: { ${PLAIN} }\nchannels: { outward: [1/8, 5/8] }\n`, 'newel');
  expect(narrow).toBe(
    'outward 1, 1/8 in wide: narrower than the foot’s 1/4 in: the edge would lie 1/8 in back over the last stitching. Mark the line and follow it by eye, or use a smaller foot.'.replace(
      '’',
      "'",
    ),
  );
  expect(wide).toBe(
    'outward 2, 5/8 in wide: no etched line serves. Keep the edge 3/8 in beyond the last stitching with a spacer of that width, or mark a line there.',
  );
});

test('what the edge gives all but a hair says what it gives', () => {
  const [, hair] = saidOf(
    `units: mm\n${STRIP.replaceAll(/\d+(?:\/\d+)?/g, '$& in')}channels: { outward: [6.5] }\n`,
  );
  expect(hair).toBe(
    'outward 1, 6.5 mm wide: lay the edge itself on the last stitching (that gives 6.35 mm).',
  );
});

test('where two templates have other etched lines, each says whose it is', () => {
  // Of the two only the baluster has a line etched at 1/8 in.
  const line = /3\/8 in wide: lay the line etched 1\/8 in inside the edge on the last stitching/;
  const none = /3\/8 in wide: no etched line serves/;
  const kinds = saidOf(
    `${STRIP}swag: { ${PLAIN}, alternate: [{ template: baluster }, { template: newel }] }\nchannels: { inward: [3/8] }\n`,
    '[baluster, newel]',
  );
  expect(kinds.find((text) => line.test(text))).toMatch(/^kind 1, inward 1, /);
  expect(kinds.find((text) => none.test(text))).toMatch(/^kind 2, inward 1, /);
  const own = saidOf(
    `layout: { border: { width: 6, inner: 40, margin: 1/2, corners: turn } }\nswag: { ${PLAIN} }\ncorner: { template: baluster, ${PLAIN} }\nchannels: { inward: [3/8] }\n`,
    'newel',
  );
  expect(own.find((text) => line.test(text))).toMatch(/^corners, inward 1, /);
  expect(own.find((text) => none.test(text))).toMatch(/^sides, inward 1, /);
});
