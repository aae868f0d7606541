import type { FactOf } from '../catalogue.ts';
import { testOf } from '../custody/test.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import type { Whereabouts } from '../people/person.ts';
import { personOf } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import type { PolicyAction } from '../policy/policy.ts';
import { rulingOn, withdrawnBy } from '../quality/held.ts';
import { oldestFirst } from '../quality/rulings.ts';
import type { Instant } from '../time.ts';
import { after, dayOf, HOUR } from '../time.ts';
import type { ActionKind, Outcome } from './facts.ts';
import { outcomeOf } from './outcome.ts';

/** One thing that a result asks for, and how far it has come. */
export interface Action {
  readonly test: TestId;
  /** The result it rests on, or the settlement by which there is none any more. */
  readonly rests: FactId;
  /** What the result says; `withdrawn` where none stands. */
  readonly outcome: Outcome;
  readonly rule: PolicyAction;
  readonly kind: ActionKind;
  /** By when somebody must have it in hand, from policy; a named person may set it earlier. */
  readonly due: Instant;
  readonly named: FactOf<'action.named'> | undefined;
  readonly done: FactOf<'action.done'> | undefined;
  /** Done before, for a result that no longer stands: to be looked at again. */
  readonly before: FactOf<'action.done'> | undefined;
  /** Not asked any more, because the person died or moved on: it counts as settled. */
  readonly stopped: 'died' | 'moved' | undefined;
}

/** What actions of a test rest on, and since when. */
interface Ground {
  readonly rests: FactId;
  readonly since: Instant;
  readonly outcome: Outcome;
  /** Whether what was done or named for this fact is about the same. */
  readonly same: (fact: FactId) => boolean;
  readonly rules: readonly PolicyAction[];
}

function groundOf(home: Home, test: TestId): Ground | undefined {
  const outcome = outcomeOf(home, test);
  if (outcome.state === 'held') return undefined;
  if (outcome.state !== 'known') return withoutResult(home, test);
  const { id, at, data } = outcome.result;
  const { policy } = policyOn(home, dayOf(at, home.service.zone));
  const rules = policy.actions[data.outcome];
  return { rests: id, since: at, outcome: data.outcome, same: (fact) => fact === id, rules };
}

/** Somebody settled that a result, or the whole test, does not stand: what was done on it is looked at. */
function withoutResult(home: Home, test: TestId): Ground | undefined {
  const settlements = [withdrawnBy(home, test) ?? [], rulingOn(home, test)?.by ?? []]
    .flat()
    .sort(oldestFirst);
  const last = settlements.at(-1);
  if (last === undefined) return undefined;
  const ids = new Set(settlements.map(({ id }) => id));
  return {
    ...{ rests: last.id, since: last.at, outcome: 'withdrawn', rules: [] },
    same: (fact) => ids.has(fact),
  };
}

/**
 * What the result of a test asks for, by the policy in force on the day it was recorded. Where there is none
 * any more nothing is asked, but to look again at what was done.
 */
export function actionsFor(home: Home, test: TestId): Action[] {
  const ground = groundOf(home, test);
  if (ground === undefined) return [];
  const facts = factsIn(home, 'test', test);
  const named = standing(facts, 'action.named');
  const done = standing(facts, 'action.done');
  const where = whereaboutsOf(home, test);
  return rulesFor(ground.rules, done).map((rule) => {
    const same = (fact: { data: { action: ActionKind } }) => fact.data.action === rule.action;
    const rests = (fact: { data: { result: FactId } }) => ground.same(fact.data.result);
    const naming = named.findLast((fact) => same(fact) && rests(fact));
    const before = done.findLast(
      (fact) => same(fact) && !rests(fact) && fact.data.outcome === 'done',
    );
    return {
      ...{ test, rests: ground.rests, outcome: ground.outcome },
      rule,
      kind: rule.action,
      due: naming?.data.due ?? after(ground.since, rule.withinHours * HOUR),
      named: naming,
      done: done.findLast((fact) => same(fact) && rests(fact)),
      before,
      stopped: stoppedBy(where, rule.action, before !== undefined),
    };
  });
}

function whereaboutsOf(home: Home, test: TestId): Whereabouts | undefined {
  const { turn: id } = testOf(home, test);
  const turn = id === undefined ? undefined : turnOf(home, id);
  return turn && personOf(home, turn.person).whereabouts;
}

/** What only makes sense while the person lives here, unless it was done before and has to be undone. */
const ONLY_HERE: ReadonlySet<ActionKind> = new Set(['isolate', 'test-again']);

/** Nobody is told of their result after they died; nobody is isolated who is no longer here. */
function stoppedBy(
  where: Whereabouts | undefined,
  kind: ActionKind,
  undo: boolean,
): Action['stopped'] {
  if (where?.where !== 'left') return undefined;
  if (kind === 'tell-person' && where.to === 'died') return 'died';
  return ONLY_HERE.has(kind) && !undo ? where.to : undefined;
}

/** Policy's actions, and any that was done for an earlier result and has to be undone or told again. */
function rulesFor(
  rules: readonly PolicyAction[],
  done: readonly FactOf<'action.done'>[],
): PolicyAction[] {
  const have = new Set(rules.map((rule) => rule.action));
  const acted = done.filter(({ data }) => data.outcome === 'done').map(({ data }) => data.action);
  const orphans = [...new Set(acted)].filter((kind) => !have.has(kind));
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

export const isSettled = (action: Action): boolean =>
  action.done !== undefined || action.stopped !== undefined;
