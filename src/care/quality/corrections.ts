import type { FactOf } from '../catalogue.ts';
import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { factsIn, ofKind } from '../home.ts';
import type { FactId } from '../ids.ts';
import { everRanked } from '../staff/rights.ts';
import { dayOf } from '../time.ts';
import type { Finding } from './finding.ts';

type Recorded = FactOf<'result.recorded'>;

/**
 * Whether a correction by hand took the place of results that held the test, before a senior had settled
 * it. Told from what it replaced: results that differ, or one dated before the swab. A laboratory's own
 * correction in a file is no decision of anybody here.
 */
export function endsHold(home: Home, { data }: Recorded): boolean {
  if (data.how === 'file' || data.test === undefined) return false;
  const replaced = (data.replaces ?? []).flatMap((id) => {
    const fact = home.known.get(id);
    return fact?.kind === 'result.recorded' ? [fact] : [];
  });
  const sameCode = replaced.filter((fact) => fact.data.code === data.code);
  if (new Set(sameCode.map((fact) => fact.data.outcome)).size > 1)
    return !wasSettled(home, `two-results:${data.code}`, sameCode);
  const { taken } = testOf(home, data.test);
  const early = replaced.filter(
    ({ data: { reported } }) =>
      taken !== undefined && reported < dayOf(taken.at, home.service.zone),
  );
  return early.length > 0 && !wasSettled(home, `result-before-swab:${data.test}`, early);
}

/** Some senior had seen all of these when settling it. */
const wasSettled = (home: Home, id: Finding['id'], results: readonly Recorded[]): boolean =>
  ofKind(factsIn(home, 'finding', id), 'settled').some(({ by, data }) => {
    const seen: ReadonlySet<FactId> = new Set(data.members);
    return everRanked(home, by, 'senior') && results.every((fact) => seen.has(fact.id));
  });
