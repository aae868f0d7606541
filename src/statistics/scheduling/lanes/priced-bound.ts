import type { LaneProblem } from './lane-problem.ts';
import { type LaneTimes, laneTimesOf } from './lane-times.ts';

export interface PricedBoundQuestion {
  readonly problem: LaneProblem;
  /** Jobs of one group follow each other with less change than those of two; any grouping is allowed. */
  readonly group: readonly number[];
  /** Nobody has to look further than this: a bound of as much is enough. */
  readonly enough: number;
  readonly shouldStop?: () => boolean;
}

/** Times at which a plan may finish, and what no such plan costs less than. */
interface Piece {
  readonly first: number;
  readonly last: number;
  readonly bound: number;
}

const MOST_PIECES = 24;
const STEPS = 200;

/**
 * No plan costs less. For each time at which everything may be finished, a lane has only so much time
 * before it: lanes get a price for their time, jobs go where they cost least, and any prices give a
 * bound; they are moved so as to raise it. Groups are shared out whole, over every set of lanes, so
 * that changes between groups are counted. Source: Lagrangian relaxation with Polyak's step (Fisher
 * 1981, Management Science 27:1-18; from memory). Stopped early, it answers with less.
 */
export function pricedBound(question: PricedBoundQuestion): number {
  const { problem, enough, shouldStop = () => false } = question;
  const { finish: weight, origin } = problem.weights;
  const times = laneTimesOf(problem, question.group);
  const bound = (first: number, last: number): Piece => {
    const early = weight * (first - origin);
    const rest = new Prices(times, last).raise(enough - early);
    return { first, last, bound: Math.min(enough, early + rest) };
  };
  // Whatever finishes later costs enough by its finish alone; without a price for it all are alike.
  const end = Math.max(
    origin,
    Math.min(times.latest, weight > 0 ? origin + Math.ceil(enough / weight) : Infinity),
  );
  let pieces: readonly Piece[] = [bound(origin, end)];
  for (let i = 0; i < MOST_PIECES; i++) {
    const worst = pieces.reduce((a, b) => (b.bound < a.bound ? b : a));
    if (worst.bound >= enough || worst.first === worst.last || shouldStop()) break;
    const middle = Math.floor((worst.first + worst.last) / 2);
    const halves = [bound(worst.first, middle), bound(middle + 1, worst.last)].map((half) => ({
      ...half,
      bound: Math.max(half.bound, worst.bound),
    }));
    pieces = [...pieces.filter((piece) => piece !== worst), ...halves];
  }
  return Math.min(...pieces.map((piece) => piece.bound));
}

/** Prices for the lanes' time, where all is finished by a given time. */
class Prices {
  private readonly jobs: number;
  private readonly lanes: number;
  private readonly ways: ReturnType<LaneTimes['until']>;
  /** For each limit of each lane: the price of a unit of time. */
  private readonly price: Float64Array;
  private readonly priceStep: Float64Array;
  /** What a unit of work on a lane adds to the imbalance: in sum 0, in size at most 2. */
  private readonly tilt: Float64Array;
  private readonly tiltStep: Float64Array;
  private readonly load: Float64Array;
  private readonly duration: Float64Array;
  private readonly out: Float64Array;
  private readonly cost: Float64Array;
  private readonly least: Float64Array;

  constructor(
    private readonly times: LaneTimes,
    finish: number,
  ) {
    this.ways = times.until(finish);
    this.jobs = times.problem.jobs.length;
    this.lanes = times.problem.lanes.length;
    this.price = new Float64Array(this.ways.limits.length);
    this.priceStep = new Float64Array(this.ways.limits.length);
    // If a later finish bought time on all lanes alike, this is what it would cost.
    for (const l of this.ways.whole)
      this.price[l] = times.problem.weights.finish / this.ways.whole.length;
    this.tilt = new Float64Array(this.lanes);
    this.tiltStep = new Float64Array(this.lanes);
    this.load = Float64Array.from(times.load);
    this.duration = Float64Array.from(times.problem.jobs, (job) => job.duration);
    this.out = Float64Array.from(times.problem.jobs, (job) => job.leftOutCost);
    this.cost = new Float64Array(this.jobs * this.lanes);
    this.least = new Float64Array(this.jobs << this.lanes);
  }

  /**
   * The best value found on the way to `target`. Steps are longer than Polyak's own at first, since a
   * target within reach needs that, and shorter after every 12 that did not help: our own choice.
   */
  raise(target: number): number {
    let [best, pace, since] = [-Infinity, 1.8, 0];
    for (let i = 0; i < STEPS; i++) {
      const value = this.value();
      since = value > best + 1e-9 ? 0 : since + 1;
      best = Math.max(best, value);
      if (best >= target) return best;
      if (since > 12) [pace, since] = [pace / 2, 0];
      if (pace < 0.1) return best;
      if (!this.move(pace * (target - value))) return best;
    }
    return best;
  }

