import { changeBetween } from './change.ts';
import { type Broken, checkPlan } from './check-plan.ts';
import { freeTimes } from './free-times.ts';
import type { PlanInstance, PlanMember, PlanPerson } from './instance.ts';
import { plannedMinutes } from './minutes.ts';
import type { PlannedLane, PlannedVisit, RoundPlanMade } from './plan.ts';
import { chanceOf, type PlanChance } from './plan-chance.ts';
import { rolesFor } from './roles.ts';

/** A lane as people arrange it: who goes, and to whom in what order. */
export interface HandLane {
  readonly pair: readonly [string, string];
  readonly people: readonly string[];
}

export interface HandMade {
  readonly plan: RoundPlanMade;
  readonly broken: readonly Broken[];
  /** Minutes by which packing would end after the last courier; 0 or less is in time. */
  readonly lateBy: number;
  readonly chance: PlanChance;
}

/** The pair's earliest minute from `ready` on with both there; `ready` where they never are. */
function bothThere(members: readonly PlanMember[], ready: number, needed: number): number {
  let start = Math.max(ready, ...members.map(({ shift }) => shift.from));
  for (let i = 0; i < 20; i++) {
    const block = members
      .flatMap(({ away }) => away)
      .find(({ from, until }) => start < until && start + needed > from);
    if (!block) return start;
    start = block.until;
  }
  return start;
}

/** As early as all rules allow; where they allow nothing, at once, and the check will say what that breaks. */
function startOf(
  instance: PlanInstance,
  person: PlanPerson,
  { ready, members }: { readonly ready: number; readonly members: readonly PlanMember[] },
): number {
  const needed = plannedMinutes(person);
  const latest = Math.min(...members.map(({ shift }) => shift.until));
  for (const { from, until } of freeTimes(instance, person)) {
    const start = bothThere(members, Math.max(ready, from), needed);
    if (start + needed <= Math.min(until, latest)) return start;
  }
  return bothThere(members, ready, needed);
}

function laneByHand(instance: PlanInstance, { pair, people }: HandLane): PlannedLane {
  const members = pair.flatMap((id) => instance.staff.find((m) => m.id === id) ?? []);
  const [a, b] = members;
  if (!a || !b) return [];
  const past = instance.done
    .filter(({ swabber, recorder }) => pair.includes(swabber) || pair.includes(recorder))
    .sort((x, y) => x.until - y.until);
  let now = Math.max(instance.from, a.shift.from, b.shift.from, ...past.map(({ until }) => until));
  let before: Parameters<typeof changeBetween>[1] | undefined = past.at(-1);
  return people.flatMap((id): PlannedVisit[] => {
    const person = instance.people.find((p) => p.id === id);
    if (!person) return [];
    const { minutes } = before ? changeBetween(instance.rules, before, person) : { minutes: 0 };
    // Back to a cleaner cohort: at least everything is changed. The check says that it is not allowed.
    const change = minutes === Infinity ? instance.rules.fullChangeMinutes : minutes;
    const start = startOf(instance, person, { ready: now + change, members });
    now = start + plannedMinutes(person);
    before = person;
    const roles = rolesFor(person, [a, b]);
    const swabber = roles?.swabber ?? (a.maySwab ? a : b);
    const recorder = swabber === a ? b : a;
    return [{ person: id, swabber: swabber.id, recorder: recorder.id, start, end: now }];
  });
}

/** An order made by hand: its times, what it breaks, by how much it is late and how likely it holds. */
export function madeByHand(
  instance: PlanInstance,
  lanes: readonly HandLane[],
  { seed, draws }: { readonly seed: number; readonly draws: number },
): HandMade {
  const timed = lanes.map((lane) => laneByHand(instance, lane));
  const visits = timed.flat();
  const there = new Set([...visits, ...instance.done].map(({ person }) => person));
  const left = instance.people.filter(({ id }) => !there.has(id));
  const leftOut = left.reduce((sum, p) => sum + p.weight * instance.weights.leftOut, 0);
  const finish = Math.max(instance.from, ...visits.map(({ end }) => end));
  const plan: RoundPlanMade = {
    lanes: timed,
    leftOut: left.map(({ id }) => id),
    cost: leftOut + instance.weights.finish * (finish - instance.from),
    parts: { leftOut, prices: 0, steps: 0, promises: 0, finish: 0, imbalance: 0 },
    finish,
  };
  const { rules } = instance;
  return {
    plan,
    broken: checkPlan(instance, visits),
    lateBy: finish + rules.packMinutes - Math.max(...rules.collections),
    chance: chanceOf(instance, plan, { seed, draws }),
  };
}

/** The lanes of a plan as people can rearrange them. Lanes with a change of pair keep their first pair. */
export const handLanes = (plan: RoundPlanMade): readonly HandLane[] =>
  plan.lanes.flatMap((lane) => {
    const [first] = lane;
    return first
      ? [
          {
            pair: [first.swabber, first.recorder] as const,
            people: lane.map(({ person }) => person),
          },
        ]
      : [];
  });

/** One person to another place, in the same lane or another one. */
export function movedTo(
  lanes: readonly HandLane[],
  person: string,
  to: { readonly lane: number; readonly at: number },
): readonly HandLane[] {
  return lanes.map((lane, k) => {
    const people = lane.people.filter((id) => id !== person);
    if (k === to.lane) people.splice(Math.max(0, Math.min(to.at, people.length)), 0, person);
    return { ...lane, people };
  });
}
