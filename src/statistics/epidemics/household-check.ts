import { atMost, count, firstRefusal } from '../refusal/checks.ts';
import type { Refusal } from '../refusal/refusal.ts';

export interface Household {
  readonly susceptible: number;
  readonly introductions: number;
}

/** Exact laws are given up to this many susceptibles: the work grows as the cube. */
const MOST = 600;

export const checkHousehold = ({ susceptible, introductions }: Household): Refusal | undefined =>
  firstRefusal(
    count('susceptible', susceptible),
    count('introductions', introductions),
    atMost('susceptible', susceptible, MOST),
    atMost('introductions', introductions, MOST),
  );
