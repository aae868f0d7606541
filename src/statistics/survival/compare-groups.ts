import { chiSquaredUpper } from '../distributions/chi-squared.ts';
import { solveLinear } from '../numeric/solve-linear.ts';
import { nonNegative } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import {
  checkWaitingTimes,
  type SortedTimes,
  sortTimes,
  type WaitingTimes,
} from './waiting-times.ts';

export interface GroupComparison {
  /** Weighted events seen in each group. */
  readonly observed: readonly number[];
  /** Weighted events expected if all groups waited alike. */
  readonly expected: readonly number[];
  /** Variance of observed less expected, group by group (row by row). */
  readonly variance: readonly (readonly number[])[];
  readonly chiSquared: number;
  readonly degreesOfFreedom: number;
  readonly p: number;
}

/** Walks through the distinct event times of all groups together. */
class Walk {
  private readonly e: Int32Array;
  private readonly c: Int32Array;
  readonly atRisk: Float64Array;
  readonly died: Float64Array;

  constructor(private readonly groups: readonly SortedTimes[]) {
    this.e = new Int32Array(groups.length);
    this.c = new Int32Array(groups.length);
    this.atRisk = Float64Array.from(groups, (g) => g.events.length + g.censored.length);
    this.died = new Float64Array(groups.length);
  }

  private nextTime(): number {
    let time = Infinity;
    for (let g = 0; g < this.groups.length; g++) {
      const next = (this.groups[g] as SortedTimes).events[this.e[g] as number];
      if (next !== undefined && next < time) time = next;
    }
    return time;
  }

  /** Moves to the next event time; false at the end. Leaves atRisk just before it, and died at it. */
  advance(): boolean {
    for (let g = 0; g < this.groups.length; g++) {
      this.atRisk[g] = (this.atRisk[g] as number) - (this.died[g] as number);
    }
    const time = this.nextTime();
    if (time === Infinity) return false;
    for (let g = 0; g < this.groups.length; g++) this.count(g, time);
    return true;
  }

  private count(g: number, time: number): void {
    const { events, censored } = this.groups[g] as SortedTimes;
    let c = this.c[g] as number;
    const gone = c;
    while (c < censored.length && (censored[c] as number) < time) c++;
    this.c[g] = c;
    this.atRisk[g] = (this.atRisk[g] as number) - (c - gone);
    let e = this.e[g] as number;
    const first = e;
    while (e < events.length && events[e] === time) e++;
    this.e[g] = e;
    this.died[g] = e - first;
  }
}

const sum = (values: ArrayLike<number>): number => {
  let total = 0;
  for (let i = 0; i < values.length; i++) total += values[i] as number;
  return total;
};

interface Sums {
  readonly observed: Float64Array;
  readonly expected: Float64Array;
  readonly variance: Float64Array;
}

function accumulate(walk: Walk, k: number, rho: number): Sums {
  const observed = new Float64Array(k);
  const expected = new Float64Array(k);
  const variance = new Float64Array(k * k);
  let before = 1;
  while (walk.advance()) {
    const { atRisk, died } = walk;
    const n = sum(atRisk);
    const d = sum(died);
    const weight = rho === 0 ? 1 : before ** rho;
    const spread = n > 1 ? (weight * weight * d * (n - d)) / (n - 1) : 0;
    for (let g = 0; g < k; g++) {
      const share = (atRisk[g] as number) / n;
      observed[g] = (observed[g] as number) + weight * (died[g] as number);
      expected[g] = (expected[g] as number) + weight * d * share;
      for (let h = 0; h < k; h++) {
        const other = (atRisk[h] as number) / n;
        variance[g * k + h] =
          (variance[g * k + h] as number) + spread * share * ((g === h ? 1 : 0) - other);
      }
    }
    before *= (n - d) / n;
  }
  return { observed, expected, variance };
}

/**
 * (O - E)' V^-1 (O - E) over all of these groups but the last; undefined where V is singular.
 * `among`: the groups of which anybody was at risk when something happened.
 */
function quadraticForm(
  { observed, expected, variance }: Sums,
  k: number,
  among: readonly number[],
): number | undefined {
  const used = among.slice(0, -1);
  const reduced = Float64Array.from(
    used.flatMap((g) => used.map((h) => variance[g * k + h] as number)),
  );
  const difference = Float64Array.from(
    used.map((g) => (observed[g] as number) - (expected[g] as number)),
  );
  try {
    const solved = solveLinear(reduced, Float64Array.from(difference));
    const form = sum(difference.map((d, g) => d * (solved[g] as number)));
    return Number.isFinite(form) ? form : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Do groups wait alike? Harrington and Fleming's G-rho family: rho 0 is the log-rank test, rho 1
 * Peto and Peto's modification of the Gehan-Wilcoxon test, which weighs early differences more.
 * Fewer than two groups, an empty group, or no event that tells them apart: refused.
 * Source: Harrington & Fleming (1982), Biometrika 69:553-566; figures as R's survdiff.
 */
export function compareGroups(groups: readonly WaitingTimes[], rho = 0): Outcome<GroupComparison> {
  if (groups.length < 2) return refuse('empty', 'Give at least two groups to compare.');
  for (const group of groups) {
    const refused = checkWaitingTimes(group);
    if (refused) return refused;
  }
  const refused = nonNegative('rho', rho);
  if (refused) return refused;
  const k = groups.length;
  const sums = accumulate(new Walk(groups.map(sortTimes)), k, rho);
  // Whoever was never at risk when something happened tells nothing and takes no degree of freedom.
  const among = Array.from(sums.expected.keys()).filter((g) => (sums.expected[g] as number) > 0);
  const chiSquared = among.length < 2 ? undefined : quadraticForm(sums, k, among);
  if (chiSquared === undefined)
    return refuse('undefined', 'No event falls where the groups can be compared.');
  return given({
    observed: Array.from(sums.observed),
    expected: Array.from(sums.expected),
    variance: Array.from({ length: k }, (_, g) =>
      Array.from(sums.variance.subarray(g * k, g * k + k)),
    ),
    chiSquared,
    degreesOfFreedom: among.length - 1,
    p: chiSquaredUpper(chiSquared, among.length - 1),
  });
}
