import { utf8ToBytes } from '@noble/hashes/utils.js';
import { type Json, type JsonObject, readCanonical } from './canonical.ts';
import { erasureFault } from './erased-fact.ts';
import type { Body, Written } from './fact.ts';
import type { FormReason } from './form-reasons.ts';
import type { Hash } from './hash.ts';
import {
  type DeviceId,
  type FactId,
  isChainValue,
  isDeviceId,
  isFactId,
  isInstant,
  isServerDevice,
  isStaffId,
  type ServiceId,
} from './ids.ts';
import { isSalt } from './private.ts';

/** In bytes of UTF-8. */
export const MAX_BODY = 16 * 1024;
export const MAX_PRIVATE = 64 * 1024;
const MAX_WITH = 16;

/** A fact as it is offered, by this device's own `append` or by the wire. */
export interface Offered {
  readonly body: unknown;
  readonly private?: unknown;
}

export interface FormContext {
  readonly service: ServiceId;
  readonly hash: Hash;
}

export interface Checked {
  readonly ok: true;
  readonly written: Written;
  readonly body: Body;
}

export interface FormRefusal {
  readonly ok: false;
  readonly reason: FormReason;
  /** What was wrong, with the offending key or value; never anything from a private record. */
  readonly detail: string;
  /** Which of the facts offered together, from 0. */
  readonly index: number;
}

/**
 * The only ground on which a fact is ever refused: its form. Device and server run this same
 * function, so what a device has kept the server takes. It never looks at order, rights or sense.
 */
export function checkForm(offered: Offered, context: FormContext): Checked | FormRefusal {
  const body = readBody(offered.body, context.service);
  if (!body.ok) return body;
  const record = readPrivate(offered.private, body.body, context.hash);
  if (!record.ok) return record;
  const id = context.hash(body.text) as FactId;
  // Written out: a spread of each fact costs as much as its hash.
  const written =
    record.text === undefined
      ? { id, body: body.text }
      : { id, body: body.text, private: record.text };
  return { ok: true, body: body.body, written };
}

/** Every fact of a batch, or the first that is refused and its index. */
export function checkForms(
  offered: readonly Offered[],
  context: FormContext,
): { readonly ok: true; readonly facts: readonly Checked[] } | FormRefusal {
  const facts: Checked[] = [];
  for (const [index, one] of offered.entries()) {
    const checked = checkForm(one, context);
    if (!checked.ok) return { ...checked, index };
    facts.push(checked);
  }
  return { ok: true, facts };
}

type BodyRead = { readonly ok: true; readonly body: Body; readonly text: string };

function readBody(text: unknown, service: ServiceId): BodyRead | FormRefusal {
  if (typeof text !== 'string') return refuse('not-text', typeof text);
  if (longerThan(text, MAX_BODY)) return refuse('body-too-large', `${text.length} characters`);
  const read = readCanonical(text);
  if (!read.ok) return refuse(read.reason, read.detail);
  if (!isObject(read.value)) return refuse('bad-body', 'not an object');
  const fault = keyFault(read.value) ?? fieldFault(read.value, service) ?? erasureFault(read.value);
  if (fault) return refuse(fault[0], fault[1]);
  return { ok: true, body: read.value as unknown as Body, text };
}

type Fault = readonly [FormReason, string] | undefined;

const required = [
  'at',
  'by',
  'data',
  'device',
  'kind',
  'off',
  'prev',
  'seen',
  'seq',
  'service',
  'v',
];
const optional = ['private', 'seal', 'with'];
const allowed = new Set([...required, ...optional]);

function keyFault(body: JsonObject): Fault {
  const keys = Object.keys(body);
  const unknown = keys.find((key) => !allowed.has(key));
  const more = optional.filter((key) => key in body).length;
  if (unknown === undefined && keys.length === required.length + more) return undefined;
  const missing = required.find((key) => !(key in body));
  return missing === undefined ? ['unknown-key', unknown ?? ''] : ['missing-key', missing];
}

const KIND = /^[a-z][A-Za-z0-9]*(?:[.-][A-Za-z0-9]+)*$/;
const isKind = (kind: unknown): boolean =>
  typeof kind === 'string' && kind.length <= 64 && KIND.test(kind);
const isCount = (n: unknown): boolean => typeof n === 'number' && n >= 1;
const isWith = (staff: unknown): boolean =>
  Array.isArray(staff) &&
  staff.length >= 1 &&
  staff.length <= MAX_WITH &&
  staff.every(isStaffId) &&
  (staff.length === 1 || new Set(staff).size === staff.length);

interface Field {
  readonly key: string;
  readonly reason: FormReason;
  readonly fits: (value: unknown) => boolean;
}
const field = (key: string, reason: FormReason, fits: Field['fits']): Field => ({
  key,
  reason,
  fits,
});
const fields: readonly Field[] = [
  field('device', 'bad-device', isDeviceId),
  field('seq', 'bad-seq', isCount),
  field('prev', 'bad-link', isFactId),
  field('seen', 'bad-link', isChainValue),
  field('at', 'bad-instant', isInstant),
  field('off', 'bad-offset', (off) => typeof off === 'number'),
  field('by', 'bad-staff', isStaffId),
  field('with', 'bad-staff', (staff) => staff === undefined || isWith(staff)),
  field('kind', 'bad-kind', isKind),
  field('v', 'bad-version', isCount),
  field('data', 'bad-data', isObject),
  field('seal', 'bad-seal', (seal) => seal === undefined || isFactId(seal)),
  field('private', 'bad-private-hash', (hash) => hash === undefined || isFactId(hash)),
];

function fieldFault(body: JsonObject, service: ServiceId): Fault {
  if (body['service'] !== service) return ['other-service', shown(body['service'])];
  const wrong = fields.find(({ key, fits }) => !fits(body[key]));
  if (wrong) return [wrong.reason, `${wrong.key}: ${shown(body[wrong.key])}`];
  const device = body['device'] as DeviceId;
  return 'seal' in body && !isServerDevice(device) ? ['bad-seal', device] : undefined;
}

type PrivateRead = { readonly ok: true; readonly text: string | undefined };
const noRecord: PrivateRead = { ok: true, text: undefined };

function readPrivate(record: unknown, body: Body, hash: Hash): PrivateRead | FormRefusal {
  if (record === undefined || record === null) return noRecord;
  if (typeof record !== 'string') return refuse('private-not-text', typeof record);
  if (body.private === undefined) return refuse('private-unasked', body.kind);
  if (longerThan(record, MAX_PRIVATE))
    return refuse('private-too-large', `${record.length} characters`);
  const read = readCanonical(record);
  // The detail of what is private stays out: it may end in a log.
  if (!read.ok) return refuse('private-not-canonical', read.reason);
  if (!isRecord(read.value)) return refuse('private-shape', 'not {salt, value}');
  if (hash(record) !== body.private) return refuse('private-mismatch', body.private);
  return { ok: true, text: record };
}

function isRecord(value: Json): boolean {
  return (
    isObject(value) && Object.keys(value).length === 2 && 'value' in value && isSalt(value['salt'])
  );
}

function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const refuse = (reason: FormReason, detail: string): FormRefusal => ({
  ok: false,
  reason,
  detail,
  index: 0,
});

const shown = (value: unknown): string =>
  typeof value === 'string'
    ? value.slice(0, 80)
    : typeof value === 'number'
      ? String(value)
      : typeof value;

/** Encoded only when the count of UTF-16 units cannot decide. */
function longerThan(text: string, bytes: number): boolean {
  if (text.length > bytes) return true;
  return text.length * 3 > bytes && utf8ToBytes(text).length > bytes;
}
