import {
  evaluateLanes,
  type LanePart,
} from '../../../statistics/scheduling/lanes/evaluate-lanes.ts';
import type { LaneSequences } from '../../../statistics/scheduling/lanes/lane-problem.ts';
import type { PlanInstance, PlanPerson } from './instance.ts';
import { lanesOf, toVisit } from './lanes-of.ts';
import { plannedMinutes } from './minutes.ts';
import { rolesFor } from './roles.ts';
import type { Staffing } from './staffing.ts';

/** Times are whole minutes after midnight. */
export interface PlannedVisit {
  readonly person: string;
  readonly swabber: string;
  readonly recorder: string;
  readonly start: number;
  readonly end: number;
}

/** One pair's visits in order, or those of staff who take over from each other. */
export type PlannedLane = readonly PlannedVisit[];

export interface RoundPlanMade {
  readonly lanes: readonly PlannedLane[];
  readonly leftOut: readonly string[];
  readonly cost: number;
  readonly parts: LanePart;
  /** When the last visit ends. */
  readonly finish: number;
}

/** A way through the round as search sees it. */
export interface Way {
  readonly staffing: Staffing;
  readonly sequences: LaneSequences;
}

/** A way with its times and names. The caller knows that it can be kept. */
export function planOf(instance: PlanInstance, { staffing, sequences }: Way): RoundPlanMade {
  const problem = lanesOf(instance, staffing);
  const found = evaluateLanes(problem, sequences);
  if (!found.ok) throw new Error(`a plan that cannot be kept: ${found.detail}`);
  const people = toVisit(instance);
  const { starts, leftOut, cost, parts, finish } = found.value;
  const lanes = sequences.map((sequence, k) =>
    sequence.map((j, i) =>
      visitOf(people[j] as PlanPerson, starts[k]?.[i] ?? 0, staffing[k] ?? []),
    ),
  );
  return {
    lanes,
    leftOut: leftOut.map((j) => (people[j] as PlanPerson).id),
    ...{ cost, parts, finish },
  };
}

function visitOf(person: PlanPerson, start: number, lane: Staffing[number]): PlannedVisit {
  const end = start + plannedMinutes(person);
  const spell = lane.find(
    ({ from, until, staff }) => from <= start && end <= until && rolesFor(person, staff),
  );
  const roles = spell && rolesFor(person, spell.staff);
  if (!roles) throw new Error(`nobody is there for ${person.id} at ${start}`);
  const { swabber, recorder } = roles;
  return { person: person.id, swabber: swabber.id, recorder: recorder.id, start, end };
}
