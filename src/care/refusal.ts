import type { Lack } from './consent/path.ts';
import type { PersonId, StaffId, TestId, TurnId } from './ids.ts';
import type { Outcome as TestOutcome } from './results/facts.ts';
import type { Caution } from './support/facts.ts';
import type { Day, Instant } from './time.ts';

/**
 * Why something that has not happened yet may not be done now. A closed list: each has words for
 * staff in the app and a line in docs/refusals.md. A refusal stores nothing and changes nothing.
 */
export type Refusal =
  // the people doing it
  | { readonly reason: 'needs-two' }
  | { readonly reason: 'not-working-here'; readonly staff: StaffId }
  | { readonly reason: 'may-not-swab'; readonly staff: StaffId; readonly until: Day | undefined }
  | { readonly reason: 'may-not-record'; readonly staff: StaffId; readonly until: Day | undefined }
  | { readonly reason: 'nobody-knows-them'; readonly person: PersonId }
  | { readonly reason: 'needs-senior' }
  | { readonly reason: 'needs-manager' }
  | { readonly reason: 'last-manager' }
  | { readonly reason: 'wanted-and-not'; readonly staff: StaffId }
  | { readonly reason: 'not-theirs-to-say' }
  | { readonly reason: 'unknown-staff' }
  | { readonly reason: 'unknown-person' }
  // the person
  | { readonly reason: 'consent-missing'; readonly person: PersonId }
  | { readonly reason: 'consent-other-test'; readonly person: PersonId }
  | { readonly reason: 'consent-ended'; readonly person: PersonId; readonly on: Day }
  | { readonly reason: 'consent-not-yet'; readonly person: PersonId; readonly on: Day }
  | { readonly reason: 'consent-refused'; readonly person: PersonId }
  | { readonly reason: 'consent-nobody'; readonly person: PersonId }
  | { readonly reason: 'decision-review-due'; readonly person: PersonId; readonly on: Day }
  | { readonly reason: 'document-not-seen'; readonly person: PersonId }
  | { readonly reason: 'plan-review-due'; readonly person: PersonId; readonly on: Day }
  | { readonly reason: 'plan-in-conflict'; readonly person: PersonId }
  | { readonly reason: 'caution-unanswered'; readonly person: PersonId; readonly caution: Caution }
  | { readonly reason: 'caution-says-no'; readonly person: PersonId; readonly caution: Caution }
  | { readonly reason: 'photo-missing'; readonly person: PersonId }
  | { readonly reason: 'birthday-missing'; readonly person: PersonId }
  | { readonly reason: 'away'; readonly person: PersonId; readonly since: Day }
  | { readonly reason: 'too-soon'; readonly person: PersonId; readonly from: Instant }
  | { readonly reason: 'enough-today'; readonly person: PersonId }
  | { readonly reason: 'said-no'; readonly person: PersonId; readonly at: Instant }
  | { readonly reason: 'already-tested'; readonly person: PersonId; readonly test: TestId }
  // the turn
  | { readonly reason: 'turn-open'; readonly turn: TurnId; readonly person: PersonId }
  | { readonly reason: 'turn-ended' }
  | { readonly reason: 'on-another-tablet'; readonly turn: TurnId }
  | { readonly reason: 'not-this-step'; readonly step: string }
  | { readonly reason: 'too-late-to-go-back' }
  | { readonly reason: 'tube-fate-unsaid' }
  | { readonly reason: 'second-side-missing' }
  | { readonly reason: 'tablet-touched' }
  | { readonly reason: 'clock-wrong' }
  | { readonly reason: 'no-room' }
  // the kit and its code
  | { readonly reason: 'code-malformed'; readonly code: string }
  | { readonly reason: 'code-check-failed'; readonly code: string }
  | {
      readonly reason: 'code-used';
      readonly code: string;
      readonly person: PersonId | undefined;
      readonly at: Instant;
    }
  | {
      readonly reason: 'code-closed';
      readonly code: string;
      readonly person: PersonId | undefined;
      readonly at: Instant;
    }
  | { readonly reason: 'code-put-aside'; readonly code: string }
  | { readonly reason: 'code-differs-typed'; readonly code: string }
  // identity: near misses and other checks
  | { readonly reason: 'code-near'; readonly code: string; readonly near: readonly string[] }
  | {
      readonly reason: 'code-elsewhere';
      readonly code: string;
      /** What those homes call themselves, where they say so. */
      readonly homes: readonly string[];
    }
  | { readonly reason: 'second-person-same' }
  | { readonly reason: 'two-must-know'; readonly person: PersonId }
  | { readonly reason: 'identifier-malformed'; readonly name: string }
  | { readonly reason: 'identifier-check-failed'; readonly name: string }
  | { readonly reason: 'kit-expired'; readonly on: Day }
  | { readonly reason: 'kit-recalled'; readonly lot: string }
  | { readonly reason: 'kit-other-kind'; readonly kitKind: string }
  | { readonly reason: 'no-kits' }
  | { readonly reason: 'code-in-stock'; readonly code: string; readonly lot: string }
  | { readonly reason: 'lot-ends-otherwise'; readonly lot: string; readonly on: Day }
  | { readonly reason: 'delivery-unknown' }
  // packing, handing over
  | { readonly reason: 'code-unknown'; readonly code: string }
  | { readonly reason: 'not-sealed'; readonly person: PersonId; readonly test: TestId }
  | { readonly reason: 'already-packed'; readonly person: PersonId; readonly test: TestId }
  | { readonly reason: 'held-by-finding'; readonly finding: string }
  | { readonly reason: 'other-round'; readonly person: PersonId; readonly test: TestId }
  | {
      readonly reason: 'does-not-tally';
      readonly missing: readonly TestId[];
      readonly open: readonly TurnId[];
    }
  | { readonly reason: 'box-empty' }
  | { readonly reason: 'box-not-closed' }
  | { readonly reason: 'count-differs'; readonly counted: number; readonly packed: number }
  | { readonly reason: 'round-closed' }
  | { readonly reason: 'not-closed-yet' }
  // registering, results
  | { readonly reason: 'reference-used'; readonly reference: string; readonly test: TestId }
  | { readonly reason: 'reference-is-code'; readonly reference: string }
  | { readonly reason: 'already-registered'; readonly reference: string }
  | { readonly reason: 'not-packed'; readonly test: TestId }
  | { readonly reason: 'second-identifier-differs' }
  | { readonly reason: 'result-exists'; readonly outcome: TestOutcome; readonly at: Instant }
  | { readonly reason: 'result-held' }
  | { readonly reason: 'result-superseded' }
  // settling
  | { readonly reason: 'finding-gone' }
  | { readonly reason: 'verdict-unfit' }
  | { readonly reason: 'keeps-missing' }
  | { readonly reason: 'reason-missing' }
  // policy
  | { readonly reason: 'policy-unreadable'; readonly where: string; readonly what: string }
  | { readonly reason: 'policy-version-taken'; readonly policy: string; readonly version: number }
  // decision records, practice, letters
  | { readonly reason: 'no-rule-pack' }
  | { readonly reason: 'decision-incomplete'; readonly at: Lack['at']; readonly why: Lack['why'] }
  | { readonly reason: 'decision-too-long'; readonly field: string; readonly days: number }
  | { readonly reason: 'review-outside'; readonly field: string }
  | { readonly reason: 'review-too-late'; readonly field: string; readonly days: number }
  | { readonly reason: 'no-ladder' }
  | { readonly reason: 'practice-not-asked'; readonly person: PersonId }
  | { readonly reason: 'sharing-not-agreed'; readonly person: PersonId }
  | { readonly reason: 'no-result-to-tell' }
  // plain entry
  | { readonly reason: 'in-the-future'; readonly field: string }
  | { readonly reason: 'in-the-past'; readonly field: string }
  | { readonly reason: 'not-a-day'; readonly field: string; readonly given: string }
  | { readonly reason: 'ends-before-start'; readonly field: string }
  | { readonly reason: 'not-a-count'; readonly field: string }
  | { readonly reason: 'nothing-changed' }
  | { readonly reason: 'may-not-strike-out' }
  | { readonly reason: 'empty'; readonly field: string }
  | { readonly reason: 'too-long'; readonly field: string; readonly most: number }
  | { readonly reason: 'nobody-chosen' }
  | { readonly reason: 'left-off-unsaid'; readonly person: PersonId }
  | { readonly reason: 'no-code-column' };

export type Decided<T> =
  | { readonly ok: true; readonly value: T }
  | ({ readonly ok: false } & Refusal);

export const refuse = <R extends Refusal>(refusal: R): { readonly ok: false } & R => ({
  ok: false,
  ...refusal,
});
export const allow = <T>(value: T): { readonly ok: true; readonly value: T } => ({
  ok: true,
  value,
});
