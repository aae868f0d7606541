import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserCases } from './browser-cases.ts';
import { type OpenPage, openPage } from './browser-page.ts';
import { cases } from './cases.ts';

let opened: OpenPage;
beforeAll(async () => {
  opened = await openPage(fileURLToPath(new URL('in-page.ts', import.meta.url)));
}, 60_000);
afterAll(async () => {
  await opened.close();
});

describe('IndexedDB in Chromium keeps the contract', () => {
  const titles = [...cases, ...browserCases].map(({ title }, index) => [title, index] as const);
  test.each(titles)('%s', async (_title, index) => {
    const failure = await opened.page.evaluate(
      (i) =>
        (globalThis as unknown as { runCase(i: number): Promise<string | undefined> }).runCase(i),
      index,
    );
    expect(failure).toBeUndefined();
  });
});
