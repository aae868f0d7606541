import { defineConfig } from 'vitest/config';

// Journeys drive a real browser. One file at a time: two browsers on two cores only fight.
export default defineConfig({
  test: {
    include: ['test/journeys/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    fileParallelism: false,
  },
});
