import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { TestId } from '../ids.ts';
import type { FindingKind, Settled } from '../quality/finding.ts';
import { standingOf } from '../quality/finding.ts';
import { findings } from '../quality/findings.ts';
import { heldBy, rulingOn, withdrawnBy } from '../quality/held.ts';
import { countingFor } from './counting.ts';
import type { Recorded } from './recorded.ts';

export type OutcomeOf =
  | { readonly state: 'waiting' }
  /** Held by a finding: nobody may act on it until a named person has settled it. */
  | { readonly state: 'held'; readonly results: readonly Recorded[] }
  /** The test does not stand, or no result of it does, and none is waited for. */
  | { readonly state: 'withdrawn'; readonly by: Settled }
  | { readonly state: 'known'; readonly result: Recorded };

export function outcomeOf(home: Home, test: TestId): OutcomeOf {
  const results = countingFor(home, test);
  const result = results.at(-1);
  const ruling = rulingOn(home, test);
  const held = heldBy(home, test);
  const withdrawn = withdrawnBy(home, test);
  if (withdrawn !== undefined && ruling?.despite !== true) {
    const asked = held.some(({ kind }) => kind === 'result-for-withdrawn');
    return asked ? { state: 'held', results } : { state: 'withdrawn', by: withdrawn };
  }
  if (result === undefined) {
    const by = ruling?.failed ?? withdrawn;
    return by === undefined ? { state: 'waiting' } : { state: 'withdrawn', by };
  }
  return held.length > 0 ? { state: 'held', results } : { state: 'known', result };
}

export type Registered = FactOf<'test.registered'>;

export interface Registration {
  readonly registered: Registered | undefined;
  readonly failures: readonly FactOf<'registration.failed'>[];
}

export function registrationOf(home: Home, test: TestId): Registration {
  const facts = factsIn(home, 'test', test);
  const all = standing(facts, 'test.registered');
  const counting = all.filter((fact) => !lostReference(home, fact));
  const picked = all.length > 1 ? settled(home, 'registered-twice', test)?.data.keeps : undefined;
  return {
    registered: counting.find(({ id }) => id === picked) ?? counting.at(-1),
    failures: standing(facts, 'registration.failed'),
  };
}

/** A named person settled that this reference belongs to another test, or to none. */
function lostReference(home: Home, fact: Registered): boolean {
  const { reference } = fact.data;
  if (factsIn(home, 'reference', reference).length < 2) return false;
  const found = settled(home, 'reference-on-two', reference);
  if (found === undefined || found.data.verdict === 'explained') return false;
  return found.data.members.includes(fact.id) && found.data.keeps !== fact.id;
}

/** How a finding was settled, if it was. */
function settled(home: Home, kind: FindingKind, key: string): Settled | undefined {
  const found = findings(home).find((each) => each.kind === kind && each.key === key);
  const stands = found && standingOf(home, found);
  return stands?.state === 'settled' ? stands.settlement : undefined;
}

// What is recorded has a file of its own: findings read it, and outcomes read findings.
export type { Recorded } from './recorded.ts';
