import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, test } from 'vitest';
import type { LedgerStore } from '../../src/ledger/store.ts';
import { MemoryStore } from '../../src/ledger/stores/memory/store.ts';
import { openSqlite } from '../../src/ledger/stores/sqlite/open.ts';
import { cases, type Place } from './cases.ts';
import { service } from './facts.ts';

const folder = mkdtempSync(join(tmpdir(), 'tallyround-contract-'));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const opened: LedgerStore[] = [];

const places: Readonly<Record<string, (index: number) => Place>> = {
  memory: () => {
    const store = MemoryStore.open(service);
    return { open: () => Promise.resolve(store) };
  },
  SQLite: (index) => ({
    open: () => {
      const store = openSqlite(join(folder, `${index}.ledger`), { service, format: 1 });
      opened.push(store);
      return Promise.resolve(store);
    },
  }),
};

describe.each(Object.entries(places))('%s keeps the contract', (_, place) => {
  test.each(cases.map((one, index) => [one.title, one, index] as const))(
    '%s',
    async (_title, one, index) => {
      await one.run(place(index));
      for (const store of opened.splice(0)) await store.close();
    },
  );
});
