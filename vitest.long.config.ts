/** The tests that `npm run test:long` names, with time for many runs; it gives the runs and the seed. */

import { defineConfig } from 'vitest/config';

const HOUR = 3_600_000;

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: HOUR,
    hookTimeout: HOUR,
    // As in npm test: left to itself, one core of two would stand idle.
    maxWorkers: '100%',
  },
});
