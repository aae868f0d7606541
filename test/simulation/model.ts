import type { Draft } from '../../src/ledger/append.ts';
import type { LedgerFact } from '../../src/ledger/fact.ts';
import type { Fold } from '../../src/ledger/fold.ts';
import type { FactId } from '../../src/ledger/ids.ts';
import type { Catalogue } from '../../src/ledger/upcast.ts';
import type { Chance } from './chance.ts';

/** A clash, as a domain concludes it from its state. */
export interface Concluded {
  readonly id: string;
  /** Sorted. */
  readonly members: readonly FactId[];
  /** The verdict it was settled with; absent while it is open. */
  readonly verdict?: string;
}

export interface Conclusion {
  readonly findings: readonly Concluded[];
  /** What may not be packed, registered or resulted. Sorted. */
  readonly held: readonly string[];
}

/** What the simulation needs to know of a domain. Any that keeps this can be put in its place. */
export interface Model<State> {
  readonly fold: Fold<State>;
  /** What a program of a format knows. */
  readonly catalogue: (format: number) => Catalogue;
  /** Every fact that the state was made of. */
  readonly ids: (state: State) => readonly FactId[];
  readonly conclude: (state: State) => Conclusion;
  /** Something that a person with this state on the screen may do now. */
  readonly act: (state: State, chance: Chance, format: number) => Draft | undefined;
  /** The same conclusion from bare facts, by another and much plainer way. */
  readonly recount: (facts: readonly LedgerFact[]) => Conclusion;
}

/** What a settlement says, whatever the domain. */
export interface Settlement {
  readonly finding: string;
  readonly members: readonly FactId[];
  readonly verdict: string;
  readonly replaces?: readonly FactId[];
}
