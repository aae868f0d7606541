import type { LedgerFact } from '../fact.ts';
import { type DeviceId, type FactId, millisOf } from '../ids.ts';
import type { UnreadableReason } from '../upcast.ts';
import {
  type Envelope,
  emptyLine,
  envelopes,
  type Line,
  linkKey,
  positionOf,
  put,
} from './line.ts';

/** Rises when `encode` changes; a snapshot of another version is not used. */
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

interface Encoded {
  readonly version: number;
  readonly chain: readonly number[];
  readonly arrived: readonly number[];
  readonly via: readonly DeviceId[];
  readonly unreadable: readonly (readonly [FactId, UnreadableReason])[];
  readonly lines: readonly EncodedLine[];
}

interface EncodedLine {
  readonly device: DeviceId;
  readonly ids: string;
  readonly prev: readonly number[];
  readonly seen: readonly number[];
  readonly at: readonly number[];
  readonly position: readonly number[];
  readonly odd: readonly Envelope[];
}

const HOLE = ' '.repeat(43);

export function encode(state: Envelopes): string {
  const { chain, arrived, via, unreadable } = state;
  const lines = [...state.lines].map(([device, { ids, prev, seen, at, position, odd }]) => ({
    ...{ device, prev, seen, at, position },
    ids: ids.map((id) => id || HOLE).join(''),
    odd: [...odd.values()],
  }));
  const encoded: Encoded = {
    version: ENVELOPES_VERSION,
    ...{ chain, arrived, via, lines },
    unreadable: [...unreadable],
  };
  return JSON.stringify(encoded);
}

/** Undefined when the text is of another version. */
export function decode(text: string): Envelopes | undefined {
  const read = JSON.parse(text) as Encoded;
  if (read.version !== ENVELOPES_VERSION) return undefined;
  return {
    chain: [...read.chain],
    arrived: [...read.arrived],
    via: [...read.via],
    unreadable: new Map(read.unreadable),
    lines: new Map(read.lines.map((line) => [line.device, decodeLine(line)])),
    version: 0,
    cuts: 0,
  };
}

function decodeLine({ ids, prev, seen, at, position, odd }: EncodedLine): Line {
  const list: (FactId | '')[] = [];
  for (let i = 0; i < ids.length; i += 43) list.push(ids.slice(i, i + 43).trim() as FactId);
  return {
    ids: list,
    prev: [...prev],
    seen: [...seen],
    at: [...at],
    position: [...position],
    odd: new Map(odd.map((fact) => [fact.id, fact])),
    version: 0,
  };
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
