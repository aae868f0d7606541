import type { Fact } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn } from '../home.ts';
import type { FactId } from '../ids.ts';
import type { Shelf } from '../kind.ts';

/** One entry of a record, with its place in the chain of amendments. */
export interface Entry {
  readonly fact: Fact;
  /** Entries that this one stands in for, as far as they are known here. */
  readonly replaces: readonly Fact[];
  /** How many more it stands in for that have not reached this device. */
  readonly replacesUnseen: number;
  /** The entries that stand in for this one; more than one where two people amended it apart. */
  readonly replacedBy: readonly Fact[];
}

/** Everything filed about one person, colleague or lot, newest first: nothing is ever left out. */
export function historyOf(home: Home, shelf: Shelf, key: string): Entry[] {
  const facts = factsIn(home, shelf, key);
  const byId = new Map(facts.map((fact) => [fact.id, fact]));
  const replacedBy = new Map<FactId, Fact[]>();
  for (const fact of facts) {
    for (const id of replacesOf(fact)) replacedBy.set(id, [...(replacedBy.get(id) ?? []), fact]);
  }
  return facts.toReversed().map((fact) => {
    const ids = replacesOf(fact);
    const replaces = ids.flatMap((id) => byId.get(id) ?? []);
    return {
      fact,
      replaces,
      replacesUnseen: ids.length - replaces.length,
      replacedBy: replacedBy.get(fact.id) ?? [],
    };
  });
}

const replacesOf = (fact: Fact): readonly FactId[] =>
  'replaces' in fact.data ? (fact.data.replaces ?? []) : [];
