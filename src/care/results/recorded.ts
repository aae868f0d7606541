import type { FactOf } from '../catalogue.ts';
import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';

export type Recorded = FactOf<'result.recorded'>;

/** Every result that stands for a test's code: by code, because the laboratory knows nothing else. */
export function resultsFor(home: Home, test: TestId): Recorded[] {
  const { code } = testOf(home, test);
  const byCode = code === undefined ? [] : standing(factsIn(home, 'code', code), 'result.recorded');
  const byTest = standing(factsIn(home, 'test', test), 'result.recorded');
  if (byCode.length + byTest.length === 0) return [];
  const replaced = new Set([...byCode, ...byTest].flatMap((fact) => fact.data.replaces ?? []));
  const all = new Map<FactId, Recorded>();
  for (const fact of [...byCode, ...byTest]) if (!replaced.has(fact.id)) all.set(fact.id, fact);
  return [...all.values()];
}
