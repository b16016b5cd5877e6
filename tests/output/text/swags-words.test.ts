/** Counts as a quilter says them; what is expected is how the sentence is to read, agreed with one who had only the page. */

import { describe, expect, test } from 'vitest';
import { sideWords, swagsWords } from '../../../src/output/text/index.ts';
import type { Fit } from '../../../src/swag/index.ts';

/** Only what the words depend on. */
const fitWith =
  (kind: Fit['corner']['kind']) =>
  (...counts: readonly number[]): Fit => {
    const names = counts.length === 4 ? ['top', 'right', 'bottom', 'left'] : ['strip'];
    const sides = counts.map((repeats, i) => ({ repeats, run: { name: names[i] } }));
    return { corner: { kind }, sides } as unknown as Fit;
  };
const fitOf = fitWith('none');
const halved = fitWith('half');

describe('how many swags', () => {
  test('sides that differ are listed, and named in the order of the list where there is room', () => {
    expect(swagsWords(fitOf(5, 6, 5, 6))).toBe('5, 6, 5 and 6 swags');
    expect(swagsWords(fitOf(5, 6, 5, 6), 'named')).toBe('5, 6, 5 and 6 swags (top, right, bottom, left)');
  });

  test('sides that are alike are said once', () => {
    expect(swagsWords(fitOf(7, 7, 7, 7), 'named')).toBe('7 swags on each side');
    expect(swagsWords(fitOf(1, 1, 1, 1))).toBe('1 swag on each side');
  });

  test('halves at the ends of a side are no whole swags', () => {
    expect(swagsWords(halved(6, 6, 6, 6))).toBe('5 swags and half a swag at each end of every side');
    expect(swagsWords(halved(5, 6, 5, 6), 'named')).toBe(
      '4, 5, 4 and 5 swags and half a swag at each end (top, right, bottom, left)',
    );
  });

  test('of sides that are too short for a whole swag only the halves are told', () => {
    expect(swagsWords(halved(1, 1, 1, 1))).toBe('half a swag at each end of every side');
    expect(swagsWords(halved(1, 2, 1, 2), 'named')).toBe(
      '1 swag on right and left, half a swag at each end of every side',
    );
    expect(swagsWords(halved(1, 2, 1, 3))).toBe(
      '1 swag on right, 2 swags on left, half a swag at each end of every side',
    );
    expect(sideWords(halved(1), 1)).toBe('half a swag at each end');
    expect(sideWords(halved(3), 3)).toBe('2 swags and half a swag at each end');
  });

  test('a strip has one count, and one swag is no “1 swags”', () => {
    expect(swagsWords(fitOf(1), 'named')).toBe('1 swag');
    expect(swagsWords(fitOf(12), 'named')).toBe('12 swags');
  });
});
