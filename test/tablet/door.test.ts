import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SESSION_KEY_HEADER } from '../../src/procedures/access/wire.ts';
import { Bench, killBrowser, openTab, ready } from './bench.ts';
import { hands, MANAGER, WORKER } from './hands.ts';

const bench = new Bench();
let context: BrowserContext;
let page: Page;
let tablet: ReturnType<typeof hands>;
let count = 0;
const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

beforeAll(async () => {
  await bench.prepare();
  await bench.startServer();
}, 120_000);
afterAll(() => bench.end());

/** Each on a tablet of its own, on which manager and worker have signed in and which is open. */
beforeEach(async () => {
  count += 1;
  context = await bench.browser(`tablet-${count}`);
  page = await openTab(context, bench.url);
  tablet = hands(page);
  expect(await tablet.enrol()).toEqual({ ok: true });
  expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
  await tablet.until((s) => s.online && s.lastMet !== undefined && s.waiting === 0);
}, 60_000);
afterEach(() => context.close());

const reopen = async () => {
  await page.reload();
  await ready(page);
};
const offline = (off: boolean) => context.setOffline(off);

describe('the door of a tablet', { timeout: 60_000 }, () => {
  it('makes even the right PIN wait after five wrong ones, through a reload', async () => {
    await tablet.lock();
    await offline(true);
    for (let i = 0; i < 5; i++)
      expect(await tablet.signIn({ ...WORKER, pin: '000001' })).toEqual({
        ok: false,
        reason: 'wrong',
      });
    expect(await tablet.signIn(WORKER)).toMatchObject({ ok: false, reason: 'wait' });
    await reopen();
    const heard = await tablet.signIn(WORKER);
    expect(heard).toMatchObject({ ok: false, reason: 'wait' });
    expect(await tablet.signIn(MANAGER)).toEqual({ ok: true });
    await tablet.lock();
    await tablet.setClock(31_000);
    await reopen();
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
  });

  it('needs the server for whoever was never here, and says so', async () => {
    await offline(true);
    const senior = { who: { name: 'Marisol Thorne' }, pin: '618204' };
    expect(await tablet.signIn(senior)).toEqual({ ok: false, reason: 'needs-contact' });
    await offline(false);
    expect(await tablet.signIn(senior)).toEqual({ ok: true });
    await offline(true);
    await tablet.lock();
    expect(await tablet.signIn({ ...senior, who: { name: 'marisol' } })).toEqual({ ok: true });
  });

  it('changes hands without losing what is on the screen, and the facts say whose', async () => {
    await page.evaluate(() => void Object.assign(globalThis, { inHand: 'step 7' }));
    expect(await tablet.write('person21', 'Hesper Quill')).toMatchObject({ ok: true });
    await offline(true);
    expect(await tablet.signIn(MANAGER)).toEqual({ ok: true });
    expect(await tablet.write('person22', 'Bram Hollow')).toMatchObject({ ok: true });
    expect(await page.evaluate(() => (globalThis as { inHand?: string }).inHand)).toBe('step 7');
    const authors = await page.evaluate(async () => {
      const ledger = globalThis.harness.tablet.ledger;
      const all = [
        ...((await ledger?.confirmed(0, 999)) ?? []),
        ...((await ledger?.pending()) ?? []),
      ];
      return all.slice(-2).map(({ body }) => (JSON.parse(body) as { by: string }).by);
    });
    expect(authors).toEqual(['jonahbee', 'ottoline']);
  });

  it('does not let one person’s session serve another: it ends with the page', async () => {
    expect(await tablet.signIn(MANAGER)).toEqual({ ok: true });
    await tablet.until((s) => s.session);
    const cookies = await context.cookies();
    expect(cookies.map(({ name }) => name).sort()).toEqual([
      'tallyround_session',
      'tallyround_tablet',
    ]);
    expect(cookies.every(({ httpOnly, sameSite }) => httpOnly && sameSite === 'Strict')).toBe(true);
    await reopen();
    const status = (key?: string) =>
      page.evaluate(
        async ([name, value]) =>
          (await fetch('/devices', { headers: value === undefined ? {} : { [name]: value } }))
            .status,
        [SESSION_KEY_HEADER, key] as const,
      );
    expect([await status(), await status('A'.repeat(43))]).toEqual([401, 401]);
  });

  it('gives a thief of its cookie nothing', async () => {
    const cookie = (await context.cookies()).find(({ name }) => name === 'tallyround_tablet');
    const pull = async (headers: Record<string, string>) =>
      (
        await fetch(`${bench.url}/sync`, {
          method: 'POST',
          headers: {
            'content-type': 'application/json',
            cookie: `${cookie?.name}=${cookie?.value}`,
            ...headers,
          },
          body: JSON.stringify({ device: (await tablet.state()).device?.id, format: 1, push: [] }),
        })
      ).status;
    expect(await pull({})).toBe(401);
    expect(await pull({ 'x-tallyround-sync': 'A'.repeat(43) })).toBe(401);
  });

  it('is one tab’s at a time; another takes it on request, and the first is locked', async () => {
    const second = await openTab(context, bench.url);
    const other = hands(second);
    expect((await other.state()).stage).toBe('elsewhere');
    expect((await tablet.state()).stage).toBe('open');
    const gone = page.waitForEvent('load');
    await second.evaluate(() => globalThis.harness.tablet.useHere());
    expect((await other.state()).stage).toBe('locked');
    await gone;
    await ready(page);
    expect((await tablet.state()).stage).toBe('elsewhere');
    expect(await other.signIn(WORKER)).toEqual({ ok: true });
    await second.close();
  });

  it('locks when nobody has touched it, later while a kit is open, and forgets the key', async () => {
    await page.evaluate(() => {
      const release = globalThis.harness.tablet.holdOpen();
      Object.assign(globalThis, { release });
    });
    await tablet.setClock(4 * MINUTE);
    await new Promise((resolve) => setTimeout(resolve, 1500));
    expect((await tablet.state()).stage).toBe('open');
    const gone = page.waitForEvent('load');
    await page.evaluate(() => (globalThis as unknown as { release: () => void }).release());
    await gone;
    await ready(page);
    expect((await tablet.state()).stage).toBe('locked');
    expect(await page.evaluate(() => globalThis.harness.tablet.ledger)).toBeUndefined();
    expect(await tablet.write('person23', 'Nobody')).toEqual({ ok: false, reason: 'locked' });
  });

  it('stays shut when it has not met the server for a week, or its clock was set back', async () => {
    await tablet.lock();
    await offline(true);
    for (const off of [7 * DAY + MINUTE, -DAY]) {
      await tablet.setClock(off);
      await reopen();
      expect([off, await tablet.signIn(WORKER)]).toEqual([
        off,
        { ok: false, reason: 'lease-over' },
      ]);
    }
    await offline(false);
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
  });

  it('opens without a signal after its clock was a year ahead, once it has met the server again', async () => {
    for (const off of [365 * DAY, 0]) {
      await tablet.lock();
      await tablet.setClock(off);
      await reopen();
      expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
      await tablet.until((s) => s.online && s.waiting === 0);
      await tablet.sync();
    }
    await tablet.lock();
    await offline(true);
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    await offline(false);
  });

  it('drops the key of whoever was asked about, though a colleague holds it when the answer comes', async () => {
    await tablet.lock();
    const office = await bench.browser(`office-${count}`);
    const desk = hands(await openTab(office, bench.url));
    expect(await desk.enrol(MANAGER, { name: 'Office' })).toEqual({ ok: true });
    let answer: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      answer = resolve;
    });
    let asked = 0;
    await context.route('**/sign-in', async (route) => {
      asked += 1;
      if (asked > 1) return route.continue();
      const response = await route.fetch();
      await held;
      return route.fulfill({ response });
    });
    await context.route('**/sync', async (route) => {
      await held;
      await route.continue();
    });
    const set = await office
      .pages()[0]
      ?.evaluate(() => globalThis.harness.tablet.calls.setPin('jonahbee' as never, '204060'));
    expect(set).toEqual({ ok: true, value: null });
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    expect(await tablet.signIn(MANAGER)).toEqual({ ok: true });
    answer();
    await tablet.until((s) => s.known.every(({ staff }) => staff !== 'jonahbee'));
    expect((await tablet.state()).known).toEqual([{ staff: 'ottoline', called: 'Ottoline' }]);
    await tablet.lock();
    await offline(true);
    expect(await tablet.signIn(MANAGER)).toEqual({ ok: true });
    await offline(false);
    const given = { ...WORKER, pin: '204060', newPin: WORKER.pin };
    expect(await tablet.signIn(given)).toEqual({ ok: true });
    await office.close();
  });

  it('asks about a clock that is wrong by a day before the first fact', async () => {
    await tablet.lock();
    await offline(true);
    await tablet.setClock(DAY + MINUTE);
    await reopen();
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    expect((await tablet.state()).clock).toMatchObject({ because: 'long-without-contact' });
    expect(await tablet.write('person24', 'Lin')).toMatchObject({ ok: false, reason: 'ask-clock' });
    const right = new Date().toISOString();
    await page.evaluate((now) => globalThis.harness.tablet.answerClock(now as never), right);
    expect((await tablet.state()).clock).toBeUndefined();
    const written = (await tablet.write('person24', 'Lin')) as { at: string };
    expect(Math.abs(Date.parse(written.at) - Date.now())).toBeLessThan(5000);
    await offline(false);
    await tablet.sync();
    await tablet.until((s) => s.waiting === 0);
  });

  it('takes the server’s time when the server is there, whatever its own clock says', async () => {
    await tablet.setClock(-2 * DAY);
    await reopen();
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    await tablet.until((s) => s.online && s.clock === undefined);
    const written = (await tablet.write('person25', 'Ona')) as { at: string };
    expect(Math.abs(Date.parse(written.at) - Date.now())).toBeLessThan(5000);
  });

  it('loses a person’s copy of the key when a manager gives them another PIN, and locks them out', async () => {
    const office = await bench.browser(`office-${count}`);
    const desk = hands(await openTab(office, bench.url));
    expect(await desk.enrol(MANAGER, { name: 'Office' })).toEqual({ ok: true });
    const set = await office
      .pages()[0]
      ?.evaluate(() => globalThis.harness.tablet.calls.setPin('jonahbee' as never, '204060'));
    expect(set).toEqual({ ok: true, value: null });
    const gone = page.waitForEvent('load');
    await tablet.sync();
    await gone;
    await ready(page);
    expect((await tablet.state()).known).toEqual([{ staff: 'ottoline', called: 'Ottoline' }]);
    expect(await tablet.signIn(WORKER)).toEqual({ ok: false, reason: 'wrong' });
    const given = { ...WORKER, pin: '204060' };
    expect(await tablet.signIn(given)).toEqual({ ok: false, reason: 'pin-must-change' });
    expect(await tablet.signIn({ ...given, newPin: '123456' })).toMatchObject({
      fault: 'too-plain',
    });
    expect(await tablet.signIn({ ...given, newPin: WORKER.pin })).toEqual({ ok: true });
    await offline(true);
    await tablet.lock();
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    await office.close();
  });

  it('is enrolled again after it lost its cookie, and nothing that it wrote is lost', async () => {
    await offline(true);
    expect(await tablet.write('person26', 'Cory Vane')).toMatchObject({ ok: true });
    const before = (await tablet.state()).device?.id;
    // Half a minute has not passed since it was enrolled: the cookie is not on the disk yet.
    await killBrowser(context, page);
    context = await bench.browser(`tablet-${count}`);
    page = await openTab(context, bench.url);
    tablet = hands(page);
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    await tablet.until((s) => s.problem?.kind === 'device-unknown' && s.waiting === 1);
    expect(await tablet.enrol()).toEqual({ ok: true });
    await tablet.until((s) => s.waiting === 0 && s.problem === undefined);
    expect((await tablet.state()).device?.id).not.toBe(before);
    expect(await tablet.names()).toContain('Cory Vane');
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
  });

  it('says so when a manager has retired it, keeps what it holds, and sends it once enrolled again', async () => {
    expect(await tablet.signIn(MANAGER)).toEqual({ ok: true });
    await tablet.until((s) => s.session);
    const retired = await page.evaluate(() => {
      const { tablet: here } = globalThis.harness;
      const id = here.state.get().device?.id ?? '';
      return here.calls.ask('POST', `/devices/${id}/retire`, { lost: true });
    });
    expect(retired).toEqual({ ok: true, value: null });
    expect(await tablet.write('person27', 'Dara Wick')).toMatchObject({ ok: true });
    await tablet.until((s) => s.problem?.kind === 'retired' && s.waiting === 1);
    // The server has deleted the tablet's key; the manager's PIN still opens it here.
    expect(await tablet.enrol()).toEqual({ ok: true });
    await tablet.until((s) => s.waiting === 0 && s.problem === undefined);
    expect(await tablet.names()).toContain('Dara Wick');
  });

  it('keeps the act in hand when the disk is full, then opens no new kit', async () => {
    const small = await bench.browser(`small-${count}`);
    // Before the page first asks for room: Chromium remembers the answer for half a minute.
    const blank = small.pages()[0] ?? (await small.newPage());
    const session = await small.newCDPSession(blank);
    const quotaSize = 12 * 1024 * 1024;
    await session.send('Storage.overrideQuotaForOrigin', { origin: bench.url, quotaSize });
    const tab = await openTab(small, bench.url);
    const full = hands(tab);
    expect(await full.enrol()).toEqual({ ok: true });
    await full.until((s) => s.online && s.storage.free !== undefined && s.waiting === 0);
    await small.setOffline(true);
    const photo = () =>
      tab.evaluate(() =>
        globalThis.harness.tablet.append([
          {
            kind: 'person.described',
            data: { person: 'bigphoto' as never, about: 'photo' },
            private: { value: `data:image/png;base64,${'A'.repeat(55_000)}` },
          },
        ]),
      );
    // The one that found no room was kept all the same, in the place of the ballast.
    let kept = 0;
    for (; (await full.state()).storage.room === 'enough' && kept < 400; kept++)
      expect(await photo()).toMatchObject({ ok: true });
    expect((await full.state()).storage.room).toBe('low');
    expect((await full.state()).waiting).toBe(kept);
    // Whoever goes on regardless is told, and what is there stays.
    let heard = await photo();
    for (; heard.ok && kept < 800; kept++) heard = await photo();
    expect(heard).toEqual({ ok: false, reason: 'no-room' });
    expect((await full.state()).storage.room).toBe('full');
    await full.until((s) => s.waiting === kept);
    await small.setOffline(false);
    await session.send('Storage.overrideQuotaForOrigin', { origin: bench.url });
    await small.close();
  });

  it('tells an older program to begin anew instead of reading what a newer one wrote', async () => {
    await tablet.lock();
    await page.goto(`${bench.url}/?format=0`);
    await ready(page);
    expect(await tablet.signIn(WORKER)).toEqual({ ok: false, reason: 'storage', what: 'newer' });
    expect((await tablet.state()).problem).toEqual({ kind: 'program-old' });
  });
});
