// Stands in for vitest in a mutation run: collects tests as plain functions.
import { isDeepStrictEqual } from 'node:util';

export interface Collected {
  readonly name: string;
  readonly run: () => unknown;
}

export const collected: Collected[] = [];
const names: string[] = [];

type Body = (...args: readonly never[]) => unknown;

const label = (name: string, args: readonly unknown[]): string =>
  `${name} ${args.map((a) => (typeof a === 'string' || typeof a === 'number' ? String(a) : '')).join(' ')}`.trim();

const spread = (row: unknown): readonly unknown[] =>
  Array.isArray(row) ? (row as unknown[]) : [row];

function add(name: string, optionsOrBody: unknown, maybeBody?: unknown): void {
  const body = (typeof optionsOrBody === 'function' ? optionsOrBody : maybeBody) as () => unknown;
  const full = [...names, name].join(' > ');
  collected.push({ name: full, run: () => body() });
}

function group(name: string, body: () => void): void {
  names.push(name);
  body();
  names.pop();
}

const each =
  (register: (name: string, body: () => void) => void) =>
  (table: readonly unknown[]) =>
  (name: string, body: Body): void => {
    for (const row of table)
      register(
        label(name, spread(row)),
        () => void (body as (...args: readonly unknown[]) => unknown)(...spread(row)),
      );
  };

export const it = Object.assign(add, { each: each(add), skip: () => undefined });
export const describe = Object.assign(group, { each: each(group) });
export const afterAll = (): void => undefined;
export const beforeAll = (body: () => void): void => {
  body();
};

class Failed extends Error {}

/** Equal in every part; undefined fields count as absent, and typed arrays compare by their items. */
function tidy(value: unknown): unknown {
  if (ArrayBuffer.isView(value)) return Array.from(value as unknown as ArrayLike<number>);
  if (Array.isArray(value)) return value.map(tidy);
  if (value instanceof Set || value instanceof Map || value === null || typeof value !== 'object')
    return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([k, v]) => (v === undefined ? [] : [[k, tidy(v)]])),
  );
}
const same = (a: unknown, b: unknown): boolean => isDeepStrictEqual(tidy(a), tidy(b));

/** `part` stands in `value`, whatever else does. */
function holds(value: unknown, part: unknown): boolean {
  if (part === null || typeof part !== 'object') return Object.is(value, part);
  if (value === null || typeof value !== 'object') return false;
  return Object.entries(part).every(([key, inner]) =>
    holds((value as Record<string, unknown>)[key], inner),
  );
}

function matchers(value: unknown, wanted: boolean) {
  const judge = (good: boolean): void => {
    if (good !== wanted) throw new Failed('not as expected');
  };
  const number = value as number;
  return {
    toBe: (other: unknown) => judge(Object.is(value, other)),
    toEqual: (other: unknown) => judge(same(value, other)),
    toMatchObject: (part: object) => judge(holds(value, part)),
    toBeUndefined: () => judge(value === undefined),
    toBeDefined: () => judge(value !== undefined),
    toBeNull: () => judge(value === null),
    toBeCloseTo: (other: number, digits = 2) =>
      judge(Math.abs(number - other) < 10 ** -digits / 2 || number === other),
    toBeGreaterThan: (other: number) => judge(number > other),
    toBeGreaterThanOrEqual: (other: number) => judge(number >= other),
    toBeLessThan: (other: number) => judge(number < other),
    toBeLessThanOrEqual: (other: number) => judge(number <= other),
    toHaveLength: (length: number) => judge((value as ArrayLike<unknown>).length === length),
    toContain: (part: unknown) =>
      judge((value as string | readonly unknown[]).includes(part as never)),
    toMatch: (pattern: RegExp) => judge(pattern.test(value as string)),
    toThrow: () => {
      let threw = false;
      try {
        (value as () => unknown)();
      } catch {
        threw = true;
      }
      judge(threw);
    },
  };
}

export const expect = (value: unknown, _message?: string) => ({
  ...matchers(value, true),
  not: matchers(value, false),
});
