import type { Hash } from './hash.ts';
import type { FactId } from './ids.ts';
import type { Head, LedgerStore } from './store.ts';
import { type Applied, applyReply, inLine, nextRequest, setAside } from './sync-apply.ts';
import { MAX_FACTS, type SyncAnswer, type SyncRequest } from './sync-message.ts';

/** How a tablet reaches its server. Throwing or hanging is the network's right. */
export interface Wire {
  readonly send: (request: SyncRequest) => Promise<SyncAnswer>;
  /** The device's own clock, ms since 1970. */
  readonly now: () => number;
}

export type Round =
  | {
      readonly ok: true;
      readonly applied: Extract<Applied, { readonly ok: true }>;
      readonly setAside: readonly FactId[];
    }
  | { readonly ok: false; readonly reason: 'not-enrolled' | 'moved' }
  | Extract<Applied, { readonly position: number }>
  | Exclude<SyncAnswer, { readonly ok: true } | { readonly index: number }>;

/**
 * One call and what follows from it. A fact whose form the server refuses is set aside and the rest
 * is sent at once: one bad fact must not strand those behind it. `moved` means: simply call again.
 */
export async function syncRound(
  store: LedgerStore,
  wire: Wire,
  by: { readonly hash: Hash; readonly format: number; readonly skip?: number },
): Promise<Round> {
  const aside: FactId[] = [];
  for (;;) {
    const sent = wire.now();
    const skip = by.skip ?? 0;
    const outgoing = await nextRequest(store, { deviceNow: sent, format: by.format, skip });
    if (!outgoing) return { ok: false, reason: 'not-enrolled' };
    const answer = await wire.send(outgoing.request);
    if (!answer.ok && 'index' in answer) {
      const id = await setAside(store, outgoing, answer);
      if (id === undefined) return badIndex(answer.index);
      aside.push(id);
      continue;
    }
    if (!answer.ok) return answer;
    const exchange = { request: outgoing.request, reply: answer.reply };
    const timing = { sent, received: wire.now() };
    const applied = await applyReply(store, exchange, { timing, hash: by.hash });
    return applied.ok ? { ok: true, applied, setAside: aside } : applied;
  }
}

const badIndex = (index: number) =>
  ({ ok: false, status: 400, reason: 'bad-request', detail: `no fact ${index} was sent` }) as const;

/**
 * Rounds until nothing more comes and nothing waits that can go, or a round fails. An old program
 * gets no facts back, so it pages through what waits instead.
 */
export async function syncAll(
  store: LedgerStore,
  wire: Wire,
  by: { readonly hash: Hash; readonly format: number },
): Promise<Round> {
  let skip = 0;
  let before: Head | undefined;
  for (;;) {
    const round = await syncRound(store, wire, { ...by, skip });
    if (!round.ok && round.reason === 'moved') continue;
    if (!round.ok) return round;
    const { head, more, update } = round.applied;
    if (update) {
      skip += MAX_FACTS;
      if (skip >= head.pending) return round;
    } else if (!more && (await settled(store, head, before))) return round;
    before = head;
  }
}

/** Nothing is left to send, or the last round changed nothing and the next would not either. */
async function settled(store: LedgerStore, head: Head, before: Head | undefined): Promise<boolean> {
  if (head.chain === before?.chain && head.pending === before.pending) return true;
  return (await inLine(store, 0)).length === 0;
}
