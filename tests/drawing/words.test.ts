/** The words of a whole border: where they cost no paper, and so that a person can read them. */

import { describe, expect, test } from 'vitest';
import {
  drawDesign,
  SHEET,
  type StyledDrawing,
  type StyledText,
  scopeOf,
  styled,
} from '../../src/drawing/index.ts';
import { inkOf } from '../../src/pagination/index.ts';
import { designOf } from '../../src/swag/index.ts';
import { planOf, search } from '../swag/fit-helpers.ts';

const INCH = 25.4;

/** A border 6 in wide round a quilt of four unequal sides, all of it, with its words. */
const drawn = (sides: string, from: 'inner' | 'outer', labelSize = 3.5): StyledDrawing => {
  const plan = planOf(
    `layout: { border: { width: 6 in, inner: { ${sides} }, from: ${from}, corners: turn, margin: 1/4 } }\nswag: { repeats: [5, 6, 5, 6] }`,
  );
  const { field, fit } = search(plan).results[0]!;
  const scoped = scopeOf(designOf(field, fit), 'all');
  if (!scoped.ok) throw new Error('no whole border');
  return styled(drawDesign(scoped.design, scoped.scope, { title: 'whole border', labelSize }), SHEET);
};

const textsOf = (drawing: StyledDrawing): readonly StyledText[] =>
  [...drawing.layers.marks, ...drawing.layers.notes].flatMap((i) => (i.kind === 'text' ? [i] : []));

const SHORT_BY_TURNS = [
  ['top and left', 'top: 60, right: 72, bottom: 60 1/2, left: 71 3/4'],
  ['bottom and right', 'top: 60 1/2, right: 71 3/4, bottom: 60, left: 72'],
] as const;

describe.each(SHORT_BY_TURNS)('the shorter sides at the %s', (_, sides) => {
  test('seen from the inner seam, no mark and no word lies beyond the outer one', () => {
    const { layers, title } = drawn(sides, 'inner');
    const empty = {
      fill: [],
      way: [],
      border: [],
      template: [],
      channel: [],
      stitch: [],
      marks: [],
      notes: [],
    };
    const words = inkOf({ title, layers: { ...empty, marks: layers.marks, notes: layers.notes } }).box;
    const border = inkOf({ title, layers: { ...empty, border: layers.border } }).box;
    // Drawn on the longer of two opposite sides, with the border's width at both ends.
    expect(border.maxX - border.minX).toBeCloseTo((60.5 + 12) * INCH, 0);
    expect(border.maxY - border.minY).toBeCloseTo((72 + 12) * INCH, 0);
    expect(words.minX).toBeGreaterThanOrEqual(border.minX);
    expect(words.minY).toBeGreaterThanOrEqual(border.minY);
    expect(words.maxX).toBeLessThanOrEqual(border.maxX);
    expect(words.maxY).toBeLessThanOrEqual(border.maxY);
  });

  // One line where the swags have room for it, and two where words are large beside them.
  test.each([
    ['inner', 3.5, 1],
    ['outer', 3.5, 1],
    ['inner', 14, 2],
    ['outer', 14, 2],
  ] as const)(
    'from the %s seam at %d mm, %d lines about an opening are read downwards',
    (from, size, count) => {
      const lines = drawn(sides, from, size).layers.notes.flatMap((i) => (i.kind === 'text' ? [i] : []));
      expect(lines.length).toBe(2 * count);
      const [one, other] = [...new Set(lines.map((t) => t.angle))];
      for (const angle of [one!, other!]) {
        expect(Math.abs(angle)).toBeLessThanOrEqual(Math.PI / 2 + 1e-9);
        const down = (t: StyledText): number => t.at.x * Math.sin(angle) - t.at.y * Math.cos(angle);
        const said = lines.filter((t) => t.angle === angle).toSorted((a, b) => down(a) - down(b));
        expect(said.map((t) => t.text).join(' ')).toBe('open only in the drawing: sew without this gap');
      }
    },
  );
});

test('every repeat carries the name of its side', () => {
  const names = textsOf(drawn(SHORT_BY_TURNS[0][1], 'inner')).map((t) => t.text);
  for (const side of ['top', 'right', 'bottom', 'left']) expect(names).toContain(`${side} 1`);
});
