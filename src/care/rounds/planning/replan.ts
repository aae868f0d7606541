import type { PlanInstance } from './instance.ts';
import type { PlannedVisit, RoundPlanMade } from './plan.ts';

/** What has happened since a plan was made. Times are minutes after midnight. */
export interface SoFar {
  readonly now: number;
  /** Visits that were made, or stopped, with the times at which they really were. */
  readonly done: readonly PlannedVisit[];
  /** Of those done: who stopped and may be tried again, no sooner than then. */
  readonly again: readonly { readonly person: string; readonly notBefore: number }[];
  /** Who said no, or is no longer here: not visited any more today. */
  readonly gone: readonly string[];
  /** Staff who were called away, and from when. */
  readonly away: readonly { readonly staff: string; readonly from: number }[];
}

/**
 * The rest of a round as an instance of its own: what is done stays, who may be tried again comes
 * back no sooner than then, and people keep the time and pair that they were told, unless it costs
 * more than the weights `moved` and `later` say.
 */
export function restOf(
  instance: PlanInstance,
  plan: RoundPlanMade,
  { now, done, again, gone, away }: SoFar,
): PlanInstance {
  const person = (id: string) => instance.people.find((p) => p.id === id);
  const retry = new Map(again.map(({ person: id, notBefore }) => [id, notBefore]));
  const over = done.map(({ person: id, swabber, recorder, start, end }) => {
    const { cohort = 'no-known-exposure', unit = '', room = '' } = person(id) ?? {};
    // Whoever is tried again is a person to visit once more, so what was done goes by another name.
    const name = retry.has(id) ? `${id} (first try)` : id;
    return { person: name, swabber, recorder, cohort, unit, room, from: start, until: end };
  });
  const finished = new Set([
    ...gone,
    ...done.map(({ person: id }) => id).filter((id) => !retry.has(id)),
  ]);
  const people = instance.people
    .filter(({ id }) => !finished.has(id))
    .map((each) => {
      const notBefore = retry.get(each.id);
      return notBefore === undefined ? each : { ...each, notBefore };
    });
  const called = new Map(away.map(({ staff, from }) => [staff, from]));
  return {
    ...instance,
    from: now,
    people,
    staff: instance.staff.map((member) => {
      const from = called.get(member.id);
      return from === undefined || from >= member.shift.until
        ? member
        : { ...member, shift: { from: Math.min(member.shift.from, from - 1), until: from } };
    }),
    supplies: lessUsed(instance.supplies, done.length),
    done: [...instance.done, ...over],
    promised: plan.lanes
      .flat()
      .filter(({ person: id }) => !finished.has(id) && !retry.has(id))
      .map(({ person: id, swabber, recorder, start }) => ({
        person: id,
        swabber,
        recorder,
        start,
      })),
  };
}

function lessUsed(supplies: PlanInstance['supplies'], visits: number): PlanInstance['supplies'] {
  const { kits, glovePairs, aprons, glovePairsEach, apronsEach } = supplies;
  const less = (have: number, each: number): number => Math.max(0, have - visits * each);
  return {
    ...supplies,
    ...(kits !== undefined && { kits: less(kits, 1) }),
    ...(glovePairs !== undefined && { glovePairs: less(glovePairs, 2 * glovePairsEach) }),
    ...(aprons !== undefined && { aprons: less(aprons, 2 * apronsEach) }),
  };
}

/** How much a plan made anew differs from the one that people know. */
export interface Moved {
  readonly otherPair: readonly string[];
  /** Who starts later than they were told, and by how many minutes. */
  readonly later: readonly { readonly person: string; readonly minutes: number }[];
}

export function movedSince({ promised }: PlanInstance, plan: RoundPlanMade): Moved {
  const told = new Map(promised.map((p) => [p.person, p]));
  const visits = plan.lanes.flat().flatMap((visit) => {
    const was = told.get(visit.person);
    return was ? [{ visit, was }] : [];
  });
  const pair = (v: { readonly swabber: string; readonly recorder: string }) =>
    [v.swabber, v.recorder].sort().join(' ');
  return {
    otherPair: visits
      .filter(({ visit, was }) => pair(visit) !== pair(was))
      .map(({ visit }) => visit.person),
    later: visits
      .filter(({ visit, was }) => visit.start > was.start)
      .map(({ visit, was }) => ({ person: visit.person, minutes: visit.start - was.start })),
  };
}
