import { type Chance, uniform } from '../../../statistics/random/chance.ts';
import { drawNormal } from '../../../statistics/random/draw-normal.ts';
import type { PlanPerson } from './instance.ts';

/** What happens to one person on one imagined day. */
export interface DrawnVisit {
  readonly minutes: number;
  readonly stops: boolean;
  /** How long a second try would take. */
  readonly again: number;
}

/**
 * A length of visit: log-normal with the person's mean and standard deviation (moments matched:
 * sigma² = ln(1 + sd²/mean²), mu = ln mean - sigma²/2), the usual law of times that people take.
 */
export function drawMinutes(chance: Chance, { mean, sd }: PlanPerson['minutes']): number {
  const variance = Math.log(1 + (sd / mean) ** 2);
  const z = drawNormal(chance);
  return Math.exp(Math.log(mean) - variance / 2 + Math.sqrt(variance) * z);
}

/** One imagined day, the same for every plan that is tried on it, so that plans differ and days do not. */
export function drawDay(
  chance: Chance,
  people: readonly PlanPerson[],
): ReadonlyMap<string, DrawnVisit> {
  return new Map(
    people.map((person) => [
      person.id,
      {
        minutes: drawMinutes(chance, person.minutes),
        stops: uniform(chance) < person.stopChance,
        again: drawMinutes(chance, person.minutes),
      },
    ]),
  );
}
