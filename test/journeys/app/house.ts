import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium } from 'playwright-core';
import type { Day } from '../../../src/care/time.ts';
import { momentOf } from '../../../src/care/time.ts';
import { TabletHand } from './tablet-hand.ts';

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const root = join(import.meta.dirname, '..', '..', '..');

/** The demo home on a real server, with tablets in real browsers. It is nine in the morning there. */
export class House {
  readonly #folder = mkdtempSync(join(tmpdir(), 'tallyround-house-'));
  readonly #contexts = new Set<BrowserContext>();
  #server: ChildProcess | undefined;
  #port = 0;
  /** The day on which everything happens: today, but at nine in the morning when the house opens. */
  readonly day = new Date().toISOString().slice(0, 10) as Day;
  #off = Date.parse(momentOf(this.day, '09:00', 'Europe/London')) - Date.now();

  /** A film (y4m) that every browser opened from now on has for a camera. */
  film: string | undefined;

  private constructor(private readonly options: readonly string[]) {}

  get url(): string {
    return `http://localhost:${this.#port}`;
  }

  /** `options`: more of the server's own. */
  static async open(...options: readonly string[]): Promise<House> {
    const house = new House(options);
    const built = spawnSync(process.execPath, ['scripts/build.mjs'], {
      cwd: root,
      encoding: 'utf8',
    });
    if (built.status !== 0) throw new Error(built.stdout + built.stderr);
    house.#port = await freePort();
    await house.startServer();
    return house;
  }

  async startServer(): Promise<void> {
    const args = ['--import', 'tsx', join(import.meta.dirname, 'serve.ts')];
    const own = [String(this.#off), join(root, 'dist', 'app')];
    const options = [
      ...['--port', String(this.#port), '--data', join(this.#folder, 'data')],
      ...this.options,
    ];
    const child = spawn(process.execPath, [...args, ...own, ...options], { cwd: root });
    this.#server = child;
    await new Promise<void>((resolve, reject) => {
      let said = '';
      const hear = (bytes: Buffer) => {
        said += bytes.toString();
        if (said.includes('listening')) resolve();
      };
      child.stdout.on('data', hear);
      child.stderr.on('data', hear);
      child.on('exit', (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
    });
  }

  /** As when the plug is pulled. */
  async killServer(): Promise<void> {
    const server = this.#server;
    if (server === undefined) return;
    this.#server = undefined;
    const gone = new Promise((resolve) => server.once('exit', resolve));
    server.kill('SIGKILL');
    await gone;
  }

  /** The wall clock of the house is set forward to a time of the day (or of a later day). */
  async clock(time: string, day: Day = this.day): Promise<void> {
    await this.clockAt(Date.parse(momentOf(day, time, 'Europe/London')));
  }

  /** What time it is in the house, ms since 1970. */
  now(): number {
    return Date.now() + this.#off;
  }

  /** Sets it to the millisecond. */
  async clockAt(ms: number): Promise<void> {
    this.#off = ms - Date.now();
    this.#server?.stdin?.write(`clock ${this.#off}\n`);
    for (const context of this.#contexts) {
      for (const page of context.pages()) {
        await page.evaluate(
          (off) => globalThis.localStorage.setItem('test-clock', String(off)),
          this.#off,
        );
      }
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }

  /** A browser with a profile that outlives it, on the clock of the house. */
  async browser(
    profile: string,
    options: { width?: number; height?: number; dark?: boolean } = {},
  ): Promise<BrowserContext> {
    const { width = 820, height = 1180, dark = false } = options;
    const context = await chromium.launchPersistentContext(join(this.#folder, profile), {
      executablePath: process.env['TALLYROUND_CHROMIUM'] ?? '/usr/bin/chromium',
      args: [
        ...flags,
        ...(this.film === undefined
          ? []
          : [
              '--use-fake-ui-for-media-stream',
              '--use-fake-device-for-media-stream',
              `--use-file-for-fake-video-capture=${this.film}`,
            ]),
      ],
      headless: true,
      viewport: { width, height },
      colorScheme: dark ? 'dark' : 'light',
      reducedMotion: 'reduce',
    });
    context.setDefaultTimeout(20_000);
    this.#contexts.add(context);
    context.on('close', () => this.#contexts.delete(context));
    await context.addInitScript(shiftClock, this.#off);
    return context;
  }

  /** A tablet that a manager has set up, open at Now. */
  async tablet(profile: string, name = profile): Promise<TabletHand> {
    const hand = await TabletHand.open(this, profile);
    await hand.enrol(name);
    return hand;
  }

  async close(): Promise<void> {
    for (const context of this.#contexts) await context.close();
    await this.killServer();
    rmSync(this.#folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** In the page: the device's clock stands off from the machine's, and may be set while it runs. */
function shiftClock(start: number): void {
  const real = Date.now.bind(Date);
  const off = () => Number(globalThis.localStorage.getItem('test-clock') ?? start);
  Date.now = () => real() + off();
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}
