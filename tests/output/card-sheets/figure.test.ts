/** Where the template stands is written on the card's figure, each measure under the name of its place. Read from the PDF. */

import { expect, test } from 'vitest';
import { type CardPlace, cardOf } from '../../../src/output/card/index.ts';
import { profile } from '../../swag/fit-helpers.ts';
import { readTexts, type Written } from '../pdf/read-back.ts';
import { lineOnFigure, printedCard } from './printed.ts';

const SHAPES: readonly (readonly [name: string, text: string, template: string])[] = [
  ['a strip', 'layout: { strip: { length: 36, width: 6, margin: 1/4 } }', 'baluster'],
  [
    'a border whose sides differ',
    'layout: { border: { width: 6, inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }, margin: 1/2, corners: turn } }',
    'finial',
  ],
  [
    'a flat on a guide line',
    'layout: { strip: { length: 40, width: 9, margin: 1/2 } }\nswag: { setting: flat-on-guide }',
    'newel',
  ],
  [
    'a frame whose rows all differ, from the end of a later section',
    'layout: { frame: { block: { width: 13 1/4, height: 12 }, clearance: 1/2, within: 22, corners: turn } }\nswag: { from: 1, to: 2, setting: crown-on-centre, side: inside, direction: crown-first, repeats: 2, gap: 0 }',
    'finial',
  ],
  ['a wreath', 'layout: { frame: { count: 8, around: 10, clearance: 1/2 } }', 'finial'],
  [
    'a shallow swag',
    'layout: { strip: { length: 40, width: 9, margin: 1/2 } }\nswag: { depth: at most 1 }',
    'finial',
  ],
];

/** Whether `below` is the next line under `above`, lined up with it on the left or on the right. */
const isUnder = (below: Written, above: Written): boolean =>
  above.from.y - below.from.y > 0 &&
  above.from.y - below.from.y < 1.6 * below.size &&
  Math.min(Math.abs(above.from.x - below.from.x), Math.abs(above.to.x - below.to.x)) < 0.2;

/** The lines of a place as they are read downward from its name. */
const linesUnder = (name: Written, texts: readonly Written[]): readonly string[] => {
  const next = texts.find((t) => isUnder(t, name));
  return next ? [next.text.trim(), ...linesUnder(next, texts)] : [];
};

const saidBy = ({ measures }: CardPlace): string => measures.join(' ');

test.each(SHAPES)('%s', async (_, text, template) => {
  const { plan, design, doc } = await printedCard(text, [profile(template)]);
  const texts = await readTexts(await doc.getPage(1));
  const find = (wanted: string): Written | undefined => texts.find((t) => t.text.trim() === wanted);
  const at = (wanted: string): Written => {
    const found = find(wanted);
    if (!found) throw new Error(`Not on the page: ${wanted}`);
    return found;
  };
  const { blocks } = cardOf(design, plan, []).sections.find((s) => s.id === 'stands')!;
  const places = blocks.filter((b) => b.kind === 'place');
  expect(places.map((p) => p.id)).toEqual(expect.arrayContaining(['near', 'needle']));
  const [start, stop, centre] = ['start mark', 'stop mark', 'centre line'].map(at) as [
    Written,
    Written,
    Written,
  ];
  for (const place of places) {
    const line = at(lineOnFigure(place));
    if (place.id === 'near' || place.id === 'far') {
      expect(linesUnder(line, texts).join(' '), place.id).toBe(saidBy(place));
      // The one before the start mark, the other past the stop mark; both over the names of the marks.
      if (place.id === 'near') expect(line.to.x).toBeLessThan((start.from.x + start.to.x) / 2);
      else expect(line.from.x).toBeGreaterThan((stop.from.x + stop.to.x) / 2);
      expect(line.from.y).toBeGreaterThan(start.from.y);
    } else if (place.id === 'needle') {
      expect(line.to.x).toBeLessThan(centre.from.x);
    }
  }
  // No two lines of type lie on one another.
  const figure = texts.filter((t) => t.from.y > start.from.y - 0.1 && t.from.y < centre.from.y + 8);
  const boxes = figure.map((t) => ({ ...t, top: t.from.y + 0.7 * t.size }));
  for (const [i, a] of boxes.entries())
    for (const b of boxes.slice(i + 1)) {
      const isApart =
        a.to.x < b.from.x || b.to.x < a.from.x || a.top < b.from.y - 0.1 || b.top < a.from.y - 0.1;
      expect(isApart, `${a.text} | ${b.text}`).toBe(true);
    }
});
