import type { Home } from '../home.ts';
import { concluding, factsIn, standing } from '../home.ts';
import type { PersonId } from '../ids.ts';
import type { Policy } from '../policy/policy.ts';
import type { Day } from '../time.ts';
import { addDays } from '../time.ts';

/** What was known of a person on the day of a swab, as far as it bears on the result. */
export type Known = 'background' | 'contact' | 'symptoms' | 'afterPositive';

/** Symptoms, or a contact, in the days before; nothing known otherwise. A positive before outranks both. */
export function knownOf(
  home: Home,
  person: PersonId,
  when: { readonly on: Day; readonly policy: Policy; readonly positiveBefore: boolean },
): Known {
  const { on, policy } = when;
  if (when.positiveBefore) return 'afterPositive';
  const facts = factsIn(home, 'person', person);
  const from = addDays(on, -policy.due.symptomsCountForDays.value);
  const near = (day: Day) => day >= from && day <= on;
  if (standing(facts, 'symptoms.noticed').some(({ data }) => near(data.on))) return 'symptoms';
  return standing(facts, 'contact.noted').some(({ data }) => near(data.on))
    ? 'contact'
    : 'background';
}

/** All of a person's bag that `knownOf` rests on: while it stays, what was known on any day stays. */
export const signsOf = concluding<string, PersonId>('person', (facts) =>
  [...standing(facts, 'symptoms.noticed'), ...standing(facts, 'contact.noted')]
    .map(({ id }) => id)
    .join(' '),
);
