import type { LedgerStore } from '../../ledger/store.ts';
import { base64url, fromBase64url } from './base64url.ts';
import type { Cipher } from './world.ts';

/** Small texts that stay on this tablet alone, sealed with its key: beside the ledger, never in it. */
export interface Drawer {
  /** Undefined where there is none, or where it can no longer be read. */
  read(name: string): Promise<string | undefined>;
  /** `undefined` takes it out. Rejects with a StorageError where there is no room. */
  write(name: string, text: string | undefined): Promise<void>;
}

export function drawerOf(store: Pick<LedgerStore, 'meta' | 'commit'>, cipher: Cipher): Drawer {
  const placeOf = (name: string) => `drawer/${name}`;
  return {
    async read(name) {
      const sealed = await store.meta(placeOf(name));
      if (sealed === undefined) return undefined;
      try {
        return new TextDecoder().decode(await cipher.open(fromBase64url(sealed), placeOf(name)));
      } catch {
        return undefined;
      }
    },
    async write(name, text) {
      const sealed =
        text === undefined
          ? null
          : base64url(await cipher.seal(new TextEncoder().encode(text), placeOf(name)));
      await store.commit({ meta: { [placeOf(name)]: sealed } });
    },
  };
}
