/**
 * What can be filled round a corner: the cells of all repeats make up the border between its start line and its far
 * margin, which is a trapezium over each side with mitres at 45°, without a gap and without an overlap.
 */

import { expect, test } from 'vitest';
import { regionArea } from '../../src/geometry/index.ts';
import {
  alikeRepeats,
  cornerSwag,
  type Design,
  designOf,
  groundArea,
  swagArea,
} from '../../src/swag/index.ts';
import { planOf, pointsAlong, profile, search } from './fit-helpers.ts';

const SIDES = '{ top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }';
const designsOf = (name: string, border: string, swag: string): readonly Design[] =>
  search(planOf(`layout: { border: { inner: ${SIDES}, margin: 1/2, ${border} } }\nswag: { ${swag} }`), [
    profile(name),
  ]).results.map(({ field, fit }) => designOf(field, fit));

const filled = (design: Design): number =>
  alikeRepeats(design, design.halves)
    .map(({ cell, ends, halves }) => {
      const one = regionArea(groundArea(cell, design, ends)) + regionArea(swagArea(cell, design));
      return (one * halves.length) / 2;
    })
    .reduce((a, b) => a + b, 0);

const border = ({ field: { runs, room, from } }: Design): number =>
  runs.map(({ length }) => (length + (from === 'inner' ? room : -room)) * room).reduce((a, b) => a + b, 0);

test.each([
  // Its joins come to the mitre before the far margin: beyond are the two sides, and what is theirs was filled twice.
  [
    'narrow swags that turn the corner from outside',
    'baluster',
    'width: 12, from: outer, corners: turn',
    'gap: 0',
  ],
  // What a fixed setting leaves of a side is gap, more on one side than on another; a strip between was nobody's.
  ['gaps that differ, turning', 'newel', 'width: 6, corners: turn', 'setting: flat-on-guide'],
  [
    'gaps that differ, from outside',
    'newel',
    'width: 6, from: outer, corners: turn',
    'setting: flat-on-guide',
  ],
  ['gaps that differ, across', 'newel', 'width: 6, from: outer, corners: across', 'setting: flat-on-guide'],
])('%s', (_, template, layout, swag) => {
  const found = designsOf(template, layout, swag).slice(0, 6);
  expect(found.length).toBeGreaterThan(1);
  for (const design of found) expect(filled(design) / border(design)).toBeCloseTo(1, 9);
});

test('beyond a narrow swag across the corner each side’s swags keep to their side of the mitre', () => {
  // With gaps as wide as these, deep and narrow swags passed the corner's and came to lie on the next side's cloth.
  const found = designsOf('finial', 'width: 9, from: outer, corners: across', 'gap: 54 mm, side: inside');
  let near = 0;
  for (const design of found) {
    const { fit } = cornerSwag(design)!;
    for (const { cells, fit: side } of design.sides)
      for (const p of pointsAlong(cells[0].path, 4)) {
        // From the corner of the start lines, where the mitre sets out at 45°.
        const x = p.x + side.seat.gap + fit.toCorner;
        expect(p.y).toBeLessThan(x + 1e-6);
        if (p.y > x / 2) near++;
      }
  }
  expect(near).toBeGreaterThan(100);
});
