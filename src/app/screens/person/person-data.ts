import type { PersonId } from '../../../care/ids.ts';
import type { Person } from '../../../care/people/person.ts';
import { personOf } from '../../../care/people/person.ts';
import type { Plan } from '../../../care/support/plan.ts';
import { planOf } from '../../../care/support/plan.ts';
import type { Day } from '../../../care/time.ts';
import type { Desk } from '../../desk/desk.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import type { AllWords } from '../../words/en-all.ts';
import { useAllWords } from '../../words/use-all-words.ts';

/** What every part of a person's page is drawn from. */
export interface PersonData {
  readonly desk: Desk;
  readonly words: AllWords;
  readonly person: Person;
  readonly plan: Plan;
  readonly today: Day;
}

export function usePerson(id: PersonId): PersonData {
  const desk = useDesk();
  const words = useAllWords();
  const { home } = desk;
  return { desk, words, person: personOf(home, id), plan: planOf(home, id), today: todayOf(desk) };
}

/** The name for a title: erased is said, never left blank. */
export const nameOf = ({ person, words }: Pick<PersonData, 'person' | 'words'>): string =>
  person.name || (person.erased ? words.keeping.erased : words.refusals.somebody);
