import { below, type Chance, uniform } from '../../random/chance.ts';
import { shuffle } from '../../random/shuffle.ts';
import { positiveCount } from '../../refusal/checks.ts';
import { given, type Outcome } from '../../refusal/refusal.ts';
import { type FlatLanes, flattenLanes } from './flat-lanes.ts';
import { cheapestPlace } from './insert-job.ts';
import { draftOf, LaneDraft } from './lane-draft.ts';
import { checkLaneProblem, type LaneProblem, type LaneSequences } from './lane-problem.ts';

export interface LaneSearchOptions {
  readonly chance: Chance;
  /** Rounds of taking out and putting back. The answer depends on these and the seed, not on time. */
  readonly iterations: number;
  /** Asked now and then: true ends the search with the best so far. */
  readonly shouldStop?: () => boolean;
  /** A plan to start from. */
  readonly start?: LaneSequences;
  /** How many different plans to keep besides the best; none unless given. */
  readonly elite?: number;
}

export interface LanePlan {
  readonly cost: number;
  readonly sequences: LaneSequences;
}

export interface SearchedLanes extends LanePlan {
  /** Good plans that differ, cheapest first; the best is among them. */
  readonly elite: readonly LanePlan[];
  /** Iterations done before it ended or was stopped. */
  readonly iterations: number;
}

const CHECK_EVERY = 32;

/** How alike two jobs are: those close to each other can take each other's places. */
function likeness(flat: FlatLanes): (a: number, b: number) => number {
  const middle = Float64Array.from({ length: flat.jobs }, (_, j) => {
    const [first, last] = [flat.slotAt[j * flat.lanes], flat.slotAt[(j + 1) * flat.lanes]];
    if (first === last) return 0;
    return (
      ((flat.slotFrom[first as number] as number) +
        (flat.slotUntil[(last as number) - 1] as number)) /
      2
    );
  });
  return (a, b) => {
    const there = flat.stepTime[a * flat.jobs + b] as number;
    const back = flat.stepTime[b * flat.jobs + a] as number;
    return Math.min(there, back, 60) + Math.abs((middle[a] as number) - (middle[b] as number)) / 8;
  };
}

/** Orders in which jobs go back: by chance, or what is harder to place first. */
function orderOf(flat: FlatLanes, chance: Chance): ((j: number) => number) | undefined {
  const at = (j: number): number => flat.slotAt[j * flat.lanes] as number;
  const past = (j: number): number => flat.slotAt[(j + 1) * flat.lanes] as number;
  const until = (j: number): number => flat.slotUntil[past(j) - 1] ?? 0;
  const from = (j: number): number => flat.slotFrom[at(j)] ?? 0;
  switch (below(chance, 6)) {
    case 0:
      return until;
    case 1:
      return (j) => until(j) - from(j);
    case 2:
      return (j) => -(flat.duration[j] as number);
    case 3:
      return (j) => -(flat.leftOutCost[j] as number);
    default:
      return undefined;
  }
}

function putBack(draft: LaneDraft, chance: Chance, overlook: boolean): void {
  const jobs = shuffle(chance, [...draft.out]);
  const key = orderOf(draft.flat, chance);
  if (key) jobs.sort((a, b) => key(a) - key(b));
  for (const job of jobs) {
    if (overlook && below(chance, 40) === 0) continue;
    const place = cheapestPlace(draft, job, { chance, overlook });
    if (place) draft.put(place.lane, place.at, job);
  }
}

class LaneSearch {
  current: LaneDraft;
  cost: number;
  best: LaneDraft;
  least: number;
  readonly elite = new Map<string, LanePlan>();
  private readonly alike: (a: number, b: number) => number;

  constructor(
    private readonly flat: FlatLanes,
    start: LaneDraft,
    private readonly options: LaneSearchOptions,
  ) {
    this.alike = likeness(flat);
    this.current = start;
    putBack(start, options.chance, false);
    this.cost = start.cost();
    this.best = new LaneDraft(flat, start);
    this.least = this.cost;
    this.keep();
  }

