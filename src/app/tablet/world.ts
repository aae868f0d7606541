import type { Hash } from '../../ledger/hash.ts';
import type { ServiceId } from '../../ledger/ids.ts';
import type { LedgerStore } from '../../ledger/store.ts';

/** Seals and opens bytes; `place` is bound in. As the ledger's browser store takes it. */
export interface Cipher {
  seal(plain: Uint8Array<ArrayBuffer>, place: string): Promise<Uint8Array<ArrayBuffer>>;
  open(sealed: Uint8Array<ArrayBuffer>, place: string): Promise<Uint8Array<ArrayBuffer>>;
}

export interface OpenStore {
  readonly name: string;
  readonly service: ServiceId;
  readonly format: number;
  readonly cipher: Cipher;
}

/** Facts that were lost because what rests on the tablet could not be read. */
export interface Damage {
  readonly pulledAgain: readonly { readonly from: number; readonly to: number }[];
  readonly lost: readonly { readonly device: string; readonly seq: number }[];
}

/** A store that can be mended when a part of it cannot be read. */
export interface TabletStore extends LedgerStore {
  repair(): Promise<Damage>;
}

/** What only a main.ts may choose. */
export interface TabletWorld {
  /** The device's own clock, ms since 1970. */
  readonly now: () => number;
  /** A clock that nobody sets, ms. */
  readonly monotonic: () => number;
  readonly random: (bytes: number) => Uint8Array<ArrayBuffer>;
  readonly hash: Hash;
  /** Version of the whole catalogue of facts that this program knows. */
  readonly format: number;
  /** A cipher from 32 bytes, for boxes of one owner. */
  readonly cipher: (key: Uint8Array<ArrayBuffer>, owner: string) => Promise<Cipher>;
  readonly openStore: (options: OpenStore) => Promise<TabletStore>;
  /** Begins the program anew: nothing that was in memory survives. */
  readonly reload: () => void;
}
