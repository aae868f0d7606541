import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import { CONTENT_POLICY } from '../../../src/server/http/security-headers.ts';
import { type Grey, y4m } from './film.ts';

const flags = [
  ...['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
  ...['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'],
];

export interface CameraStudio {
  /** Opens the gallery's scan field in a browser whose camera plays this film. */
  readonly film: (frames: readonly Grey[], query?: string, show?: string) => Promise<Shown>;
  readonly close: () => Promise<void>;
}

export interface Shown {
  readonly page: Page;
  readonly requests: readonly string[];
  readonly close: () => Promise<void>;
}

/** The server's own policy, directive for directive: what works here works there. */
const policy = Object.entries(CONTENT_POLICY)
  .map(
    ([name, values]) =>
      `${name.replaceAll(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)} ${values.join(' ')}`,
  )
  .join('; ');

export async function openStudio(): Promise<CameraStudio> {
  const outDir = await mkdtemp(join(tmpdir(), 'camera-'));
  const shared = { configFile: 'vite.gallery.config.ts', logLevel: 'warn' } as const;
  await build({ ...shared, build: { outDir, emptyOutDir: true } });
  const server = await preview({
    ...shared,
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1', headers: { 'Content-Security-Policy': policy } },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('the gallery has no port');
  const url = `http://127.0.0.1:${String(address.port)}/gallery/?show=`;
  return {
    film: async (frames, query = '', show = 'camera') => {
      const path = join(outDir, `film-${String(Date.now())}.y4m`);
      await writeFile(path, y4m(frames));
      const args = [...flags, `--use-file-for-fake-video-capture=${path}`];
      const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args });
      const context = await browser.newContext({ viewport: { width: 820, height: 1180 } });
      const page = await context.newPage();
      const requests: string[] = [];
      page.on('request', (request) => requests.push(request.url()));
      page.on('pageerror', (error) => {
        throw error;
      });
      await page.goto(`${url}${show}${query}`);
      return { page, requests, close: () => browser.close() };
    },
    close: async () => {
      await server.close();
      await rm(outDir, { recursive: true });
    },
  };
}
