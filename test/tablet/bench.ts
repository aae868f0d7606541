import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { offline } from '../../vite.offline.ts';
import type {} from './hands.ts';

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A server that can be killed, and browsers with profiles of their own, all in one folder. */
export class Bench {
  private readonly folder = mkdtempSync(join(tmpdir(), 'tallyround-tablet-'));
  private readonly page = join(this.folder, 'page');
  readonly data = join(this.folder, 'data');
  private readonly contexts = new Set<BrowserContext>();
  private server: ChildProcess | undefined;
  port = 0;

  /** `home`: over TLS, with a certificate of the home's own. */
  constructor(private readonly how: 'loopback' | 'home' = 'loopback') {}

  get url(): string {
    return `${this.how === 'home' ? 'https' : 'http'}://localhost:${this.port}`;
  }

  /** Builds the harness as the app is built, service worker and all. */
  async prepare(): Promise<void> {
    await build({
      configFile: false,
      logLevel: 'error',
      root: fileURLToPath(new URL('harness', import.meta.url)),
      publicDir: fileURLToPath(new URL('../../src/app/public', import.meta.url)),
      plugins: [offline()],
      build: {
        outDir: this.page,
        emptyOutDir: true,
        assetsInlineLimit: 0,
        minify: false,
        target: 'es2022',
      },
    });
    this.port = await freePort();
  }

  async startServer(): Promise<void> {
    const script = fileURLToPath(new URL('serve.ts', import.meta.url));
    const home = this.how === 'home' ? ['--home-network', '--host', '127.0.0.1'] : [];
    const options = [
      '--port',
      String(this.port),
      '--guide-port',
      '0',
      '--data',
      this.data,
      ...home,
    ];
    const args = ['--import', 'tsx', script, ...options, this.page];
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    this.server = child;
    await new Promise<void>((resolve, reject) => {
      let said = '';
      child.stdout.on('data', (bytes: Buffer) => {
        said += bytes.toString();
        if (said.includes('listening')) resolve();
      });
      child.stderr.on('data', (bytes: Buffer) => void (said += bytes.toString()));
      child.on('exit', (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
    });
  }

  /** As when the plug is pulled. */
  async killServer(): Promise<void> {
    const { server } = this;
    if (!server) return;
    this.server = undefined;
    const gone = new Promise((resolve) => server.once('exit', resolve));
    server.kill('SIGKILL');
    await gone;
  }

  profile(name: string): string {
    return join(this.folder, name);
  }

  /** A browser on a profile that outlives it. */
  async browser(name: string, more: readonly string[] = []): Promise<BrowserContext> {
    const executablePath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
    const context = await chromium.launchPersistentContext(this.profile(name), {
      executablePath,
      args: [...flags, ...more],
      headless: true,
    });
    this.contexts.add(context);
    context.on('close', () => this.contexts.delete(context));
    return context;
  }

  async end(): Promise<void> {
    for (const context of this.contexts) await context.close();
    await this.killServer();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** Opens the harness in a tab, and waits until it knows where it stands. */
export async function openTab(context: BrowserContext, url: string): Promise<Page> {
  const page =
    context.pages().find((each) => each.url() === 'about:blank') ?? (await context.newPage());
  await page.goto(url);
  await ready(page);
  return page;
}

/** As when the battery goes: no page hears of it. */
export async function killBrowser(context: BrowserContext, page: Page): Promise<void> {
  const closed = new Promise((resolve) => context.once('close', resolve));
  const session = await context.newCDPSession(page);
  await session.send('Browser.crash').catch(() => undefined);
  await closed;
}

/** Asked again and again from here: the page's own policy forbids it to evaluate what we send as text. */
export async function waitUntil(
  met: () => Promise<boolean>,
  ms = 10_000,
  tell: () => Promise<unknown> = () => Promise.resolve(met.toString()),
): Promise<void> {
  const end = performance.now() + ms;
  while (!(await met().catch(() => false))) {
    if (performance.now() > end)
      throw new Error(`not within ${ms} ms: ${JSON.stringify(await tell(), null, 1)}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

export const ready = (page: Page): Promise<void> =>
  waitUntil(() => page.evaluate(() => globalThis.harness.tablet.state.get().stage !== 'starting'));

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}
