import type { PlanInstance, PlanPerson } from './instance.ts';
import type { RoundPlanMade } from './plan.ts';

/** What a person may be asked: whether this colleague may come, or may swab, though they wished otherwise. */
export interface AskedWish {
  readonly person: string;
  readonly may: 'come' | 'swab';
  readonly staff: string;
}

/** A wish belongs to whoever has it: they may give it up when they are asked, and a no stays a no. */
export interface AskRepair {
  readonly repair: 'ask';
  readonly wishes: readonly AskedWish[];
}

interface AskOption {
  readonly repair: AskRepair;
  readonly trouble: number;
  readonly instance: PlanInstance;
}

const ASK = 8;
/** Asking somebody who has a visit already, so that another one gets theirs. */
const ASK_ANOTHER = 30;
/** Every question is a plan to be tried. */
const MOST_ASKED = 8;

/** One wish set aside: not to have a colleague, or, without one, for a woman or a man to swab. */
interface Aside {
  readonly person: string;
  readonly staff?: string;
}

function withoutWishes(instance: PlanInstance, aside: readonly Aside[]): PlanInstance {
  const without = (person: PlanPerson): PlanPerson => {
    const own = aside.filter((each) => each.person === person.id);
    if (own.length === 0) return person;
    const { swabberGender, ...rest } = person;
    return {
      ...rest,
      excluded: person.excluded.filter((staff) => !own.some((each) => each.staff === staff)),
      ...(swabberGender !== undefined &&
        own.every(({ staff }) => staff !== undefined) && { swabberGender }),
    };
  };
  return { ...instance, people: instance.people.map(without) };
}

/**
 * Each wish that could be asked about, those of people left out first, and all of theirs at once. Whom
 * to ask about whom is known only from the plan that is then made: see `askedIn`.
 */
export function askOptions(instance: PlanInstance, left: readonly string[]): readonly AskOption[] {
  const wishes = instance.people.flatMap(({ id: person, excluded, swabberGender }): Aside[] => [
    ...excluded.map((staff) => ({ person, staff })),
    ...(swabberGender === undefined ? [] : [{ person }]),
  ]);
  const ofLeft = wishes.filter(({ person }) => left.includes(person));
  const groups = [...wishes.map((wish) => [wish]), ...(ofLeft.length > 1 ? [ofLeft] : [])];
  const trouble = (aside: readonly Aside[]): number =>
    aside.reduce((sum, { person }) => sum + (left.includes(person) ? ASK : ASK_ANOTHER), 0);
  const options = groups.map((aside) => ({
    repair: { repair: 'ask' as const, wishes: [] },
    trouble: trouble(aside),
    instance: withoutWishes(instance, aside),
  }));
  const all = ofLeft.length > 1 ? options.slice(-1) : [];
  const single = options.slice(0, wishes.length).sort((a, b) => a.trouble - b.trouble);
  return [...single.slice(0, MOST_ASKED), ...all];
}

/** The wishes that a plan goes against: whoever has them is to be asked before it is used. */
export const askedIn = ({ people, staff }: PlanInstance, plan: RoundPlanMade): AskedWish[] =>
  plan.lanes.flat().flatMap(({ person: id, swabber, recorder }): AskedWish[] => {
    const person = people.find((each) => each.id === id);
    if (person === undefined) return [];
    const gender = staff.find((each) => each.id === swabber)?.gender;
    return [
      ...[swabber, recorder]
        .filter((each) => person.excluded.includes(each))
        .map((each) => ({ person: id, may: 'come' as const, staff: each })),
      ...(person.swabberGender === undefined || person.swabberGender === gender
        ? []
        : [{ person: id, may: 'swab' as const, staff: swabber }]),
    ];
  });
