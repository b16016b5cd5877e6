/** The property tests alone, with time for many runs: `npm run test:long` gives the runs and the seed. */

import { defineConfig } from 'vitest/config';

const HOUR = 3_600_000;

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: HOUR,
  },
});
