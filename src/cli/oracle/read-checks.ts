import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { jsonFault } from '../json-fault.ts';
import type { Check } from './check.ts';

const OWN = fileURLToPath(new URL('../../../test/oracle/', import.meta.url));

type Fields = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A check that says no tolerance is exact; one written as a text is read as the number it names. */
function toleranceIn({ tolerance }: Fields): unknown {
  const isText = typeof tolerance === 'string' && tolerance.trim() !== '';
  return isText && !Number.isNaN(Number(tolerance)) ? Number(tolerance) : (tolerance ?? 0);
}

/** A file's text without a byte-order mark, be it in UTF-8 or, as some shells write it, in UTF-16. */
function textOf(path: string): string {
  const bytes = readFileSync(path);
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe;
  return bytes.toString(wide ? 'utf16le' : 'utf8').replace(/^\uFEFF/, '');
}

function parsed(path: string): unknown {
  const text = textOf(path);
  const fault = jsonFault(text);
  if (fault !== undefined) throw new Error(`${path} is not JSON, at ${fault}`);
  return JSON.parse(text);
}

/** The checks in what a file holds: a list, one check by itself, or either under `oracles`. */
function listIn(data: unknown, path: string): readonly unknown[] {
  if (Array.isArray(data)) return data;
  if (!isObject(data))
    throw new Error(`${path} holds no checks: a list, or an object with "oracles", is needed`);
  if ('fn' in data) return [data];
  if (!('oracles' in data))
    throw new Error(
      `${path} holds no checks: a list, one check with "fn", or an object with "oracles", is needed`,
    );
  if (Array.isArray(data['oracles'])) return data['oracles'];
  if (isObject(data['oracles']) && 'fn' in data['oracles']) return [data['oracles']];
  throw new Error(`${path} holds no checks: its "oracles" is not a list of checks`);
}

/** Checks from a file. Each keeps its other fields as they are; without an id it is called by its place. */
export function readChecks(path: string): readonly Check[] {
  const list = listIn(parsed(path), path);
  if (list.length === 0) throw new Error(`${path} holds no checks: its list is empty`);
  return list.map((item, k) => {
    const check = isObject(item) ? item : {};
    return { id: `${k + 1}`, ...check, tolerance: toleranceIn(check) } as unknown as Check;
  });
}

/** What files hold, each by itself: one that cannot be read takes nothing from the others. */
export function readFiles(paths: readonly string[]): {
  readonly files: readonly (readonly Check[])[];
  readonly problems: readonly string[];
} {
  const files: (readonly Check[])[] = [];
  const problems: string[] = [];
  for (const path of paths) {
    try {
      files.push(readChecks(path));
    } catch (error) {
      problems.push(error instanceof Error ? error.message : String(error));
    }
  }
  return { files, problems };
}

/** The project's own checks, from every JSON file under test/oracle/. */
export const readOwnChecks = (): readonly Check[] =>
  readdirSync(OWN)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((name) => readChecks(OWN + name));
