/** Thread against published worked examples; where one of them contradicts itself, which figure is right. */

import { describe, expect, test } from 'vitest';
import { MM_PER_INCH } from '../../src/length/index.ts';
import { modelRatio, threadFor, WASTAGE } from '../../src/swag/index.ts';

describe('thread for stitch type 301', () => {
  test('220 cm of seam: 550 cm in all, 275 above and 275 below', () => {
    // A published worked example (a thread calculator's text after makers' tables) has this total and these halves,
    // but prints the line between as "1210 × 0.25 = 275", which is 302.5. Right is 220 · 2.5 · 0.5.
    const { needle, bobbin } = threadFor(2200);
    for (const half of [needle, bobbin]) {
      expect(half / (1 + WASTAGE) / 10).toBeCloseTo(275, 9);
      expect(Math.abs(half / (1 + WASTAGE) / 10 - 1210 * 0.25)).toBeGreaterThan(27);
    }
  });

  test('waste is in the range that makers’ texts give', () => {
    // 10 to 15 % (540 cm · 1.15 = 621 cm) and 15 to 20 % (6.63 yd · 1.15 = 7.6245 yd): both hold 15 % only.
    expect(WASTAGE).toBeCloseTo(0.15, 12);
    expect(540 * (1 + WASTAGE)).toBeCloseTo(621, 9);
    expect(6.63 * (1 + WASTAGE)).toBeCloseTo(7.6245, 9);
  });

  test.each([
    // The geometric model 2 + 2·T·S: thickness in inches, stitches an inch; the first two as published, then evaluated.
    [0.025, 10, 2.5],
    [0.01, 10, 2.2],
    [0.0625, 12, 3.5],
    [0.125, 10, 4.5],
  ])('%d in thick at %d stitches an inch takes %d', (thickness, stitches, ratio) => {
    expect(modelRatio(thickness * MM_PER_INCH, MM_PER_INCH / stitches)).toBeCloseTo(ratio, 12);
  });

  test('never less than the seam twice, however thin', () => {
    for (const thickness of [0, 1e-9, 0.1]) expect(modelRatio(thickness, 2.5)).toBeGreaterThanOrEqual(2);
  });
});
