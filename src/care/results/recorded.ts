import type { FactOf } from '../catalogue.ts';
import { testOf } from '../custody/test.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { concluding, standing } from '../home.ts';
import type { FactId, PersonId, TestId } from '../ids.ts';
import type { Code } from '../kind.ts';

export type Recorded = FactOf<'result.recorded'>;

const filedByCode = concluding<Recorded[], Code>('code', (facts) =>
  standing(facts, 'result.recorded'),
);
const filedByTest = concluding<Recorded[], TestId>('test', (facts) =>
  standing(facts, 'result.recorded'),
);

/**
 * Every result that stands for a test's code: by code, because the laboratory knows nothing else. One that
 * was matched to another person is not among them, whatever became of the tube it was matched by.
 */
export function resultsFor(home: Home, test: TestId): Recorded[] {
  const { code } = testOf(home, test);
  const byCode = (code === undefined ? [] : filedByCode(home, code)).filter(
    (fact) => !isAnothers(home, test, fact),
  );
  const byTest = filedByTest(home, test);
  if (byTest.length === 0) return [...byCode];
  // Nearly always there is one, filed by both.
  if (byCode.length === 1 && byTest.length === 1 && byCode[0] === byTest[0]) return [...byCode];
  const replaced = new Set([...byCode, ...byTest].flatMap((fact) => fact.data.replaces ?? []));
  const all = new Map<FactId, Recorded>();
  for (const fact of [...byCode, ...byTest]) if (!replaced.has(fact.id)) all.set(fact.id, fact);
  return [...all.values()];
}

/** Whether a result was matched to the test of another person, or of one not known here (yet). */
export function isAnothers(home: Home, test: TestId, { data }: Recorded): boolean {
  if (data.test === undefined || data.test === test) return false;
  const whose = personOf(home, data.test);
  return whose === undefined || whose !== personOf(home, test);
}

function personOf(home: Home, test: TestId): PersonId | undefined {
  const { turn } = testOf(home, test);
  return turn === undefined ? undefined : turnOf(home, turn)?.person;
}
