import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { factsIn, replacedBy } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import type { Ruling } from '../quality/rulings.ts';
import type { Recorded } from './recorded.ts';
import { isAnothers, resultsFor } from './recorded.ts';

/** The results that count for a test: those that stand, without what a named person ruled out. */
export function countedBy(
  home: Home,
  test: TestId,
  ruling: Ruling | undefined,
): readonly Recorded[] {
  const all = resultsFor(home, test);
  if (ruling === undefined) return all;
  const others = [...ruling.others].flatMap((id) => recordedAs(home, id));
  const back = revived(home, test, ruling);
  return [...others, ...back, ...all].filter(({ id }) => !ruling.out.has(id));
}

/**
 * Where a report turned out to be about another test, what it had replaced here stands again. A result
 * of which nobody said whose it is does not: it was held, and nothing would hold it now.
 */
function revived(home: Home, test: TestId, { elsewhere }: Ruling): Recorded[] {
  const { code } = testOf(home, test);
  const byCode = code === undefined ? [] : factsIn(home, 'code', code);
  const facts = [...byCode, ...factsIn(home, 'test', test)];
  const still = replacedBy(facts.filter(({ id }) => !elsewhere.has(id)));
  const gone = new Set<FactId>();
  for (const fact of facts)
    if (elsewhere.has(fact.id) && fact.kind === 'result.recorded')
      for (const id of fact.data.replaces ?? []) if (!still.has(id)) gone.add(id);
  return [...gone]
    .flatMap((id) => recordedAs(home, id))
    .filter((fact) => fact.data.matched !== 'none' && !isAnothers(home, test, fact));
}

function recordedAs(home: Home, id: FactId): Recorded[] {
  const fact = home.known.get(id);
  return fact?.kind === 'result.recorded' ? [fact] : [];
}
