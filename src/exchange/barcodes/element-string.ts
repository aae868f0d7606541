import { passesCheck } from '../../statistics/identity/check-characters.ts';
import { gs1Mod10 } from '../../statistics/identity/weighted-schemes.ts';
import type { Identifier } from './gs1-identifiers.ts';
import {
  GS,
  identifierLength,
  identifiers,
  predefinedLength,
  SET_82,
  SYMBOLOGY,
} from './gs1-identifiers.ts';

export interface Element {
  readonly ai: string;
  readonly value: string;
}

/** Why a scan cannot be read. `at` is the character, from 0, at which it stops making sense. */
export type Unreadable =
  | 'empty'
  | 'too-long'
  | 'not-gs1'
  | 'control-character'
  | 'unknown-identifier'
  | 'cut-short'
  | 'value-too-long'
  | 'wrong-characters'
  | 'check-digit'
  | 'read-twice';

export type ReadElements =
  | { readonly ok: true; readonly elements: readonly Element[] }
  | { readonly ok: false; readonly reason: Unreadable; readonly at: number };

const fault = (reason: Unreadable, at: number): ReadElements => ({ ok: false, reason, at });

/** The longest a symbol carries is far less; a scanner that sends more sent several scans. */
const LONGEST = 400;

/**
 * Reads a GS1 element string as a scanner sends it (separator: GS, character 29), or as it is printed
 * for people, in brackets. Work: the length of the text.
 */
export function readElements(scan: string): ReadElements {
  const text = scan.trim().replace(SYMBOLOGY, '');
  if (text === '') return fault('empty', 0);
  if (text.length > LONGEST) return fault('too-long', LONGEST);
  const odd = oddSign(text);
  if (odd >= 0) return fault('control-character', odd);
  const raw = text.startsWith('(') ? fromBrackets(text) : text;
  return raw === undefined ? fault('not-gs1', 0) : readAll(raw);
}

/** The first character that no scanner sends: anything but printable ASCII and the separator. */
const oddSign = (text: string): number =>
  Array.from(text).findIndex((sign) => !(sign >= ' ' && sign <= '~') && sign !== GS);

/** "(01)095…(10)AB" as a scanner would send it. Brackets inside a value stay where no AI is in them. */
function fromBrackets(text: string): string | undefined {
  const parts = text.split(/\((\d{2,4})\)/);
  if (parts[0] !== '') return undefined;
  let raw = '';
  for (let i = 1; i + 1 < parts.length; i += 2)
    raw += `${parts[i] ?? ''}${parts[i + 1] ?? ''}${GS}`;
  return raw;
}

function readAll(text: string): ReadElements {
  const elements: Element[] = [];
  let at = 0;
  while (at < text.length) {
    if (text.charAt(at) === GS) {
      at += 1;
      continue;
    }
    const next = readOne(text, at);
    if (!('ai' in next)) return next;
    const before = elements.find(({ ai }) => ai === next.ai);
    if (before !== undefined) return fault('read-twice', at);
    elements.push({ ai: next.ai, value: next.value });
    at = next.end;
  }
  return elements.length === 0 ? fault('empty', 0) : { ok: true, elements };
}

type One = Element & { readonly end: number };

function readOne(text: string, at: number): One | Exclude<ReadElements, { ok: true }> {
  const wrong = (reason: Unreadable, where = at) => ({ ok: false, reason, at: where }) as const;
  const firstTwo = text.slice(at, at + 2);
  const length = identifierLength(firstTwo);
  if (length === undefined) return wrong(at === 0 ? 'not-gs1' : 'unknown-identifier');
  const ai = text.slice(at, at + length);
  if (!/^\d+$/.test(ai) || ai.length < length) return wrong('cut-short');
  const from = at + length;
  const predefined = predefinedLength[firstTwo];
  const separator = text.indexOf(GS, from);
  const stop = separator < 0 ? text.length : separator;
  const end = predefined === undefined ? stop : at + predefined;
  if (end > stop) return wrong('cut-short', stop);
  const value = text.slice(from, end);
  const bad = badValue(identifiers[ai], value);
  return bad === undefined ? { ai, value, end } : wrong(bad, from);
}

function badValue(known: Identifier | undefined, value: string): Unreadable | undefined {
  if (value === '') return 'cut-short';
  if (!SET_82.test(value)) return 'wrong-characters';
  if (known === undefined) return value.length > 90 ? 'value-too-long' : undefined;
  if (value.length > known.length) return 'value-too-long';
  if (known.holds === 'text') return undefined;
  if (!/^\d+$/.test(value)) return 'wrong-characters';
  return known.holds === 'gtin' && !passesCheck(gs1Mod10, value) ? 'check-digit' : undefined;
}
