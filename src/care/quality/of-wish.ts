import type { Home } from '../home.ts';
import { factsIn, ofKind, replacedBy, standing } from '../home.ts';
import type { PersonId } from '../ids.ts';
import type { Finding } from './finding.ts';
import { finding } from './finding.ts';

/**
 * Turns that began with a colleague whom the person did not want, by what was on record at that moment.
 * It holds nothing: the person may have been asked and said yes. A wish for a woman or a man makes no
 * finding, for that would tell what a colleague works as.
 */
export function againstWish(home: Home, person: PersonId): Finding[] {
  const facts = factsIn(home, 'person', person);
  const wishes = ofKind(facts, 'person.helpers');
  if (wishes.length === 0) return [];
  return standing(facts, 'turn.opened').flatMap((opened) => {
    const { turn, swabber, recorder } = opened.data;
    const known = wishes.filter(({ at }) => at <= opened.at);
    const replaced = replacedBy(known);
    const members = known
      .filter(({ id }) => !replaced.has(id))
      .filter(({ data }) => [swabber, recorder].some((staff) => data.unwanted.includes(staff)))
      .map(({ id }) => id);
    if (members.length === 0) return [];
    return [finding('against-wish', turn, { members: [opened.id, ...members] })];
  });
}
