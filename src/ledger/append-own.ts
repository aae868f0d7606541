import { buildFacts, type Draft, sealAll } from './append.ts';
import { receive } from './chain.ts';
import { targetsOf } from './erased-fact.ts';
import type { Body, Confirmed } from './fact.ts';
import type { FormRefusal } from './form.ts';
import { type Instant, millisOf, type StaffId } from './ids.ts';
import type { LedgerServer } from './sync-answer.ts';

/** Who writes on the server's own device chain. */
export interface ServerWriter {
  readonly by: StaffId;
  readonly now: Instant;
  /** 16 fresh random bytes each time. */
  readonly salt: () => Uint8Array;
}

export type OwnAppended =
  | { readonly ok: true; readonly entries: readonly Confirmed[] }
  | FormRefusal
  | { readonly ok: false; readonly reason: 'not-enrolled' };

/** Facts of the server itself (an erasure, an account): on its own device chain, confirmed at once. */
export function appendOwn(
  server: LedgerServer,
  drafts: readonly Draft[],
  writer: ServerWriter,
): Promise<OwnAppended> {
  return server.lock(() => appendInside(server, drafts, writer));
}

async function appendInside(
  server: LedgerServer,
  drafts: readonly Draft[],
  writer: ServerWriter,
): Promise<OwnAppended> {
  const records = sealAll(drafts, writer);
  if (!records.ok) return records;
  const basis = {
    clock: { off: 0 },
    writer: { by: writer.by, deviceNow: millisOf(writer.now), hash: server.hash },
    seal: server.seal,
  };
  for (;;) {
    const head = await server.store.head();
    const { device } = head;
    if (!device) return { ok: false, reason: 'not-enrolled' };
    const built = buildFacts(drafts, { head, device, ...basis, records: records.texts });
    if (!built.ok) return built;
    const erase = built.facts.flatMap(({ body }) => targetsOf(JSON.parse(body) as Body));
    if (erase.length > 0) await server.rememberErased?.(erase);
    const receipt = { arrived: writer.now, via: device.id, skew: 0, hash: server.hash };
    const entries = receive(built.facts, head, receipt);
    const log = { expect: head.chain, append: entries };
    const done = await server.store.commit({
      log,
      own: { expect: device, head: built.next },
      erase,
    });
    if (done.ok) return { ok: true, entries };
  }
}
