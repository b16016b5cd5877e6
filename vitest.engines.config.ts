/** The page in the engines that browsers are made of: `npm run test:engines`. Those that are not there it names. */

import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/page/engines/*.engine.ts'],
    testTimeout: 600_000,
    fileParallelism: false,
  },
});
