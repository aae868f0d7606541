import { expect, it } from 'vitest';
import { aesCipher, importTabletKey } from '../../ledger/stores/browser/cipher.ts';
import { drawerOf } from './drawer.ts';

const keyOf = async (fill: number) =>
  aesCipher(await importTabletKey(new Uint8Array(32).fill(fill)), 'T0000001');

it('keeps a text sealed in its own place, and takes it out again', async () => {
  const metas = new Map<string, string>();
  const store: Parameters<typeof drawerOf>[0] = {
    meta: (key) => Promise.resolve(metas.get(key)),
    commit: ({ meta = {} }) => {
      for (const [key, value] of Object.entries(meta))
        if (value === null) metas.delete(key);
        else metas.set(key, value);
      return Promise.resolve({ ok: true } as never);
    },
  };
  const drawer = drawerOf(store, await keyOf(1));
  await drawer.write('drafts/one', 'Says no with a turned head.');
  expect([...metas.values()].join()).not.toContain('turned');
  expect(await drawer.read('drafts/one')).toBe('Says no with a turned head.');
  // Moved to somebody else's place, or opened with another key, it cannot be read.
  metas.set('drawer/drafts/two', metas.get('drawer/drafts/one') ?? '');
  expect(await drawer.read('drafts/two')).toBeUndefined();
  expect(await drawerOf(store, await keyOf(2)).read('drafts/one')).toBeUndefined();
  await drawer.write('drafts/one', undefined);
  expect(await drawer.read('drafts/one')).toBeUndefined();
});
