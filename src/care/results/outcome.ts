import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { TestId } from '../ids.ts';
import type { Code } from '../kind.ts';
import { standingOf } from '../quality/finding.ts';
import { findings } from '../quality/findings.ts';
import { heldBy, isWithdrawn } from '../quality/held.ts';
import type { Recorded } from './recorded.ts';
import { resultsFor } from './recorded.ts';

export type OutcomeOf =
  | { readonly state: 'waiting' }
  /** Held by a finding: nobody may act on it until a named person has settled it. */
  | { readonly state: 'held'; readonly results: readonly Recorded[] }
  | { readonly state: 'withdrawn' }
  | { readonly state: 'known'; readonly result: Recorded };

export function outcomeOf(home: Home, test: TestId): OutcomeOf {
  if (isWithdrawn(home, test)) return { state: 'withdrawn' };
  const results = resultsFor(home, test);
  const result = kept(home, results) ?? results.at(-1);
  if (result === undefined) return { state: 'waiting' };
  return heldBy(home, test).length > 0 ? { state: 'held', results } : { state: 'known', result };
}

/** Where two results were settled, the one that a named person let stand. */
function kept(home: Home, results: readonly Recorded[]): Recorded | undefined {
  if (results.length < 2) return undefined;
  const codes = new Set(results.map(({ data }) => data.code));
  const clash = findings(home).find(
    (each) => each.kind === 'two-results' && codes.has(each.key as Code),
  );
  const settled = clash && standingOf(home, clash);
  if (settled?.state !== 'settled') return undefined;
  return results.find(({ id }) => id === settled.settlement.data.keeps);
}

export interface Registration {
  readonly registered: FactOf<'test.registered'> | undefined;
  readonly failures: readonly FactOf<'registration.failed'>[];
}

export function registrationOf(home: Home, test: TestId): Registration {
  const facts = factsIn(home, 'test', test);
  return {
    registered: standing(facts, 'test.registered').at(-1),
    failures: standing(facts, 'registration.failed'),
  };
}

// What is recorded has a file of its own: findings read it, and outcomes read findings.
export { type Recorded, resultsFor } from './recorded.ts';
