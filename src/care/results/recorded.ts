import type { FactOf } from '../catalogue.ts';
import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { concluding, standing } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import type { Code } from '../kind.ts';

export type Recorded = FactOf<'result.recorded'>;

const filedByCode = concluding<Recorded[], Code>('code', (facts) =>
  standing(facts, 'result.recorded'),
);
const filedByTest = concluding<Recorded[], TestId>('test', (facts) =>
  standing(facts, 'result.recorded'),
);

/** Every result that stands for a test's code: by code, because the laboratory knows nothing else. */
export function resultsFor(home: Home, test: TestId): Recorded[] {
  const { code } = testOf(home, test);
  const byCode = code === undefined ? [] : filedByCode(home, code);
  const byTest = filedByTest(home, test);
  if (byTest.length === 0) return [...byCode];
  // Nearly always there is one, filed by both.
  if (byCode.length === 1 && byTest.length === 1 && byCode[0] === byTest[0]) return [...byCode];
  const replaced = new Set([...byCode, ...byTest].flatMap((fact) => fact.data.replaces ?? []));
  const all = new Map<FactId, Recorded>();
  for (const fact of [...byCode, ...byTest]) if (!replaced.has(fact.id)) all.set(fact.id, fact);
  return [...all.values()];
}
