import { below, type Chance, uniform } from '../../../src/statistics/random/chance.ts';

/** One question to the project and the same to R. */
export interface LiveCase {
  readonly fn: string;
  readonly input: object;
  /** R code for a named list of numeric vectors: the expected figures. */
  readonly r: string;
  readonly tolerance: number;
  readonly relative?: boolean;
}

export type Draw = (chance: Chance) => LiveCase;

/** A vector in R's notation, every bit of it. */
export const vector = (values: readonly number[]): string => `c(${values.map(String).join(',')})`;

export const between = (chance: Chance, low: number, high: number): number => low + (high - low) * uniform(chance);
export const whole = (chance: Chance, low: number, high: number): number => low + below(chance, high - low + 1);
export const many = <T>(n: number, make: () => T): T[] => Array.from({ length: n }, make);
/** Spread over magnitudes. */
export const logBetween = (chance: Chance, low: number, high: number): number => Math.exp(between(chance, Math.log(low), Math.log(high)));
export const oneOf = <T>(chance: Chance, items: readonly T[]): T => items[below(chance, items.length)] as T;
