import { catalogue, type NewFact } from '../../care/catalogue.ts';
import type { StaffId } from '../../care/ids.ts';
import type { Instant } from '../../care/time.ts';
import { buildFacts, type Draft, sealAll } from '../../ledger/append.ts';
import { receive } from '../../ledger/chain.ts';
import type { Body, Confirmed, Written } from '../../ledger/fact.ts';
import type { Hash } from '../../ledger/hash.ts';
import type { StaffId as LedgerStaffId } from '../../ledger/ids.ts';
import type { DeviceHead, Head, Mark } from '../../ledger/store.ts';
import type { LedgerServer } from '../../ledger/sync-answer.ts';

/** A fact with who, with whom and when, as it is to stand in the ledger. */
export type DatedFact = NewFact & { readonly at: Instant; readonly by: StaffId };

/** A ledger to write after, the device that writes, and what it writes with. */
export interface Desk {
  readonly head: Head;
  readonly device: DeviceHead;
  readonly hash: Hash;
  readonly random: (bytes: number) => Uint8Array;
}

/** Facts of one device and where its chain stands after them. */
export interface Penned {
  readonly facts: readonly Written[];
  readonly device: DeviceHead;
}

/** Writes facts one after another on a device's chain. None is in the ledger yet. */
export function pen(facts: readonly DatedFact[], desk: Desk): Penned {
  const written: Written[] = [];
  let { device } = desk;
  for (const fact of facts) {
    const drafts = [draftOf(fact)];
    const records = sealAll(drafts, { salt: () => desk.random(16) });
    if (!records.ok) throw new Error(`${fact.kind}: ${records.reason}`);
    const writer = { ...authorsOf(fact), deviceNow: Date.parse(fact.at), hash: desk.hash };
    const basis = { head: desk.head, device, clock: { off: 0 }, writer, records: records.texts };
    const built = buildFacts(drafts, basis);
    if (!built.ok) throw new Error(`${fact.kind}: ${built.reason} ${built.detail}`);
    written.push(...built.facts);
    device = built.next;
  }
  return { facts: written, device };
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

/** What a procedure wants recorded, as the ledger takes it. */
const draftOf = (fact: NewFact): Draft => ({
  kind: fact.kind,
  v: catalogue[fact.kind].v,
  data: fact.data as unknown as Draft['data'],
  ...(fact.private !== undefined && {
    private: fact.private as unknown as NonNullable<Draft['private']>,
  }),
});

const authorsOf = ({ by, with: others }: DatedFact) => ({
  by: by as string as LedgerStaffId,
  ...(others && { with: others as readonly string[] as readonly LedgerStaffId[] }),
});

/** The server's desk: its own device, which it has had since it was first opened. */
export async function serverDesk(
  { store, hash }: LedgerServer,
  random: (bytes: number) => Uint8Array,
): Promise<Desk> {
  const head = await store.head();
  if (!head.device) throw new Error('the server has no chain of its own yet');
  return { head, device: head.device, hash, random };
}
