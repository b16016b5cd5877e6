/** No two words of a drawing at true size lie on one another, nor run into one another where two sides meet. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { drawPlan, SHEET, type StyledText, scopeOf, styled } from '../../src/drawing/index.ts';
import { typefacesOf } from '../../src/output/pdf/typeface.ts';
import { readPlan } from '../../src/plan/index.ts';
import { designFromPlan } from '../../src/swag/index.ts';
import { FONTS } from '../output/pdf/read-back.ts';
import { lettering, type Rectangle, tooClose } from '../support/lettering.ts';
import { PROFILES } from '../swag/fit-helpers.ts';

/** mm. Two lines of one note are closer than words of their own may be. */
const LEAST = 0.6;

const FACES = typefacesOf(FONTS);
const roomOf = ({ text, size, bold, align, at, angle }: StyledText): Rectangle => {
  const width = (bold ? FACES.bold : FACES.regular).width(text, size);
  const before = { start: 0, middle: width / 2, end: width }[align];
  const along = (by: number) => ({ x: at.x + by * Math.cos(angle), y: at.y + by * Math.sin(angle) });
  return lettering(text, along(-before), along(width - before), size);
};

const ALL = 'template: [baluster, finial, newel]';
const UNEQUAL = '{ top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }';
const border = (width: number, inner: string | number, more: string, swag = ''): string =>
  `${ALL}\nlayout: { border: { width: ${width}, inner: ${inner}, margin: 1/4, ${more} } }${swag && `\nswag: { ${swag} }`}`;
const SAMPLES = join(import.meta.dirname, '../../samples');
const TURNS = 'alternate: [{ template: baluster }, { template: newel }]';

const CASES: readonly (readonly [string, string])[] = [
  ...['guild-strip', 'raffle-border', 'wreath-frame', 'medallion-frame', 'lathe-street-quilt'].map(
    (name) => [name, readFileSync(join(SAMPLES, `${name}.yaml`), 'utf8')] as const,
  ),
  ...['turn', 'meet', 'open', 'half'].flatMap((corners) =>
    ['inner', 'outer'].flatMap((from): [string, string][] => [
      [`${corners}, from the ${from} seam`, border(6, 40, `from: ${from}, corners: ${corners}`)],
      [
        `${corners}, from the ${from} seam, four unequal sides`,
        border(6, UNEQUAL, `from: ${from}, corners: ${corners}`),
      ],
      [
        `${corners}, from the ${from} seam, many and narrow`,
        border(4, 30, `from: ${from}, corners: ${corners}`, 'repeats: 14'),
      ],
      [
        `a frame, ${corners}, from the ${from} seam`,
        `${ALL}\nlayout: { frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 23, from: ${from}, corners: ${corners} } }`,
      ],
    ]),
  ),
  ['half swags, so narrow that names stand side by side', border(4, 30, 'corners: half', 'repeats: 20')],
  ['two kinds, from the inner seam', border(7, 50, 'corners: half', TURNS)],
  ['two kinds, from the outer seam', border(7, 50, 'corners: half, from: outer', TURNS)],
  ...[3, 8, 16].map((count): [string, string] => [
    `a wreath of ${count}`,
    `${ALL}\nlayout: { frame: { count: ${count}, around: 9, clearance: 1/2 } }`,
  ]),
];

describe.each(CASES)('%s', (name, plan) => {
  test('on sheets, and in a picture with large words', () => {
    const reading = readPlan(plan, name);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    let seen = 0;
    for (const part of reading.parts) {
      const templates = part.plan.templates.map((t) => PROFILES.find((p) => p.name === t)!);
      const made = designFromPlan(part.plan, templates);
      if (!made.ok) throw new Error(JSON.stringify(made.problems));
      for (const wanted of ['all', 'corner', 'side', 'repeat'])
        for (const labelSize of [3.5, 5]) {
          const scoped = scopeOf(made.design, wanted);
          if (!scoped.ok) continue;
          const { drawing } = drawPlan(scoped.design, part.plan, scoped.scope, {
            withFills: false,
            labelSize,
          });
          const { layers } = styled(drawing, SHEET);
          const texts = Object.values(layers).flatMap((items) => items.filter((i) => i.kind === 'text'));
          const lines = texts.map((t) => ({ text: t.text, room: roomOf(t) }));
          expect(tooClose(lines, LEAST), `${wanted}, ${labelSize} mm`).toEqual([]);
          seen += lines.length;
        }
    }
    expect(seen).toBeGreaterThan(0);
  });
});
