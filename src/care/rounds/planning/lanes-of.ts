import type {
  LaneProblem,
  LaneSlot,
  LaneStep,
} from '../../../statistics/scheduling/lanes/lane-problem.ts';
import { changeBetween, rankOf, type Spot } from './change.ts';
import { freeTimes, overlap } from './free-times.ts';
import type { PlanInstance, PlanPerson } from './instance.ts';
import { plannedMinutes } from './minutes.ts';
import { rolesFor, wishCost } from './roles.ts';
import type { LaneStaff, Staffing } from './staffing.ts';

type Done = PlanInstance['done'][number];

/** Two masks go when a pair puts on all its PPE. */
const MASKS = 2;

const membersOf = (lane: LaneStaff): ReadonlySet<string> =>
  new Set(lane.flatMap(({ staff }) => staff.map(({ id }) => id)));

const doneBy = ({ done }: PlanInstance, lane: LaneStaff): readonly Done[] => {
  const members = membersOf(lane);
  return done.filter(({ swabber, recorder }) => members.has(swabber) || members.has(recorder));
};

/** The people still to be visited. */
export function toVisit({ people, done }: PlanInstance): readonly PlanPerson[] {
  const over = new Set(done.map(({ person }) => person));
  return people.filter(({ id }) => !over.has(id));
}

function slotsOf(
  instance: PlanInstance,
  person: PlanPerson,
  free: readonly { readonly from: number; readonly until: number }[],
  lane: LaneStaff,
): readonly LaneSlot[] {
  const promised = instance.promised.find((p) => p.person === person.id);
  const needed = plannedMinutes(person);
  return lane.flatMap((spell) => {
    const roles = rolesFor(person, spell.staff);
    if (!roles) return [];
    const ids = spell.staff.map(({ id }) => id);
    const moved =
      promised && !(ids.includes(promised.swabber) && ids.includes(promised.recorder))
        ? instance.weights.moved
        : 0;
    return overlap(free, [spell])
      .filter(({ from, until }) => until - from >= needed)
      .map((span) => ({ ...span, price: wishCost(instance, roles) + moved }));
  });
}

/** A place in the order that was promised costs something to lose. */
function outOfOrder(instance: PlanInstance, before: PlanPerson, after: PlanPerson): number {
  const was = (id: string) => instance.promised.find(({ person }) => person === id);
  const [a, b] = [was(before.id), was(after.id)];
  if (!a || !b || a.swabber !== b.swabber || a.recorder !== b.recorder) return 0;
  return b.start < a.start ? instance.weights.moved : 0;
}

function stepBetween(instance: PlanInstance, before: PlanPerson, after: PlanPerson): LaneStep {
  const { minutes, walk, full } = changeBetween(instance.rules, before, after);
  return {
    time: minutes,
    cost: walk * instance.weights.walk + outOfOrder(instance, before, after),
    uses: full ? MASKS : 0,
  };
}

/** Before a lane's first visit: its PPE is on, or it comes from what it has done already. */
function firstStep(instance: PlanInstance, past: readonly Done[], after: PlanPerson): LaneStep {
  if (past.length === 0) return { time: 0, cost: 0, uses: MASKS };
  const { rules, weights } = instance;
  const latest = past.reduce((a, b) => (b.until >= a.until ? b : a));
  const highest = past.reduce((a, b) => (rankOf(b.cohort) > rankOf(a.cohort) ? b : a));
  const spot: Spot = { ...latest, cohort: highest.cohort };
  const { minutes, walk, full } = changeBetween(rules, spot, after);
  const elsewhere = rules.unitsApart === 'own-pair' && past.some(({ unit }) => unit !== after.unit);
  return {
    time: elsewhere ? Infinity : minutes,
    cost: walk * weights.walk,
    uses: full ? MASKS : 0,
  };
}

function servedLimit({ supplies }: PlanInstance, people: number): number {
  const { kits, glovePairs, aprons, glovePairsEach, apronsEach } = supplies;
  const each = (have: number | undefined, takes: number): number =>
    have === undefined || takes === 0 ? Infinity : Math.floor(have / takes);
  return Math.min(
    people,
    kits ?? Infinity,
    each(glovePairs, 2 * glovePairsEach),
    each(aprons, 2 * apronsEach),
  );
}

/** The round as this staffing would have to work it. */
export function lanesOf(instance: PlanInstance, staffing: Staffing): LaneProblem {
  const { rules, weights, supplies, done } = instance;
  const people = toVisit(instance);
  const pasts = staffing.map((lane) => doneBy(instance, lane));
  const { register } = rules;
  return {
    jobs: people.map((person) => {
      const promised = instance.promised.find((p) => p.person === person.id);
      return {
        duration: plannedMinutes(person),
        leftOutCost: person.weight * weights.leftOut,
        ...(promised && { promised: { start: promised.start, weight: weights.later } }),
      };
    }),
    lanes: staffing.map((lane, k) =>
      Math.max(instance.from, lane[0]?.from ?? 0, ...(pasts[k] ?? []).map(({ until }) => until)),
    ),
    slots: people.map((person) => {
      const free = freeTimes(instance, person);
      return staffing.map((lane) => slotsOf(instance, person, free, lane));
    }),
    steps: [
      ...people.map((before) => people.map((after) => stepBetween(instance, before, after))),
      ...pasts.map((past) => people.map((after) => firstStep(instance, past, after))),
    ],
    limits: {
      served: servedLimit(instance, people.length),
      uses: supplies.masks ?? Infinity,
      finish: register
        ? register.by - rules.packMinutes - register.minutesEach * done.length
        : Infinity,
      finishEach: register?.minutesEach ?? 0,
    },
    weights: { finish: weights.finish, origin: instance.from, imbalance: weights.load },
  };
}
