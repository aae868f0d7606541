import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

// Plain JavaScript without types of its own; what is used of it is written down here.
const load = (name: string): Promise<unknown> => import(new URL(name, import.meta.url).href);
const { nodeFault } = (await load('./node-version.mjs')) as {
  nodeFault: (version: string) => string | undefined;
};
const { isInstalled } = (await load('./install.mjs')) as { isInstalled: (root: string) => boolean };
const { fingerprint } = (await load('./build.mjs')) as { fingerprint: (root: string) => string };

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'tallyround-clone-'));
});
afterEach(() => rmSync(root, { recursive: true }));

const put = (path: string, text: string) => {
  mkdirSync(join(root, path, '..'), { recursive: true });
  writeFileSync(join(root, path), text);
};
const lock = (packages: object) => JSON.stringify({ packages });

describe('npm start on a fresh clone', () => {
  it('asks for a newer Node only where this one is too old', () => {
    for (const old of ['18.20.1', '20.18.9']) expect(nodeFault(old)).toContain(old);
    for (const fit of ['20.19.0', '20.20.2', '22.1.0', '26.0.0'])
      expect(nodeFault(fit)).toBeUndefined();
  });

  it('installs when a package is missing or another than the lock file names', () => {
    put('package-lock.json', lock({ '': {}, 'node_modules/a': { version: '1.0.0' } }));
    expect(isInstalled(root)).toBe(false);
    put('node_modules/.package-lock.json', lock({}));
    expect(isInstalled(root)).toBe(false);
    put('node_modules/.package-lock.json', lock({ 'node_modules/a': { version: '1.0.1' } }));
    expect(isInstalled(root)).toBe(false);
    put('node_modules/.package-lock.json', lock({ 'node_modules/a': { version: '1.0.0' } }));
    expect(isInstalled(root)).toBe(true);
  });

  it('does not wait for what other machines only need', () => {
    const other = { version: '2.0.0', optional: true };
    put('package-lock.json', lock({ '': {}, 'node_modules/b': other }));
    put('node_modules/.package-lock.json', lock({}));
    expect(isInstalled(root)).toBe(true);
  });

  it('builds again when a source has changed, moved or come, but not for a test or a text', () => {
    put('src/server/main.ts', '1');
    const first = fingerprint(root);
    put('src/server/main.test.ts', '1');
    put('src/README.md', '1');
    expect(fingerprint(root)).toBe(first);
    put('src/server/main.ts', '2');
    const second = fingerprint(root);
    put('src/server/more.ts', '');
    expect(new Set([first, second, fingerprint(root)]).size).toBe(3);
  });
});
