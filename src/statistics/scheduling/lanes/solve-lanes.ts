import { given, type Outcome, refuse } from '../../refusal/refusal.ts';
import { advance, type FlatLanes, flattenLanes, type LaneState, laneStart } from './flat-lanes.ts';
import { checkLaneProblem, type LaneProblem } from './lane-problem.ts';
import type { LanePlan } from './search-lanes.ts';

const MOST_JOBS = 10;

interface Label extends LaneState {
  readonly order: readonly number[];
}

/** One lane's undominated ways to serve each subset of the jobs (bit j is job j). */
function laneLabels(flat: FlatLanes, lane: number): readonly (readonly Label[])[] {
  const table: Label[][] = Array.from({ length: 1 << flat.jobs }, () => []);
  (table[0] as Label[]).push({ ...laneStart(flat, lane), order: [] });
  // To come later into a cheaper window can pay, unless a job's windows on this lane cost the same.
  const level = flat.problem.slots.every(
    (row) => new Set(row[lane]?.map((s) => s.price)).size <= 1,
  );
  for (let subset = 0; subset < table.length; subset++) {
    const labels = undominated(table[subset] as Label[], level);
    table[subset] = labels;
    for (const label of labels) {
      for (let job = 0; job < flat.jobs; job++) {
        if (subset & (1 << job)) continue;
        const next = { ...label, order: [...label.order, job] };
        if (advance(flat, lane, next, job)) table[subset | (1 << job)]?.push(next);
      }
    }
  }
  return table;
}

function undominated(labels: readonly Label[], level: boolean): Label[] {
  const kept: Label[] = [];
  for (const a of [...labels].sort((x, y) => x.cost - y.cost || x.end - y.end || x.uses - y.uses)) {
    const beaten = kept.some(
      (b) =>
        b.before === a.before &&
        b.cost <= a.cost &&
        b.uses <= a.uses &&
        (level ? b.end <= a.end : b.end === a.end),
    );
    if (!beaten) kept.push(a);
  }
  return kept;
}

interface Joint {
  readonly finish: number;
  readonly most: number;
  readonly least: number;
  readonly cost: number;
  readonly uses: number;
  readonly sequences: readonly (readonly number[])[];
}

/** Ways of the lanes so far, without those that another is as good as in every respect. */
function leanest(joints: readonly Joint[]): readonly Joint[] {
  const kept: Joint[] = [];
  for (const a of [...joints].sort((x, y) => x.cost - y.cost || x.finish - y.finish)) {
    const beaten = kept.some(
      (b) =>
        b.cost <= a.cost &&
        b.finish <= a.finish &&
        b.most <= a.most &&
        b.least >= a.least &&
        b.uses <= a.uses,
    );
    if (!beaten) kept.push(a);
  }
  return kept;
}

function addLane(
  flat: FlatLanes,
  lane: number,
  sofar: readonly (readonly Joint[])[],
): readonly (readonly Joint[])[] {
  const labels = laneLabels(flat, lane);
  const work = Array.from(labels, (_, subset) =>
    [...flat.duration].reduce((sum, d, j) => (subset & (1 << j) ? sum + d : sum), 0),
  );
  const { origin } = flat.problem.weights;
  return sofar.map((_, union) => {
    const joints: Joint[] = [];
    for (let own = union; ; own = (own - 1) & union) {
      const w = work[own] as number;
      for (const old of sofar[union ^ own] as readonly Joint[]) {
        for (const { end, cost, uses, order } of labels[own] as readonly Label[]) {
          joints.push({
            finish: own === 0 ? old.finish : Math.max(old.finish, end, origin),
            most: Math.max(old.most, w),
            least: Math.min(old.least, w),
            cost: old.cost + cost,
            uses: old.uses + uses,
            sequences: [...old.sequences, order],
          });
        }
      }
      if (own === 0) break;
    }
    return leanest(joints);
  });
}

/**
 * The best plan of all, for at most 10 jobs: all subsets on all lanes, keeping of each what no other
 * way is as good as. Refused as 'too-large' above that: then searchLanes' plan and laneBounds' gap
 * are what there is. Source of the idea: Held & Karp (1962), SIAM Journal 10:196-210.
 */
export function solveLanes(problem: LaneProblem): Outcome<LanePlan> {
  const refused = checkLaneProblem(problem);
  if (refused) return refused;
  if (problem.jobs.length > MOST_JOBS)
    return refuse('too-large', `A proof is offered for at most ${MOST_JOBS} jobs.`);
  const flat = flattenLanes(problem);
  const { weights, limits, jobs, lanes } = problem;
  const nothing = { finish: weights.origin, most: 0, least: Infinity, cost: 0, uses: 0 };
  let table: readonly (readonly Joint[])[] = Array.from({ length: 1 << jobs.length }, (_, s) =>
    s === 0 ? [{ ...nothing, sequences: [] }] : [],
  );
  for (const lane of lanes.keys()) table = addLane(flat, lane, table);
  let best: LanePlan | undefined;
  for (const [subset, joints] of table.entries()) {
    const served = jobs.filter((_, j) => subset & (1 << j)).length;
    const out = jobs.reduce((sum, job, j) => (subset & (1 << j) ? sum : sum + job.leftOutCost), 0);
    if (served > limits.served) continue;
    for (const { finish, most, least, cost, uses, sequences } of joints) {
      if (uses > limits.uses) continue;
      if (served > 0 && finish > limits.finish - limits.finishEach * served) continue;
      const total =
        out +
        cost +
        weights.finish * (finish - weights.origin) +
        weights.imbalance * (most - least);
      if (!best || total < best.cost) best = { cost: total, sequences };
    }
  }
  return best ? given(best) : refuse('impossible', 'No plan keeps to the limits.');
}
