import type { Fact } from '../../../care/catalogue.ts';
import type { Home } from '../../../care/home.ts';
import type { Finding } from '../../../care/quality/finding.ts';
import type { Names } from '../../desk/names.ts';
import { paths } from '../paths.ts';

const factsOf = (home: Home, found: Finding): Fact[] =>
  found.members.flatMap((id) => home.known.get(id) ?? []);

/** Whom a finding is about, each once: the people of its tests, or whose record it is in. */
export function whoseIs(home: Home, found: Finding, names: Names): string[] {
  const tests = found.tests.map(names.test);
  const others = factsOf(home, found).flatMap(({ data }) => [
    ...('person' in data ? [names.person(data.person)] : []),
    ...('staff' in data ? [names.staff(data.staff)] : []),
  ]);
  return [...new Set(tests.length > 0 ? tests : others)];
}

/** The record in which something has to be put right by hand, where a finding is not about a test. */
export function recordOf(home: Home, found: Finding): string | undefined {
  if (found.tests.length > 0) return undefined;
  for (const { data, kind } of factsOf(home, found)) {
    if (kind === 'policy.confirmed') return paths.policy;
    if ('person' in data) return paths.person(data.person);
    if ('staff' in data) return paths.member(data.staff);
    if ('round' in data) return paths.round(data.round);
  }
  return undefined;
}
