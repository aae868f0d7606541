import type { Home } from '../home.ts';
import type { PersonId, RoundId } from '../ids.ts';
import type { Cohort } from '../outbreaks/cohort.ts';
import { cohortOf, cohorts } from '../outbreaks/cohort.ts';
import { personOf } from '../people/person.ts';
import { unitOf } from '../people/unit.ts';
import type { Day } from '../time.ts';
import { preparationsFor } from './preparations.ts';

/** Where somebody stands in a round and what put them there. */
export interface Place {
  readonly person: PersonId;
  readonly cohort: Cohort;
  /** Empty where nobody has written one down. */
  readonly unit: string;
  readonly room: string;
  /** The longest preparation that is still to do, in minutes; 0 where there is none. */
  readonly leadMinutes: number;
}

interface When {
  readonly on: Day;
  readonly round?: RoundId | undefined;
}

export function placeOf(home: Home, id: PersonId, { on, round }: When): Place {
  const person = personOf(home, id);
  const ahead = preparationsFor(home, id, { on, round })
    .filter(({ done }) => done === undefined)
    .map(({ agreed }) => agreed.data.leadMinutes);
  return {
    person: id,
    cohort: cohortOf(home, id, on),
    unit: person.unit === undefined ? '' : unitOf(home, person.unit).name,
    room: person.room,
    leadMinutes: Math.max(0, ...ahead),
  };
}

/**
 * A sensible order to begin with: by cohort, then one unit after another; in a unit those who need
 * time beforehand come last, so that it can be given; then room by room.
 */
export function firstOrder(home: Home, people: readonly PersonId[], when: When): Place[] {
  const named = (id: PersonId) => personOf(home, id).name;
  return people
    .map((id) => placeOf(home, id, when))
    .sort(
      (a, b) =>
        cohorts.indexOf(a.cohort) - cohorts.indexOf(b.cohort) ||
        byText(a.unit, b.unit) ||
        a.leadMinutes - b.leadMinutes ||
        byText(a.room, b.room) ||
        byText(named(a.person), named(b.person)),
    );
}

/** Room 9 comes before room 10. */
const byText = (a: string, b: string) => a.localeCompare(b, 'en', { numeric: true });

/** Somebody who stands after a person of a later cohort: a full change of PPE comes between them. */
export interface CohortBreak {
  readonly person: PersonId;
  readonly after: PersonId;
}

export const cohortBreaks = (order: readonly Place[]): CohortBreak[] =>
  order.flatMap((place, at) => {
    const before = order[at - 1];
    if (before === undefined) return [];
    const back = cohorts.indexOf(place.cohort) < cohorts.indexOf(before.cohort);
    return back ? [{ person: place.person, after: before.person }] : [];
  });
