import type { PlanInstance } from './instance.ts';
import { makingPlan } from './make-plan.ts';

/** A rule that could be set aside, by what it is and whom it is about. */
export type PlanRule =
  | { readonly rule: 'courier' }
  | { readonly rule: 'pairs' }
  | { readonly rule: 'cohort-order' }
  | { readonly rule: 'units-apart' }
  | { readonly rule: 'storage' }
  | { readonly rule: 'register' }
  | { readonly rule: 'supplies' }
  | { readonly rule: 'shift'; readonly staff: string }
  | { readonly rule: 'away'; readonly staff: string }
  | { readonly rule: 'swabber'; readonly staff: string }
  | { readonly rule: 'recorder'; readonly staff: string }
  | { readonly rule: 'apart'; readonly staff: string; readonly other: string }
  | { readonly rule: 'windows'; readonly person: string }
  | { readonly rule: 'meals'; readonly person: string }
  | { readonly rule: 'preparation'; readonly person: string }
  | { readonly rule: 'excluded'; readonly person: string }
  | { readonly rule: 'gender'; readonly person: string }
  | { readonly rule: 'not-before'; readonly person: string };

const ALL_DAY = { from: 0, until: 48 * 60 };

/** The rules that an instance has in it, those that are easiest to set aside first. */
export function rulesIn(instance: PlanInstance): readonly PlanRule[] {
  const { people, staff, rules, supplies } = instance;
  const of = <R extends PlanRule>(holds: boolean, rule: R): R[] => (holds ? [rule] : []);
  const limited = [supplies.kits, supplies.glovePairs, supplies.aprons, supplies.masks];
  return [
    ...people.flatMap(({ id, ...p }) => [
      ...of(p.windows.length > 0, { rule: 'windows' as const, person: id }),
      ...of(p.meals.length > 0, { rule: 'meals' as const, person: id }),
      ...of(p.preparation !== undefined, { rule: 'preparation' as const, person: id }),
      ...of(p.excluded.length > 0, { rule: 'excluded' as const, person: id }),
      ...of(p.swabberGender !== undefined, { rule: 'gender' as const, person: id }),
      ...of((p.notBefore ?? 0) > instance.from, { rule: 'not-before' as const, person: id }),
    ]),
    ...rules.apart.map(([a, b]) => ({ rule: 'apart' as const, staff: a, other: b })),
    ...staff.flatMap(({ id, ...m }) => [
      ...of(m.away.length > 0, { rule: 'away' as const, staff: id }),
      ...of(!m.mayRecord, { rule: 'recorder' as const, staff: id }),
      ...of(!m.maySwab, { rule: 'swabber' as const, staff: id }),
      ...of(true, { rule: 'shift' as const, staff: id }),
    ]),
    ...of(rules.storageMinutes !== undefined, { rule: 'storage' as const }),
    ...of(rules.register !== undefined, { rule: 'register' as const }),
    ...of(
      limited.some((n) => n !== undefined),
      { rule: 'supplies' as const },
    ),
    ...of(rules.unitsApart !== 'no', { rule: 'units-apart' as const }),
    ...of(new Set(people.map(({ cohort }) => cohort)).size > 1, { rule: 'cohort-order' as const }),
    ...of(true, { rule: 'pairs' as const }),
    ...of(true, { rule: 'courier' as const }),
  ];
}

/** The instance as it would be without one rule. */
export function setAside(instance: PlanInstance, rule: PlanRule): PlanInstance {
  const { people, staff, rules } = instance;
  const person = (id: string, change: (p: (typeof people)[number]) => (typeof people)[number]) => ({
    ...instance,
    people: people.map((p) => (p.id === id ? change(p) : p)),
  });
  const member = (id: string, more: Partial<(typeof staff)[number]>) => ({
    ...instance,
    staff: staff.map((m) => (m.id === id ? { ...m, ...more } : m)),
  });
  const ruled = (more: Partial<typeof rules>) => ({ ...instance, rules: { ...rules, ...more } });
  switch (rule.rule) {
    case 'courier':
      return ruled({ collections: [ALL_DAY.until] });
    case 'pairs':
      return ruled({ pairs: Math.min(6, rules.pairs + 3) });
    case 'cohort-order':
      return { ...instance, people: people.map((p) => ({ ...p, cohort: 'no-known-exposure' })) };
    case 'units-apart':
      return ruled({ unitsApart: 'no' });
    case 'storage': {
      const { storageMinutes: _, ...rest } = rules;
      return { ...instance, rules: rest };
    }
    case 'register': {
      const { register: _, ...rest } = rules;
      return { ...instance, rules: rest };
    }
    case 'supplies': {
      const { glovePairsEach, apronsEach } = instance.supplies;
      return { ...instance, supplies: { glovePairsEach, apronsEach } };
    }
    case 'shift':
      return member(rule.staff, { shift: ALL_DAY });
    case 'away':
      return member(rule.staff, { away: [] });
    case 'swabber':
      return member(rule.staff, { maySwab: true });
    case 'recorder':
      return member(rule.staff, { mayRecord: true });
    case 'apart':
      return ruled({
        apart: rules.apart.filter(([a, b]) => !(a === rule.staff && b === rule.other)),
      });
    case 'windows':
      return person(rule.person, (p) => ({ ...p, windows: [] }));
    case 'meals':
      return person(rule.person, (p) => ({ ...p, meals: [] }));
    case 'preparation':
      return person(rule.person, ({ preparation: _, ...p }) => p);
    case 'excluded':
      return person(rule.person, (p) => ({ ...p, excluded: [] }));
    case 'gender':
      return person(rule.person, ({ swabberGender: _, ...p }) => p);
    case 'not-before':
      return person(rule.person, ({ notBefore: _, ...p }) => p);
  }
}

