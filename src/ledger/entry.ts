import { linkHolds } from './chain.ts';
import type { Body, Confirmed, Receipt } from './fact.ts';
import type { Hash } from './hash.ts';
import { type FactId, isChainValue, isDeviceId, isFactId, isInstant } from './ids.ts';
import type { Mark } from './store.ts';

/** A fact with a receipt, from a wire or a file: nothing in it is believed yet. */
export type Claimed = Receipt & { readonly body: string; readonly private?: string };

export type EntryFault = 'broken-link' | 'not-a-fact' | 'private-mismatch';
export type EntryRead =
  | { readonly ok: true; readonly entry: Confirmed; readonly body: Body }
  | { readonly ok: false; readonly reason: EntryFault; readonly position: number };

/**
 * A claimed entry after the one before it: its id is counted from its bytes, its link from its
 * receipt, its private part against the body's hash. The form is not judged again: what one program
 * has taken in, a later and stricter one must still read.
 */
export function readEntry(claimed: Claimed, after: Mark, hash: Hash): EntryRead {
  const entry: Confirmed = { ...claimed, id: hash(claimed.body) as FactId };
  const broken = (reason: EntryFault) =>
    ({ ok: false, reason, position: claimed.position }) as const;
  if (!linkHolds(entry, after, hash)) return broken('broken-link');
  const body = bodyIn(claimed.body);
  if (!body) return broken('not-a-fact');
  if (claimed.private !== undefined && hash(claimed.private) !== body.private)
    return broken('private-mismatch');
  return { ok: true, entry, body };
}

/** Enough of a body for every use that the ledger itself makes of it. */
function bodyIn(text: string): Body | undefined {
  let read: Partial<Record<keyof Body, unknown>> | null;
  try {
    read = JSON.parse(text) as typeof read;
  } catch {
    return undefined;
  }
  if (typeof read !== 'object' || read === null) return undefined;
  const sound =
    isFactId(read.prev) &&
    isChainValue(read.seen) &&
    isInstant(read.at) &&
    isDeviceId(read.device) &&
    Number.isSafeInteger(read.seq) &&
    typeof read.kind === 'string' &&
    typeof read.data === 'object' &&
    read.data !== null;
  return sound ? (read as unknown as Body) : undefined;
}