  private keep(): void {
    const many = this.options.elite ?? 0;
    if (many === 0) return;
    const { sequences } = this.current;
    const key = JSON.stringify(sequences);
    if (this.elite.has(key)) return;
    if (this.elite.size >= many) {
      const [worst, plan] = [...this.elite].reduce((a, b) => (a[1].cost >= b[1].cost ? a : b));
      if (plan.cost <= this.cost) return;
      this.elite.delete(worst);
    }
    this.elite.set(key, { cost: this.cost, sequences: sequences.map((s) => s.slice()) });
  }

  /** Which jobs to take out: any, some alike, or a stretch of one lane. */
  private pick(): Set<number> {
    const { flat, current } = this;
    const { chance } = this.options;
    const share = below(chance, 5) === 0 ? 2 : 5;
    const many = Math.min(
      flat.jobs,
      2 + below(chance, Math.max(4, Math.min(20, Math.ceil(flat.jobs / share)))),
    );
    const way = below(chance, 4);
    const all = Array.from({ length: flat.jobs }, (_, j) => j);
    if (way === 0) return new Set(shuffle(chance, all).slice(0, many));
    const out = [...current.out];
    const lane = current.sequences[below(chance, flat.lanes)] as number[];
    if (way === 1 && lane.length > 0) {
      const from = below(chance, lane.length);
      return new Set(lane.slice(from, from + many));
    }
    const centre =
      out.length > 0 && below(chance, 3) > 0
        ? (out[below(chance, out.length)] as number)
        : below(chance, flat.jobs);
    const far = Float64Array.from(all, (j) => this.alike(centre, j) + 8 * uniform(chance));
    return new Set(all.sort((a, b) => (far[a] as number) - (far[b] as number)).slice(0, many));
  }

  /** One ruin and recreate, `left` of the search being still to go (1 at its start, 0 at its end). */
  step(left: number): void {
    const { chance } = this.options;
    const before = this.current;
    const next = new LaneDraft(this.flat, before);
    next.take(this.pick());
    putBack(next, chance, true);
    const cost = next.cost();
    // Worse by up to about 1 % is followed at first, and nothing worse at the end.
    const scale = Math.min(this.least, 2000);
    const warmth = 0.01 * scale * left * left;
    if (cost > this.cost - warmth * Math.log(uniform(chance) || 1e-300)) return;
    this.current = next;
    this.cost = cost;
    if (cost <= this.least + 0.02 * scale) this.keep();
    if (cost < this.least - 1e-9) {
      this.best = new LaneDraft(this.flat, next);
      this.least = cost;
    }
  }
}

/** How far a search has come. */
export interface LaneProgress {
  readonly done: number;
  readonly least: number;
}

/**
 * The search in steps, for a caller who has other things to do in between: it says every 32
 * iterations how far it is.
 */
export function* searchingLanes(
  problem: LaneProblem,
  options: LaneSearchOptions,
): Generator<LaneProgress, Outcome<SearchedLanes>, undefined> {
  const refused = checkLaneProblem(problem) ?? positiveCount('iterations', options.iterations);
  if (refused) return refused;
  const flat = flattenLanes(problem);
  const start = options.start ? draftOf(flat, options.start) : new LaneDraft(flat);
  const search = new LaneSearch(flat, start, options);
  let done = 0;
  for (; done < options.iterations && flat.jobs > 0; done++) {
    if (done % CHECK_EVERY === 0) {
      if (options.shouldStop?.()) break;
      yield { done, least: search.least };
    }
    search.step(1 - done / options.iterations);
  }
  const elite = [...search.elite.values()].sort((a, b) => a.cost - b.cost);
  return given({ cost: search.least, sequences: search.best.sequences, elite, iterations: done });
}

/**
 * A good plan by ruin and recreate: take some jobs out, put each back where it costs least, keep
 * what is better and, less and less often, what is a little worse. The same seed and iterations give
 * the same plan; `shouldStop` may end it early. Proves nothing: see laneBounds and solveLanes.
 * Source: Schrimpf et al. (2000), Journal of Computational Physics 159:139-171; the overlooked
 * places after Christiaens & Vanden Berghe (2020), Transportation Science 54:417-433.
 */
export function searchLanes(
  problem: LaneProblem,
  options: LaneSearchOptions,
): Outcome<SearchedLanes> {
  const search = searchingLanes(problem, options);
  for (;;) {
    const next = search.next();
    if (next.done === true) return next.value;
  }
}
