import { rankOf } from '../../src/care/rounds/planning/change.ts';
import type { PlanInstance } from '../../src/care/rounds/planning/instance.ts';
import { toVisit } from '../../src/care/rounds/planning/lanes-of.ts';
import { plannedMinutes } from '../../src/care/rounds/planning/minutes.ts';
import { evaluateLanes } from '../../src/statistics/scheduling/lanes/evaluate-lanes.ts';
import type { LaneProblem } from '../../src/statistics/scheduling/lanes/lane-problem.ts';

/** Two rules that people go by: the next room, or the quickest first. */
export type Thumb = 'nearest room first' | 'shortest first';

/** Everybody in the order of the rule, cohort by cohort, each to the pair that is free soonest; who fits nowhere is left out. */
export function byThumb(instance: PlanInstance, problem: LaneProblem, rule: Thumb): number {
  const people = toVisit(instance);
  const of = (j: number) => people[j] as (typeof people)[number];
  const key = (j: number): string | number =>
    rule === 'shortest first'
      ? plannedMinutes(of(j))
      : `${of(j).unit} ${of(j).room.padStart(3, '0')}`;
  const order = [...people.keys()].sort((a, b) => {
    const cohort = rankOf(of(a).cohort) - rankOf(of(b).cohort);
    const [x, y] = [key(a), key(b)];
    return cohort || (x < y ? -1 : x > y ? 1 : 0);
  });
  let sequences: readonly (readonly number[])[] = problem.lanes.map(() => []);
  let cost = Infinity;
  const start = evaluateLanes(problem, sequences);
  if (start.ok) cost = start.value.cost;
  for (const j of order) {
    const tries = sequences.flatMap((_, k) => {
      const next = sequences.map((s, l) => (l === k ? [...s, j] : s));
      const found = evaluateLanes(problem, next);
      if (!found.ok) return [];
      return [{ next, cost: found.value.cost, end: found.value.starts[k]?.at(-1) ?? 0 }];
    });
    const soonest = tries.reduce<(typeof tries)[number] | undefined>(
      (a, b) => (a && a.end <= b.end ? a : b),
      undefined,
    );
    if (soonest) ({ next: sequences, cost } = soonest);
  }
  return cost;
}
