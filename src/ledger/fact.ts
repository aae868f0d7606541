import type { Json, JsonObject } from './canonical.ts';
import type { ChainValue, DeviceId, FactId, Instant, ServiceId, StaffId } from './ids.ts';

/** What a device writes down. Its canonical text is hashed into the fact's id. */
export interface Body {
  readonly service: ServiceId;
  readonly device: DeviceId;
  /** Place in the device's own chain, from 1. */
  readonly seq: number;
  /** The device's previous fact; NO_FACT before the first. */
  readonly prev: FactId;
  /** The service chain at the device's cursor: what it knew, so a lower bound of time. */
  readonly seen: ChainValue;
  readonly at: Instant;
  /** Milliseconds already added to the device's own clock to give `at`. */
  readonly off: number;
  readonly by: StaffId;
  readonly with?: readonly StaffId[];
  readonly kind: string;
  /** Version of the kind's data, from 1. */
  readonly v: number;
  /** Ids, codes, times, outcomes, closed words. No names, birth dates, rooms or free text. */
  readonly data: JsonObject;
  /** SHA-256 of the private record that travels beside the body. */
  readonly private?: string;
  /** On a server's own facts: what only it can make (`server-seal.ts`). */
  readonly seal?: string;
}

/** A fact as it is stored and sent: its canonical body and, beside it, its private record. */
export interface Written {
  readonly id: FactId;
  readonly body: string;
  /** Canonical `{salt, value}`; absent when the fact has none, or when it was erased. */
  readonly private?: string;
}

/** What the server adds when it takes a fact in. */
export interface Receipt {
  /** Gapless from 1. */
  readonly position: number;
  readonly arrived: Instant;
  /** The device that delivered it, not always the one that wrote it. */
  readonly via: DeviceId;
  /** `arrived` minus the delivering request's `now`, in ms. */
  readonly skew: number;
  readonly chain: ChainValue;
}

export type Confirmed = Written & Receipt;

/** A fact that waits for the server. `aside`: the server refused its form, and why. */
export interface Pending extends Written {
  readonly aside?: string;
}

/**
 * A fact as a fold is given it. `position`, `arrived`, `via`, `skew` and `chain` are absent while
 * it waits and change when a server is restored: they may be shown, but no key may be made of them.
 */
export interface LedgerFact {
  readonly id: FactId;
  readonly kind: string;
  readonly v: number;
  readonly data: JsonObject;
  readonly at: Instant;
  readonly off: number;
  readonly by: StaffId;
  /** Empty when nobody else was there. */
  readonly with: readonly StaffId[];
  readonly device: DeviceId;
  readonly seq: number;
  readonly prev: FactId;
  readonly seen: ChainValue;
  /** The private value without its salt. */
  readonly private?: Json;
  /** The fact has a private part that is not here (erased, or withheld). */
  readonly hidden?: true;
  /** Length of the body in characters. */
  readonly size: number;
  readonly position?: number;
  readonly arrived?: Instant;
  readonly via?: DeviceId;
  readonly skew?: number;
  readonly chain?: ChainValue;
}

const alone: readonly StaffId[] = Object.freeze([]);

/** A stored fact opened for a fold. The text is trusted: it was checked when it came in. */
export function openFact(written: Written, receipt?: Receipt): LedgerFact {
  const body = JSON.parse(written.body) as Body;
  return factOf(body, { written, size: written.body.length, ...(receipt && { receipt }) });
}

/** The same from a body already parsed, as the browser's blocks hold it. */
export function factOf(
  body: Body,
  from: {
    readonly written: Pick<Written, 'id' | 'private'>;
    readonly size: number;
    readonly receipt?: Receipt;
  },
): LedgerFact {
  const { written, receipt } = from;
  const record = written.private;
  const fact: Growing<LedgerFact> = {
    id: written.id,
    kind: body.kind,
    v: body.v,
    data: body.data,
    at: body.at,
    off: body.off,
    by: body.by,
    with: body.with ?? alone,
    device: body.device,
    seq: body.seq,
    prev: body.prev,
    seen: body.seen,
    size: from.size,
  };
  // Added one by one: a spread of each would cost as much as its parsing.
  if (record !== undefined) fact.private = (JSON.parse(record) as { value: Json }).value;
  else if (body.private !== undefined) fact.hidden = true;
  if (receipt === undefined) return fact;
  fact.position = receipt.position;
  fact.arrived = receipt.arrived;
  fact.via = receipt.via;
  fact.skew = receipt.skew;
  fact.chain = receipt.chain;
  return fact;
}

type Growing<T> = { -readonly [K in keyof T]: T[K] };
