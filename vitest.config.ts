import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 30_000,
    // Some build the program first, which takes some seconds and on a busy machine more.
    hookTimeout: 120_000,
    // The files need nothing of one another; left to itself, one core of two would stand idle.
    maxWorkers: '100%',
    // Nor do they leave anything behind: loading the program and the tools anew for each took a third of the time.
    isolate: false,
  },
});
