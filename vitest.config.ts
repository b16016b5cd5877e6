import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 30_000,
    // The files need nothing of one another; left to itself, one core of two would stand idle.
    maxWorkers: '100%',
  },
});
