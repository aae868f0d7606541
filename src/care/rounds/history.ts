import { turnsWith } from '../custody/person-turns.ts';
import type { Test } from '../custody/test.ts';
import { isLive, testOf } from '../custody/test.ts';
import type { Turn } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
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
    return turn.tests
      .map((id) => testOf(home, id))
      .flatMap((each) => {
        if (!isLive(each) || each.taken === undefined || isWithdrawn(home, each.id)) return [];
        const on = dayOf(each.taken.at, home.service.zone);
        return [{ test: each, turn, round, on, outcome: outcomeOf(home, each.id) }];
      });
  });
