import { seededChance } from '../../../statistics/random/chance.ts';
import { shuffle } from '../../../statistics/random/shuffle.ts';
import type { Outcome } from '../../../statistics/refusal/refusal.ts';
import { evaluateLanes } from '../../../statistics/scheduling/lanes/evaluate-lanes.ts';
import { searchingLanes } from '../../../statistics/scheduling/lanes/search-lanes.ts';
import { solveLanes } from '../../../statistics/scheduling/lanes/solve-lanes.ts';
import type { PlanInstance } from './instance.ts';
import { lanesOf, toVisit } from './lanes-of.ts';
import { planOf, type RoundPlanMade, type Way } from './plan.ts';
import { type PlanBound, planBound, tighterBound } from './plan-bound.ts';
import { chanceOf, type PlanChance } from './plan-chance.ts';
import { type Staffing, staffings } from './staffing.ts';

export interface PlanningOptions {
  /** The same seed and effort give the same plan. */
  readonly seed: number;
  /** Iterations of the search in all; by the size of the round unless given. */
  readonly iterations?: number;
  /** Imagined days for the chance of the plan that is chosen. */
  readonly draws?: number;
  /** False where nobody asks how good the plan is at best: its bound is then the quick one. */
  readonly prove?: boolean;
  /** Asked now and then; true ends the search with the best so far. */
  readonly shouldStop?: () => boolean;
}

export interface PlanningProgress {
  /** From 0 to 1. */
  readonly share: number;
  readonly best: RoundPlanMade;
}

export interface MadePlan {
  readonly plan: RoundPlanMade;
  /** No plan costs less than this, and how far the plan is above it, as a share of its cost. */
  readonly lowerBound: number;
  readonly gap: number;
  readonly proven: boolean;
  /** Whether it is proved that not everybody can be visited. */
  readonly someLeftOut: boolean;
  readonly chance: PlanChance;
  readonly iterations: number;
  readonly stopped: boolean;
  /** Ways to form the pairs that there are. */
  readonly pairings: number;
}

interface Candidate extends Way {
  readonly cost: number;
}

const MOST_TRIED = 160;
const MOST_PROVED = 7;
const ELITE = 8;

/** The iterations that a round of a size is given: a few seconds' worth on a small tablet. */
export const effortFor = (people: number): number => 2000 + 100 * people;

function got<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.detail);
  return outcome.value;
}

/** Says how far it is after each piece of work, so that a worker can listen in between. */
export function* makingPlan(
  instance: PlanInstance,
  options: PlanningOptions,
): Generator<PlanningProgress, MadePlan, undefined> {
  const ways = staffings(instance);
  const bound = planBound(instance, ways);
  const search = new Planning(instance, options);
  const exact = yield* search.proveSmall(ways);
  if (!exact) yield* search.narrow(ways);
  const safe = search.choose(instance);
  let { plan, chance } = safe;
  // Too little chance, or people missed on many days: the same with longer changes, so that there is
  // room for long visits. What is found is judged as it is, without.
  for (const room of [1, 3]) {
    const good = chance.packed >= instance.rules.chanceAtLeast && chance.everyone >= 0.9;
    if (good || search.stopped || ways.length === 0) break;
    yield* search.narrow(ways, room);
    ({ plan, chance } = search.choose(instance));
  }
  const cheapest = search.best();
  const least = exact
    ? search.provedCost
    : cheapest && options.prove !== false
      ? yield* tightened(search, instance, { ways, bound: bound.cost, best: cheapest })
      : bound.cost;
  return finished({ search, plan, chance, bound, least, pairings: ways.length });
}

function* tightened(
  search: Planning,
  instance: PlanInstance,
  {
    ways,
    bound,
    best,
  }: { readonly ways: readonly Staffing[]; readonly bound: number; readonly best: Candidate },
): Generator<PlanningProgress, number, undefined> {
  const tighter = tighterBound(instance, ways, {
    ...{ bound, best },
    shouldStop: () => search.isStopped(),
  });
  for (;;) {
    const next = tighter.next();
    if (next.done === true) return next.value;
    yield search.progress();
  }
}

