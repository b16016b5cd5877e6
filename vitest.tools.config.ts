/** Whole files, read by tools that others wrote: `npm run test:tools`. Needs Debian's qpdf and poppler-utils, and fails without them. */

import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/tools/*.tools.ts'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
    fileParallelism: false,
  },
});
