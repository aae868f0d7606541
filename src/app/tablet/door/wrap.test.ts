import { webcrypto } from 'node:crypto';
import { hashRaw } from '@node-rs/argon2';
import { argon2id } from 'hash-wasm';
import { describe, expect, it } from 'vitest';
import type { StaffId } from '../../../care/ids.ts';
import { pureHash } from '../../../ledger/hash.ts';
import { aesCipher, importTabletKey } from '../../../ledger/stores/browser/cipher.ts';
import type { TabletWorld } from '../world.ts';
import { unwrapKey, wrapKey } from './wrap.ts';

const world = {
  now: () => 1000,
  random: (bytes: number) => webcrypto.getRandomValues(new Uint8Array(bytes)),
  hash: pureHash,
  cipher: async (key: Uint8Array<ArrayBuffer>, owner: string) =>
    aesCipher(await importTabletKey(key), owner),
} as unknown as TabletWorld;
const staff = 'jonahbee' as StaffId;
const cost = { memory: 1024, time: 1 };
const key = world.random(32);
const make = (owner = 'T0000001', pin = '402917') =>
  wrapKey(world, key, { staff, called: 'Jonah', pin, owner, cost });

describe('a tablet’s key wrapped with a PIN', () => {
  it('is given out by that PIN and no other', async () => {
    const wrap = await make();
    expect(await unwrapKey(world, wrap, { pin: '402917', owner: 'T0000001' })).toEqual(key);
    expect(await unwrapKey(world, wrap, { pin: '402918', owner: 'T0000001' })).toBeUndefined();
  });

  it('is bound to its tablet and its person, and differs each time', async () => {
    const wrap = await make();
    expect(await unwrapKey(world, wrap, { pin: '402917', owner: 'T0000002' })).toBeUndefined();
    const other = { ...wrap, staff: 'ottoline' as StaffId };
    expect(await unwrapKey(world, other, { pin: '402917', owner: 'T0000001' })).toBeUndefined();
    expect((await make()).sealed).not.toEqual(wrap.sealed);
  });

  it('is wrapped with Argon2id as another implementation of it computes it', async () => {
    const salt = new Uint8Array(16).fill(7);
    for (const { memory, time } of [cost, { memory: 64 * 1024, time: 3 }]) {
      const ours = await argon2id({
        password: '402917',
        salt,
        iterations: time,
        memorySize: memory,
        parallelism: 1,
        hashLength: 32,
        outputType: 'hex',
      });
      const options = { memoryCost: memory, timeCost: time, parallelism: 1, outputLen: 32, salt };
      expect(ours).toBe((await hashRaw('402917', options)).toString('hex'));
    }
  });
});
