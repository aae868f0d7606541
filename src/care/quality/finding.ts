import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { FactId, RoundId, TestId } from '../ids.ts';
import { everRanked } from '../staff/rights.ts';

export const findingKinds = [
  'code-on-two',
  'code-elsewhere',
  'labels-differ',
  'two-tests',
  'swabbed-after-no',
  'packed-twice',
  'packed-though-spoiled',
  'registered-twice',
  'reference-on-two',
  'two-results',
  'result-without-test',
  'result-unmatched',
  'result-for-closed',
  'result-before-swab',
  'result-does-not-fit',
  'report-on-two',
  'result-of-another',
  'result-for-withdrawn',
  'box-changed',
  'handed-twice',
  'round-changed',
  'edited-twice',
  'without-right',
  'two-open',
  'against-wish',
  'unreadable',
] as const;
export type FindingKind = (typeof findingKinds)[number];

/**
 * Facts that cannot all be right, or that a person has to see. Computed from the bags each time,
 * never stored; its name is made of its kind and what it is about, so every device finds the same.
 */
export interface Finding {
  readonly id: `${FindingKind}:${string}`;
  readonly kind: FindingKind;
  readonly key: string;
  /** Sorted. */
  readonly members: readonly FactId[];
  /** Tests that may not be packed, registered, resulted or acted on while this is open. */
  readonly tests: readonly TestId[];
  /** Rounds that do not tally while this is open. */
  readonly rounds: readonly RoundId[];
}

export const finding = (
  kind: FindingKind,
  key: string,
  found: {
    readonly members: readonly FactId[];
    readonly tests?: readonly TestId[];
    readonly rounds?: readonly RoundId[];
  },
): Finding => ({
  id: `${kind}:${key}`,
  kind,
  key,
  members: [...new Set(found.members)].sort(),
  tests: found.tests ?? [],
  rounds: found.rounds ?? [],
});

export type Settled = FactOf<'settled'>;

export type Standing =
  | { readonly state: 'open' }
  /** Settled before, but something it did not cover has come since. */
  | { readonly state: 'reopened'; readonly last: Settled }
  | { readonly state: 'settled-differently'; readonly settlements: readonly Settled[] }
  | { readonly state: 'settled'; readonly settlement: Settled };

/** Settled only if all settlements that stand agree, and one of them has seen every member. */
export function standingOf(home: Home, found: Finding): Standing {
  const settlements = standing(factsIn(home, 'finding', found.id), 'settled').filter((fact) =>
    everRanked(home, fact.by, 'senior'),
  );
  const last = settlements.at(-1);
  if (last === undefined) return { state: 'open' };
  const verdicts = new Set(settlements.map(({ data }) => `${data.verdict} ${data.keeps ?? ''}`));
  if (verdicts.size > 1) return { state: 'settled-differently', settlements };
  const complete = settlements.findLast(({ data }) => {
    const seen = new Set(data.members);
    return found.members.every((id) => seen.has(id));
  });
  return complete === undefined
    ? { state: 'reopened', last }
    : { state: 'settled', settlement: complete };
}

export const isOpenFinding = (home: Home, found: Finding): boolean =>
  standingOf(home, found).state !== 'settled';
