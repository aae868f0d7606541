import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Bench, killBrowser, openTab, ready, waitUntil } from './bench.ts';
import { hands, MANAGER, WORKER } from './hands.ts';
import { filesHolding } from './profile.ts';

/** One tablet's day, each step upon the last. */
const bench = new Bench();
let context: BrowserContext;
let page: Page;
beforeAll(async () => {
  await bench.prepare();
  await bench.startServer();
  context = await bench.browser('tablet');
  page = await openTab(context, bench.url);
}, 120_000);
afterAll(() => bench.end());

describe('a tablet', { timeout: 60_000 }, () => {
  it('begins as none, and is made one by a manager only', async () => {
    const tablet = hands(page);
    expect((await tablet.state()).stage).toBe('not-enrolled');
    expect(await tablet.enrol({ ...MANAGER, pin: '000001' })).toEqual({
      ok: false,
      reason: 'wrong',
    });
    expect(await tablet.enrol(WORKER)).toEqual({ ok: false, reason: 'needs-manager' });
    expect(await tablet.enrol()).toEqual({ ok: true });
    expect(await tablet.state()).toMatchObject({
      stage: 'open',
      who: { staff: 'ottoline', called: 'Ottoline' },
      device: { name: 'Hall tablet' },
      session: true,
    });
    await tablet.until((s) => s.online && s.lastMet !== undefined);
    expect(await tablet.names()).toContain('Corwen Vale');
  });

  it('opens for a colleague who signs in while the server is there', async () => {
    const tablet = hands(page);
    await tablet.lock();
    expect((await tablet.state()).known).toEqual([{ staff: 'ottoline', called: 'Ottoline' }]);
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    expect((await tablet.state()).who).toEqual({ staff: 'jonahbee', called: 'Jonah' });
  });

  it('opens again without the server, keeps what is written, through a reload and a killed browser', async () => {
    await waitUntil(() => page.evaluate(() => navigator.serviceWorker.controller !== null));
    // Chromium writes cookies down half a minute late; closed tidily, it does so at once.
    await context.close();
    context = await bench.browser('tablet');
    await bench.killServer();
    page = await openTab(context, bench.url);
    let tablet = hands(page);
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    expect(await tablet.write('person09', 'Ismay Thorne')).toMatchObject({ ok: true });
    await tablet.until((s) => s.waiting === 1 && !s.online);
    await page.reload();
    await ready(page);
    expect((await tablet.state()).stage).toBe('locked');
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    expect(await tablet.write('person10', 'Fenn Harrow')).toMatchObject({ ok: true });

    // As when the battery goes: no page hears of it.
    await killBrowser(context, page);
    context = await bench.browser('tablet');
    page = await openTab(context, bench.url);
    tablet = hands(page);
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    await tablet.until((s) => s.waiting === 2);
    expect(await tablet.names()).toEqual(expect.arrayContaining(['Ismay Thorne', 'Fenn Harrow']));
  });

  it('sends everything once the server is back, which still knows it', async () => {
    await bench.startServer();
    const tablet = hands(page);
    await tablet.sync();
    await tablet.until((s) => s.waiting === 0 && s.online && s.problem === undefined);
  });

  it('is told at once what another tablet has written, not at the next look', async () => {
    const other = await openTab(await bench.browser('other'), bench.url);
    const there = hands(other);
    expect(await there.enrol(MANAGER, { name: 'Office' })).toEqual({ ok: true });
    await there.until((s) => s.online && s.lastMet !== undefined);
    expect(await there.names()).toContain('Fenn Harrow');
    const seen = page.evaluate(
      () =>
        new Promise<number>((resolve) => {
          const start = performance.now();
          globalThis.harness.tablet.onChange(() => resolve(performance.now() - start));
        }),
    );
    await new Promise((resolve) => setTimeout(resolve, 300));
    await there.write('person11', 'Pia Lund');
    // The next look of its own accord would be 15 s away. A second is the aim; a busy machine may take longer.
    const took = (await seen) - 300;
    console.log(`another tablet's fact was seen after ${Math.round(took)} ms`);
    expect(took).toBeLessThan(8000);
    expect(await hands(page).names()).toContain('Pia Lund');
  });

  it('leaves nothing readable on the disk about anybody who is cared for', async () => {
    const tablet = hands(page);
    await tablet.lock();
    await context.close();
    const names = ['Ismay', 'Fenn Harrow', 'Pia Lund', 'Corwen', 'Marisol', 'Brack', '735160'];
    expect(filesHolding(bench.profile('tablet'), names)).toEqual([]);
    // The search finds what is there: the first names of those who sign in here.
    expect(filesHolding(bench.profile('tablet'), ['Jonah']).length).toBeGreaterThan(0);
  });
});
