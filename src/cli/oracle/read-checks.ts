import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Check } from './check.ts';

const OWN = fileURLToPath(new URL('../../../test/oracle/', import.meta.url));

// A check that says no tolerance is exact.
const NO_TOLERANCE = { tolerance: 0 };

/** Checks from a file: a list, or an object with the list under `oracles`. */
export function readChecks(path: string): readonly Check[] {
  const data = JSON.parse(readFileSync(path, 'utf8')) as
    | readonly Check[]
    | { readonly oracles?: readonly Check[] };
  const list = Array.isArray(data)
    ? (data as readonly Check[])
    : (data as { readonly oracles?: readonly Check[] }).oracles;
  if (!list)
    throw new Error(`${path} holds no checks: a list, or an object with "oracles", is needed`);
  return list.map((check) => ({ ...NO_TOLERANCE, ...check }));
}

/** The project's own checks, from every JSON file under test/oracle/. */
export const readOwnChecks = (): readonly Check[] =>
  readdirSync(OWN)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((name) => readChecks(OWN + name));
