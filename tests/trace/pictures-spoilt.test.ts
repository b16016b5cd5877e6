/**
 * How far traced outlines are off, in photographs that something is wrong with whose truth is known: `node scripts/bench.mjs pictures` prints the same cases, a
 * line each.
 */

import { describe, expect } from 'vitest';
import { long } from '../support/runs.ts';
import { SPOILT } from './pictures/cases.ts';
import { errorOf, lots, SLOW, told } from './pictures/judged.ts';

describe('a photograph of the capture sheet', () => {
  long(
    'that was cut, or whose paper does not lie flat, is told of where it is off',
    async () => {
      const answers = await lots(SPOILT);
      expect(answers).toHaveLength(12);
      expect(answers.filter((a) => a.said === 'accepted' && !(errorOf(a) <= 0.6)).map(told)).toEqual([]);
    },
    SLOW,
  );
});
