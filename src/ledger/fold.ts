import type { LedgerFact } from './fact.ts';

/**
 * What the domain makes of the facts. `evolve` must be commutative and idempotent: it only puts a
 * small bead into a bag by (key, fact id), so that any order of the same facts, with repeats, gives
 * the same state. A fact may come again with another receipt, or none: its bead is then replaced.
 */
export interface Fold<State, Fact = LedgerFact> {
  /** Rises whenever the same facts would give another state, or `encode` another text. */
  readonly fold: number;
  readonly initial: () => State;
  /** May change the state in place and return it. */
  readonly evolve: (state: State, fact: Fact) => State;
  /** The state as named parts; a screen can begin with one of them. */
  readonly encode: (state: State) => Readonly<Record<string, string>>;
  readonly decode: (parts: Readonly<Record<string, string>>) => State;
  /** A text that is the same for equal states, whatever order they were made in. */
  readonly digest: (state: State) => string;
}
