import type { Home } from '../home.ts';
import type { Finding } from './finding.ts';
import { isOpenFinding } from './finding.ts';
import { withdrawnIn } from './withdrawn.ts';

/** What findings ask only once others are settled: whose tube stands comes before whose result it is. */
export function secondLook(home: Home, all: readonly Finding[]): Finding[] {
  const withdrawn = withdrawnIn(home, all);
  const twice = new Set(
    all
      .filter((found) => found.kind === 'code-on-two' && isOpenFinding(home, found))
      .flatMap(({ tests }) => tests),
  );
  return all.filter(
    ({ kind, tests }) =>
      kind !== 'result-of-another' || !tests.some((test) => withdrawn.has(test) || twice.has(test)),
  );
}
