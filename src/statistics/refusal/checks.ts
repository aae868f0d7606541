// One check a line: each gives a refusal, or nothing when the value will do.
import { type Refusal, refuse } from './refusal.ts';

type Check = (name: string, value: number) => Refusal | undefined;

/** Figures beyond these have squares that leave the range of doubles, and stand for nothing. */
const HUGE = 1e18;
const TINY = 1e-18;

const notHuge: Check = (name, value) =>
  Math.abs(value) <= HUGE
    ? undefined
    : refuse('too-large', `${name} must be at most ${HUGE}, and it is ${value}.`);

export const finite: Check = (name, value) =>
  Number.isFinite(value)
    ? notHuge(name, value)
    : refuse('not-a-number', `${name} must be a number, and it is ${value}.`);

export const count: Check = (name, value) =>
  Number.isSafeInteger(value) && value >= 0
    ? undefined
    : refuse('not-a-count', `${name} must be a whole number, 0 or more, and it is ${value}.`);

export const positiveCount: Check = (name, value) =>
  Number.isSafeInteger(value) && value >= 1
    ? undefined
    : refuse('not-a-count', `${name} must be a whole number, 1 or more, and it is ${value}.`);

export const probability: Check = (name, value) =>
  value >= 0 && value <= 1
    ? undefined
    : refuse('not-a-probability', `${name} must lie between 0 and 1, and it is ${value}.`);

/** A probability that is neither 0 nor 1: a confidence level, a service level. */
export const properProbability: Check = (name, value) =>
  value > 0 && value < 1
    ? undefined
    : refuse(
        'not-a-probability',
        `${name} must lie between 0 and 1, not at an end, and it is ${value}.`,
      );

/** As large as a count or a figure may be where a law is summed or searched: more people than a continent has. */
const LARGEST = 1e9;

/** At most 1e9: beyond it laws of counts take too long, and no home is that large. */
export const tractable: Check = (name, value) =>
  value <= LARGEST
    ? undefined
    : refuse('too-large', `${name} must be at most ${LARGEST}, and it is ${value}.`);

export const positive: Check = (name, value) =>
  value >= TINY && Number.isFinite(value)
    ? notHuge(name, value)
    : refuse('out-of-range', `${name} must be above 0, and it is ${value}.`);

export const nonNegative: Check = (name, value) =>
  value >= 0 && Number.isFinite(value)
    ? notHuge(name, value)
    : refuse('out-of-range', `${name} must be 0 or more, and it is ${value}.`);

export const atMost = (name: string, value: number, limit: number): Refusal | undefined =>
  value <= limit
    ? undefined
    : refuse('out-of-range', `${name} must be at most ${limit}, and it is ${value}.`);

/** Runs one check over a list and names the first place that fails, counted from 1. */
export function each(name: string, values: ArrayLike<number>, check: Check): Refusal | undefined {
  for (let i = 0; i < values.length; i++) {
    const refused = check(`${name}, item ${i + 1},`, values[i] as number);
    if (refused) return refused;
  }
  return undefined;
}

export const notEmpty = (name: string, values: ArrayLike<unknown>): Refusal | undefined =>
  values.length > 0 ? undefined : refuse('empty', `${name} is empty: give at least one value.`);

export const sameLength = (
  names: string,
  a: ArrayLike<unknown>,
  b: ArrayLike<unknown>,
): Refusal | undefined =>
  a.length === b.length
    ? undefined
    : refuse('lengths-differ', `${names} must be equally long: ${a.length} against ${b.length}.`);

/** The first refusal of several checks, in the order given. */
export const firstRefusal = (...checks: readonly (Refusal | undefined)[]): Refusal | undefined =>
  checks.find((check) => check !== undefined);
