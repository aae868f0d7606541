import { receive } from './chain.ts';
import { targetsOf } from './erased-fact.ts';
import type { Confirmed } from './fact.ts';
import { type Checked, checkForms, type FormRefusal } from './form.ts';
import type { Hash } from './hash.ts';
import {
  type DeviceId,
  type FactId,
  type Instant,
  isServerDevice,
  millisOf,
  type StaffId,
} from './ids.ts';
import type { Lock } from './lock.ts';
import { commonMark } from './marks.ts';
import { isSealedBy, type ServerSeal } from './server-seal.ts';
import type { Head, LedgerStore } from './store.ts';
import {
  type Delivered,
  fitting,
  MAX_BYTES,
  MAX_FACTS,
  type SyncAnswer,
  type SyncRefusal,
  type SyncReply,
  type SyncRequest,
  sizeOf,
} from './sync-message.ts';

/** What a server's ledger is made of. One `lock` for each store. */
export interface LedgerServer {
  readonly store: LedgerStore;
  readonly hash: Hash;
  readonly lock: Lock;
  /** Keeps erased ids where no backup of the store reaches; called before they are committed. */
  readonly rememberErased?: (ids: readonly FactId[]) => Promise<void>;
  /** Of its own facts. With it no others in a server's name are taken in; without it, all of good form are. */
  readonly seal?: ServerSeal;
}

/** What the transport knows about one call. */
export interface SyncMoment {
  readonly now: Instant;
  /** The device whose credential was shown. */
  readonly via: DeviceId;
  readonly lease: Instant;
  readonly revoked: readonly StaffId[];
}

/**
 * The server's end of sync. Takes in every fact of good form that it does not know, in one
 * transaction, whatever its order, its author or its sense; then answers with what follows the
 * newest point that both logs share. A retired device is turned away before this is called.
 */
export async function answerSync(
  server: LedgerServer,
  request: SyncRequest,
  moment: SyncMoment,
): Promise<SyncAnswer> {
  const before = await server.store.head();
  const { service, format } = before;
  const refused = tooLarge(request) ?? tooNew(request, format);
  if (refused) return refused;
  const checked = checkForms(request.push, { service, hash: server.hash });
  if (!checked.ok) return { ...checked, status: 400 };
  const forged = await unsealed(server, checked.facts);
  if (forged) return { ...forged, status: 400 };
  const receipt = {
    arrived: moment.now,
    via: moment.via,
    skew: millisOf(moment.now) - millisOf(request.now),
  };
  const takenIn =
    checked.facts.length > 0
      ? await server.lock(() => takeIn(server, { head: before, facts: checked.facts }, receipt))
      : undefined;
  return {
    ok: true,
    reply: await replyTo(server.store, request, { ...moment, head: takenIn ?? before }),
  };
}

/**
 * A tablet carries a server's facts back to one that was restored. Whoever rules a tablet's program
 * can carry one that no server wrote: it would be believed everywhere, and an erasure would destroy
 * everywhere. Such a fact is left where it is.
 */
async function unsealed(
  { store, hash, seal }: LedgerServer,
  facts: readonly Checked[],
): Promise<FormRefusal | undefined> {
  if (seal === undefined) return undefined;
  const inItsName = facts.filter(({ body }) => isServerDevice(body.device));
  if (inItsName.length === 0) return undefined;
  const known = await store.known(inItsName.map(({ written }) => written.id));
  const forged = inItsName.find(
    ({ written, body }) => !known.has(written.id) && !isSealedBy(seal, body, hash),
  );
  if (forged === undefined) return undefined;
  const index = facts.indexOf(forged);
  return { ok: false, reason: 'not-sealed', detail: forged.written.id, index };
}

interface Arrival {
  readonly arrived: Instant;
  readonly via: DeviceId;
  readonly skew: number;
}

/** Call it inside the lock. Starts again when the head has moved since it was read. */
async function takeIn(
  server: LedgerServer,
  from: { readonly head: Head; readonly facts: readonly Checked[] },
  by: Arrival,
): Promise<Head> {
  const { store, hash } = server;
  let { head } = from;
  for (;;) {
    const fresh = await notYetKnown(store, from.facts);
    if (fresh.length === 0) return head;
    const erase = fresh.flatMap(({ body }) => targetsOf(body));
    if (erase.length > 0) await server.rememberErased?.(erase);
    const written = fresh.map((fact) => fact.written);
    const append = receive(written, head, { ...by, hash });
    const done = await store.commit({ log: { expect: head.chain, append }, erase });
    head = done.head;
    if (done.ok) return head;
  }
}

async function notYetKnown(
  store: LedgerStore,
  facts: readonly Checked[],
): Promise<readonly Checked[]> {
  const byId = new Map<FactId, Checked>(facts.map((fact) => [fact.written.id, fact]));
  const known = await store.known([...byId.keys()]);
  return [...byId.values()].filter(({ written }) => !known.has(written.id));
}

async function replyTo(
  store: LedgerStore,
  request: SyncRequest,
  moment: SyncMoment & { readonly head: Head },
): Promise<SyncReply> {
  const { now, lease, revoked, head } = moment;
  const from = await commonMark(store, request.marks);
  const { format, position, chain } = head;
  const base = { now, from, head: { position, chain }, lease, revoked };
  if (request.format < format) return { ...base, more: false, facts: [], update: true };
  const page = fitting(await store.confirmed(from.position, MAX_FACTS));
  const facts = page.map(delivered);
  const reached = page.at(-1)?.position ?? from.position;
  return { ...base, more: reached < position, facts };
}

function delivered(entry: Confirmed): Delivered {
  const { position, arrived, via, skew, chain, body, private: record } = entry;
  const sent = { position, arrived, via, skew, chain, body };
  return record === undefined ? sent : { ...sent, private: record };
}

function tooLarge({ push }: SyncRequest): SyncRefusal | undefined {
  const bytes = push.reduce((sum, fact) => sum + sizeOf(fact), 0);
  if (push.length <= MAX_FACTS && (push.length === 1 || bytes <= MAX_BYTES)) return undefined;
  const detail = `${push.length} facts, ${bytes} bytes; at most ${MAX_FACTS} and ${MAX_BYTES}`;
  return { ok: false, status: 413, reason: 'push-too-large', detail };
}

function tooNew(request: SyncRequest, format: number): SyncRefusal | undefined {
  if (request.format <= format) return undefined;
  const detail = `the tablet's format ${request.format}, the server's ${format}`;
  return { ok: false, status: 426, reason: 'newer-tablet', detail };
}
