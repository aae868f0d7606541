import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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

export interface View extends BrowserContextOptions {
  readonly width: number;
  readonly height: number;
}

export interface Gallery {
  /** Opens `?show=…` and waits for its fonts. Anything said on the console as an error fails the test. */
  readonly open: (query: string, view: View) => Promise<Page>;
  readonly close: () => Promise<void>;
}

/** Builds the gallery, serves it on a free port under a strict policy, and starts a browser. */
export async function openGallery(): Promise<Gallery> {
  const outDir = await mkdtemp(join(tmpdir(), 'gallery-'));
  const shared = { configFile: 'vite.gallery.config.ts', logLevel: 'warn' } as const;
  await build({ ...shared, build: { outDir, emptyOutDir: true } });
  const server = await preview({
    ...shared,
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1', headers: { 'Content-Security-Policy': policy } },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('the gallery has no port');
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: flags });
  return {
    open: (query, view) =>
      openPage(browser, `http://127.0.0.1:${address.port}/gallery/?${query}`, view),
    close: async () => {
      await browser.close();
      await server.close();
      await rm(outDir, { recursive: true });
    },
  };
}

async function openPage(browser: Browser, url: string, view: View): Promise<Page> {
  const { width, height, ...options } = view;
  const context = await browser.newContext({ viewport: { width, height }, ...options });
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

/** Closes a page with the context it was opened in. */
export async function closePage(page: Page): Promise<void> {
  await page.context().close();
}

export const everyPage = [
  'frame',
  'bedside',
  'form',
  'list',
  'page',
  'sheet',
  'now',
  'round',
  'turn-who',
  'turn-willing',
  'turn-kit',
  'turn-throat',
  'turn-nose',
  'turn-stopped',
] as const;

/** Phone, tablet, desk; then the tablet standing and the desk at 200 % zoom, in CSS pixels. */
export const everySize = [
  { name: '320 px', width: 320, height: 640 },
  { name: '820 px', width: 820, height: 1180 },
  { name: '1280 px', width: 1280, height: 800 },
  { name: '820 px at 200 %', width: 410, height: 590 },
  { name: '1280 px at 200 %', width: 640, height: 400 },
] as const;
