import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { PersonId } from '../ids.ts';
import type { Day } from '../time.ts';
import type { Authority } from './facts.ts';

export type Decision = FactOf<'consent.decided'>;

/** What stands for one kind of test on a day. Two that disagree are a clash, and the cautious one applies. */
export type ConsentOn =
  | { readonly state: 'none' }
  | { readonly state: 'other-test'; readonly decision: Decision }
  | { readonly state: 'ended'; readonly decision: Decision }
  | { readonly state: 'not-yet'; readonly decision: Decision }
  | { readonly state: 'refuses'; readonly decision: Decision }
  | { readonly state: 'nobody'; readonly decision: Decision }
  | { readonly state: 'asks-each-time'; readonly decision: Decision }
  | { readonly state: 'decided'; readonly decision: Decision };

export function consentOn(home: Home, person: PersonId, test: string, on: Day): ConsentOn {
  const all = standing(factsIn(home, 'person', person), 'consent.decided');
  const forTest = all.filter((fact) => fact.data.test === test);
  const current = forTest.filter((fact) => fact.data.from <= on && on <= fact.data.until);
  const refused = current.find((fact) => fact.data.authority === 'refuses');
  if (refused !== undefined) return { state: 'refuses', decision: refused };
  const nobody = current.find((fact) => fact.data.authority === 'nobody');
  if (nobody !== undefined) return { state: 'nobody', decision: nobody };
  const decision = current.at(-1);
  if (decision !== undefined) {
    return ownWord(decision.data.authority)
      ? { state: 'asks-each-time', decision }
      : { state: 'decided', decision };
  }
  return lapsed(forTest, all, on);
}

/** Whether the person themselves says yes or no, alone or with help; then a no is a refusal. */
export const ownWord = (authority: Authority): boolean =>
  authority === 'asks-each-time' || authority === 'supported';

function lapsed(forTest: readonly Decision[], all: readonly Decision[], on: Day): ConsentOn {
  const ended = forTest.filter((fact) => fact.data.until < on).at(-1);
  if (ended !== undefined) return { state: 'ended', decision: ended };
  const later = forTest.at(-1);
  if (later !== undefined) return { state: 'not-yet', decision: later };
  const other = all.at(-1);
  return other === undefined ? { state: 'none' } : { state: 'other-test', decision: other };
}
