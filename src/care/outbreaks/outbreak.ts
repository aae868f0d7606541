import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { everybody } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import type { UnitsApart } from '../policy/policy.ts';
import { swabsOf } from '../rounds/history.ts';
import type { Day } from '../time.ts';
import { daysBetween } from '../time.ts';

/** Whether so many people had a positive in so many days as the policy calls an outbreak. */
export function outbreakOn(home: Home, on: Day): boolean {
  const { outbreak } = policyOn(home, on).policy;
  if (outbreak === undefined) return false;
  const days = outbreak.withinDays.value;
  const cases = everybody(home).filter(({ id }) => positiveWithin(home, id, { on, days }));
  return cases.length >= outbreak.casesAtLeast.value;
}

const positiveWithin = (
  home: Home,
  person: PersonId,
  { on, days }: { readonly on: Day; readonly days: number },
): boolean =>
  swabsOf(home, person).some(
    (swab) =>
      swab.outcome.state === 'known' &&
      swab.outcome.result.data.outcome === 'positive' &&
      swab.on <= on &&
      daysBetween(swab.on, on) <= days,
  );

/** How units are kept apart on a day: as the policy has it for an outbreak, not at all without one. */
export const unitsApartOn = (home: Home, on: Day): UnitsApart =>
  outbreakOn(home, on) ? (policyOn(home, on).policy.outbreak?.unitsApart.value ?? 'no') : 'no';
