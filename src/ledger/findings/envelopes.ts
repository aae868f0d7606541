import type { LedgerFact } from '../fact.ts';
import { type DeviceId, type FactId, millisOf } from '../ids.ts';
import type { UnreadableReason } from '../upcast.ts';
import { emptyLine, envelopes, type Line, linkKey, positionOf, put } from './line.ts';

/** Rises when the digest changes: a frozen history has one for each. */
export const ENVELOPES_VERSION = 1;

/** What is kept of every fact's envelope, and of every receipt by its position. */
export interface Envelopes {
  readonly lines: Map<DeviceId, Line>;
  /** Index = position − 1. */
  readonly chain: number[];
  readonly arrived: number[];
  readonly via: DeviceId[];
  readonly unreadable: Map<FactId, UnreadableReason>;
  /** Counts receipts, and apart from them what took one away or replaced it. */
  version: number;
  cuts: number;
}

export const initial = (): Envelopes => ({
  lines: new Map(),
  chain: [],
  arrived: [],
  via: [],
  unreadable: new Map(),
  version: 0,
  cuts: 0,
});

/** Commutative and idempotent, as every fold here: a fact that comes again replaces its receipt. */
export function evolve(state: Envelopes, fact: LedgerFact): Envelopes {
  const position = fact.position ?? 0;
  let line = state.lines.get(fact.device);
  if (!line) state.lines.set(fact.device, (line = emptyLine()));
  put(line, {
    id: fact.id,
    seq: fact.seq,
    prev: linkKey(fact.prev),
    seen: linkKey(fact.seen),
    at: millisOf(fact.at),
    position,
  });
  if (fact.chain !== undefined && fact.arrived !== undefined && fact.via !== undefined) {
    const slot = position - 1;
    // Facts may be given in any order, so a place may come before the one it follows.
    for (let empty = state.chain.length; empty < slot; empty++) receiptAt(state, empty, NONE);
    receiptAt(state, slot, {
      chain: linkKey(fact.chain),
      arrived: millisOf(fact.arrived),
      via: fact.via,
    });
  }
  return state;
}

/** When and through which device a fact reached the server, and its place in the service's chain. */
export interface Reached {
  readonly position: number;
  /** ms since 1970 */
  readonly arrived: number;
  readonly via: DeviceId;
}

/** Undefined while the fact waits, or is not held. */
export function reached(
  state: Envelopes,
  fact: { readonly id: FactId; readonly device: DeviceId; readonly seq: number },
): Reached | undefined {
  const line = state.lines.get(fact.device);
  const position = line && positionOf(line, fact);
  if (position === undefined || position === 0) return undefined;
  const [arrived, via] = [state.arrived[position - 1], state.via[position - 1]];
  return arrived === undefined || arrived < 0 || via === undefined
    ? undefined
    : { position, arrived, via };
}

const NONE = { chain: -1, arrived: -1, via: '' as DeviceId };

function receiptAt(state: Envelopes, slot: number, receipt: typeof NONE): void {
  const before = state.chain[slot];
  if (before !== undefined && before !== receipt.chain) state.cuts += 1;
  state.chain[slot] = receipt.chain;
  state.arrived[slot] = receipt.arrived;
  state.via[slot] = receipt.via;
  state.version += 1;
}

/** Forgets the receipts above a position, when the log has been taken back to it. */
export function cut(state: Envelopes, position: number): void {
  if (state.chain.length <= position) return;
  state.chain.length = state.arrived.length = state.via.length = position;
  state.cuts += 1;
}

export function unreadable(state: Envelopes, id: FactId, why: UnreadableReason): void {
  state.unreadable.set(id, why);
}

/** The same for equal states, whatever order they were made in. */
export function digest(state: Envelopes): string {
  const lines = [...state.lines].map(([device, line]) => [device, envelopes(line)]).sort(byFirst);
  const { chain, arrived, via } = state;
  return JSON.stringify([lines, chain, arrived, via, [...state.unreadable].sort(byFirst)]);
}

function byFirst(a: readonly unknown[], b: readonly unknown[]): number {
  return String(a[0]) < String(b[0]) ? -1 : 1;
}
