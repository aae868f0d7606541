import { defineConfig } from 'vitest/config';

const unit = [
  'src/**/*.test.ts',
  'demo/**/*.test.ts',
  'bench/**/*.test.ts',
  'scripts/**/*.test.ts',
  'test/oracle/**/*.test.ts',
  'test/contract/**/*.test.ts',
  'test/server/**/*.test.ts',
  'test/histories/**/*.test.ts',
  'test/simulation/**/*.test.ts',
  'test/docs/**/*.test.ts',
  'test/paper/**/*.test.ts',
];
/** Tests that drive a real Chromium: one at a time, or two cores start to miss their clocks. */
const browser = [
  'test/journeys/**/*.test.ts',
  'test/tablet/**/*.test.ts',
  'test/contract/browser.test.ts',
];

export default defineConfig({
  test: {
    // Two cores are the machine we build for; more workers than that only fight.
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'unit',
          include: unit,
          exclude: browser,
          testTimeout: 90_000,
          setupFiles: ['test/same-questions.ts'],
        },
      },
      {
        test: {
          name: 'browser',
          include: browser,
          testTimeout: 240_000,
          expect: { poll: { timeout: 30_000 } },
          hookTimeout: 300_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
