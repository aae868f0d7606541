import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Caller } from './caller.ts';
import { moved, TabletCopy } from './facts.ts';
import { clear, type Home, MANAGER, pinOf, startHome, WORKER } from './home.ts';

let home: Home;
beforeEach(async () => {
  home = await startHome({ heartbeat: 50 });
});
afterEach(async () => {
  await home.stop();
  clear(home);
});

async function newTablet() {
  const caller = home.caller();
  await caller.signIn(MANAGER, pinOf(MANAGER));
  const enrolled = await caller.enrol();
  return { caller, enrolled, copy: await new TabletCopy(caller, home.clock).begin(enrolled) };
}

/** Listens as EventSource does: with the cookie, without the sync key. */
async function listen(caller: Caller) {
  const cookie = [...caller.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
  const answer = await fetch(`${home.url}/live`, { headers: { cookie } });
  const heard = {
    text: '',
    ended: false,
    status: answer.status,
    type: answer.headers.get('content-type'),
  };
  const reading = (async () => {
    const decoder = new TextDecoder();
    try {
      for await (const bytes of answer.body ?? []) heard.text += decoder.decode(bytes);
    } finally {
      heard.ended = true;
    }
  })();
  reading.catch(() => undefined);
  return heard;
}

async function until(met: () => boolean, ms: number): Promise<number> {
  const start = performance.now();
  while (!met()) {
    if (performance.now() - start > ms) throw new Error(`not within ${ms} ms`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  return performance.now() - start;
}

describe('live updates', () => {
  it('tell a second tablet within a second, by how far and nothing else', async () => {
    // Without the heartbeat, which would notice it too.
    await home.stop();
    home = await startHome({ heartbeat: 60_000 });
    const [a, b] = [await newTablet(), await newTablet()];
    await b.copy.sync();
    const heard = await listen(b.caller);
    expect([heard.status, heard.type]).toEqual([200, 'text/event-stream']);
    await until(() => heard.text.includes('"position":4'), 1000);
    await a.copy.write(WORKER, moved('tamsin01'));
    await a.copy.sync();
    const took = await until(() => heard.text.includes('"position":5'), 1000);
    await b.copy.sync();
    expect((await b.copy.store.head()).chain).toBe((await a.copy.store.head()).chain);
    expect(took).toBeLessThan(1000);
    const said = heard.text
      .replace(/: beat\n\n/g, '')
      .trim()
      .split('\n\n');
    for (const event of said)
      expect(event).toMatch(/^event: head\ndata: \{"position":\d+,"chain":"[\w-]{43}"\}$/);
  });

  it('give signs of life, and notice what another program has written', async () => {
    const { caller } = await newTablet();
    const heard = await listen(caller);
    await until(() => heard.text.split(': beat').length > 3, 2000);
    await home.tell([moved('corwen02')]);
    await until(() => heard.text.includes('"position":5'), 2000);
  });

  it('end when the tablet is retired, and when the server stops', async () => {
    const [a, b] = [await newTablet(), await newTablet()];
    const [one, two] = [await listen(a.caller), await listen(b.caller)];
    await b.caller.call('POST', `/devices/${a.enrolled.device}/retire`, { body: { lost: false } });
    await until(() => one.ended, 1000);
    expect(two.ended).toBe(false);
    expect((await listen(a.caller)).status).toBe(403);
    const start = performance.now();
    await home.app.close();
    expect(performance.now() - start).toBeLessThan(1000);
    await until(() => two.ended, 1000);
  });

  it('answer no HEAD, whose endless body nobody would ever close', async () => {
    const { caller } = await newTablet();
    const held = () => process.getActiveResourcesInfo().filter((each) => each === 'Timeout').length;
    const before = held();
    for (let i = 0; i < 30; i += 1) {
      const headers = caller.credentials();
      expect((await fetch(`${home.url}/live`, { method: 'HEAD', headers })).status).toBe(404);
    }
    expect(held() - before).toBeLessThan(10);
  });

  it('go to a few listeners of one tablet: a new one ends the oldest', async () => {
    const [a, b] = [await newTablet(), await newTablet()];
    const other = await listen(b.caller);
    const all: Awaited<ReturnType<typeof listen>>[] = [];
    for (let i = 0; i < 12; i += 1) all.push(await listen(a.caller));
    await until(() => all.filter(({ ended }) => ended).length === 8, 2000);
    await home.tell([moved('corwen02')]);
    await until(() => all.slice(8).every(({ text }) => text.includes('"position":5')), 2000);
    expect(all.map(({ ended }) => ended)).toEqual([
      ...Array<boolean>(8).fill(true),
      ...Array<boolean>(4).fill(false),
    ]);
    expect(other.ended).toBe(false);
  });

  it('look at the ledger once for all who listen', async () => {
    const { caller } = await newTablet();
    const all: Awaited<ReturnType<typeof listen>>[] = [];
    for (let i = 0; i < 4; i += 1) all.push(await listen(caller));
    const { store } = home.parts.ledger;
    const looking = store.head.bind(store);
    let looks = 0;
    store.head = () => {
      looks += 1;
      return looking();
    };
    const beats = () => all[0]?.text.split(': beat').length ?? 0;
    const [heard, start] = [beats(), looks];
    await until(() => beats() - heard >= 10, 5000);
    expect(looks - start).toBeGreaterThanOrEqual(8);
    expect(looks - start).toBeLessThanOrEqual(13);
    expect(all.every(({ text }) => text.split(': beat').length > 8)).toBe(true);
  });

  it('are refused without a tablet’s cookie', async () => {
    expect((await listen(home.caller())).status).toBe(401);
  });
});
