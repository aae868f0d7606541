import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Policy } from '../policy/policy.ts';
import { swabsOf } from '../rounds/history.ts';
import type { Day } from '../time.ts';
import { daysBetween } from '../time.ts';
import { contactsOf } from './contacts.ts';

/**
 * In the order in which they are swabbed: those least likely to carry anything first, and a full
 * change of PPE between one and the next (common practice, no source).
 */
export const cohorts = ['no-known-exposure', 'exposed', 'symptomatic', 'positive'] as const;
export type Cohort = (typeof cohorts)[number];

/** Which group somebody belongs to on a day, by what is written down about them. */
export function cohortOf(home: Home, person: PersonId, on: Day): Cohort {
  const { policy } = policyOn(home, on);
  if (isPositive(home, person, { on, policy })) return 'positive';
  if (hasSymptoms(home, person, { on, policy })) return 'symptomatic';
  return wasNear(home, person, { on, policy }) ? 'exposed' : 'no-known-exposure';
}

interface At {
  readonly on: Day;
  readonly policy: Policy;
}

const within = (from: Day, to: Day, days: number) => from <= to && daysBetween(from, to) <= days;

const isPositive = (home: Home, person: PersonId, { on, policy }: At): boolean =>
  swabsOf(home, person).some(
    (swab) =>
      swab.outcome.state === 'known' &&
      swab.outcome.result.data.outcome === 'positive' &&
      within(swab.on, on, policy.isolationDays.value),
  );

const hasSymptoms = (home: Home, person: PersonId, { on, policy }: At): boolean =>
  standing(factsIn(home, 'person', person), 'symptoms.noticed').some(({ data }) =>
    within(data.on, on, policy.due.symptomsCountForDays.value - 1),
  );

/** For as long as the policy tests a contact, or isolates a case, whichever is longer. */
const wasNear = (home: Home, person: PersonId, { on, policy }: At): boolean =>
  contactsOf(home, person).some(({ data }) =>
    within(data.on, on, Math.max(policy.isolationDays.value, ...policy.due.contactOnDays.value)),
  );
