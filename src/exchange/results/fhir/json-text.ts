import type { FileProblem } from '../reported.ts';
import { unread } from '../reported.ts';

export type ReadJson =
  | { readonly ok: true; readonly values: readonly JsonAt[] }
  | ({ readonly ok: false } & FileProblem);

/** A document; in NDJSON, one of many, with its line. */
export interface JsonAt {
  readonly value: unknown;
  readonly line?: number;
}

/** Deeper than any resource is. A parser's own stack is not for a file to use up. */
const MOST_DEEP = 64;

/** One JSON document, or newline-delimited JSON: one on each line. Errors say line and column. */
export function readJson(text: string): ReadJson {
  const bare = text.replace(/^\uFEFF/, '');
  if (bare.trim() === '') return unread('empty', 'The file is empty.');
  const deep = tooDeep(bare);
  if (deep !== undefined)
    return unread(
      'unsafe',
      `Brackets are nested more than ${MOST_DEEP} deep.`,
      placeAt(bare, deep),
    );
  const lines = bare.split(/\r?\n/);
  const filled = lines
    .map((line, i) => ({ line, at: i + 1 }))
    .filter(({ line }) => line.trim() !== '');
  const [first] = filled;
  if (filled.length > 1 && first !== undefined && parsed(first.line).ok) return ndjson(filled);
  const whole = parsed(bare);
  return whole.ok ? { ok: true, values: [{ value: whole.value }] } : broken(bare, whole.offset);
}

function ndjson(lines: readonly { readonly line: string; readonly at: number }[]): ReadJson {
  const values: JsonAt[] = [];
  for (const { line, at } of lines) {
    const one = parsed(line);
    if (!one.ok)
      return unread('broken', 'This line is no JSON document.', {
        ...{ at: 'line', line: at, column: one.offset + 1 },
      });
    values.push({ value: one.value, line: at });
  }
  return { ok: true, values };
}

function broken(text: string, at: number): ReadJson {
  const cut = text.slice(at).trim() === '';
  return unread(
    cut ? 'truncated' : 'broken',
    cut ? 'The file ends in the middle.' : 'This is no JSON from here on.',
    placeAt(text, at),
  );
}

function parsed(text: string): { ok: true; value: unknown } | { ok: false; offset: number } {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return { ok: false, offset: whereBroken(text) };
  }
}

const token =
  /[ \t\n\r]*(?:([{}[\],:])|("(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*")|(-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null))/y;

type Wants = 'value' | 'first' | 'key' | 'first-key' | 'colon' | 'next' | 'end';

/** Where a text stops being JSON (RFC 8259): engines' own messages do not always say. */
function whereBroken(text: string): number {
  const around: ('{' | '[')[] = [];
  let wants: Wants = 'value';
  let at = 0;
  const after = (): Wants => (around.length === 0 ? 'end' : 'next');
  for (;;) {
    token.lastIndex = at;
    const found = token.exec(text);
    const start = at + (/^[ \t\n\r]*/.exec(text.slice(at))?.[0].length ?? 0);
    if (found === null) return start;
    const [, sign, string] = found;
    const next = step(wants, { sign, string: string !== undefined }, around, after);
    if (next === undefined) return start;
    wants = next;
    at = token.lastIndex;
  }
}

function step(
  wants: Wants,
  { sign, string }: { readonly sign: string | undefined; readonly string: boolean },
  around: ('{' | '[')[],
  after: () => Wants,
): Wants | undefined {
  const close = (): Wants => {
    around.pop();
    return after();
  };
  switch (wants) {
    case 'end':
      return undefined;
    case 'first':
    case 'value':
      if (sign === '{' || sign === '[') {
        around.push(sign);
        return sign === '{' ? 'first-key' : 'first';
      }
      if (sign === ']' && wants === 'first') return close();
      return sign === undefined ? after() : undefined;
    case 'first-key':
    case 'key':
      if (sign === '}' && wants === 'first-key') return close();
      return string ? 'colon' : undefined;
    case 'colon':
      return sign === ':' ? 'value' : undefined;
    case 'next':
      if (sign === ',') return around.at(-1) === '{' ? 'key' : 'value';
      return (sign === '}' && around.at(-1) === '{') || (sign === ']' && around.at(-1) === '[')
        ? close()
        : undefined;
  }
}

export function placeAt(
  text: string,
  offset: number,
): FileProblem['place'] & { readonly at: 'line' } {
  const before = text.slice(0, offset);
  const line = before.split('\n').length;
  return { at: 'line', line, column: offset - before.lastIndexOf('\n') };
}

/** Where brackets outside strings first go too deep. */
function tooDeep(text: string): number | undefined {
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i];
    if (quoted) {
      if (sign === '\\') i += 1;
      else if (sign === '"') quoted = false;
    } else if (sign === '"') quoted = true;
    else if (sign === '{' || sign === '[') {
      depth += 1;
      if (depth > MOST_DEEP) return i;
    } else if (sign === '}' || sign === ']') depth -= 1;
  }
  return undefined;
}
