// For tests only: short ways to look inside outcomes.
import type { Outcome, RefusalReason } from './refusal/refusal.ts';

/** The value of an outcome that has to be there. */
export function got<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`refused: ${outcome.reason}: ${outcome.detail}`);
  return outcome.value;
}

/** The reason of a refusal, or nothing. */
export const reasonOf = (outcome: Outcome<unknown>): RefusalReason | undefined =>
  outcome.ok ? undefined : outcome.reason;

/** Every number in a value, however deep. */
export function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (value instanceof Float64Array) return Array.from(value);
  if (typeof value === 'object' && value !== null) return Object.values(value).flatMap(numbersIn);
  return [];
}
