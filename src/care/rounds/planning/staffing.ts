import type { PlanInstance, PlanMember } from './instance.ts';

interface Span {
  readonly from: number;
  readonly until: number;
}

/** Two staff at work together for a while: one swabs, the other records; either way where both may. */
export interface Spell extends Span {
  readonly staff: readonly [PlanMember, PlanMember];
}

/** One pair, or, where pairs may change, those who take over from each other. */
export type LaneStaff = readonly Spell[];
export type Staffing = readonly LaneStaff[];

/** Whether two can make a pair at all: not kept apart, and one swabs while the other records. */
export function mayPair({ rules }: PlanInstance, a: PlanMember, b: PlanMember): boolean {
  const kept = rules.apart.some(
    ([x, y]) => (x === a.id && y === b.id) || (x === b.id && y === a.id),
  );
  return !kept && ((a.maySwab && b.mayRecord) || (b.maySwab && a.mayRecord));
}

const here = (member: PlanMember, { from, until }: Span): boolean =>
  member.shift.from <= from &&
  until <= member.shift.until &&
  member.away.every((away) => away.until <= from || until <= away.from);

/** The moments at which anybody comes or goes. */
function moments(members: readonly PlanMember[], from: number): readonly number[] {
  const all = members.flatMap(({ shift, away }) => [
    ...[shift.from, shift.until],
    ...away.flatMap((a) => [a.from, a.until]),
  ]);
  return [...new Set([from, ...all.filter((t) => t > from)])].sort((a, b) => a - b);
}

/**
 * Who of a lane's members is at work when. The first pair that can is at work, and stays until one
 * of the two has to go: then the next pair that can takes over.
 */
export function spellsOf(instance: PlanInstance, members: readonly PlanMember[]): LaneStaff {
  const pairs = members.flatMap((a, i) =>
    members.slice(i + 1).flatMap((b) => (mayPair(instance, a, b) ? [[a, b] as const] : [])),
  );
  const cuts = moments(members, instance.from);
  const spells: Spell[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const span = { from: cuts[i] as number, until: cuts[i + 1] as number };
    const able = (pair: readonly PlanMember[]): boolean => pair.every((m) => here(m, span));
    const last = spells.at(-1);
    const goesOn = last?.until === span.from && able(last.staff);
    if (goesOn) spells[spells.length - 1] = { ...last, until: span.until };
    else {
      const pair = pairs.find(able);
      if (pair) spells.push({ ...span, staff: pair });
    }
  }
  return spells;
}

/** Teams that a lane may consist of: pairs, and threes where pairs may change. */
function teams(instance: PlanInstance): readonly (readonly PlanMember[])[] {
  const { staff, rules } = instance;
  const pairs = staff.flatMap((a, i) =>
    staff.slice(i + 1).flatMap((b) => (mayPair(instance, a, b) ? [[a, b]] : [])),
  );
  if (!rules.pairsMayChange) return pairs;
  const threes = pairs.flatMap(([a, b]) =>
    staff.filter((c) => c !== a && c !== b).map((c) => [a as PlanMember, b as PlanMember, c]),
  );
  const useful = threes.filter((team) => new Set(spellsOf(instance, team).map(keyOf)).size > 1);
  return [...pairs, ...useful];
}

const keyOf = ({ staff: [a, b] }: Spell): string => `${a.id} ${b.id}`;

const MOST_STAFFINGS = 3000;

/**
 * Every way to make lanes out of the staff: as many pairs at a time as the rules allow or the staff
 * are enough for. Ends at 3000 ways; they come in the order of the staff, so the same again each time.
 */
export function staffings(instance: PlanInstance): readonly Staffing[] {
  const made = teams(instance)
    .map((members) => ({ members, spells: spellsOf(instance, members) }))
    .filter(({ spells }) => spells.length > 0);
  const found: Staffing[] = [];
  const extend = (
    from: number,
    chosen: readonly LaneStaff[],
    busy: ReadonlySet<PlanMember>,
  ): void => {
    if (found.length >= MOST_STAFFINGS) return;
    if (chosen.length === most) {
      found.push(chosen);
      return;
    }
    for (let i = from; i < made.length; i++) {
      const { members, spells } = made[i] as (typeof made)[number];
      if (members.some((m) => busy.has(m))) continue;
      extend(i + 1, [...chosen, spells], new Set([...busy, ...members]));
    }
  };
  let most = instance.rules.pairs;
  for (; most > 0 && found.length === 0; most--) extend(0, [], new Set());
  return found;
}
