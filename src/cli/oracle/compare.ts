import { AnyOf, Near } from './answer.ts';
import type { Json } from './input.ts';

export interface Difference {
  readonly path: string;
  readonly expected: Json;
  readonly got: unknown;
}

export interface Tolerance {
  readonly size: number;
  readonly relative: boolean;
  /** How exact the note says printed figures are, where rounding alone does not explain them. */
  readonly printed?: number;
}

type Found = readonly Difference[];

/** Where a figure stands, and the name it goes by there. */
interface Field {
  readonly path: string;
  readonly key: string;
}

/** Half a unit of the last printed place; a list printed to mixed places is judged item by item. */
function printedSlack(key: string, value: number): number {
  const places = /(\d+)dp/.exec(key)?.[1];
  const shown = places ? Number(places) : (String(value).split('.')[1]?.length ?? 0);
  return 0.5 * 10 ** -shown * (1 + 1e-9);
}

const isAbsent = (got: unknown): boolean =>
  got === undefined || got === null || (typeof got === 'number' && !Number.isFinite(got));

const INFINITIES: Readonly<Record<string, number>> = {
  Inf: Infinity,
  Infinity,
  '-Inf': -Infinity,
  '-Infinity': -Infinity,
};

/** Exact means exact for whole numbers, and to the last few bits for fractions. A list of one is its item. */
function compareNumber(expected: number, got: unknown, allowed: number): boolean {
  const [only, more] =
    typeof got === 'object' && got !== null && 'length' in got
      ? Array.from(got as ArrayLike<unknown>)
      : [got];
  if (more !== undefined) return false;
  const bits = Number.isInteger(expected) ? 0 : 4 * Number.EPSILON * Math.abs(expected);
  return typeof only === 'number' && Math.abs(only - expected) <= Math.max(allowed, bits);
}

/** Which figures of a printed publication were rounded: their key begins with "published". */
const isPrinted = (key: string): boolean => key.startsWith('published');

/**
 * Every figure of `expected` against what was got. null stands for undefined, infinite or not
 * reached. Extra figures in `got` do not matter; missing ones do.
 */
export function compare(
  expected: Json,
  got: unknown,
  tolerance: Tolerance,
  { path, key }: Field = { path: '', key: '' },
): Found {
  const miss: Found = [{ path, expected, got: got instanceof AnyOf ? got.answers : got }];
  if (got instanceof AnyOf) {
    const tries = got.answers.map((a) => compare(expected, a, tolerance, { path, key }));
    return tries.find((t) => t.length === 0) ?? miss;
  }
  if (got instanceof Near) {
    return compare(
      expected,
      got.value,
      { ...tolerance, size: tolerance.size + got.slack, relative: false },
      { path, key },
    );
  }
  if (expected === null) return isAbsent(got) ? [] : miss;
  if (typeof expected === 'number') {
    const base = tolerance.relative ? tolerance.size * Math.abs(expected) : tolerance.size;
    const allowed = isPrinted(key)
      ? Math.max(base, printedSlack(key, expected), tolerance.printed ?? 0)
      : base;
    return compareNumber(expected, got, allowed) ? [] : miss;
  }
  if (typeof expected === 'string') {
    // An error expected is met by a refusal: the class (the words before a colon) has to agree.
    if (key === 'error') return typeof got === 'string' && sameError(expected, got) ? [] : miss;
    return got === expected || (expected in INFINITIES && got === INFINITIES[expected]) ? [] : miss;
  }
  if (typeof expected === 'boolean') return got === expected ? [] : miss;
  return compareParts(expected, got, { tolerance, path, key, miss });
}

function sameError(expected: string, got: string): boolean {
  const [kind] = expected.split(':');
  return !expected.includes(':') || got.toLowerCase().startsWith((kind ?? '').toLowerCase());
}

interface Place extends Field {
  readonly tolerance: Tolerance;
  readonly miss: Found;
}

function compareParts(
  expected: readonly Json[] | { readonly [k: string]: Json },
  got: unknown,
  at: Place,
): Found {
  if (Array.isArray(expected)) {
    if (got === null || typeof got !== 'object' || !('length' in got)) return at.miss;
    const list = Array.from(got as ArrayLike<unknown>);
    if (list.length !== expected.length) return at.miss;
    return expected.flatMap((e: Json, i) =>
      compare(e, list[i], at.tolerance, { path: `${at.path}[${i}]`, key: at.key }),
    );
  }
  if (got === null || typeof got !== 'object') return at.miss;
  const fields = got as Readonly<Record<string, unknown>>;
  return Object.entries(expected as { readonly [k: string]: Json }).flatMap(([key, e]) =>
    compare(e, fields[key], at.tolerance, {
      path: at.path === '' ? key : `${at.path}.${key}`,
      key,
    }),
  );
}
