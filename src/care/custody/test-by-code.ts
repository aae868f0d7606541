import type { Home } from '../home.ts';
import type { Code } from '../kind.ts';
import { isWithdrawn } from '../quality/held.ts';
import { testsWithCode } from './code.ts';
import type { Test } from './test.ts';
import { testOf } from './test.ts';

/**
 * The one test that a code speaks of now: not spoiled, not withdrawn by a settlement. Where none is
 * left, the first that ever had it, so that what is told about a closed code can name whose it was.
 */
export function testByCode(home: Home, code: Code): Test | undefined {
  const tests = [...testsWithCode(home, code).keys()].sort().map((id) => testOf(home, id));
  return (
    tests.find((test) => test.spoiled === undefined && !isWithdrawn(home, test.id)) ?? tests[0]
  );
}
