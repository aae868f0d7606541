import type { NewFact } from '../../care/catalogue.ts';
import type { StaffId } from '../../care/ids.ts';
import type { Instant } from '../../care/time.ts';
import { receive } from '../../ledger/chain.ts';
import type { Body, Confirmed, Written } from '../../ledger/fact.ts';
import type { Hash } from '../../ledger/hash.ts';
import type { ServerSeal } from '../../ledger/server-seal.ts';
import type { DeviceHead, Head, Mark } from '../../ledger/store.ts';
import type { LedgerServer } from '../../ledger/sync-answer.ts';
import { sealRecords, writeDown } from '../../procedures/write-down.ts';

/** A fact with who, with whom and when, as it is to stand in the ledger. */
export type DatedFact = NewFact & { readonly at: Instant; readonly by: StaffId };

/** A ledger to write after, the device that writes, and what it writes with. */
export interface Desk {
  readonly head: Head;
  readonly device: DeviceHead;
  readonly hash: Hash;
  readonly random: (bytes: number) => Uint8Array;
  readonly seal?: ServerSeal | undefined;
}

/** Facts of one device and where its chain stands after them. */
export interface Penned {
  readonly facts: readonly Written[];
  readonly device: DeviceHead;
}

/** Writes facts one after another on a device's chain. None is in the ledger yet. */
export function pen(facts: readonly DatedFact[], desk: Desk): Penned {
  const records = sealRecords(facts, () => desk.random(16));
  if (!records.ok) throw new Error(`fact ${records.index}: ${records.reason}`);
  const said = facts.map((fact) => ({ fact, by: fact.by, deviceNow: Date.parse(fact.at) }));
  const built = writeDown(said, records.texts, { ...desk, clock: { off: 0 } });
  if (!built.ok) throw new Error(`fact ${built.index}: ${built.reason} ${built.detail}`);
  return { facts: built.facts, device: built.next };
}

/** Takes facts of the server's own device into the log as if each had arrived when it happened. */
export async function keepAsArrived(
  { store, hash }: LedgerServer,
  { facts, device }: Penned,
): Promise<void> {
  const head = await store.head();
  const entries: Confirmed[] = [];
  let mark: Mark = head;
  for (const written of facts) {
    const arrived = (JSON.parse(written.body) as Body).at;
    const [entry] = receive([written], mark, { arrived, via: device.id, skew: 0, hash });
    if (!entry) throw new Error('nothing was received');
    entries.push(entry);
    mark = entry;
  }
  const log = { expect: head.chain, append: entries };
  const done = await store.commit({ log, own: { expect: head.device ?? null, head: device } });
  if (!done.ok) throw new Error('another program wrote to the ledger meanwhile');
}

/** The server's desk: its own device, which it has had since it was first opened. */
export async function serverDesk(
  { store, hash, seal }: LedgerServer,
  random: (bytes: number) => Uint8Array,
): Promise<Desk> {
  const head = await store.head();
  if (!head.device) throw new Error('the server has no chain of its own yet');
  return { head, device: head.device, hash, random, seal };
}
