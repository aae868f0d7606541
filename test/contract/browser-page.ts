import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build, type Rolldown } from 'vite';

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

export interface OpenPage {
  readonly page: Page;
  /** Another page of the same profile: a second tab; under another name, of another origin. */
  readonly another: (host?: string) => Promise<Page>;
  readonly close: () => Promise<void>;
}

/**
 * A module bundled as the app is, in a fresh Chromium, on a page from loopback: IndexedDB and
 * WebCrypto need a secure context, which loopback is.
 */
export async function openPage(entry: string): Promise<OpenPage> {
  const server = await serve(await bundle(entry));
  const executablePath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
  const browser = await chromium.launch({ executablePath, args: flags });
  const context = await browser.newContext();
  const { port } = server.address() as AddressInfo;
  const another = async (host = '127.0.0.1') => {
    const page = await context.newPage();
    await page.goto(`http://${host}:${port}/`);
    await page.waitForFunction('globalThis.ready === true');
    return page;
  };
  return { page: await another(), another, close: () => closeAll(browser, server) };
}

async function bundle(entry: string): Promise<string> {
  const output = (await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, minify: false, lib: { entry, formats: ['es'], fileName: 'page' } },
  })) as Rolldown.RolldownOutput[];
  const [chunk] = output[0]?.output ?? [];
  if (chunk?.type !== 'chunk') throw new Error(`nothing was built from ${entry}`);
  return chunk.code;
}

const html =
  '<!doctype html><meta charset="utf-8"><title>page</title><script type="module" src="/page.js"></script>';

function serve(script: string): Promise<Server> {
  const server = createServer((request, response) => {
    const [type, body] =
      request.url === '/page.js' ? ['text/javascript', script] : ['text/html', html];
    response.writeHead(200, { 'content-type': `${type}; charset=utf-8` }).end(body);
  });
  return new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => resolve(server));
  });
}

async function closeAll(browser: Browser, server: Server): Promise<void> {
  await browser.close();
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
}
