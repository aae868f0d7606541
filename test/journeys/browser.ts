import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { build, preview } from 'vite';

/** As strict as the server's own policy has to be: nothing inline, nothing from elsewhere. */
const policy =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data: blob:; connect-src 'self'";

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export interface Rehearsal {
  /** Signs in as a demo colleague and goes to an address in the app. */
  readonly open: (me: string, path: string, options?: BrowserContextOptions) => Promise<Page>;
  readonly close: () => Promise<void>;
}

interface BareFact {
  readonly id: string;
  readonly kind: string;
  readonly data: {
    readonly test: string;
    readonly code?: string;
    readonly person?: string;
    readonly delivery?: string;
    readonly turn?: string;
    readonly box?: string;
  };
}

/** What the rehearsal lays open on its page's `globalThis`, for a test inside `page.evaluate`: in bare strings. */
export interface RehearsalPage {
  readonly rehearsal: {
    send(people: readonly string[]): Promise<{ round: string; codes: string[] }>;
    plan(people: readonly string[]): Promise<string>;
    /** Resolves to the code of the kit, where one was opened. */
    swab(round: string, person: string): Promise<string | undefined>;
    pack(round: string, code: string): Promise<unknown>;
    freeCodes(count: number): string[];
    setOpening(opening: boolean): void;
    arrive(fact: { kind: string; data: object; with?: readonly string[] }, by: string): unknown;
    desk(): {
      now(): string;
      readonly home: {
        readonly known: ReadonlyMap<string, BareFact>;
        readonly shelves: ReadonlyMap<
          string,
          ReadonlyMap<string, { readonly facts: Iterable<BareFact> }>
        >;
      };
    };
  };
}

/**
 * The whole app on the demo home in memory, built as it is for production and served on a free port
 * under a strict policy, in a browser of its own. Anything said on the console as an error fails the test.
 */
export async function openRehearsal(): Promise<Rehearsal> {
  const outDir = await mkdtemp(join(tmpdir(), 'rehearsal-'));
  const shared = { configFile: 'vite.config.ts', logLevel: 'warn' } as const;
  await build({
    ...shared,
    build: {
      outDir,
      emptyOutDir: true,
      rolldownOptions: { input: 'src/app/rehearsal/index.html' },
    },
  });
  const server = await preview({
    ...shared,
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1', headers: { 'Content-Security-Policy': policy } },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('the rehearsal has no port');
  const executablePath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
  const browser = await chromium.launch({ executablePath, args: flags });
  const base = `http://127.0.0.1:${address.port}/rehearsal/`;
  return {
    open: (me, path, options) => openPage(browser, `${base}?me=${me}#${path}`, options),
    close: async () => {
      await browser.close();
      await server.close();
      await rm(outDir, { recursive: true });
    },
  };
}

async function openPage(
  browser: Browser,
  url: string,
  options: BrowserContextOptions = {},
): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 820, height: 1180 },
    locale: 'en-GB',
    ...options,
  });
  const page = await context.newPage();
  page.on('console', (message) => {
    if (message.type() === 'error') throw new Error(`${url}: ${message.text()}`);
  });
  page.on('pageerror', (error) => {
    throw error;
  });
  await page.goto(url);
  await page.evaluate(() => document.fonts.ready);
  return page;
}

/** Goes to an address in the app without loading it anew: what is in memory stays. */
export async function goTo(page: Page, path: string): Promise<void> {
  await page.evaluate(async (hash) => {
    if (location.hash === `#${hash}`) return;
    const arrived = new Promise((resolve) => {
      addEventListener('hashchange', resolve, { once: true });
    });
    location.hash = hash;
    await arrived;
    for (const _ of ['drawn', 'shown'])
      await new Promise((resolve) => requestAnimationFrame(resolve));
  }, path);
}

/** Closes a page with the context it was opened in. */
export async function closePage(page: Page): Promise<void> {
  await page.context().close();
}

/** What axe-core finds by every rule it has by default (WCAG 2.0 to 2.2 A and AA, and best practice), or by some. */
export async function violations(page: Page, only?: readonly string[]): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page });
  const { violations: found } = await (only === undefined
    ? axe
    : axe.withRules([...only])
  ).analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`);
}

/**
 * A barcode scanner's keys, 8 ms apart by the device's own clock however slow the machine that runs the
 * test, with Enter at the end.
 */
export async function scan(page: Page, code: string): Promise<void> {
  const device = await page.context().newCDPSession(page);
  const start = Date.now() / 1000;
  for (const [i, key] of [...Array.from(code), 'Enter'].entries()) {
    const timestamp = start + i * 0.008;
    const shared =
      key === 'Enter'
        ? { key, code: key, windowsVirtualKeyCode: 13, text: '\r' }
        : { key, text: key };
    await device.send('Input.dispatchKeyEvent', { type: 'keyDown', timestamp, ...shared });
    await device.send('Input.dispatchKeyEvent', { type: 'keyUp', timestamp, ...shared });
  }
  await device.detach();
}

/** Phone, tablet, desk, in CSS pixels. */
export const everySize = [
  { name: '320 px', width: 320, height: 640 },
  { name: '820 px', width: 820, height: 1180 },
  { name: '1280 px', width: 1280, height: 800 },
] as const;
