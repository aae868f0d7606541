import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, ofKind, standing } from '../home.ts';
import type { PersonId } from '../ids.ts';
import type { PlanField } from './facts.ts';
import { planOf } from './plan.ts';

/** A change that the plan's next version could make, from how it went. Nobody has accepted it yet. */
export interface Proposal {
  readonly after: FactOf<'after.noted'>;
  readonly changes: readonly { readonly field: PlanField; readonly to: string }[];
}

/**
 * What the last note of how it went would change in the plan: what helped is added to what helps, what
 * upset them to what upsets. It only ever adds, and only what the plan does not say already.
 */
export function proposalFor(home: Home, person: PersonId): Proposal | undefined {
  const facts = factsIn(home, 'person', person);
  const after = standing(facts, 'after.noted').at(-1);
  if (after === undefined) return undefined;
  const answered = ofKind(facts, 'after.answered').some(({ data }) => data.after === after.id);
  if (answered) return undefined;
  const plan = planOf(home, person);
  const changes = (
    [
      ['helps', after.private?.helped ?? ''],
      ['triggers', after.private?.upset ?? ''],
    ] as const
  ).flatMap(([field, said]) => {
    const now = plan.text(field).trim();
    const words = said.trim();
    if (words === '' || now.toLowerCase().includes(words.toLowerCase())) return [];
    return [{ field, to: now === '' ? words : `${ended(now)} ${words}` }];
  });
  return changes.length === 0 ? undefined : { after, changes };
}

const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/** The words of somebody's own scale, calm first, as their plan writes them with commas between. */
export const ownScale = (text: string): readonly string[] =>
  text
    .split(/[,;\n]/)
    .map((word) => word.trim())
    .filter((word) => word !== '')
    .slice(0, 20);
