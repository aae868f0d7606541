import type { Json } from '../../../src/cli/oracle/input.ts';

/** An input with a few of its places changed, and where. */
export interface Degenerate {
  readonly what: string;
  readonly input: Json;
}

type Place = readonly (string | number)[];

/** Ends, limits and what is no number at all; 1e7 is as many tests as a whole country makes. */
const NUMBERS: readonly number[] = [
  ...[0, 1, -1, 0.5, 1.5, 2, 100, 1e7, 1e12, 2 ** 53, 1e-12, 1e-300, 1e300],
  ...[Number.NaN, Infinity, -Infinity],
];
/** What stands where something of another shape belongs. */
const SHAPES: readonly Json[] = [null, [], {}, '', 'x', true, [[]], [null], [{}]];

/** One change of a list of numbers each: nothing, one, all alike, one that is no number, one more. */
const lists = (list: readonly number[]): readonly Json[] => [
  ...[[], list.slice(0, 1), list.slice(0, 2), list.slice(1), [...list, ...list]],
  ...[0, 1, -1, 0.5, 1e7, Number.NaN, Infinity].map((value) => list.map(() => value)),
  [...list.slice(1), Number.NaN],
  [...list].reverse(),
];

const isNumbers = (value: Json): value is readonly number[] =>
  Array.isArray(value) && value.length > 0 && value.every((item) => typeof item === 'number');

/** Every place of a value; of a list only the first two and the last. */
function placesOf(value: Json, at: Place = []): readonly Place[] {
  if (value === null || typeof value !== 'object') return [at];
  const keys = Array.isArray(value)
    ? [...new Set([0, 1, value.length - 1])].filter((k) => k >= 0 && k < value.length)
    : Object.keys(value);
  const parts = value as { readonly [key: string | number]: Json };
  return [at, ...keys.flatMap((key) => placesOf(parts[key] as Json, [...at, key]))];
}

function valueAt(value: Json, place: Place): Json {
  let found = value;
  for (const key of place) found = (found as { readonly [key: string | number]: Json })[key] as Json;
  return found;
}

/** A copy with another value at one place. */
function put(value: Json, [key, ...rest]: Place, other: Json): Json {
  if (key === undefined) return other;
  const inner = put((value as { readonly [key: string | number]: Json })[key] as Json, rest, other);
  if (Array.isArray(value)) return (value as readonly Json[]).map((item, k) => (k === key ? inner : item));
  return { ...(value as { readonly [key: string]: Json }), [key]: inner };
}

function without(value: Json, key: string): Json {
  const { [key]: _, ...rest } = value as { readonly [key: string]: Json };
  return rest;
}

const shown = (value: Json): string =>
  JSON.stringify(value, (_, v: unknown) => (typeof v === 'number' && !Number.isFinite(v) ? String(v) : v)).slice(0, 60);

/** Every number of one kind set to the same: the counts of a question, or its shares. */
const kindOf = (value: Json, kind: (number: number) => boolean, number: number): Json => {
  if (typeof value === 'number') return kind(value) ? number : value;
  if (Array.isArray(value)) return (value as readonly Json[]).map((item) => kindOf(item, kind, number));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, kindOf(item, kind, number)]));
};
const isCount = (n: number): boolean => Number.isInteger(n) && n > 1;
const isShare = (n: number): boolean => n > 0 && n < 1;

/** All the ways in which one good input is made degenerate, one or two places at a time. */
export function degenerate(input: Json): readonly Degenerate[] {
  const places = placesOf(input).filter((place) => place.length > 0);
  const single = places.flatMap((place) => {
    const good = valueAt(input, place);
    const numbers = typeof good === 'number' ? NUMBERS : isNumbers(good) ? lists(good) : [];
    return [...numbers, ...SHAPES].map((bad) => ({ place, bad }));
  });
  const plain = places.filter((place) => place.length === 1 && typeof valueAt(input, place) === 'number');
  const ends = [0, 1, 1e7];
  const pairs = plain.flatMap((first, k) =>
    plain.slice(k + 1).flatMap((second) => ends.flatMap((a) => ends.map((b) => ({ first, second, a, b })))),
  );
  return [
    ...single.map(({ place, bad }) => ({ what: `${place.join('.')} = ${shown(bad)}`, input: put(input, place, bad) })),
    ...pairs.map(({ first, second, a, b }) => ({
      what: `${first.join('.')} = ${a}, ${second.join('.')} = ${b}`,
      input: put(put(input, first, a), second, b),
    })),
    ...[0, 1, 2, -1, 0.5, 1e7, Number.NaN, Infinity].map((n) => ({ what: `all numbers ${n}`, input: kindOf(input, () => true, n) })),
    ...[2, 1e7, 1e9].map((n) => ({ what: `all counts ${n}`, input: kindOf(input, isCount, n) })),
    ...[0, 1, 0.5, 1e-12, 1 - 1e-12].map((p) => ({ what: `all shares ${p}`, input: kindOf(input, isShare, p) })),
    ...Object.keys(input as object).map((key) => ({ what: `without ${key}`, input: without(input, key) })),
    ...[null, [], {}, 'x', 0].map((other) => ({ what: `instead of all: ${shown(other)}`, input: other })),
  ];
}
