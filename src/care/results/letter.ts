import type { FactOf } from '../catalogue.ts';
import type { Test } from '../custody/test.ts';
import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { factsIn, ofKind, standing } from '../home.ts';
import type { PersonId, TestId } from '../ids.ts';
import type { Decided } from '../refusal.ts';
import { allow, refuse } from '../refusal.ts';
import type { Reader } from '../support/facts.ts';
import { outcomeOf } from './outcome.ts';
import type { Recorded } from './recorded.ts';

/** What a letter is made of: the result that stands, and to whom it may go. */
export interface Letter {
  readonly reader: Reader;
  readonly test: Test;
  readonly result: Recorded;
  /** On whose word it goes to this reader; undefined for the person themselves. */
  readonly sharing: FactOf<'sharing.agreed'> | undefined;
  /** A letter on an older result was made for the same reader: it has to be told again. */
  readonly retell: boolean;
}

/**
 * A letter, or why there is none: no result that stands, or nobody agreed that this reader is told.
 * The person is always told. A doctor is told unless that was refused.
 */
export function letterFor(
  home: Home,
  given: { readonly person: PersonId; readonly test: TestId; readonly reader: Reader },
): Decided<Letter> {
  const { person, reader } = given;
  const outcome = outcomeOf(home, given.test);
  if (outcome.state !== 'known') return refuse({ reason: 'no-result-to-tell' });
  const facts = factsIn(home, 'person', person);
  const sharing = standing(facts, 'sharing.agreed').findLast(({ data }) => data.reader === reader);
  const refused = sharing?.data.agreed === false;
  if (reader === 'family' && (sharing === undefined || refused))
    return refuse({ reason: 'sharing-not-agreed', person });
  if (reader === 'doctor' && refused) return refuse({ reason: 'sharing-not-agreed', person });
  const { result } = outcome;
  const retell = ofKind(facts, 'letter.made').some(
    ({ data }) => data.test === given.test && data.reader === reader && data.result !== result.id,
  );
  return allow({ reader, test: testOf(home, given.test), result, sharing, retell });
}