function finished({
  search,
  plan,
  chance,
  bound,
  least,
  pairings,
}: {
  readonly search: Planning;
  readonly plan: RoundPlanMade;
  readonly chance: PlanChance;
  readonly bound: PlanBound;
  readonly least: number;
  readonly pairings: number;
}): MadePlan {
  const lowerBound = Math.min(least, plan.cost);
  return {
    plan,
    lowerBound,
    gap: plan.cost > 0 ? (plan.cost - lowerBound) / plan.cost : 0,
    proven: lowerBound >= plan.cost - 1e-9,
    someLeftOut:
      bound.someLeftOut || (least > bound.cost && plan.leftOut.length > 0 && least >= plan.cost),
    chance,
    iterations: search.done,
    stopped: search.stopped,
    pairings,
  };
}

/** Makes a plan in one go. */
export function makePlan(instance: PlanInstance, options: PlanningOptions): MadePlan {
  const making = makingPlan(instance, options);
  for (;;) {
    const next = making.next();
    if (next.done === true) return next.value;
  }
}

class Planning {
  done = 0;
  stopped = false;
  provedCost = 0;
  private readonly pools = new Map<number, Map<string, Candidate>>();
  private readonly total: number;

  constructor(
    private readonly instance: PlanInstance,
    private readonly options: PlanningOptions,
  ) {
    this.total = options.iterations ?? effortFor(toVisit(instance).length);
  }

  /** A small round is solved to the end. False where it is too large, or would take too long. */
  *proveSmall(ways: readonly Staffing[]): Generator<PlanningProgress, boolean, undefined> {
    const people = toVisit(this.instance).length;
    if (people > MOST_PROVED || ways.length === 0 || ways.length > 60) return false;
    let least = Infinity;
    for (const staffing of ways) {
      if (this.isStopped()) return false;
      const solved = got(solveLanes(lanesOf(this.instance, staffing)));
      this.add({ staffing, sequences: solved.sequences });
      least = Math.min(least, solved.cost);
      yield this.progress();
    }
    this.provedCost = least;
    return true;
  }

  /**
   * Every way to form pairs gets a little work, the better half of them more, and so on to the best.
   * `room` keeps so many minutes more free between any two people.
   */
  *narrow(ways: readonly Staffing[], room = 0): Generator<PlanningProgress, void, undefined> {
    const { seed } = this.options;
    const early = room === 0 ? this.instance : withRoom(this.instance, room);
    let field: readonly Candidate[] = this.sample(ways).map((staffing) => ({
      staffing,
      sequences: staffing.map(() => []),
      cost: Infinity,
    }));
    const stages = [
      { keep: MOST_TRIED, share: 0.1 },
      { keep: 16, share: 0.2 },
      { keep: 5, share: 0.3 },
      { keep: 2, share: 0.4 },
    ];
    for (const [stage, { keep, share }] of stages.entries()) {
      field = field.slice(0, keep);
      const each = Math.max(
        1,
        Math.floor((this.total * share * (room === 0 ? 1 : 0.4)) / Math.max(1, field.length)),
      );
      const next: Candidate[] = [];
      for (const [k, candidate] of field.entries()) {
        if (stage + k > 0 && this.isStopped()) {
          next.push(...field.slice(k));
          break;
        }
        const problem = lanesOf(early, candidate.staffing);
        const searching = searchingLanes(problem, {
          chance: seededChance(seed * 7919 + stage * 1009 + k + 31 * room),
          iterations: each,
          start: candidate.sequences,
          elite: stage >= 2 ? ELITE : 0,
          shouldStop: () => this.isStopped(),
        });
        let step = searching.next();
        for (; step.done !== true; step = searching.next()) {
          if (this.pools.size > 0) yield this.progress();
        }
        const found = got(step.value);
        this.done += found.iterations;
        const { cost, sequences } = found;
        next.push({ staffing: candidate.staffing, cost, sequences });
        for (const way of [found, ...found.elite])
          this.add({ staffing: candidate.staffing, ...way });
        yield this.progress();
      }
      field = next.sort((a, b) => a.cost - b.cost);
    }
  }

