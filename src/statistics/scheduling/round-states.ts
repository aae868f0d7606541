/** Where a partial plan stands after some cohorts, for two teams. */
export interface RoundState {
  /** When each team is done so far; 0 if it has not begun. */
  readonly finish: readonly [number, number];
  /** Work of the first team less that of the second. */
  readonly difference: number;
  /** Prices of visits made and jobs left out. */
  readonly paid: number;
  readonly parent?: RoundState;
  /** Subsets of the cohort just served by each team. */
  readonly served: readonly [number, number];
}

/** Keeps the cheapest state of each standing. */
export class StateTable {
  private readonly byKey = new Map<number, RoundState>();
  constructor(
    private readonly horizon: number,
    private readonly work: number,
  ) {}

  add(state: RoundState): void {
    const [a, b] = state.finish;
    const key = (a * (this.horizon + 1) + b) * (2 * this.work + 1) + state.difference + this.work;
    const held = this.byKey.get(key);
    if (!held || state.paid < held.paid) this.byKey.set(key, state);
  }

  /** The states worth following. */
  undominated(imbalanceWeight: number): readonly RoundState[] {
    const states = [...this.byKey.values()].sort(
      (x, y) => x.paid - y.paid || x.finish[0] + x.finish[1] - y.finish[0] - y.finish[1],
    );
    const kept: RoundState[] = [];
    for (const state of states) {
      if (!kept.some((better) => dominates(better, state, imbalanceWeight))) kept.push(state);
    }
    return kept;
  }
}

/** Whatever follows, `a` can do it no later, and the difference of work cannot make up the price. */
const dominates = (a: RoundState, b: RoundState, imbalanceWeight: number): boolean =>
  a.finish[0] <= b.finish[0] &&
  a.finish[1] <= b.finish[1] &&
  a.paid + imbalanceWeight * Math.abs(a.difference - b.difference) <= b.paid + 1e-12;
