import { advance, type FlatLanes, type LaneState, laneStart } from './flat-lanes.ts';
import type { LaneSequences } from './lane-problem.ts';

/** A plan in the making, with each lane's state before every one of its jobs and after the last. */
export class LaneDraft {
  readonly sequences: number[][];
  readonly states: LaneState[][];
  readonly work: number[];
  readonly out: Set<number>;

  constructor(
    readonly flat: FlatLanes,
    from?: LaneDraft,
  ) {
    this.sequences = from
      ? from.sequences.map((s) => s.slice())
      : Array.from({ length: flat.lanes }, () => []);
    // States are never changed once they stand in a list, so that lists can share them.
    this.states = from
      ? from.states.map((s) => s.slice())
      : this.sequences.map((_, lane) => [laneStart(flat, lane)]);
    this.work = from ? from.work.slice() : this.sequences.map(() => 0);
    this.out = new Set(from ? from.out : Array.from({ length: flat.jobs }, (_, j) => j));
  }

  /** Puts a job in; the caller knows that it fits. */
  put(lane: number, at: number, job: number): void {
    (this.sequences[lane] as number[]).splice(at, 0, job);
    this.out.delete(job);
    this.refresh(lane, at);
  }

  take(jobs: ReadonlySet<number>): void {
    this.sequences.forEach((sequence, lane) => {
      const first = sequence.findIndex((j) => jobs.has(j));
      if (first < 0) return;
      for (const j of sequence) if (jobs.has(j)) this.out.add(j);
      this.sequences[lane] = sequence.filter((j) => !jobs.has(j));
      this.refresh(lane, first);
    });
  }

  /** Walks a lane again from a place on. What no longer fits is left out. */
  private refresh(lane: number, from: number): void {
    const { flat } = this;
    const sequence = this.sequences[lane] as number[];
    const states = this.states[lane] as LaneState[];
    states.length = from + 1;
    for (let i = from; i < sequence.length; ) {
      const next = { ...(states[i] as LaneState) };
      if (advance(flat, lane, next, sequence[i] as number)) {
        states.push(next);
        i++;
      } else {
        this.out.add(sequence[i] as number);
        sequence.splice(i, 1);
      }
    }
    let work = 0;
    for (const j of sequence) work += flat.duration[j] as number;
    this.work[lane] = work;
  }

  last(lane: number): LaneState {
    const states = this.states[lane] as LaneState[];
    return states[states.length - 1] as LaneState;
  }

  /** When a lane ends; the origin where it has nothing to do. */
  endOf(lane: number): number {
    const { origin } = this.flat.problem.weights;
    return (this.sequences[lane] as number[]).length > 0 ? this.last(lane).end : origin;
  }

  served(): number {
    return this.flat.jobs - this.out.size;
  }

  uses(): number {
    let uses = 0;
    for (let lane = 0; lane < this.flat.lanes; lane++) uses += this.last(lane).uses;
    return uses;
  }

  cost(): number {
    const { flat } = this;
    let [cost, finish, most, least] = [0, flat.problem.weights.origin, 0, Infinity];
    for (let lane = 0; lane < flat.lanes; lane++) {
      cost += this.last(lane).cost;
      finish = Math.max(finish, this.endOf(lane));
      most = Math.max(most, this.work[lane] as number);
      least = Math.min(least, this.work[lane] as number);
    }
    for (const j of this.out) cost += flat.leftOutCost[j] as number;
    const { weights } = flat.problem;
    return cost + weights.finish * (finish - weights.origin) + weights.imbalance * (most - least);
  }

  /** Takes out from the end what goes over a limit: only a plan from elsewhere can. */
  trim(): void {
    const { limits } = this.flat.problem;
    for (;;) {
      const by = limits.finish - limits.finishEach * this.served();
      const over = this.served() > limits.served || this.uses() > limits.uses;
      const lanes = Array.from({ length: this.flat.lanes }, (_, k) => k);
      const longest = lanes.reduce((a, b) => (this.endOf(b) > this.endOf(a) ? b : a), 0);
      const late = (this.sequences[longest] as number[]).length > 0 && this.endOf(longest) > by;
      const last = (this.sequences[longest] as number[]).at(-1);
      if (last === undefined || !(over || late)) return;
      this.take(new Set([last]));
    }
  }
}

/** A given plan as far as it can be carried out; what breaks is left out, to be put back. */
export function draftOf(flat: FlatLanes, start: LaneSequences): LaneDraft {
  const draft = new LaneDraft(flat);
  start.slice(0, flat.lanes).forEach((sequence, lane) => {
    for (const job of sequence) {
      if (!draft.out.has(job)) continue;
      const state = { ...draft.last(lane) };
      if (advance(flat, lane, state, job))
        draft.put(lane, (draft.sequences[lane] as number[]).length, job);
    }
  });
  draft.trim();
  return draft;
}
