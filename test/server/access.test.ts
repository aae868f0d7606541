import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { clear, type Home, MANAGER, pinOf, startHome, WORKER } from './home.ts';

let home: Home;
let appFolder: string;
beforeAll(async () => {
  appFolder = mkdtempSync(join(tmpdir(), 'tallyround-app-'));
  mkdirSync(join(appFolder, 'assets'));
  writeFileSync(join(appFolder, 'index.html'), '<!doctype html><title>Tallyround</title>');
  writeFileSync(join(appFolder, 'sw.js'), '// worker');
  writeFileSync(join(appFolder, 'assets', 'index-DxK2_8fA.js'), '// app');
  home = await startHome({ appFolder });
});
afterAll(async () => {
  await home.stop();
  clear(home);
  rmSync(appFolder, { recursive: true });
});

/** Calls with headers that fetch would not let through, such as Host. */
const raw = (options: {
  readonly path: string;
  readonly method?: string;
  readonly headers?: Record<string, string>;
}) =>
  new Promise<number>((resolve, reject) => {
    const { port } = new URL(home.url);
    request({ host: '127.0.0.1', port, ...options }, (answer) => {
      answer.resume();
      resolve(answer.statusCode ?? 0);
    })
      .on('error', reject)
      .end();
  });

/** The calls that README's table lists, as `GET /me` to who may call it. */
function tableOfCalls(): ReadonlyMap<string, string> {
  const page = readFileSync(new URL('../../src/server/README.md', import.meta.url), 'utf8');
  const rows = page.matchAll(/^\| `([A-Z]+ \/\S*)`\s+\| (\S+)\s+\|/gm);
  return new Map([...rows].map(([, call = '', access = '']) => [call, access]));
}

const fill = (url: string) => url.replace(':staff', WORKER).replace(':id', 'T0000000');
const optionsFor = (method: string) => (method === 'GET' ? {} : { body: {} });

describe('without a session or a tablet’s credential', () => {
  it('no call is answered but the few that lead to one', async () => {
    for (const { method, url, access } of home.app.calls) {
      const heard = await home.caller().call(method, fill(url), optionsFor(method));
      if (access === 'open') expect(['/healthz', '/sign-in', '/sign-out']).toContain(url);
      else expect([method, url, heard.status]).toEqual([method, url, 401]);
    }
  });

  it('what may be called by whom is what the README says', () => {
    const calls = home.app.calls.map(({ method, url, access }) => [`${method} ${url}`, access]);
    expect(new Map(calls as [string, string][])).toEqual(tableOfCalls());
  });

  it('a call that does not exist looks like one that does', async () => {
    expect((await home.caller().call('GET', '/people')).status).toBe(401);
    expect((await home.caller().call('POST', '/people', { body: {} })).status).toBe(401);
    const caller = home.caller();
    await caller.signIn(WORKER, pinOf(WORKER));
    expect((await caller.call('GET', '/people')).status).toBe(404);
  });

  it('a worker’s session opens no manager’s call', async () => {
    const caller = home.caller();
    await caller.signIn(WORKER, pinOf(WORKER));
    const theirs = home.app.calls.filter(({ access }) => access === 'manager');
    expect(theirs.length).toBeGreaterThan(5);
    for (const { method, url } of theirs) {
      const heard = await caller.call(method, fill(url), optionsFor(method));
      expect([url, heard.status, heard.body]).toEqual([url, 403, { reason: 'needs-manager' }]);
    }
    expect((await caller.call('POST', '/sync', { body: {} })).status).toBe(401);
  });
});

describe('the app’s files', () => {
  it('are there for everybody, with the page at any address a person may open', async () => {
    for (const path of ['/', '/rounds/today']) {
      const heard = await home.caller().call('GET', path, { headers: { accept: 'text/html' } });
      expect([heard.status, heard.headers.get('cache-control')]).toEqual([200, 'no-cache']);
      expect(heard.body['text']).toContain('Tallyround');
    }
  });

  it('are kept for ever when named after their content, and asked for again when not', async () => {
    const cache = async (path: string) =>
      (await home.caller().call('GET', path)).headers.get('cache-control');
    expect(await cache('/assets/index-DxK2_8fA.js')).toBe('public, max-age=31536000, immutable');
    expect(await cache('/sw.js')).toBe('no-cache');
  });

  it('cannot be climbed out of', async () => {
    for (const path of [
      '/../ledger.sqlite',
      '/%2e%2e/ledger.sqlite',
      '/assets/..%2f..%2fledger.sqlite',
    ])
      expect(await raw({ path })).not.toBe(200);
  });

  it('come with headers that let the page run its own code only', async () => {
    const { headers } = await home.caller().call('GET', '/', { headers: { accept: 'text/html' } });
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe-inline');
    expect(policy).not.toContain("'unsafe-eval'");
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('permissions-policy')).toContain('camera=(self), microphone=()');
    expect(headers.get('strict-transport-security')).toBeNull();
  });
});

describe('calls from elsewhere', () => {
  const body = () => ({ body: { who: { staff: WORKER }, pin: pinOf(WORKER) } });

  it('by another page are turned away, even with everything they need', async () => {
    for (const headers of [
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
      { 'sec-fetch-site': 'none' },
    ]) {
      const heard = await home.caller().call('POST', '/sign-in', { ...body(), headers });
      expect([heard.status, heard.body]).toEqual([403, { reason: 'other-page' }]);
    }
    expect(
      await raw({
        path: '/sign-out',
        method: 'POST',
        headers: { origin: 'https://elsewhere.example' },
      }),
    ).toBe(403);
    expect(await raw({ path: '/sign-out', method: 'POST', headers: { origin: 'null' } })).toBe(403);
    const manager = home.caller();
    await manager.signIn(MANAGER, pinOf(MANAGER));
    const heard = await manager.call('GET', '/devices', {
      headers: { 'sec-fetch-site': 'cross-site' },
    });
    expect(heard.status).toBe(403);
  });

  it('by a page that points a name of its own at this machine are turned away', async () => {
    expect(await raw({ path: '/healthz', headers: { host: 'rebound.example' } })).toBe(421);
    for (const host of ['localhost:1234', '127.0.0.1', '[::1]:8080', '192.168.1.20'])
      expect([host, await raw({ path: '/healthz', headers: { host } })]).toEqual([host, 200]);
  });
});
