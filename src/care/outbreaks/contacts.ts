import type { FactOf } from '../catalogue.ts';
import { turnsWith } from '../custody/person-turns.ts';
import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { factsIn, ofKind, standing } from '../home.ts';
import type { PersonId, TestId } from '../ids.ts';
import { outcomeOf } from '../results/outcome.ts';
import type { Day } from '../time.ts';
import { dayOf, daysBetween } from '../time.ts';

/** A result this near to a contact is taken to be why it was noted (our proposal, no source). */
const NEAR_DAYS = 14;

export type Contact = FactOf<'contact.noted'>;

/**
 * Contacts of a person that count. One with somebody whose positive was corrected or taken back no
 * longer does: who was near whom stays on record, but nothing follows from it any more.
 */
export const contactsOf = (home: Home, person: PersonId): Contact[] =>
  standing(factsIn(home, 'person', person), 'contact.noted').filter(
    ({ data }) => data.source === undefined || !takenBack(home, data.source, data.on),
  );

/** Whether this person was positive about then, and no such result stands now. */
function takenBack(home: Home, person: PersonId, near: Day): boolean {
  const tests = turnsWith(home, person)
    .flatMap((turn) => turn.tests)
    .filter((id) => isNear(home, id, near));
  return tests.some((id) => wasPositive(home, id)) && !tests.some((id) => mayBePositive(home, id));
}

function isNear(home: Home, id: TestId, near: Day): boolean {
  const { taken } = testOf(home, id);
  if (taken === undefined) return false;
  return Math.abs(daysBetween(dayOf(taken.at, home.service.zone), near)) <= NEAR_DAYS;
}

function wasPositive(home: Home, id: TestId): boolean {
  const { code } = testOf(home, id);
  const facts = code === undefined ? [] : factsIn(home, 'code', code);
  return ofKind(facts, 'result.recorded').some(({ data }) => data.outcome === 'positive');
}

/** While somebody still has to settle it, the cautious reading holds. */
function mayBePositive(home: Home, id: TestId): boolean {
  const outcome = outcomeOf(home, id);
  if (outcome.state === 'held')
    return outcome.results.some(({ data }) => data.outcome === 'positive');
  return outcome.state === 'known' && outcome.result.data.outcome === 'positive';
}
