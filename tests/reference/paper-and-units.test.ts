/** Sizes of paper and lengths in two units, against the rules that standards make them by. */

import { describe, expect, test } from 'vitest';
import {
  formatLength,
  INCH_SIXTEENTH,
  INCH_SIXTYFOURTH,
  INCH_THIRTYSECOND,
  MM_PER_INCH,
  readLength,
} from '../../src/length/index.ts';
import { POINTS_PER_MM, pointsOf } from '../../src/output/pdf/numbers.ts';
import { DEFAULT_MARGIN, LEAST_MARGIN, PAPERS } from '../../src/pagination/index.ts';

describe('paper', () => {
  test('the A series follows from its own rule', () => {
    // ISO 216: A0 is 1 m² with sides 1 : √2, each next one is the half, in whole mm rounded down (the rule from
    // memory; the sizes A0 841 × 1189 … A4 210 × 297 as tables of the standard print them).
    let [width, height] = [841, 1189];
    const series: Record<string, readonly [number, number]> = { a0: [width, height] };
    for (let n = 1; n <= 4; n++) {
      [width, height] = [Math.floor(height / 2), width];
      series[`a${n}`] = [width, height];
    }
    expect(series).toMatchObject({ a1: [594, 841], a2: [420, 594], a3: [297, 420], a4: [210, 297] });
    for (const id of ['a3', 'a4'] as const) expect([PAPERS[id].width, PAPERS[id].height]).toEqual(series[id]);
  });

  test('letter doubled is tabloid, as ANSI A doubled is ANSI B', () => {
    // ASME Y14.1: A 8.5 × 11, B 11 × 17 in; the short side doubles.
    const { letter, tabloid } = PAPERS;
    expect(tabloid.width).toBe(letter.height);
    expect(tabloid.height).toBeCloseTo(2 * letter.width, 12);
    expect(letter.width / MM_PER_INCH).toBeCloseTo(8.5, 12);
    expect(letter.height / MM_PER_INCH).toBeCloseTo(11, 12);
  });

  test('sizes in points, and the rounded ones that print systems use are not ours', () => {
    // 72/25.4 points a millimetre. CUPS's media.defs prints A4 as 595 × 842, which is right for choosing a tray
    // and wrong for true size: the exact width is 595.2755906, and 595 would be smaller by 0.046 %.
    expect(POINTS_PER_MM).toBeCloseTo(72 / 25.4, 15);
    expect(pointsOf(PAPERS.a4.width)).toBeCloseTo(595.2755906, 3);
    expect(pointsOf(PAPERS.a4.height)).toBeCloseTo(841.8897638, 3);
    expect(pointsOf(PAPERS.a3.height)).toBeCloseTo(1190.5511811, 3);
    expect([pointsOf(PAPERS.letter.width), pointsOf(PAPERS.letter.height)]).toEqual([612, 792]);
    expect([pointsOf(PAPERS.legal.width), pointsOf(PAPERS.legal.height)]).toEqual([612, 1008]);
    expect([pointsOf(PAPERS.tabloid.width), pointsOf(PAPERS.tabloid.height)]).toEqual([792, 1224]);
    expect(Math.abs(pointsOf(PAPERS.a4.width) / 595 - 1)).toBeGreaterThan(4e-4);
  });

  test('margins keep clear of the edge that printers cannot reach', () => {
    // Makers' manuals: 4 mm (Konica Minolta 2490MF, p. 46), 1/6 in (HP LaserJet IIP), 0.2 in (LaserJet drivers).
    const unreached = [4, 25.4 / 6, 0.2 * 25.4];
    for (const edge of unreached) expect(LEAST_MARGIN).toBeGreaterThan(edge);
    expect(DEFAULT_MARGIN).toBeGreaterThanOrEqual(2 * LEAST_MARGIN - 1e-9);
  });
});

const mm = (text: string): number => {
  const read = readLength(text, 'in');
  if (!read.ok) throw new Error(text);
  return read.mm;
};

describe('where published figures for lengths disagree', () => {
  test('an inch is 25.4 mm, not the survey inch of 25.4000508', () => {
    // International yard, 0.9144 m from 1 July 1959 (Federal Register 24 FR 5348, from memory): exact by
    // definition. The older 3600/3937 m yard is 2 parts in a million longer and was kept for surveying only.
    expect(36 * MM_PER_INCH).toBeCloseTo(914.4, 12);
    expect(((3600 / 3937) * 1000) / 36 - MM_PER_INCH).toBeGreaterThan(5e-5);
  });

  test.each([
    // Two printed tables each: one rounds the tie up, the other down. The product with 25.4 has five decimals.
    ['1/32', 0.7937, 0.7938, 0.79375],
    ['15/32', 11.9062, 11.9063, 11.90625],
  ])('%s in is neither %d nor %d mm', (text, low, high, exact) => {
    expect(mm(text)).toBe(exact);
    for (const printed of [low, high]) expect(Math.abs(mm(text) - printed)).toBeCloseTo(0.00005, 9);
  });

  test('17/32 in by way of binary fractions is 13.493749999999999, exact 13.49375', () => {
    expect((17 / 32) * 25.4).toBe(13.493749999999999);
    expect(mm('17/32')).toBe(13.49375);
  });

  test('a decimal to the nearest fraction, by the rule of a published chart', () => {
    // "Decimal to fraction chart", machinecalcs.com: multiply by 64, round, reduce: 0.123 is 7.87/64, so 1/8.
    expect(formatLength(0.123 * 25.4, INCH_SIXTYFOURTH)).toMatch(/^1\/8\b/);
    // The carry: 0.999 to 1/16 is a whole inch, 5.9999 to 1/32 are six; never "5 32/32".
    expect(formatLength(0.999 * 25.4, INCH_SIXTEENTH)).toMatch(/^1\b(?!\/)/);
    expect(formatLength(5.9999 * 25.4, INCH_THIRTYSECOND)).toMatch(/^6\b(?!\/)/);
  });
});
