import type { FactOf } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import type { PersonId } from '../care/ids.ts';
import { allow } from '../care/refusal.ts';
import type { Day } from '../care/time.ts';
import type { PersonEdit } from './describe.ts';
import { describePerson } from './describe.ts';
import type { Doing, Outcome } from './doing.ts';
import { personCame } from './whereabouts.ts';

/** How somebody new to this record came to live here. */
export interface Coming {
  readonly on: Day;
  readonly from: FactOf<'person.came'>['data']['from'];
}

/**
 * Somebody who is not on record yet. Whoever has just moved in comes with that fact, so that the rule
 * for newcomers sees them and nobody is forgotten.
 */
export function addPerson(
  home: Home,
  given: {
    readonly fields: PersonEdit & { readonly name: string };
    readonly unit: string;
    readonly came: Coming | undefined;
  },
  doing: Doing,
): Outcome {
  const person = doing.draw() as PersonId;
  const { came, ...who } = given;
  const described = describePerson(home, { person, ...who }, doing);
  if (!described.ok || came === undefined) return described;
  const moved = personCame(home, { person, ...came }, doing);
  return moved.ok ? allow([...described.value, ...moved.value]) : moved;
}
