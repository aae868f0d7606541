import type { LaneProblem, LaneSlot } from './lane-problem.ts';

interface Span {
  readonly from: number;
  readonly until: number;
}

/** So much time is there on a lane between two moments for jobs that can lie nowhere else. */
export interface LaneLimit {
  readonly lane: number;
  readonly capacity: number;
}

export interface LaneTimes {
  readonly problem: LaneProblem;
  /** Each job's duration and the least change that comes before any job. */
  readonly load: readonly number[];
  /** Jobs by group, and what coming into it from another takes beyond the least change. */
  readonly groups: readonly { readonly members: readonly number[]; readonly extra: number }[];
  /** After this nothing can be done any more. */
  readonly latest: number;
  /** What there is when all is finished by a time. */
  readonly until: (finish: number) => {
    readonly limits: readonly LaneLimit[];
    /** For each lane, the limit that all its jobs count towards. */
    readonly whole: readonly number[];
    /** prices[job * lanes + lane]: the least that it costs there; Infinity where it cannot be. */
    readonly prices: Float64Array;
    /** Limits that it counts towards: limitsOf[limitsAt[job * lanes + lane]] up to the next entry. */
    readonly limitsAt: Int32Array;
    readonly limitsOf: Int32Array;
  };
}

const least = (values: readonly number[]): number => Math.min(Infinity, ...values);

function joined(spans: readonly Span[]): Span[] {
  const all: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.from - b.from)) {
    const last = all.at(-1);
    if (last && span.from <= last.until)
      all[all.length - 1] = { from: last.from, until: Math.max(last.until, span.until) };
    else all.push({ from: span.from, until: span.until });
  }
  return all;
}

/** Up to so many values, evenly picked from those that differ. */
function picked(values: readonly number[], most: number): readonly number[] {
  const all = [...new Set(values)].sort((a, b) => a - b);
  if (all.length <= most) return all;
  return Array.from(
    { length: most },
    (_, i) => all[Math.floor(((i + 0.5) * all.length) / most)] as number,
  );
}

const MOST_MOMENTS = 4;

/** The lanes' time as a bound needs it. Jobs of one group may follow each other at the least change. */
export function laneTimesOf(problem: LaneProblem, group: readonly number[]): LaneTimes {
  const { jobs, lanes, slots, steps } = problem;
  const between = (cross: boolean, into?: number): number =>
    least(
      jobs.flatMap((_, i) =>
        jobs.flatMap((_job, j) =>
          i === j || (cross && group[i] === group[j]) || (into !== undefined && group[j] !== into)
            ? []
            : (steps[i]?.[j]?.time ?? []),
        ),
      ),
    );
  const finite = (time: number): number => (time === Infinity ? 0 : time);
  const change = finite(between(false));
  const entries = [...new Set(group)].map((id) => ({ id, entry: between(true, id) - change }));
  const mostExtra = Math.max(0, ...entries.map(({ entry }) => finite(entry)));
  const groups = entries.map(({ id, entry }) => ({
    members: [...jobs.keys()].filter((j) => group[j] === id),
    // What nothing may come before stands first on its lane: there the most is given back anyway.
    extra: entry === Infinity ? mostExtra : Math.max(0, entry),
  }));
  const open = lanes.map((from, k) =>
    joined(slots.flatMap((row) => row[k] ?? []))
      .map((span) => ({ from: Math.max(from, span.from), until: span.until }))
      .filter((span) => span.from < span.until),
  );
  /** In each stretch of work the first job has no change before it that takes of the stretch. */
  const capacity = (k: number, from: number, until: number, credit: number): number =>
    (open[k] as readonly Span[]).reduce((sum, span) => {
      const length = Math.min(span.until, until) - Math.max(span.from, from);
      return length > 0 ? sum + length + credit : sum;
    }, 0);
  const stepCost = jobs.map((_, j) =>
    finite(least(steps.flatMap((row, i) => (i === j || !row[j] ? [] : row[j].cost)))),
  );
  const wayOf = (j: number, k: number, finish: number) => {
    const { duration = 0, promised } = jobs[j] ?? {};
    const first = lanes[k] ?? 0;
    const fits = (slots[j]?.[k] ?? []).flatMap((slot: LaneSlot) => {
      const start = Math.max(first, slot.from);
      const until = Math.min(slot.until, finish);
      return start + duration <= until ? [{ start, until, price: slot.price }] : [];
    });
    if (fits.length === 0) return undefined;
    const release = least(fits.map(({ start }) => start));
    const late = promised ? promised.weight * Math.max(0, release - promised.start) : 0;
    return {
      release,
      due: Math.max(...fits.map(({ until }) => until)),
      price: least(fits.map(({ price }) => price)) + (stepCost[j] ?? 0) + late,
    };
  };
  return {
    problem,
    load: jobs.map(({ duration }) => duration + change),
    groups,
    latest: Math.max(problem.weights.origin, ...slots.flat(2).map(({ until }) => until)),
    until: (finish) => {
      const ways = jobs.flatMap((_, j) => lanes.map((_lane, k) => wayOf(j, k, finish)));
      const limits: (LaneLimit & { readonly holds: (release: number, due: number) => boolean })[] =
        [];
      const whole = lanes.map((_, k) => {
        const credit = change + mostExtra;
        limits.push({
          lane: k,
          capacity: capacity(k, -Infinity, finish, credit),
          holds: () => true,
        });
        return limits.length - 1;
      });
      for (const k of lanes.keys()) {
        const own = ways.filter((way, i) => way !== undefined && i % lanes.length === k);
        for (const t of picked(
          own.map((way) => way?.release ?? 0),
          MOST_MOMENTS,
        ))
          limits.push({
            ...{ lane: k, capacity: capacity(k, t, finish, change) },
            holds: (release) => release >= t,
          });
        for (const t of picked(
          own.map((way) => way?.due ?? 0),
          MOST_MOMENTS,
        ))
          limits.push({
            ...{ lane: k, capacity: capacity(k, -Infinity, t, change) },
            holds: (_, due) => due <= t,
          });
      }
      const held = ways.map((way, i) =>
        limits.flatMap(({ lane, holds }, l) =>
          way && lane === i % lanes.length && holds(way.release, way.due) ? [l] : [],
        ),
      );
      const limitsAt = new Int32Array(held.length + 1);
      held.forEach((of, i) => (limitsAt[i + 1] = (limitsAt[i] as number) + of.length));
      return {
        ...{ limits, whole, limitsAt },
        limitsOf: Int32Array.from(held.flat()),
        prices: Float64Array.from(ways, (way) => way?.price ?? Infinity),
      };
    },
  };
}
