import { type CanonicalText, canonical, type Json, type JsonObject } from './canonical.ts';
import { appTime, type Clock, type ClockQuestion, clockOf, clockQuestion } from './clock.ts';
import type { Body, Written } from './fact.ts';
import { checkForm, type FormRefusal } from './form.ts';
import type { FormReason } from './form-reasons.ts';
import type { Hash } from './hash.ts';
import type { Instant, StaffId } from './ids.ts';
import { privateRecord } from './private.ts';
import type { ServerSeal } from './server-seal.ts';
import type { DeviceHead, Head, LedgerStore } from './store.ts';

/** What a procedure wants written down. */
export interface Draft {
  readonly kind: string;
  readonly v: number;
  readonly data: JsonObject;
  /** Kept beside the body, where an erasure can take it away. */
  readonly private?: Json;
}

/** Who writes, when, and with what chance and hash. */
export interface Writer {
  readonly by: StaffId;
  readonly with?: readonly StaffId[];
  /** The device's own clock when it happened, ms since 1970. */
  readonly deviceNow: number;
  /** 16 fresh random bytes each time. */
  readonly salt: () => Uint8Array;
  readonly hash: Hash;
  /** Somebody has said that the app's time is right, in this session. */
  readonly clockConfirmed: boolean;
}

export type Appended =
  | { readonly ok: true; readonly facts: readonly Written[]; readonly at: Instant }
  | FormRefusal
  | { readonly ok: false; readonly reason: 'not-enrolled' }
  /** Ask, then append again with `clockConfirmed` (or after setting the clock by hand). */
  | { readonly ok: false; readonly reason: 'ask-clock'; readonly question: ClockQuestion };

/**
 * Writes facts of this device, all or none. They are on the disk when this answers, and wait for
 * the server from then on. When another tab has written first, they are built anew upon its fact.
 */
export async function append(
  store: LedgerStore,
  drafts: readonly Draft[],
  writer: Writer,
): Promise<Appended> {
  const clock = await clockOf(store);
  const question = writer.clockConfirmed ? undefined : clockQuestion(clock, writer.deviceNow);
  if (question) return { ok: false, reason: 'ask-clock', question };
  const records = sealAll(drafts, writer);
  if (!records.ok) return records;
  for (;;) {
    const head = await store.head();
    if (!head.device) return { ok: false, reason: 'not-enrolled' };
    const built = buildFacts(drafts, {
      head,
      device: head.device,
      clock,
      writer,
      records: records.texts,
    });
    if (!built.ok) return built;
    const own = { expect: head.device, head: built.next };
    const done = await store.commit({ own, wait: built.facts });
    if (done.ok) return { ok: true, facts: built.facts, at: appTime(clock, writer.deviceNow) };
  }
}

export type Records =
  | { readonly ok: true; readonly texts: readonly (string | undefined)[] }
  | FormRefusal;

/** Salted once, so that a fact built anew keeps its private record. */
export function sealAll(drafts: readonly Draft[], { salt }: Pick<Writer, 'salt'>): Records {
  const texts: (string | undefined)[] = [];
  for (const [index, draft] of drafts.entries()) {
    const record = draft.private === undefined ? undefined : privateRecord(draft.private, salt());
    if (record?.ok === false) return refuse(index, 'private-not-canonical', record.reason);
    texts.push(record?.text);
  }
  return { ok: true, texts };
}

interface Basis {
  readonly head: Head;
  readonly device: DeviceHead;
  readonly clock: Clock;
  readonly writer: Pick<Writer, 'by' | 'with' | 'deviceNow' | 'hash'>;
  /** A server's own, on its own facts. */
  readonly seal?: ServerSeal | undefined;
  readonly records: readonly (string | undefined)[];
}

export type Built =
  | { readonly ok: true; readonly facts: readonly Written[]; readonly next: DeviceHead }
  | FormRefusal;

/** The next facts of a device's chain after its head. */
export function buildFacts(drafts: readonly Draft[], basis: Basis): Built {
  const facts: Written[] = [];
  let next = basis.device;
  for (const [index, draft] of drafts.entries()) {
    const made = buildFact(draft, { ...basis, device: next, record: basis.records[index] });
    if (!made.ok) return { ...made, index };
    facts.push(made.written);
    next = { id: next.id, seq: next.seq + 1, last: made.written.id };
  }
  return { ok: true, facts, next };
}

function buildFact(draft: Draft, basis: Basis & { readonly record: string | undefined }) {
  const { head, device, clock, writer, record } = basis;
  const body: Body = {
    service: head.service,
    device: device.id,
    seq: device.seq + 1,
    prev: device.last,
    seen: head.chain,
    at: appTime(clock, writer.deviceNow),
    off: clock.off,
    by: writer.by,
    ...(writer.with && writer.with.length > 0 && { with: writer.with }),
    kind: draft.kind,
    v: draft.v,
    data: draft.data,
    ...(record !== undefined && { private: writer.hash(record) }),
  };
  const text = sealedText(body, basis.seal);
  if (!text.ok) return refuse(0, text.reason, text.detail);
  const offered = record === undefined ? { body: text.text } : { body: text.text, private: record };
  return checkForm(offered, { service: head.service, hash: writer.hash });
}

function sealedText(body: Body, seal: ServerSeal | undefined): CanonicalText {
  const text = canonical(body);
  return text.ok && seal !== undefined ? canonical({ ...body, seal: seal.of(body) }) : text;
}

const refuse = (index: number, reason: FormReason, detail: string): FormRefusal => ({
  ok: false,
  reason,
  detail,
  index,
});
