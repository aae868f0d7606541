import type { Home } from '../home.ts';
import { concluding, standing } from '../home.ts';
import type { PersonId, RoundId, TurnId } from '../ids.ts';
import type { Day } from '../time.ts';
import { dayOf } from '../time.ts';
import type { Turn } from './turn.ts';
import { turnOf } from './turn.ts';

const turnIds: (home: Home, person: PersonId) => readonly TurnId[] = concluding('person', (facts) =>
  standing(facts, 'turn.opened').map(({ data }) => data.turn),
);

/** A turn that was put right to be somebody else's is in both their bags; it counts for one. */
function theirs(home: Home, person: PersonId, id: TurnId): Turn | undefined {
  const turn = turnOf(home, id);
  return turn?.person === person ? turn : undefined;
}

/** Every turn with a person, oldest first. */
export const turnsWith = (home: Home, person: PersonId): Turn[] =>
  turnIds(home, person).flatMap((id) => theirs(home, person, id) ?? []);

/** Their newest turn; five years of them are not gone through for it. */
export function lastTurnWith(home: Home, person: PersonId): Turn | undefined {
  const id = turnIds(home, person).findLast((each) => theirs(home, person, each) !== undefined);
  return id === undefined ? undefined : turnOf(home, id);
}

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
