import type { PlanInstance } from './instance.ts';
import type { RoundPlanMade } from './plan.ts';

/** A wish that keeps somebody from being visited may be given up, by whoever has it, when they are asked. */
export type AskRepair =
  | { readonly repair: 'ask-may-come'; readonly person: string; readonly staff: string }
  /** Of those who asked for a woman or a man: `swabbers` are who would do it instead. */
  | {
      readonly repair: 'ask-may-swab';
      readonly people: readonly string[];
      readonly swabbers: readonly string[];
    };

interface Asked {
  readonly repair: AskRepair;
  readonly trouble: number;
  readonly instance: PlanInstance;
}

const ASK = 8;
/** Asking somebody who has a visit already, so that another one gets theirs. */
const ASK_ANOTHER = 30;
/** Every question is a plan to be tried. */
const MOST_ASKED = 8;

/** Each wish, and all wishes of those left out together, as a question that could be asked. */
export function askOptions(instance: PlanInstance, left: readonly string[]): readonly Asked[] {
  const { people } = instance;
  const trouble = (ids: readonly string[]): number =>
    ids.reduce((sum, id) => sum + (left.includes(id) ? ASK : ASK_ANOTHER), 0);
  const without = (id: string, staff: string): PlanInstance => ({
    ...instance,
    people: people.map((p) =>
      p.id === id ? { ...p, excluded: p.excluded.filter((s) => s !== staff) } : p,
    ),
  });
  const byAnyone = (ids: readonly string[]): PlanInstance => ({
    ...instance,
    people: people.map((p) => {
      if (!ids.includes(p.id)) return p;
      const { swabberGender: _, ...rest } = p;
      return rest;
    }),
  });
  const asking = people.filter((p) => p.swabberGender !== undefined).map(({ id }) => id);
  const asked = asking.filter((id) => left.includes(id));
  const groups = [...asking.map((id) => [id]), ...(asked.length > 1 ? [asked] : [])];
  return [
    ...people.flatMap(({ id, excluded }) =>
      excluded.map((staff) => ({
        repair: { repair: 'ask-may-come' as const, person: id, staff },
        trouble: trouble([id]),
        instance: without(id, staff),
      })),
    ),
    ...groups.map((ids) => ({
      repair: { repair: 'ask-may-swab' as const, people: ids, swabbers: [] },
      trouble: trouble(ids),
      instance: byAnyone(ids),
    })),
  ]
    .sort((a, b) => a.trouble - b.trouble)
    .slice(0, MOST_ASKED);
}

const asksForSwabber = (repair: {
  readonly repair: string;
}): repair is Extract<AskRepair, { repair: 'ask-may-swab' }> => repair.repair === 'ask-may-swab';

/** Who would swab those who asked for somebody else: only the plan tells. Nothing where nobody would. */
export function withSwabbers<R extends { readonly repair: string }>(
  instance: PlanInstance,
  repair: R | AskRepair,
  plan: RoundPlanMade,
): R | AskRepair | undefined {
  if (!asksForSwabber(repair)) return repair;
  const other = plan.lanes.flat().flatMap(({ person, swabber }) => {
    const wish = instance.people.find(({ id }) => id === person)?.swabberGender;
    const gender = instance.staff.find(({ id }) => id === swabber)?.gender;
    return repair.people.includes(person) && gender !== wish ? [swabber] : [];
  });
  return other.length === 0 ? undefined : { ...repair, swabbers: [...new Set(other)] };
}
