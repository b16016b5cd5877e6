/** The tests of the page in a real browser: `npm run test:page`. They need Debian's chromium, and fail without it. */

import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/page/browser/*.browser.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // A browser mostly waits for the page; with more of them, what is timed says little.
    maxWorkers: 2,
  },
});
