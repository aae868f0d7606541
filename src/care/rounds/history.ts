import { turnsWith } from '../custody/person-turns.ts';
import type { Test } from '../custody/test.ts';
import { isLive, testOf } from '../custody/test.ts';
import type { Turn } from '../custody/turn.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import type { PersonId, RoundId, TestId } from '../ids.ts';
import { isWithdrawn } from '../quality/held.ts';
import type { OutcomeOf } from '../results/outcome.ts';
import { outcomeOf } from '../results/outcome.ts';
import type { Day } from '../time.ts';
import { dayOf } from '../time.ts';
import type { Round } from './round.ts';
import { roundOf } from './round.ts';

/** One swab that was taken and not spoiled, with what became of it. */
export interface Swab {
  readonly test: Test;
  readonly turn: Turn;
  readonly round: Round | undefined;
  readonly on: Day;
  readonly outcome: OutcomeOf;
}

/** A person's swabs of one kind of test, oldest first; those withdrawn by a settlement are left out. */
export const swabsOf = (home: Home, person: PersonId, test?: string): Swab[] =>
  turnsWith(home, person).flatMap((turn) => {
    const round = roundOf(home, turn.round);
    if (test !== undefined && round !== undefined && round.planned.data.test !== test) return [];
    return swabsInTurn(home, turn, round);
  });

/** The same, but only those of some rounds. */
export const swabsWithin = (
  home: Home,
  person: PersonId,
  rounds: ReadonlyMap<RoundId, Round>,
): Swab[] =>
  turnsWith(home, person).flatMap((turn) => {
    const round = rounds.get(turn.round);
    return round === undefined ? [] : swabsInTurn(home, turn, round);
  });

/** Day and outcome are worked out when they are asked for: of five years of swabs few are. */
function swabsInTurn(home: Home, turn: Turn, round: Round | undefined, out = false): Swab[] {
  const swabs: Swab[] = [];
  for (const id of turn.tests) {
    const test = testOf(home, id);
    const { taken } = test;
    if (!isLive(test) || taken === undefined || isOut(home, id) !== out) continue;
    swabs.push({
      test,
      turn,
      round,
      get on() {
        return dayOf(taken.at, home.service.zone);
      },
      get outcome() {
        return outcomeOf(home, id);
      },
    });
  }
  return swabs;
}

/** Taken out by a settlement. Where a result came for it that counts, or may, it is a swab like another. */
const isOut = (home: Home, test: TestId): boolean =>
  isWithdrawn(home, test) && outcomeOf(home, test).state === 'withdrawn';

/** Every swab of a round that stands, in the order of its turns. */
export const swabsInRound = (home: Home, round: Round): Swab[] =>
  round.turns.flatMap((id) => {
    const turn = turnOf(home, id);
    return turn === undefined ? [] : swabsInTurn(home, turn, round);
  });

/** Swabs of a person that a settlement took out: no work with the tube, but with what was done on it. */
export const takenOutOf = (home: Home, person: PersonId, test?: string): Swab[] =>
  turnsWith(home, person).flatMap((turn) => {
    const round = roundOf(home, turn.round);
    if (test !== undefined && round !== undefined && round.planned.data.test !== test) return [];
    return swabsInTurn(home, turn, round, true);
  });

/** The same of one round. */
export const takenOutInRound = (home: Home, round: Round): Swab[] =>
  round.turns.flatMap((id) => {
    const turn = turnOf(home, id);
    return turn === undefined ? [] : swabsInTurn(home, turn, round, true);
  });
