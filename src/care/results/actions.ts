import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { TestId } from '../ids.ts';
import { policyOn } from '../policy/in-force.ts';
import type { PolicyAction } from '../policy/policy.ts';
import type { Instant } from '../time.ts';
import { after, dayOf, HOUR } from '../time.ts';
import type { ActionKind } from './facts.ts';
import type { Recorded } from './outcome.ts';
import { outcomeOf } from './outcome.ts';

/** One thing that a result asks for, and how far it has come. */
export interface Action {
  readonly test: TestId;
  readonly result: Recorded;
  readonly rule: PolicyAction;
  readonly kind: ActionKind;
  /** By when somebody must have it in hand, from policy; a named person may set it earlier. */
  readonly due: Instant;
  readonly named: FactOf<'action.named'> | undefined;
  readonly done: FactOf<'action.done'> | undefined;
  /** Done before, for a result that no longer stands: to be looked at again. */
  readonly before: FactOf<'action.done'> | undefined;
}

/** What the result of a test asks for, by the policy in force on the day it was recorded. */
export function actionsFor(home: Home, test: TestId): Action[] {
  const outcome = outcomeOf(home, test);
  if (outcome.state !== 'known') return [];
  const { result } = outcome;
  const { policy } = policyOn(home, dayOf(result.at, home.service.zone));
  const facts = factsIn(home, 'test', test);
  const named = standing(facts, 'action.named');
  const done = standing(facts, 'action.done');
  return rulesFor(policy.actions[result.data.outcome], done).map((rule) => {
    const same = (fact: { data: { action: ActionKind } }) => fact.data.action === rule.action;
    const rests = (fact: { data: { result: string } }) => fact.data.result === result.id;
    const naming = named.findLast((fact) => same(fact) && rests(fact));
    return {
      test,
      result,
      rule,
      kind: rule.action,
      due: naming?.data.due ?? after(result.at, rule.withinHours * HOUR),
      named: naming,
      done: done.findLast((fact) => same(fact) && rests(fact)),
      before: done.findLast((fact) => same(fact) && !rests(fact)),
    };
  });
}

/** Policy's actions, and any that was done for an earlier result and has to be undone or told again. */
function rulesFor(
  rules: readonly PolicyAction[],
  done: readonly FactOf<'action.done'>[],
): PolicyAction[] {
  const have = new Set(rules.map((rule) => rule.action));
  const orphans = [...new Set(done.map(({ data }) => data.action))].filter(
    (kind) => !have.has(kind),
  );
  return [
    ...rules,
    ...orphans.map((action) => ({
      action,
      role: 'senior' as const,
      withinHours: 0,
      source: 'The result was changed after this was done.',
    })),
  ];
}

export const isSettled = (action: Action): boolean => action.done !== undefined;