export interface Effort {
  readonly seed: number;
  /** Iterations for each question whether everybody can be visited. */
  readonly iterations?: number;
  readonly shouldStop?: () => boolean;
}

/** Whether everybody can be visited: a plan shows that it can; that none was found, or a bound, that not. */
function everybodyFits(
  instance: PlanInstance,
  { seed, iterations = 250, shouldStop }: Effort,
  prove = false,
) {
  const making = makingPlan(instance, {
    ...{ seed, iterations, draws: 1, prove },
    ...(shouldStop && { shouldStop }),
  });
  for (;;) {
    const step = making.next();
    if (step.done === true) {
      const { plan, someLeftOut } = step.value;
      return { fits: plan.leftOut.length === 0, proven: someLeftOut };
    }
    // One plan is enough: how good it is does not matter here.
    if (step.value.best.leftOut.length === 0) return { fits: true, proven: false };
  }
}

export interface Conflict {
  /** Set any one of these aside and everybody can be visited; together they cannot all be kept. */
  readonly rules: readonly PlanRule[];
  /** Whether it is proved that they conflict, and not only that no plan was found. */
  readonly proven: boolean;
  /** False where the search was stopped: some of the rules may have nothing to do with it. */
  readonly smallest: boolean;
}

/**
 * A smallest set of rules that cannot all be kept if everybody is to be visited: rules are set aside
 * one after the other, and stay aside where the rest still conflict. First by kind, then one by one.
 * Says after each question which share of them is done.
 * Source: the deletion filter of Chinneck & Dravnieks (1991), ORSA Journal on Computing 3:157-168.
 * Nothing where everybody can be visited, or where it was stopped before that was known.
 */
export function* findingConflict(
  instance: PlanInstance,
  effort: Effort,
): Generator<number, Conflict | undefined, undefined> {
  const stopped = (): boolean => effort.shouldStop?.() ?? false;
  const first = everybodyFits(instance, effort);
  if (first.fits || stopped()) return undefined;
  const all = rulesIn(instance);
  const kinds = [...new Set(all.map(({ rule }) => rule))];
  let [kept, now, proven] = [all, instance, first.proven];
  // Most questions need no proof; the last one, of the rules that are left, gets it.
  let [asked, toAsk] = [1, 1 + kinds.length];
  const drop = (those: readonly PlanRule[]): void => {
    if (stopped()) return;
    const without = those.reduce(setAside, now);
    const still = everybodyFits(without, effort);
    asked++;
    if (still.fits || stopped()) return;
    kept = kept.filter((rule) => !those.includes(rule));
    [now, proven] = [without, still.proven];
  };
  for (const kind of kinds) {
    drop(all.filter(({ rule }) => rule === kind));
    yield asked / toAsk;
  }
  const many = kept.filter(({ rule }) => kept.filter((other) => other.rule === rule).length > 1);
  toAsk += many.length;
  for (const rule of many) {
    drop([rule]);
    yield asked / toAsk;
  }
  if (!proven && !stopped()) proven = everybodyFits(now, effort, true).proven;
  return { rules: kept, proven, smallest: !stopped() };
}

/** The conflict in one go. */
export function conflictOf(instance: PlanInstance, effort: Effort): Conflict | undefined {
  const finding = findingConflict(instance, effort);
  for (;;) {
    const step = finding.next();
    if (step.done === true) return step.value;
  }
}
