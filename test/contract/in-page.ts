import { aesCipher, importTabletKey } from '../../src/ledger/stores/browser/cipher.ts';
import { BrowserStore } from '../../src/ledger/stores/browser/store.ts';
import { browserCases } from './browser-cases.ts';
import { cases, type Place } from './cases.ts';
import { service } from './facts.ts';

/** Runs in the page: the same cases, each on a database of its own. */
const all = [...cases, ...browserCases];

async function place(name: string): Promise<Place & { readonly closeAll: () => Promise<void> }> {
  const cipher = aesCipher(await importTabletKey(new Uint8Array(32).fill(7)), 'T0000001');
  const opened: BrowserStore[] = [];
  return {
    open: async () => {
      const store = await BrowserStore.open({ name, service, format: 1, cipher });
      opened.push(store);
      return store;
    },
    closeAll: async () => {
      for (const store of opened) await store.close();
    },
  };
}

async function runCase(index: number): Promise<string | undefined> {
  const here = await place(`case-${index}`);
  try {
    await all[index]?.run(here);
    return undefined;
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  } finally {
    await here.closeAll();
  }
}

Object.assign(globalThis, { runCase, ready: true });
