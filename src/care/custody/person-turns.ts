import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { PersonId, RoundId } from '../ids.ts';
import type { Day } from '../time.ts';
import { dayOf } from '../time.ts';
import type { Turn } from './turn.ts';
import { turnOf } from './turn.ts';

/** Every turn with a person, oldest first. */
export const turnsWith = (home: Home, person: PersonId): Turn[] =>
  standing(factsIn(home, 'person', person), 'turn.opened').flatMap(
    (fact) => turnOf(home, fact.data.turn) ?? [],
  );

export const turnsInRound = (home: Home, person: PersonId, round: RoundId): Turn[] =>
  turnsWith(home, person).filter((turn) => turn.round === round);

export const turnsOn = (home: Home, person: PersonId, on: Day): Turn[] =>
  turnsWith(home, person).filter((turn) => dayOf(turn.openedAt, home.service.zone) === on);

export const isOpen = (turn: Turn): boolean => turn.closed === undefined;

/**
 * How often this person was approached in a turn: once for each swab that was begun, or once where
 * they were asked and said, showed or could not say yes. Asleep and away are no approach.
 */
export function approaches(turn: Turn): number {
  if (turn.begun.length > 0) return turn.begun.length;
  const answer = turn.willing?.data.answer;
  const asked = answer === 'no' || answer === 'unsure';
  return turn.stop !== undefined || asked ? 1 : 0;
}