  /** The bound that the prices of now give; leaves in the steps which way would raise it. */
  private value(): number {
    const { limits, prices, limitsAt, limitsOf } = this.ways;
    const { weights } = this.times.problem;
    let value = 0;
    limits.forEach(({ capacity }, l) => {
      value -= (this.price[l] as number) * capacity;
      this.priceStep[l] = -capacity;
    });
    this.tiltStep.fill(0);
    for (let j = 0; j < this.jobs; j++) {
      for (let k = 0; k < this.lanes; k++) {
        const way = j * this.lanes + k;
        let time = 0;
        for (let i = limitsAt[way] as number; i < (limitsAt[way + 1] as number); i++)
          time += this.price[limitsOf[i] as number] as number;
        this.cost[way] =
          (prices[way] as number) +
          weights.imbalance * (this.tilt[k] as number) * (this.duration[j] as number) +
          time * (this.load[j] as number);
      }
    }
    for (const group of this.times.groups) value += this.share(group);
    return value;
  }

  /** The least for one group over all sets of lanes that may serve it. */
  private share({ members, extra }: LaneTimes['groups'][number]): number {
    const { whole, limits } = this.ways;
    let [best, chosen] = [Infinity, 0];
    for (let set = 0; set < 1 << this.lanes; set++) {
      const lane = 31 - Math.clz32(set);
      const rest = set === 0 ? 0 : set ^ (1 << lane);
      let [sum, needed, room, spare] = [0, 0, 0, Infinity];
      for (const j of members) {
        const out = this.out[j] as number;
        const served = set === 0 ? out : (this.cost[j * this.lanes + lane] as number);
        const least =
          set === 0 ? out : Math.min(served, this.least[(j << this.lanes) + rest] as number);
        this.least[(j << this.lanes) + set] = least;
        sum += least;
        needed += this.load[j] as number;
        spare = Math.min(spare, out - least);
      }
      for (let k = 0; k < this.lanes; k++) {
        if (!(set & (1 << k))) continue;
        sum += (this.price[whole[k] as number] as number) * extra;
        room += limits[whole[k] as number]?.capacity ?? 0;
      }
      // More work than there is time: at least one of them is left out.
      if (needed > room + 1e-9) sum += spare;
      if (sum < best) [best, chosen] = [sum, set];
    }
    this.note(members, extra, chosen);
    return best;
  }

  /** Which limits the cheapest way of a group uses, and by how much. */
  private note(members: readonly number[], extra: number, set: number): void {
    const { whole, limitsAt, limitsOf } = this.ways;
    const { weights } = this.times.problem;
    for (let k = 0; k < this.lanes; k++)
      if (set & (1 << k))
        this.priceStep[whole[k] as number] = (this.priceStep[whole[k] as number] as number) + extra;
    for (const j of members) {
      const least = this.least[(j << this.lanes) + set] as number;
      for (let k = 0; k < this.lanes; k++) {
        if (!(set & (1 << k)) || this.cost[j * this.lanes + k] !== least) continue;
        const way = j * this.lanes + k;
        for (let i = limitsAt[way] as number; i < (limitsAt[way + 1] as number); i++) {
          const l = limitsOf[i] as number;
          this.priceStep[l] = (this.priceStep[l] as number) + (this.load[j] as number);
        }
        this.tiltStep[k] =
          (this.tiltStep[k] as number) + weights.imbalance * (this.duration[j] as number);
        break;
      }
    }
  }

  /** Moves the prices so that the bound would rise by `gain` if it were straight. False at a top. */
  private move(gain: number): boolean {
    let size = 0;
    const mean = this.tiltStep.reduce((a, b) => a + b, 0) / this.lanes;
    for (let l = 0; l < this.price.length; l++) {
      const step = this.priceStep[l] as number;
      if (step > 0 || (this.price[l] as number) > 0) size += step * step;
    }
    for (const step of this.tiltStep) size += (step - mean) ** 2;
    if (size < 1e-12) return false;
    const pace = gain / size;
    for (let l = 0; l < this.price.length; l++)
      this.price[l] = Math.max(0, (this.price[l] as number) + pace * (this.priceStep[l] as number));
    let total = 0;
    for (let k = 0; k < this.lanes; k++) {
      this.tilt[k] = (this.tilt[k] as number) + pace * ((this.tiltStep[k] as number) - mean);
      total += Math.abs(this.tilt[k] as number);
    }
    if (total > 2)
      for (let k = 0; k < this.lanes; k++) this.tilt[k] = (2 * (this.tilt[k] as number)) / total;
    return true;
  }
}