  private sample(ways: readonly Staffing[]): readonly Staffing[] {
    if (ways.length <= MOST_TRIED) return ways;
    return shuffle(seededChance(this.options.seed), [...ways.keys()])
      .slice(0, MOST_TRIED)
      .map((i) => ways[i] as Staffing);
  }

  isStopped(): boolean {
    this.stopped ||= this.options.shouldStop?.() ?? false;
    return this.stopped;
  }

  /** Keeps the cheapest ways of each amount of room, at what they cost without it. */
  private add(way: Way, room = 0): void {
    const pool = this.pools.get(room) ?? new Map<string, Candidate>();
    this.pools.set(room, pool);
    const names = way.staffing.map((lane) => lane.map(({ staff }) => staff.map(({ id }) => id)));
    const key = JSON.stringify([names, way.sequences]);
    if (pool.has(key)) return;
    const found = got(evaluateLanes(lanesOf(this.instance, way.staffing), way.sequences));
    pool.set(key, { ...way, cost: found.cost });
    if (pool.size <= 2 * ELITE) return;
    const [worst] = [...pool].reduce((a, b) => (b[1].cost > a[1].cost ? b : a));
    pool.delete(worst);
  }

  private all(): readonly Candidate[] {
    return [...this.pools.values()].flatMap((pool) => [...pool.values()]);
  }

  best(): Candidate | undefined {
    return this.all().reduce<Candidate | undefined>(
      (a, b) => (a && a.cost <= b.cost ? a : b),
      undefined,
    );
  }

  progress(): PlanningProgress {
    const best = this.best();
    return {
      share: Math.min(1, this.done / this.total),
      best: best ? planOf(this.instance, best) : nobodyVisited(this.instance),
    };
  }

  /**
   * Of the best ways: nobody left out comes first, then enough chance, then cost, with those who are
   * missed on some days counted as left out on those days.
   */
  choose(instance: PlanInstance): { readonly plan: RoundPlanMade; readonly chance: PlanChance } {
    const { seed, draws = 2000 } = this.options;
    const plans = this.all()
      .map((way) => planOf(instance, way))
      .sort((a, b) => a.cost - b.cost);
    const leastOut = Math.min(...plans.map(({ parts }) => parts.leftOut));
    const able = plans.filter(({ parts }) => parts.leftOut <= leastOut + 1e-9);
    const judged = able
      .map((plan) => ({ plan, chance: chanceOf(instance, plan, { seed, draws: 200 }) }))
      .sort((a, b) => a.plan.cost + a.chance.missedCost - b.plan.cost - b.chance.missedCost);
    const most = Math.max(0, ...judged.map(({ chance }) => chance.packed - chance.error));
    const enough = Math.min(instance.rules.chanceAtLeast, most);
    const chosen = judged.find(({ chance }) => chance.packed >= enough);
    const plan = chosen?.plan ?? nobodyVisited(instance);
    return { plan, chance: chanceOf(instance, plan, { seed: seed + 1, draws }) };
  }
}

/** The same round with so many minutes more between any two people. */
function withRoom(instance: PlanInstance, room: number): PlanInstance {
  const { rules } = instance;
  const { changeMinutes, fullChangeMinutes } = rules;
  return {
    ...instance,
    rules: {
      ...rules,
      changeMinutes: changeMinutes + room,
      fullChangeMinutes: fullChangeMinutes + room,
    },
  };
}

function nobodyVisited(instance: PlanInstance): RoundPlanMade {
  const people = toVisit(instance);
  const leftOut = people.reduce((sum, p) => sum + p.weight * instance.weights.leftOut, 0);
  return {
    lanes: [],
    leftOut: people.map(({ id }) => id),
    cost: leftOut,
    parts: { leftOut, prices: 0, steps: 0, promises: 0, finish: 0, imbalance: 0 },
    finish: instance.from,
  };
}
