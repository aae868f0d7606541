import type { NewFact } from '../../care/catalogue.ts';
import { catalogue } from '../../care/catalogue.ts';
import type { StaffId } from '../../care/ids.ts';
import type { Instant } from '../../care/time.ts';
import { buildFacts, type Draft, sealAll } from '../../ledger/append.ts';
import { receive } from '../../ledger/chain.ts';
import type { Confirmed } from '../../ledger/fact.ts';
import {
  type Instant as LedgerInstant,
  type StaffId as LedgerStaffId,
  millisOf,
} from '../../ledger/ids.ts';
import type { DeviceHead, Mark } from '../../ledger/store.ts';
import type { LedgerServer } from '../../ledger/sync-answer.ts';

/** A fact with who, with whom and when, as it is to stand in the ledger. */
export type DatedFact = NewFact & { readonly at: Instant; readonly by: StaffId };

/**
 * Writes facts on the server's own chain as if each had arrived when it happened: the invented home,
 * and the first manager of a real one. All or none of them.
 */
export async function writeFacts(
  { store, hash }: LedgerServer,
  facts: readonly DatedFact[],
  random: (bytes: number) => Uint8Array,
): Promise<void> {
  const head = await store.head();
  if (!head.device) throw new Error('the server has no chain of its own yet');
  let device: DeviceHead = head.device;
  let mark: Mark = { position: head.position, chain: head.chain };
  const entries: Confirmed[] = [];
  for (const fact of facts) {
    const [at, draft] = [fact.at as string as LedgerInstant, draftOf(fact)];
    const records = sealAll([draft], { salt: () => random(16) });
    if (!records.ok) throw new Error(`${fact.kind}: ${records.reason}`);
    const built = buildFacts([draft], {
      head: { ...head, ...mark },
      device,
      clock: { off: 0 },
      writer: { ...authorsOf(fact), deviceNow: millisOf(at), hash },
      records: records.texts,
    });
    if (!built.ok) throw new Error(`${fact.kind}: ${built.reason} ${built.detail}`);
    const [entry] = receive(built.facts, mark, { arrived: at, via: device.id, skew: 0, hash });
    if (!entry) throw new Error('nothing was built');
    entries.push(entry);
    device = built.next;
    mark = { position: entry.position, chain: entry.chain };
  }
  const log = { expect: head.chain, append: entries };
  const done = await store.commit({ log, own: { expect: head.device, head: device } });
  if (!done.ok) throw new Error('another program wrote to the ledger meanwhile');
}

/** What a procedure wants recorded, as the ledger takes it. */
export const draftOf = (fact: NewFact): Draft => ({
  kind: fact.kind,
  v: catalogue[fact.kind].v,
  data: fact.data as Draft['data'],
  ...(fact.private !== undefined && { private: fact.private }),
});

const authorsOf = ({ by, with: others }: DatedFact) => ({
  by: by as string as LedgerStaffId,
  ...(others && { with: others as readonly string[] as readonly LedgerStaffId[] }),
});
