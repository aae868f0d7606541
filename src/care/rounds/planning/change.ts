import type { Cohort } from '../../outbreaks/cohort.ts';
import { cohorts } from '../../outbreaks/cohort.ts';
import type { PlanRules } from './instance.ts';

/** Where somebody is, as far as PPE and walking are concerned. */
export interface Spot {
  readonly cohort: Cohort;
  readonly unit: string;
  readonly room: string;
}

export interface Change {
  /** Infinity where the one may not follow the other. */
  readonly minutes: number;
  readonly walk: number;
  readonly full: boolean;
}

export const rankOf = (cohort: Cohort): number => cohorts.indexOf(cohort);

/** What a pair does between two people: PPE, then the way. */
export function changeBetween(rules: PlanRules, before: Spot, after: Spot): Change {
  const otherUnit = before.unit !== after.unit;
  const full = before.cohort !== after.cohort || (otherUnit && rules.unitsApart === 'full-change');
  const walk = otherUnit
    ? rules.walkMinutes.unit
    : before.room === after.room
      ? 0
      : rules.walkMinutes.room;
  const barred =
    rankOf(after.cohort) < rankOf(before.cohort) || (otherUnit && rules.unitsApart === 'own-pair');
  const ppe = full ? rules.fullChangeMinutes : rules.changeMinutes;
  return { minutes: barred ? Infinity : ppe + walk, walk, full };
}
