import { Asked, FoundCost, InUse, Near, OneSolution } from './answer.ts';
import { Input, type Json } from './input.ts';

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
  /** By what share a cost found by search may exceed the optimum: the check's `acceptWithin`. */
  readonly dearer?: number;
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

/** null, or a list or an object of nothing but that: what a source writes where there is no figure. */
function isNothing(expected: Json): boolean {
  if (expected === null || typeof expected !== 'object') return expected === null;
  const parts = Object.values(expected) as readonly Json[];
  return parts.length > 0 && parts.every(isNothing);
}

/** A question that was refused, as an adapter answers it: the reason instead of figures. */
const isRefused = (got: unknown): boolean =>
  typeof got === 'object' && got !== null && 'error' in got && typeof got.error === 'string';

const INFINITIES: Readonly<Record<string, number>> = {
  Inf: Infinity,
  Infinity,
  '-Inf': -Infinity,
  '-Infinity': -Infinity,
};

/** Exact means exact for whole numbers, and to the last few bits for fractions. */
function isNumber(expected: number, got: unknown, allowed: number): boolean {
  const bits = Number.isInteger(expected) ? 0 : 4 * Number.EPSILON * Math.abs(expected);
  return typeof got === 'number' && Math.abs(got - expected) <= Math.max(allowed, bits);
}

/** Where one figure is expected, a list of one is its item. */
function unwrapped(expected: Json, got: unknown): unknown {
  const single = expected === null || typeof expected !== 'object';
  if (!single || typeof got !== 'object' || got === null || !('length' in got)) return got;
  return got.length === 1 ? (got as ArrayLike<unknown>)[0] : got;
}

/** Which figures of a printed publication were rounded: their key begins with "published". */
const isPrinted = (key: string): boolean => key.startsWith('published');

/**
 * Every figure of `expected` against what was got. null stands for undefined, infinite or not
 * reached, and for a question refused; so does a list of nothing but null. Extra figures in `got` do not matter; missing ones do.
 */
export function compare(
  expected: Json,
  answer: unknown,
  tolerance: Tolerance,
  { path, key }: Field = { path: '', key: '' },
): Found {
  const got = unwrapped(expected, answer);
  const special = compareSpecial(expected, got, tolerance, { path, key });
  if (special) return special;
  const miss: Found = [{ path, expected, got }];
  if (isNothing(expected) && (isAbsent(got) || (path === '' && isRefused(got)))) return [];
  if (expected === null) return miss;
  if (typeof expected === 'number') {
    const base = tolerance.relative ? tolerance.size * Math.abs(expected) : tolerance.size;
    const allowed = isPrinted(key)
      ? Math.max(base, printedSlack(key, expected), tolerance.printed ?? 0)
      : base;
    return isNumber(expected, got, allowed) ? [] : miss;
  }
  if (typeof expected === 'string') {
    // An error expected is met by a refusal: the class (the words before a colon) has to agree.
    if (key === 'error') return typeof got === 'string' && sameError(expected, got) ? [] : miss;
    return got === expected || (Object.hasOwn(INFINITIES, expected) && got === INFINITIES[expected])
      ? []
      : miss;
  }
  if (typeof expected === 'boolean') return got === expected ? [] : miss;
  return compareParts(expected, got, { tolerance, path, key, miss });
}

/** The answers that say themselves how they are to be judged. */
function compareSpecial(
  expected: Json,
  got: unknown,
  tolerance: Tolerance,
  at: Field,
): Found | undefined {
  const against = (value: unknown): Found => compare(expected, value, tolerance, at);
  if (got instanceof InUse) {
    const own = against(got.own);
    return Object.values(got.others).some((other) => against(other).length === 0) ? [] : own;
  }
  if (got instanceof Near) {
    const size = tolerance.size + got.slack;
    return compare(expected, got.value, { ...tolerance, size, relative: false }, at);
  }
  if (got instanceof FoundCost) {
    const most = Number(expected) * (1 + (tolerance.dearer ?? 0));
    const holds =
      typeof expected === 'number' && got.cost >= expected - 1e-9 && got.cost <= most + 1e-9;
    return holds ? [] : [{ path: at.path, expected, got: got.cost }];
  }
  if (got instanceof OneSolution) {
    const own = against(got.own);
    return own.length === 0 || got.isAsGood(new Input({ named: expected })) ? [] : own;
  }
  return got instanceof Asked ? compareAsked(expected, got, tolerance, at) : undefined;
}

/** Hands over the fields that ask, and compares only the others; a list is asked item by item. */
function compareAsked(expected: Json, asked: Asked, tolerance: Tolerance, at: Field): Found {
  if (Array.isArray(expected))
    return expected.flatMap((item: Json, i) =>
      compareAsked(item, asked, tolerance, { ...at, path: `${at.path}[${i}]` }),
    );
  const parts = Object.entries(expected ?? {});
  const question = parts.filter(([key]) => asked.fields.includes(key));
  const figures = parts.filter(([key]) => !asked.fields.includes(key));
  const got = asked.figures(new Input(Object.fromEntries(question)));
  return compare(Object.fromEntries(figures), got, tolerance, at);
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
  // How dear a plan may be is no figure to be found, but how the cost beside it is judged.
  const { acceptWithin, ...figures } = expected as { readonly [k: string]: Json };
  const tolerance =
    typeof acceptWithin === 'number' ? { ...at.tolerance, dearer: acceptWithin } : at.tolerance;
  return Object.entries(figures).flatMap(([key, e]) =>
    compare(e, fields[key], tolerance, {
      path: at.path === '' ? key : `${at.path}.${key}`,
      key,
    }),
  );
}
