import * as v from 'valibot';

// Fields that several commands share. Messages say what would be right.

export const probability = v.pipe(
  v.number(),
  v.minValue(0, 'must be 0 or more'),
  v.maxValue(1, 'must be 1 or less'),
);
export const level = v.pipe(
  v.number(),
  v.gtValue(0, 'must be above 0'),
  v.ltValue(1, 'must be below 1'),
);
export const count = v.pipe(
  v.number(),
  v.integer('must be a whole number'),
  v.minValue(0, 'must be 0 or more'),
);
export const positiveCount = v.pipe(
  v.number(),
  v.integer('must be a whole number'),
  v.minValue(1, 'must be 1 or more'),
);
export const nonNegative = v.pipe(
  v.number(),
  v.finite('must be finite'),
  v.minValue(0, 'must be 0 or more'),
);
export const positive = v.pipe(
  v.number(),
  v.finite('must be finite'),
  v.gtValue(0, 'must be above 0'),
);
export const figure = v.nullable(v.number());
export const confidence = v.optional(level, 0.95);

/** An interval that may have an end missing. */
export const interval = { lower: figure, upper: figure };

/** JSON has no undefined and no infinity: both become null. */
export const orNull = (value: number | undefined): number | null =>
  value === undefined || !Number.isFinite(value) ? null : value;

/** Where a row of a CSV file keeps its line, counted from 1. */
export const LINE = Symbol('line');

type Row = Readonly<Record<string, string>> & { readonly [LINE]?: number };

/** A CSV cell as a number; anything else is an error with its line and column named. */
export function cell(row: Row, ...names: readonly string[]): number {
  const value = names.map((name) => row[name]).find((found) => found !== undefined);
  if (value === undefined) throw new Error(`there is no column ${names.join(' or ')}`);
  if (value === '' || Number.isNaN(Number(value)))
    throw new Error(
      `line ${row[LINE] ?? '?'}: "${value}" in column ${names.join(' or ')} is not a number`,
    );
  return Number(value);
}
