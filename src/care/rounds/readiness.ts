import type { FactOf } from '../catalogue.ts';
import { consentOn } from '../consent/decision.ts';
import type { Home } from '../home.ts';
import type { PersonId, RoundId } from '../ids.ts';
import { personOf } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Refusal } from '../refusal.ts';
import { cautionHolds, planOf } from '../support/plan.ts';
import type { Day } from '../time.ts';
import { addDays } from '../time.ts';
import { preparationsFor } from './preparations.ts';

/** Something to do before or during the round that does not hold the swab by itself. */
export type Reminder =
  | { readonly remind: 'ask-consent' }
  | { readonly remind: 'no-plan' }
  | { readonly remind: 'plan-review-due'; readonly on: Day }
  | {
      readonly remind: 'preparation';
      readonly what: FactOf<'preparation.agreed'>['data']['what'];
      readonly leadMinutes: number;
      readonly done: boolean;
    }
  | { readonly remind: 'photo-old'; readonly since: Day }
  | { readonly remind: 'nose-only' };

export interface Readiness {
  /** What keeps this person from being swabbed, and whom to see about it. */
  readonly holds: readonly Refusal[];
  readonly reminders: readonly Reminder[];
}

/** What is in place for one person and one kind of test on a day, and what is still missing. */
export function readinessOf(
  home: Home,
  person: PersonId,
  { test, on, round }: { readonly test: string; readonly on: Day; readonly round?: RoundId },
): Readiness {
  return {
    holds: [
      ...awayHolds(home, person),
      ...consentHolds(home, person, { test, on }),
      ...cautionsHold(home, person, on),
      ...identityHolds(home, person),
    ],
    reminders: reminders(home, person, { test, on, round }),
  };
}

function awayHolds(home: Home, person: PersonId): Refusal[] {
  const { whereabouts } = personOf(home, person);
  return whereabouts.where === 'here' ? [] : [{ reason: 'away', person, since: whereabouts.since }];
}

function consentHolds(
  home: Home,
  person: PersonId,
  { test, on }: { test: string; on: Day },
): Refusal[] {
  const consent = consentOn(home, person, test, on);
  switch (consent.state) {
    case 'asks-each-time':
    case 'decided':
      return [];
    case 'none':
      return [{ reason: 'consent-missing', person }];
    case 'other-test':
      return [{ reason: 'consent-other-test', person }];
    case 'ended':
      return [{ reason: 'consent-ended', person, on: consent.decision.data.until }];
    case 'not-yet':
      return [{ reason: 'consent-not-yet', person, on: consent.decision.data.from }];
    case 'refuses':
      return [{ reason: 'consent-refused', person }];
  }
}

function cautionsHold(home: Home, person: PersonId, on: Day): Refusal[] {
  const needing = new Set(policyOn(home, on).policy.holds.cautionsNeedingClinician.value);
  return planOf(home, person).cautions.flatMap((caution): Refusal[] => {
    const { caution: name } = caution.raised.data;
    if (!needing.has(name)) return [];
    const held = cautionHolds(caution, on);
    if (held === undefined) return [];
    const reason = held === 'unanswered' ? 'caution-unanswered' : 'caution-says-no';
    return [{ reason, person, caution: name }];
  });
}

/** Identity is a blind choice: without a birthday, or a face, there is nothing to choose. */
function identityHolds(home: Home, id: PersonId): Refusal[] {
  const person = personOf(home, id);
  if (planOf(home, id).identity === 'face') {
    return person.photo === undefined ? [{ reason: 'photo-missing', person: id }] : [];
  }
  return person.born === undefined ? [{ reason: 'birthday-missing', person: id }] : [];
}

function reminders(
  home: Home,
  person: PersonId,
  { test, on, round }: { test: string; on: Day; round: RoundId | undefined },
): Reminder[] {
  const plan = planOf(home, person);
  const found: Reminder[] = [];
  if (consentOn(home, person, test, on).state === 'asks-each-time')
    found.push({ remind: 'ask-consent' });
  if (!plan.written) found.push({ remind: 'no-plan' });
  if (plan.nextReview !== undefined && plan.nextReview < on) {
    found.push({ remind: 'plan-review-due', on: plan.nextReview });
  }
  found.push(...oldPhoto(home, person, on));
  if (plan.sites === 'nose-only') found.push({ remind: 'nose-only' });
  for (const { agreed, done } of preparationsFor(home, person, { on, round })) {
    const { what, leadMinutes } = agreed.data;
    found.push({ remind: 'preparation', what, leadMinutes, done: done !== undefined });
  }
  return found;
}

/** A face changes: whoever is known by it needs a photo that is not years old. */
function oldPhoto(home: Home, id: PersonId, on: Day): Reminder[] {
  const { photo, photoOn } = personOf(home, id);
  if (planOf(home, id).identity !== 'face' || photo === undefined || photoOn === undefined)
    return [];
  const renew = policyOn(home, on).policy.holds.photoRenewDays.value;
  return addDays(photoOn, renew) < on ? [{ remind: 'photo-old', since: photoOn }] : [];
}
