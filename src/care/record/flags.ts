import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { namesakes, personOf } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Refusal } from '../refusal.ts';
import { readinessOf } from '../rounds/readiness.ts';
import { planOf } from '../support/plan.ts';
import type { Day } from '../time.ts';

/** What is worth seeing beside a name. `holds` keeps a swab from going ahead; the rest only tells. */
export type Flag =
  | { readonly flag: 'holds'; readonly hold: Refusal }
  | { readonly flag: 'no-plan' }
  | { readonly flag: 'review-due'; readonly since: Day }
  | { readonly flag: 'namesake' };

/** Most pressing first. Somebody who has left needs nothing, so nothing is flagged. */
export function flagsOf(home: Home, id: PersonId, on: Day): Flag[] {
  const person = personOf(home, id);
  if (person.whereabouts.where === 'left') return [];
  const plan = planOf(home, id);
  const flags: Flag[] = holdsOf(home, id, on).map((hold) => ({ flag: 'holds', hold }));
  if (!plan.written) flags.push({ flag: 'no-plan' });
  if (plan.nextReview !== undefined && plan.nextReview < on)
    flags.push({ flag: 'review-due', since: plan.nextReview });
  if (namesakes(home, person).length > 0) flags.push({ flag: 'namesake' });
  return flags;
}

/** What holds any kind of test, each once. Being away is where somebody is, not something amiss. */
function holdsOf(home: Home, id: PersonId, on: Day): Refusal[] {
  const holds = new Map<string, Refusal>();
  for (const test of policyOn(home, on).policy.tests) {
    for (const hold of readinessOf(home, id, { test: test.id, on }).holds) {
      if (hold.reason !== 'away') holds.set(JSON.stringify(hold), hold);
    }
  }
  return [...holds.values()];
}
