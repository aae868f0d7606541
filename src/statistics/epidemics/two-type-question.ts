import type { InfectiousPeriod } from './infectious-period.ts';

/** Rates at which one infective of the first group infects one susceptible of the second. */
export interface PairRates {
  readonly residentToResident: number;
  readonly residentToStaff: number;
  readonly staffToResident: number;
  readonly staffToStaff: number;
}

export interface TwoTypeQuestion {
  /** Susceptible at the start. */
  readonly residents: number;
  readonly staff: number;
  /** Infectious at the start, on top of them. */
  readonly introductions: { readonly residents: number; readonly staff: number };
  readonly rates: PairRates;
  readonly period: InfectiousPeriod;
}

/** P(r residents and s staff still susceptible in the end), row by row of r. */
export type JointLaw = (question: TwoTypeQuestion) => Float64Array;
