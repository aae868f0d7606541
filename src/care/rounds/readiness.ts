import type { FactOf } from '../catalogue.ts';
import type { Decision } from '../consent/decision.ts';
import { consentOn } from '../consent/decision.ts';
import type { Home } from '../home.ts';
import type { PersonId, RoundId } from '../ids.ts';
import { personOf } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import { practiceOf } from '../practice/practice.ts';
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
  | { readonly remind: 'nose-only' }
  | { readonly remind: 'plan-clash' }
  | { readonly remind: 'decision-review-due'; readonly on: Day }
  | { readonly remind: 'document-not-seen' }
  | { readonly remind: 'practice'; readonly reached: number; readonly of: number };

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
      ...planHolds(home, person, on),
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
      return recordHolds(home, consent.decision, on);
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
    case 'nobody':
      return [{ reason: 'consent-nobody', person }];
  }
}

/** A record past its review, or a paper that nobody has seen: held where policy says so. */
function recordHolds(home: Home, { data }: Decision, on: Day): Refusal[] {
  const rules = policyOn(home, on).policy.decisions;
  const { record, person } = data;
  if (record === undefined || rules === undefined) return [];
  const late = record.review < on && rules.holdPastReview.value;
  const unseen = record.document === 'not-seen' && rules.holdUntilDocumentSeen.value;
  return [
    ...(late ? [{ reason: 'decision-review-due' as const, person, on: record.review }] : []),
    ...(unseen ? [{ reason: 'document-not-seen' as const, person }] : []),
  ];
}

/** A plan past its review, or one that two people wrote differently: held where policy says so. */
function planHolds(home: Home, person: PersonId, on: Day): Refusal[] {
  const { holds } = policyOn(home, on).policy;
  const plan = planOf(home, person);
  const late = plan.nextReview !== undefined && plan.nextReview < on ? plan.nextReview : undefined;
  return [
    ...(late !== undefined && holds.planPastReview?.value === true
      ? [{ reason: 'plan-review-due' as const, person, on: late }]
      : []),
    ...(plan.clashes.length > 0 && holds.planInConflict?.value === true
      ? [{ reason: 'plan-in-conflict' as const, person }]
      : []),
  ];
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
  if (plan.clashes.length > 0) found.push({ remind: 'plan-clash' });
  found.push(...ofRecord(home, person, { test, on }), ...ofPractice(home, person, on));
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

/** What is told of the record of a decision, whether or not policy lets it hold the swab. */
function ofRecord(
  home: Home,
  person: PersonId,
  { test, on }: { test: string; on: Day },
): Reminder[] {
  const consent = consentOn(home, person, test, on);
  const record = 'decision' in consent ? consent.decision.data.record : undefined;
  if (record === undefined) return [];
  return [
    ...(record.review < on ? [{ remind: 'decision-review-due' as const, on: record.review }] : []),
    ...(record.document === 'not-seen' ? [{ remind: 'document-not-seen' as const }] : []),
  ];
}

/** Practice that is not over is told; it never holds a swab, for the person may be ready all the same. */
function ofPractice(home: Home, person: PersonId, on: Day): Reminder[] {
  const practice = practiceOf(home, person, on);
  if (practice === undefined || practice.ready) return [];
  return [{ remind: 'practice', reached: practice.next, of: practice.steps.length }];
}
