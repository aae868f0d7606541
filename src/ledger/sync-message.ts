import { utf8ToBytes } from '@noble/hashes/utils.js';
import * as v from 'valibot';
import type { Confirmed } from './fact.ts';
import type { FormReason } from './form-reasons.ts';
import {
  type ChainValue,
  type DeviceId,
  type Instant,
  isChainValue,
  isDeviceId,
  isInstant,
  isStaffId,
  type StaffId,
} from './ids.ts';
import type { Mark } from './store.ts';

/** Facts in one message, either way. */
export const MAX_FACTS = 500;
/** Bytes of bodies and private records in one message; quoting at most doubles them on the wire. */
export const MAX_BYTES = 1_000_000;
const MAX_MARKS = 64;

export interface Pushed {
  readonly body: string;
  readonly private?: string;
}

export interface SyncRequest {
  readonly device: DeviceId;
  /** The format of the tablet's program. */
  readonly format: number;
  /** The tablet's clock with its offset, when it sent this. */
  readonly now: Instant;
  /** Newest first; the first is the tablet's cursor, the last is nothing at all. */
  readonly marks: readonly Mark[];
  readonly push: readonly Pushed[];
}

/** A fact on its way to a tablet. The id is left out: it is the body's hash, and is checked. */
export type Delivered = Omit<Confirmed, 'id'>;

export interface SyncReply {
  readonly now: Instant;
  /** The highest mark that the server has too; what follows it is in `facts`. */
  readonly from: Mark;
  readonly head: Mark;
  /** More facts follow: ask again. */
  readonly more: boolean;
  readonly facts: readonly Delivered[];
  /** Until when staff may unlock this tablet without contact. */
  readonly lease: Instant;
  /** Staff whose wrapped keys must go from the tablet now. */
  readonly revoked: readonly StaffId[];
  /** The tablet's program is older than the facts: it may push, but must reload before it reads. */
  readonly update?: true;
}

/** Every refusal of a sync call that the ledger itself makes, with its HTTP status. */
export type SyncRefusal =
  | {
      readonly ok: false;
      readonly status: 400;
      readonly reason: 'bad-request';
      readonly detail: string;
    }
  | {
      readonly ok: false;
      readonly status: 400;
      readonly reason: FormReason;
      readonly detail: string;
      readonly index: number;
    }
  | {
      readonly ok: false;
      readonly status: 413;
      readonly reason: 'push-too-large';
      readonly detail: string;
    }
  | {
      readonly ok: false;
      readonly status: 426;
      readonly reason: 'newer-tablet';
      readonly detail: string;
    };

export type SyncAnswer = { readonly ok: true; readonly reply: SyncReply } | SyncRefusal;

const count = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const mark = v.object({ position: count, chain: v.custom<ChainValue>(isChainValue) });
const instant = v.custom<Instant>(isInstant);
const device = v.custom<DeviceId>(isDeviceId);

const requestSchema = v.object({
  device,
  format: count,
  now: instant,
  marks: v.pipe(v.array(mark), v.minLength(1), v.maxLength(MAX_MARKS)),
  push: v.array(v.object({ body: v.string(), private: v.exactOptional(v.string()) })),
});

const replySchema = v.object({
  now: instant,
  from: mark,
  head: mark,
  more: v.boolean(),
  facts: v.array(
    v.object({
      position: count,
      arrived: instant,
      via: device,
      skew: v.pipe(v.number(), v.safeInteger()),
      chain: v.custom<ChainValue>(isChainValue),
      body: v.string(),
      private: v.exactOptional(v.string()),
    }),
  ),
  lease: instant,
  revoked: v.array(v.custom<StaffId>(isStaffId)),
  update: v.exactOptional(v.literal(true)),
});

export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly detail: string };

/** A request as it came over the wire. Facts inside are checked later, by their own form. */
export const readRequest = (json: unknown): Read<SyncRequest> => read(requestSchema, json);
export const readReply = (json: unknown): Read<SyncReply> => read(replySchema, json);

function read<T>(schema: v.GenericSchema<unknown, T>, json: unknown): Read<T> {
  const parsed = v.safeParse(schema, json, { abortEarly: true });
  if (parsed.success) return { ok: true, value: parsed.output };
  const [issue] = parsed.issues;
  return {
    ok: false,
    detail: `${v.getDotPath(issue) ?? 'message'}: ${issue.expected ?? issue.type}`,
  };
}

/** As many from the front as one message carries: at least one, however long it is. */
export function fitting<T extends Pushed>(facts: readonly T[]): readonly T[] {
  let bytes = 0;
  let n = 0;
  for (const fact of facts.slice(0, MAX_FACTS)) {
    bytes += sizeOf(fact);
    if (n > 0 && bytes > MAX_BYTES) break;
    n += 1;
  }
  return facts.slice(0, n);
}

/** In bytes of UTF-8. */
export const sizeOf = (fact: Pushed): number => bytesIn(fact.body) + bytesIn(fact.private ?? '');

const bytesIn = (text: string): number =>
  ascii.test(text) ? text.length : utf8ToBytes(text).length;

const ascii = /^[\0-\x7f]*$/;
