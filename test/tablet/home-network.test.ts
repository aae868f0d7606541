import { createHash, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Bench, openTab, ready, waitUntil } from './bench.ts';
import { hands, WORKER } from './hands.ts';

const bench = new Bench('home');
beforeAll(async () => {
  await bench.prepare();
  await bench.startServer();
}, 120_000);
afterAll(() => bench.end());

/** Makes Chromium trust this server's key, as a tablet does that was led to the home's authority. */
function trusting(): string {
  const pem = readFileSync(join(bench.data, 'tls', 'server.pem'));
  const der = new X509Certificate(pem).publicKey.export({ type: 'spki', format: 'der' });
  const pin = createHash('sha256').update(der).digest('base64');
  return `--ignore-certificate-errors-spki-list=${pin}`;
}

describe('a tablet in the home’s network', { timeout: 60_000 }, () => {
  it('has all it needs over the home’s own TLS, and opens without the server', async () => {
    const context = await bench.browser('tablet', [trusting()]);
    const page = await openTab(context, bench.url);
    let tablet = hands(page);
    expect(await page.evaluate(() => globalThis.isSecureContext)).toBe(true);
    expect(await tablet.enrol()).toEqual({ ok: true });
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    await tablet.until((s) => s.online && s.session);
    const cookies = await context.cookies();
    expect(cookies.map(({ name }) => name).sort()).toEqual([
      '__Host-tallyround_session',
      '__Host-tallyround_tablet',
    ]);
    expect(cookies.every(({ secure, httpOnly }) => secure && httpOnly)).toBe(true);
    await waitUntil(() => page.evaluate(() => navigator.serviceWorker.controller !== null));
    await bench.killServer();
    await page.reload();
    await ready(page);
    tablet = hands(page);
    expect(await tablet.signIn(WORKER)).toEqual({ ok: true });
    expect(await tablet.write('person40', 'Mabyn Oake')).toMatchObject({ ok: true });
    await bench.startServer();
    await tablet.sync();
    await tablet.until((s) => s.waiting === 0 && s.online);
  });

  it('is not one to a browser that does not trust the home', async () => {
    const stranger = await bench.browser('stranger');
    const page = stranger.pages()[0] ?? (await stranger.newPage());
    await expect(page.goto(bench.url)).rejects.toThrow('ERR_CERT_AUTHORITY_INVALID');
  });
});
