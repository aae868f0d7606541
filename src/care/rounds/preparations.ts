import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { PersonId, RoundId } from '../ids.ts';
import { planOf } from '../support/plan.ts';
import type { Day } from '../time.ts';

export interface Preparation {
  readonly agreed: FactOf<'preparation.agreed'>;
  readonly done: FactOf<'preparation.done'> | undefined;
}

/** What was agreed with the doctor for a person, still in date, and whether it is done for a round. */
export function preparationsFor(
  home: Home,
  person: PersonId,
  { on, round }: { readonly on: Day; readonly round: RoundId | undefined },
): Preparation[] {
  const done = standing(factsIn(home, 'person', person), 'preparation.done');
  return planOf(home, person)
    .preparations.filter((agreed) => agreed.data.until >= on)
    .map((agreed) => ({
      agreed,
      done: done.findLast((fact) => fact.data.agreed === agreed.id && fact.data.round === round),
    }));
}
