import type { Test } from '../custody/test.ts';
import { testOf } from '../custody/test.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { PersonId } from '../ids.ts';
import type { Finding } from '../quality/finding.ts';
import { heldBy, isWithdrawn } from '../quality/held.ts';
import type { Round } from '../rounds/round.ts';
import type { Registration } from './outcome.ts';
import { registrationOf } from './outcome.ts';

/** One packed tube and how far its registration is. */
export interface ToRegister {
  readonly test: Test;
  readonly person: PersonId;
  readonly registration: Registration;
  /** What a senior has to settle before it may be registered. */
  readonly held: readonly Finding[];
}

/**
 * The packed tubes of a round in the order in which their bags went into the boxes: the order in which
 * they lie in the hand of whoever registers them.
 */
export function registerList(home: Home, round: Round): ToRegister[] {
  const bags = round.boxes.flatMap((box) =>
    standing(factsIn(home, 'box', box.id), 'bag.packed').map(({ data }) => data.test),
  );
  return [...new Set(bags)].flatMap((id) => {
    const test = testOf(home, id);
    const turn = test.turn === undefined ? undefined : turnOf(home, test.turn);
    if (turn === undefined || test.spoiled !== undefined || isWithdrawn(home, id)) return [];
    const registration = registrationOf(home, id);
    const held = registration.registered === undefined ? heldBy(home, id) : [];
    return [{ test, person: turn.person, registration, held }];
  });
}
