/**
 * How far traced outlines are off, in scans whose truth is known: `node scripts/bench.mjs pictures` prints the same cases, a
 * line each.
 */

import { describe, expect, test } from 'vitest';
import { long } from '../support/runs.ts';
import { SCANS } from './pictures/cases.ts';
import { errorOf, lots, SLOW, told } from './pictures/judged.ts';
import { answerTo } from './pictures/traced.ts';

const isCoarse = ({ about }: (typeof SCANS)[number]): boolean => /^(150|200) dpi line art/.test(about);

describe('a scan', () => {
  long(
    'in grey at 150 to 600 dots per inch, and in line art at 300 and 600, gives an outline within 0.1 mm, and every corner',
    async () => {
      const answers = await lots(SCANS.filter((one) => !isCoarse(one)));
      expect(answers).toHaveLength(48);
      const worse = answers.filter((a) => a.said !== 'accepted' || !(errorOf(a) <= 0.1));
      expect(worse.map(told)).toEqual([]);
      expect(answers.filter((a) => a.judged!.missed.length > 0).map(told)).toEqual([]);
    },
    SLOW,
  );

  long(
    'in coarser line art shows every corner, and is called unsure, for its sharp ones are some tenths of a millimetre off',
    async () => {
      const answers = await lots(SCANS.filter(isCoarse));
      expect(answers).toHaveLength(12);
      expect(answers.filter((a) => a.said !== 'unsure' || !(errorOf(a) <= 0.4)).map(told)).toEqual([]);
      expect(answers.filter((a) => a.judged!.missed.length > 0).map(told)).toEqual([]);
    },
    SLOW,
  );

  const SOME = [SCANS[3]!];
  test.each(SOME.map((one) => [`${one.medium} ${one.shape.name} ${one.about}`, one] as const))(
    'of %s is taken, within 0.1 mm and with every corner',
    async (_, one) => {
      const answer = await answerTo(one);
      expect(answer.said, told(answer)).toBe('accepted');
      expect(errorOf(answer)).toBeLessThan(0.1);
      expect(answer.judged!.missed).toEqual([]);
    },
    SLOW,
  );
});
