import type { PlanInstance, PlanMember, PlanPerson } from './instance.ts';

export interface Roles {
  readonly swabber: PlanMember;
  readonly recorder: PlanMember;
  /** Whether the person wished for somebody else than these two. */
  readonly unmet: boolean;
}

const fits = (person: PlanPerson, swabber: PlanMember, recorder: PlanMember): boolean =>
  swabber.maySwab &&
  recorder.mayRecord &&
  (person.swabberGender === undefined || swabber.gender === person.swabberGender);

/** Who of a pair swabs this person and who records; nothing where these two may not. */
export function rolesFor(
  person: PlanPerson,
  [a, b]: readonly [PlanMember, PlanMember],
): Roles | undefined {
  if (person.excluded.includes(a.id) || person.excluded.includes(b.id)) return undefined;
  const unmet =
    person.preferred.length > 0 &&
    !person.preferred.includes(a.id) &&
    !person.preferred.includes(b.id);
  const ways = [
    { swabber: a, recorder: b, unmet },
    { swabber: b, recorder: a, unmet },
  ].filter(({ swabber, recorder }) => fits(person, swabber, recorder));
  // Whoever was wished for swabs, where that can be.
  return ways.find(({ swabber }) => person.preferred.includes(swabber.id)) ?? ways[0];
}

/** Wishes count only where somebody who was wished for is at work at all. */
export const wishCost = ({ weights }: PlanInstance, { unmet }: Roles): number =>
  unmet ? weights.preference : 0;
