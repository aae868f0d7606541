import { CLOCK, type Clock, clockOf, measured, witnessed } from './clock.ts';
import { type EntryFault, readEntry } from './entry.ts';
import { targetsOf } from './erased-fact.ts';
import type { Body, Confirmed, Pending } from './fact.ts';
import type { Hash } from './hash.ts';
import { type FactId, type Instant, instantOf, type StaffId } from './ids.ts';
import { marksOf } from './marks.ts';
import type { Head, LedgerStore, Mark } from './store.ts';
import { fitting, MAX_FACTS, type SyncReply, type SyncRequest } from './sync-message.ts';

/** A request with what the tablet must remember of it until the answer comes. */
export interface Outgoing {
  readonly request: SyncRequest;
  /** Ids of the facts pushed, in the order of `request.push`. */
  readonly ids: readonly FactId[];
}

/**
 * The tablet's next request, or undefined when it is not enrolled. `skip`: facts that wait and were
 * pushed before; used only when the server takes facts but, the tablet being old, sends none back.
 */
export async function nextRequest(
  store: LedgerStore,
  by: { readonly deviceNow: number; readonly format: number; readonly skip?: number },
): Promise<Outgoing | undefined> {
  const head = await store.head();
  if (!head.device) return undefined;
  const { off } = await clockOf(store);
  const waiting = fitting(await inLine(store, by.skip ?? 0));
  const now = instantOf(by.deviceNow + off);
  if (now === undefined) throw new RangeError(`no such time: ${by.deviceNow} + ${off}`);
  const marks = await marksOf(store, { position: head.position, chain: head.chain });
  const push = waiting.map(({ body, private: record }) =>
    record === undefined ? { body } : { body, private: record },
  );
  return {
    request: { device: head.device.id, format: by.format, now, marks, push },
    ids: waiting.map(({ id }) => id),
  };
}

/** Facts that wait and are not set aside, a message full of them. */
export async function inLine(store: LedgerStore, skip: number): Promise<readonly Pending[]> {
  const found: Pending[] = [];
  for (let read = 0; found.length < skip + MAX_FACTS; read += MAX_FACTS) {
    const page = await store.pending({ skip: read, limit: MAX_FACTS });
    found.push(...page.filter(({ aside }) => aside === undefined));
    if (page.length < MAX_FACTS) break;
  }
  return found.slice(skip, skip + MAX_FACTS);
}

export type Applied =
  | {
      readonly ok: true;
      readonly head: Head;
      /** Facts that came; 0 with `more` false means caught up. */
      readonly came: number;
      /** How far the log was taken back first, 0 nearly always. */
      readonly rewound: number;
      readonly more: boolean;
      readonly update: boolean;
      readonly lease: Instant;
      readonly revoked: readonly StaffId[];
    }
  /** The cursor is not where it was when the request was made: drop the reply and ask again. */
  | { readonly ok: false; readonly reason: 'moved' }
  /** The reply does not hold together: nothing of it is kept. */
  | { readonly ok: false; readonly reason: EntryFault | 'unknown-mark'; readonly position: number };

/** The device's own clock around the exchange, in ms. */
export interface Timing {
  readonly sent: number;
  readonly received: number;
}

/**
 * The tablet's end: checks every id and link, then one transaction that stands only if the cursor's
 * chain value is still the one the request was made from. Facts wait until they come back.
 */
export async function applyReply(
  store: LedgerStore,
  { request, reply }: { readonly request: SyncRequest; readonly reply: SyncReply },
  by: { readonly timing: Timing; readonly hash: Hash },
): Promise<Applied> {
  const [cursor] = request.marks;
  const clock = measured(await clockOf(store), { ...by.timing, serverNow: reply.now });
  if (!cursor || !names(request.marks, reply.from))
    return { ok: false, reason: 'unknown-mark', position: reply.from.position };
  if (reply.update) return keepClock(store, clock, reply);
  const read = readAll(reply, by.hash);
  if (!read.ok) return read;
  const back = reply.from.position < cursor.position;
  const done = await store.commit({
    log: { expect: cursor.chain, append: read.entries, ...(back && { rewindTo: reply.from }) },
    erase: read.bodies.flatMap(targetsOf),
    meta: { [CLOCK]: JSON.stringify(witnessed(clock, read.entries)) },
  });
  if (!done.ok) return { ok: false, reason: 'moved' };
  return applied(done.head, reply, {
    came: read.entries.length,
    rewound: back ? cursor.position - reply.from.position : 0,
  });
}

async function keepClock(store: LedgerStore, clock: Clock, reply: SyncReply): Promise<Applied> {
  const { head } = await store.commit({ meta: { [CLOCK]: JSON.stringify(clock) } });
  return applied(head, reply, { came: 0, rewound: 0 });
}

function applied(
  head: Head,
  reply: SyncReply,
  counts: { readonly came: number; readonly rewound: number },
): Applied {
  const { more, lease, revoked, update } = reply;
  return { ok: true, head, ...counts, more, update: update === true, lease, revoked };
}

const names = (marks: readonly Mark[], from: Mark): boolean =>
  marks.some(({ position, chain }) => position === from.position && chain === from.chain);

interface ReadReply {
  readonly ok: true;
  readonly entries: readonly Confirmed[];
  readonly bodies: readonly Body[];
}

function readAll(
  reply: SyncReply,
  hash: Hash,
): ReadReply | Extract<Applied, { readonly position: number }> {
  const entries: Confirmed[] = [];
  const bodies: Body[] = [];
  let after: Mark = reply.from;
  for (const claimed of reply.facts) {
    const read = readEntry(claimed, after, hash);
    if (!read.ok) return read;
    entries.push(read.entry);
    bodies.push(read.body);
    after = read.entry;
  }
  return { ok: true, entries, bodies };
}

/** After a 400 with an index: that fact stays on the tablet, visibly, and the others go on. */
export async function setAside(
  store: LedgerStore,
  sent: Outgoing,
  refusal: { readonly index: number; readonly reason: string },
): Promise<FactId | undefined> {
  const id = sent.ids[refusal.index];
  if (id !== undefined) await store.commit({ aside: new Map([[id, refusal.reason]]) });
  return id;
}

/** Puts every fact that was set aside back in the line, as a newer program may do. */
export async function retryAside(store: LedgerStore): Promise<number> {
  const aside = (await store.pending()).filter((fact) => fact.aside !== undefined);
  if (aside.length > 0) await store.commit({ aside: new Map(aside.map(({ id }) => [id, null])) });
  return aside.length;
}
