import type { Draft } from '../../src/ledger/append.ts';
import type { LedgerFact } from '../../src/ledger/fact.ts';
import type { Fold } from '../../src/ledger/fold.ts';
import type { FactId } from '../../src/ledger/ids.ts';
import type { Reader } from '../../src/ledger/upcast.ts';
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

/** The tablet on which somebody acts. */
export interface Hands {
  readonly format: number;
  /** By its own clock, ms since 1970. */
  readonly now: number;
  readonly device: string;
}

/** What one touch writes, together. Without `by`, anybody wrote it. */
export interface Act {
  readonly drafts: readonly Draft[];
  readonly by?: string;
  readonly with?: readonly string[];
}

/** What the simulation needs to know of a domain. Any that keeps this can be put in its place. */
export interface Model<State, Fact = LedgerFact> {
  readonly fold: Fold<State, Fact>;
  /** How a program of a format reads stored facts. */
  readonly read: (format: number) => Reader<Fact>;
  /** What the service itself writes before any tablet is there. */
  readonly begin?: (chance: Chance, now: number) => readonly Draft[];
  /** Touches one after another by the same person, each on the state that the one before left. */
  readonly burst: number;
  /** Every fact that the state was made of. */
  readonly ids: (state: State) => readonly FactId[];
  readonly conclude: (state: State) => Conclusion;
  /** Something that a person with this state on the screen may do now. */
  readonly act: (state: State, chance: Chance, hands: Hands) => Act | undefined;
  /** The verdict of a settlement, as `conclude` tells it. */
  readonly verdictIn: (settlement: Settlement) => string;
  /** Whether a snapshot's parts still tell what was private in a fact. */
  readonly stillTells: (parts: Readonly<Record<string, string>>, id: FactId) => boolean;
  /** The same conclusion from bare facts, by another and much plainer way. */
  readonly recount: (facts: readonly Fact[]) => Conclusion;
}

/** A model whatever its state and facts are: the simulation only hands them back and forth. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- see above
export type AnyModel = Model<any, any>;

/** What a settlement says, whatever the domain. */
export interface Settlement {
  readonly finding: string;
  readonly members: readonly FactId[];
  readonly verdict: string;
  readonly keeps?: FactId;
  readonly replaces?: readonly FactId[];
}
