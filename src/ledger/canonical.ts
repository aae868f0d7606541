import { MAX_DEPTH, plainlyCanonical } from './canonical-scan.ts';

/**
 * Canonical text: RFC 8785 (JSON Canonicalization Scheme) on the subset the ledger admits, so that
 * one value has one text on every engine. Numbers are safe integers without -0; strings have no
 * lone surrogates and are never normalised here; keys match KEY and are sorted; depth is at most 8.
 */
export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

const KEY = /^[a-z][A-Za-z0-9]*$/;
/** Anything but printable ASCII without quote and backslash, which stands for itself. */
const needsCare = /[^ !#-[\]-~]/;
const loneSurrogate = /[\uD800-\uDFFF]/u;

export type CanonicalReason = 'bad-number' | 'bad-string' | 'bad-key' | 'bad-value' | 'too-deep';
export interface CanonicalRefusal {
  readonly ok: false;
  readonly reason: CanonicalReason;
  /** The offending key or number; never a string value, which may be private. */
  readonly detail: string;
}
export type CanonicalText = { readonly ok: true; readonly text: string } | CanonicalRefusal;

class Refused extends Error {
  constructor(
    readonly reason: CanonicalReason,
    readonly detail: string,
  ) {
    super(`${reason}: ${detail}`);
  }
}

/** The canonical text of a value, or why it has none. */
export function canonical(value: unknown): CanonicalText {
  try {
    return { ok: true, text: write(value, 0) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, reason: error.reason, detail: error.detail };
    throw error;
  }
}

/** The canonical text of a value this program made itself; a refusal is a bug. */
export const canonicalText = (value: unknown): string => write(value, 0);

function write(value: unknown, depth: number): string {
  switch (typeof value) {
    case 'string':
      if (!needsCare.test(value)) return `"${value}"`;
      if (loneSurrogate.test(value)) throw new Refused('bad-string', 'a lone surrogate');
      return JSON.stringify(value);
    case 'number':
      if (!Number.isSafeInteger(value) || Object.is(value, -0))
        throw new Refused('bad-number', Object.is(value, -0) ? '-0' : String(value));
      return String(value);
    case 'boolean':
      return value ? 'true' : 'false';
    case 'object':
      if (value === null) return 'null';
      if (depth === MAX_DEPTH) throw new Refused('too-deep', `more than ${MAX_DEPTH} levels`);
      return Array.isArray(value) ? writeArray(value, depth + 1) : writeObject(value, depth + 1);
    default:
      throw new Refused('bad-value', typeof value);
  }
}

function writeArray(values: readonly unknown[], depth: number): string {
  let text = '[';
  for (let i = 0; i < values.length; i++) text += (i === 0 ? '' : ',') + write(values[i], depth);
  return `${text}]`;
}

function writeObject(value: object, depth: number): string {
  const fields = value as Readonly<Record<string, unknown>>;
  let text = '';
  // KEY is ASCII, so the default sort is RFC 8785's order by UTF-16 code units.
  for (const key of sorted(Object.keys(value))) {
    if (!KEY.test(key)) throw new Refused('bad-key', key.slice(0, 40));
    text += `${text === '' ? '' : ','}"${key}":${write(fields[key], depth)}`;
  }
  return `{${text}}`;
}

/** Text that is read back is sorted already, nearly always. */
function sorted(keys: string[]): readonly string[] {
  for (let i = 1; i < keys.length; i++)
    if ((keys[i - 1] ?? '') >= (keys[i] ?? '')) return keys.sort();
  return keys;
}

export type CanonicalRead =
  | { readonly ok: true; readonly value: Json }
  | CanonicalRefusal
  | { readonly ok: false; readonly reason: 'not-json' | 'not-canonical'; readonly detail: string };

/**
 * Reads text only if it is the canonical text of what it says. That one comparison also refuses
 * doubled keys, `1.0`, needless escapes and spaces.
 */
export function readCanonical(text: string): CanonicalRead {
  let value: Json;
  try {
    value = JSON.parse(text) as Json;
  } catch {
    return { ok: false, reason: 'not-json', detail: `${text.length} characters` };
  }
  if (plainlyCanonical(text)) return { ok: true, value };
  const again = canonical(value);
  if (!again.ok) return again;
  if (again.text === text) return { ok: true, value };
  return {
    ok: false,
    reason: 'not-canonical',
    detail: `differs at ${firstDifference(text, again.text)}`,
  };
}

function firstDifference(a: string, b: string): number {
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  return i;
}
