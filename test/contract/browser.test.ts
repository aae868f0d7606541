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

describe('in real tabs', () => {
  const call = <T>(page: OpenPage['page'], text: string) => page.evaluate<T>(`globalThis.${text}`);

  test('two that write at once make one chain, without a gap or a fork', async () => {
    const other = await opened.another();
    await Promise.all([opened.page, other].map((page) => call(page, "appendMany('tabs', 20)")));
    const seqs = await call<number[]>(other, "seqsOf('tabs')");
    expect(seqs).toEqual(Array.from({ length: 40 }, (_, n) => n + 1));
    await other.close();
  });

  test('a browser without room says so, and what was kept before is whole', async () => {
    // An origin of its own: how much room one has is remembered for a while once it was asked.
    const page = await opened.another('localhost');
    const session = await page.context().newCDPSession(page);
    const origin = `${new URL(page.url()).origin}/`;
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 8_000_000 });
    expect(await call(page, "fillUp('room')")).toEqual({ reason: 'full', sound: true });
    await session.send('Storage.overrideQuotaForOrigin', { origin });
    await page.close();
  });
});
