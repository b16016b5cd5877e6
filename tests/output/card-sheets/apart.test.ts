/** On no page of a card do two lines of type lie on one another. Read from the PDF. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { cardSheets } from '../../../src/jobs/card-sheets.ts';
import { readPlan } from '../../../src/plan/index.ts';
import { designFromPlan } from '../../../src/swag/index.ts';
import { lettering, tooClose } from '../../support/lettering.ts';
import { PROFILES } from '../../swag/fit-helpers.ts';
import { deflate, FONTS, openPages, readTexts } from '../pdf/read-back.ts';

const SAMPLES = join(import.meta.dirname, '../../../samples');
const sample = (name: string): string => readFileSync(join(SAMPLES, `${name}.yaml`), 'utf8');
const ALL = 'template: [baluster, finial, newel]';
const strip = (length: string, width: number, more: string, template = ALL): string =>
  `${template}\nlayout: { strip: { length: ${length}, width: ${width}, margin: 1/4 } }\nswag: { ${more} }`;
const border = (width: number, more: string): string =>
  `${ALL}\nlayout: { border: { width: ${width}, inner: 40, margin: 1/4, ${more} } }`;
const wreath = (count: number, around: number): string =>
  `${ALL}\nlayout: { frame: { count: ${count}, around: ${around}, clearance: 1/2 } }`;

const CASES: readonly (readonly [string, string])[] = [
  ...['guild-strip', 'raffle-border', 'wreath-frame', 'medallion-frame', 'lathe-street-quilt'].map(
    (name) => [name, sample(name)] as const,
  ),
  ['a pause under the start mark, on two pages', strip('36', 4, 'repeats: 2')],
  ['the same of a long one', strip('120', 9, 'repeats: 5')],
  ['start and stop close together', strip('20', 4, 'repeats: 12')],
  ['start and stop beside the names of lines', strip('42 1/8', 9, 'repeats: 12')],
  [
    'a pause beside the needle',
    strip('36', 6, 'setting: crown-on-centre, side: outside, direction: crown-first', 'template: newel'),
  ],
  [
    'lettered lines beside one another',
    strip('36', 6, 'setting: crown-on-centre, side: inside, direction: crown-first', 'template: baluster'),
  ],
  ['lettered lines and a pause', strip('48', 8, 'from: 1, to: 3', 'template: baluster')],
  ['an alignment line', strip('36', 6, 'setting: alignment-line, side: outside', 'template: baluster')],
  ['a flat on a guide line', strip('36', 6, 'setting: flat-on-guide, side: inside', 'template: newel')],
  ['a border from the inner seam', border(6, 'corners: turn')],
  ['a narrow border, whose corner stands beside the swag', border(3, 'corners: turn')],
  ['across the corners', border(6, 'corners: across, from: outer')],
  ['half swags at the corners', border(6, 'corners: half')],
  ['a wreath of few', wreath(3, 9)],
  ['a wreath of many', wreath(12, 5)],
  ['a table on the second page', strip('40', 9, 'depth: at most 1')],
];

test.each(CASES)(
  '%s',
  async (name, text) => {
    const reading = readPlan(text, name);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    for (const { plan } of reading.parts) {
      const templates = plan.templates.map((t) => PROFILES.find((p) => p.name === t)!);
      const made = designFromPlan(plan, templates);
      if (!made.ok) throw new Error(JSON.stringify(made.problems));
      const part = { name: undefined, plan, templates, design: made.design, placed: <T>(p: T): T => p };
      for (const paper of ['letter', 'a4'] as const) {
        const means = { deflate, fonts: async () => FONTS };
        const { bytes } = await cardSheets('Card', [part], { paper, orientation: 'portrait' }, means);
        const doc = await openPages(bytes);
        for (let number = 1; number <= doc.numPages; number++) {
          const texts = await readTexts(await doc.getPage(number));
          const lines = texts.map((t) => ({ text: t.text, room: lettering(t.text, t.from, t.to, t.size) }));
          expect(tooClose(lines, 0), `${plan.part?.name ?? ''} ${paper}, page ${number}`).toEqual([]);
        }
      }
    }
  },
  60_000,
);
