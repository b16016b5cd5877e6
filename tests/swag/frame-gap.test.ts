/**
 * Round frames whose gap is left open: it follows from the span that is asked for. Expected values by hand, of a
 * template of one straight line: a swag's half, its chord and the two circles make triangles.
 */

import { describe, expect, test } from 'vitest';
import type { Ranked } from '../../src/swag/index.ts';
import { planOf, search, templateOf } from './fit-helpers.ts';

/** The needle's line is as long as the template's: C = 60. */
const CHORD = 60;
const LINE = templateOf(
  `title: Rail\nunits: mm\nedge:\n  - start: [0, 0]\n  - line: { to: [${CHORD}, 0] }\n`,
  'rail',
);
const CLEAR = 60;
const COUNT = 6;

const found = (from: 'inner' | 'outer', asked: string): readonly Ranked[] =>
  search(
    planOf(
      `layout: { frame: { count: ${COUNT}, around: ${2 * CLEAR - 10} mm, clearance: 5 mm, from: ${from} } }
swag: { setting: crown-on-centre, ${asked} }`,
    ),
    [LINE],
  ).results;

/** The gap between swags of a span that start on a circle: what their chords leave of a sixth of it, as a chord. */
const gapOn = (radius: number, span: number): number =>
  2 * radius * Math.sin(Math.PI / COUNT - Math.asin(span / (2 * radius)));

/** Outward the swags start on the clear circle. */
const outward = (span: number): number => gapOn(CLEAR, span);
/** Inward their crowns lie on it, and the starts as far beyond as the chord reaches beside half a span. */
const inward = (span: number): number =>
  gapOn(Math.hypot(CLEAR + Math.sqrt(CHORD ** 2 - (span / 2) ** 2), span / 2), span);

describe('a gap that is left open follows from the span', () => {
  test.each([
    ['inner', 'span: 45 mm', 45, outward],
    ['inner', 'span: 52 mm', 52, outward],
    ['inner', 'span: 40 mm to 45 mm', 45, outward],
    ['inner', 'span: about 40 mm, gap: 0 mm to 30 mm', 42, outward],
    ['outer', 'span: 90 mm', 90, inward],
  ] as const)('from the %s circle, %s', (from, asked, span, gapFor) => {
    const results = found(from, asked);
    expect(results.length).toBeGreaterThan(0);
    const { field, fit, score } = results[0]!;
    const { seat } = fit.sides[0]!;
    expect(seat.span).toBeCloseTo(span, 6);
    expect(seat.gap).toBeCloseTo(gapFor(span), 6);
    expect(seat.gap).toBeGreaterThan(5);
    expect(score.gap).toBe(seat.gap);
    // Just on the circle that is kept clear.
    expect(field.around.kind === 'motif' && field.around.nearest).toBeCloseTo(CLEAR, 6);
  });

  test('and is no wider than is asked, nor as wide as a swag', () => {
    // Where nothing is as asked, what comes nearest is found.
    const spans = (asked: string): number[] =>
      found('inner', asked).map(({ fit }) => fit.sides[0]!.seat.span);
    const at = (span: number) => expect.closeTo(span, 6);
    expect(outward(45)).toBeGreaterThan(16);
    expect(spans('span: 45 mm, gap: at most 16 mm')).not.toContainEqual(at(45));
    expect(spans('span: 45 mm, gap: at most 17 mm')).toContainEqual(at(45));
    expect(outward(30)).toBeGreaterThan(30);
    expect(spans('span: 30 mm')).not.toContainEqual(at(30));
  });

  test('where only about a span is asked, swags touch rather', () => {
    for (const { fit } of found('inner', 'span: about 45 mm')) expect(fit.sides[0]!.seat.gap).toBeLessThan(5);
  });
});
