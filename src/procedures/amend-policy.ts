import type { Home } from '../care/home.ts';
import { policiesKnown, policyOn } from '../care/policy/in-force.ts';
import type { Policy } from '../care/policy/policy.ts';
import type { Ladder } from '../care/practice/ladder.ts';
import type { Refusal } from '../care/refusal.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Day } from '../care/time.ts';
import { canonical } from '../ledger/canonical.ts';
import type { Hash } from '../ledger/hash.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import { confirmPolicy } from './supplies.ts';
import { writePolicy } from './write-policy.ts';
import { wrongDay, wrongText } from './wrong-entry.ts';

/** One rung as it was typed; a new one has no name yet and is given one that was never used. */
export interface TypedStep {
  readonly step?: string;
  readonly title: string;
  readonly minutes: number;
}

/** What a manager may change of a policy on a page: the ladder of practice, and how decisions are recorded. */
export type PolicyChange =
  | {
      readonly change: 'practice';
      readonly steps: readonly TypedStep[];
      readonly everyDays: number;
    }
  | {
      readonly change: 'decisions';
      readonly pack: string;
      /** The day on which the choice of the pack is looked at again. */
      readonly packUntil?: Day;
      readonly longestDays: number;
      readonly reviewWithinDays?: number;
      readonly holdPastReview: boolean;
      readonly holdUntilDocumentSeen: boolean;
    };

interface Amendment {
  readonly change: PolicyChange;
  /** Where the changed values come from: a guideline, a meeting, a person. */
  readonly source: string;
  readonly from: Day;
  readonly hash: Hash;
}

/**
 * The next version of the policy in force, with some values changed, written down and confirmed at once in
 * the manager's name from a day on. The version before it stays to be read. Values that did not change
 * keep their source and day.
 */
export function amendPolicy(home: Home, given: Amendment, doing: Doing): Outcome {
  if (!ranks(home, doing.by, 'manager')) return refuse({ reason: 'needs-manager' });
  const { from, hash } = given;
  const source = given.source.trim().normalize('NFC');
  const wrong =
    wrongText(source, { field: 'source', most: 500 }) ?? wrongDay(from, { field: 'from' });
  if (wrong !== undefined) return refuse(wrong);
  // What held on a past day is what people went by; it is not changed afterwards.
  if (from < today(home, doing)) return refuse({ reason: 'in-the-past', field: 'from' });
  const { policy: base } = policyOn(home, from);
  const changed = apply(base, given.change, { source, from, draw: doing.draw });
  if ('reason' in changed) return refuse(changed);
  if (sameText(changed, base)) return refuse({ reason: 'nothing-changed' });
  const versions = policiesKnown(home).filter(({ policy }) => policy === base.policy);
  const version = 1 + Math.max(...versions.map((each) => each.version));
  const next: Policy = { ...changed, version, issued: today(home, doing) };
  const written = writePolicy(home, { file: JSON.stringify(next), hash }, doing);
  if (!written.ok) return written;
  const [fact] = written.value;
  if (fact?.kind !== 'policy.written') return refuse({ reason: 'nothing-changed' });
  const { policy, digest } = fact.data;
  const confirmed = confirmPolicy(home, { policy, version, digest, from }, doing);
  return confirmed.ok ? allow([...written.value, ...confirmed.value]) : confirmed;
}

/** Whether two say the same, in whatever order. */
function sameText(one: unknown, other: unknown): boolean {
  const [a, b] = [canonical(one), canonical(other)];
  return a.ok && b.ok && a.text === b.text;
}

interface Of {
  readonly source: string;
  readonly from: Day;
  readonly draw: Doing['draw'];
}
interface Sourced<Value> {
  readonly value: Value;
  readonly source: string;
  readonly from: Day;
}

/** A value that stays as it was keeps where it comes from. */
const changedTo = <S extends Sourced<unknown>>(
  old: S,
  value: S['value'],
  { source, from }: Of,
): S => (old.value === value ? old : ({ value, source, from } as S));

function apply(base: Policy, change: PolicyChange, of: Of): Policy | Refusal {
  if (change.change === 'practice') {
    const { practice } = base;
    if (practice === undefined) return { reason: 'no-ladder' };
    const steps = ladderOf(change.steps, of);
    if ('reason' in steps) return steps;
    const days = change.everyDays;
    if (!Number.isInteger(days) || days < 1 || days > 30)
      return { reason: 'not-a-count', field: 'everyDays' };
    const everyDays = changedTo(practice.everyDays, days, of);
    const source = sameText(steps, practice.steps) ? practice.source : of.source;
    return { ...base, practice: { ...practice, steps: [...steps], everyDays, source } };
  }
  const { decisions } = base;
  if (decisions === undefined) return { reason: 'no-rule-pack' };
  const { pack, packUntil, longestDays, reviewWithinDays: within } = change;
  if (!decisions.packs.some((each) => each.pack === pack)) return { reason: 'no-rule-pack' };
  for (const [field, days] of [
    ['longestDays', longestDays],
    ['reviewWithinDays', within ?? 1],
  ] as const) {
    if (!Number.isInteger(days) || days < 1 || days > 1095) return { reason: 'not-a-count', field };
  }
  if (packUntil !== undefined && packUntil < of.from)
    return { reason: 'ends-before-start', field: 'packUntil' };
  const { source, from } = of;
  const samePack = decisions.pack.value === pack && decisions.pack.until === packUntil;
  const { reviewWithinDays: old, ...rest } = decisions;
  return {
    ...base,
    decisions: {
      ...rest,
      pack: samePack
        ? decisions.pack
        : { value: pack, source, from, ...(packUntil !== undefined && { until: packUntil }) },
      longestDays: changedTo(decisions.longestDays, longestDays, of),
      ...(within !== undefined && {
        reviewWithinDays: old?.value === within ? old : { value: within, source, from },
      }),
      holdPastReview: changedTo(decisions.holdPastReview, change.holdPastReview, of),
      holdUntilDocumentSeen: changedTo(
        decisions.holdUntilDocumentSeen,
        change.holdUntilDocumentSeen,
        of,
      ),
    },
  };
}

/** The fewest and most steps, and minutes of one, as practice/ladder.ts has them. */
function ladderOf(typed: readonly TypedStep[], { draw }: Of): Ladder | Refusal {
  if (typed.length < 2 || typed.length > 15) return { reason: 'not-a-count', field: 'steps' };
  const steps: Ladder = [];
  for (const [i, { step, title: raw, minutes }] of typed.entries()) {
    const title = raw.trim().normalize('NFC');
    const wrong = wrongText(title, { field: `title-${i}`, most: 120 });
    if (wrong !== undefined) return wrong;
    if (!Number.isInteger(minutes) || minutes < 1 || minutes > 60)
      return { reason: 'not-a-count', field: `minutes-${i}` };
    steps.push({ step: step ?? `own-${draw().toLowerCase()}`, title, minutes });
  }
  return steps;
}
