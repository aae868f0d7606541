import type { Home } from '../home.ts';
import { factsIn, keysOn, standing } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import type { Code } from '../kind.ts';
import { testOf } from './test.ts';

/** Tests on which this code stands now, in any place, with the facts that put it there. */
export function testsWithCode(home: Home, code: Code): Map<TestId, FactId[]> {
  const found = new Map<TestId, FactId[]>();
  for (const fact of factsIn(home, 'code', code)) {
    if (fact.kind !== 'kit.opened' && fact.kind !== 'label.read' && fact.kind !== 'bag.packed')
      continue;
    const { test } = fact.data;
    const stands = standing(factsIn(home, 'test', test), fact.kind).some(
      ({ id }) => id === fact.id,
    );
    if (stands) found.set(test, [...(found.get(test) ?? []), fact.id]);
  }
  return found;
}

export type CodeUse =
  | { readonly use: 'free' }
  | { readonly use: 'put-aside' }
  | { readonly use: 'on-test'; readonly test: TestId; readonly spoiled: boolean };

/** Whether a code may still be given to a new test: once used, or closed, never again. */
export function codeUse(home: Home, code: Code): CodeUse {
  const [test] = testsWithCode(home, code).keys();
  if (test !== undefined)
    return { use: 'on-test', test, spoiled: testOf(home, test).spoiled !== undefined };
  const aside = standing(factsIn(home, 'code', code), 'kit.put-aside').length > 0;
  return aside ? { use: 'put-aside' } : { use: 'free' };
}

/** Every code that ever stood on a test. */
export const codesUsed = (home: Home): Iterable<string> => keysOn(home, 'code');
