import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'demo/**/*.test.ts', 'scripts/**/*.test.ts', 'test/contract/**/*.test.ts', 'test/server/**/*.test.ts', 'test/tablet/**/*.test.ts', 'test/histories/**/*.test.ts'],
    testTimeout: 20_000,
    // Two cores are the machine we build for; more workers than that only fight.
    maxWorkers: 2,
  },
});
