import type { LedgerFact } from './fact.ts';

/**
 * What the domain makes of the facts. `evolve` must be commutative and idempotent: it only puts a
 * small bead into a bag by (key, fact id), so that any order of the same facts, with repeats, gives
 * the same state. A fact may come again with another receipt, or none: its bead is then replaced.
 */
export interface Fold<State, Fact = LedgerFact> {
  /**
   * Rises whenever the same facts would give another state, be read or not read otherwise, or
   * `encode` another text.
   */
  readonly fold: number;
  readonly initial: () => State;
  /** May change the state in place and return it. */
  readonly evolve: (state: State, fact: Fact) => State;
  readonly first: FirstLook<State>;
  /** A text that is the same for equal states, whatever order they were made in. */
  readonly digest: (state: State) => string;
}

/** What a first screen is made from, long before the whole is there: what holds, and what is recent. */
export interface FirstLook<State> {
  /** Kinds of what is over once it happened: of these only the recent facts are looked at. */
  readonly over: ReadonlySet<string>;
  /** How long such a fact is recent, in ms before the newest. */
  readonly recent: number;
  /** That much of a state, as text. */
  readonly encode: (state: State) => string;
  readonly decode: (text: string) => State;
}
