import type { Fact, FactOf, Kind } from '../../src/care/catalogue.ts';
import type { FactId } from '../../src/ledger/ids.ts';
import type { Concluded, Conclusion } from './model.ts';

/**
 * Codes on two tubes, references on two tests, tests with two references and codes with two results,
 * counted by brute force from bare facts. It shares no line with src/care/quality.
 */
export function recountCare(facts: readonly Fact[]): Conclusion {
  const replaced = new Set(
    facts.flatMap(({ data }) => ('replaces' in data ? (data.replaces ?? []) : [])),
  );
  const all = <K extends Kind>(kind: K) =>
    facts.filter((fact): fact is FactOf<K> & Fact => fact.kind === kind && !replaced.has(fact.id));
  const labels = [...all('kit.opened'), ...all('label.read'), ...all('bag.packed')];
  const registered = all('test.registered');
  const results = all('result.recorded');
  const testsOf = (code: string) => distinct(labels.filter(of('code', code)), 'test');
  const found: (Concluded & { readonly tests: readonly string[] })[] = [];
  const add = (id: string, members: readonly Fact[], tests: readonly string[]) =>
    found.push({ ...judged(facts, replaced, id, idsOf(members)), tests });
  for (const code of distinct(labels, 'code')) {
    const here = labels.filter(of('code', code));
    // A bag read into the box says nothing new of a test that has its code from the bedside.
    const bedside = (test: string) =>
      here.some((fact) => fact.kind !== 'bag.packed' && value(fact, 'test') === test);
    const telling = here.filter(
      (fact) => fact.kind !== 'bag.packed' || !bedside(value(fact, 'test')),
    );
    if (testsOf(code).length > 1) add(`code-on-two:${code}`, telling, testsOf(code));
  }
  for (const code of distinct(results, 'code')) {
    const here = results.filter(of('code', code));
    if (distinct(here, 'outcome').length > 1) add(`two-results:${code}`, here, testsOf(code));
  }
  for (const test of distinct(registered, 'test')) {
    const here = registered.filter(of('test', test));
    if (distinct(here, 'reference').length > 1) add(`registered-twice:${test}`, here, [test]);
  }
  for (const reference of distinct(registered, 'reference')) {
    const here = registered.filter(of('reference', reference));
    const tests = distinct(here, 'test');
    if (tests.length > 1) add(`reference-on-two:${reference}`, here, tests);
  }
  const open = found.filter(({ verdict }) => verdict === undefined);
  return {
    findings: found.map(({ tests: _tests, ...one }) => one).sort((a, b) => (a.id < b.id ? -1 : 1)),
    held: [...new Set(open.flatMap(({ tests }) => tests))].sort(),
  };
}

type Data = Readonly<Record<string, unknown>>;
const value = (fact: Fact, key: string) => (fact.data as Data)[key] as string;
const of = (key: string, wanted: string) => (fact: Fact) => value(fact, key) === wanted;
const distinct = (facts: readonly Fact[], key: string): string[] =>
  [...new Set(facts.map((fact) => value(fact, key)))].sort();
const idsOf = (facts: readonly Fact[]) =>
  [...new Set(facts.map(({ id }) => id as string as FactId))].sort();

/** Settled if all that seniors say and nobody replaced agrees, and one of them covers every member. */
function judged(
  facts: readonly Fact[],
  replaced: ReadonlySet<string>,
  id: string,
  members: readonly FactId[],
): Concluded {
  const seniors = new Set(
    facts.flatMap((fact) =>
      fact.kind === 'staff.role' && fact.data.role !== 'worker' ? [fact.data.staff] : [],
    ),
  );
  const settled = facts.filter(
    (fact): fact is FactOf<'settled'> & Fact =>
      fact.kind === 'settled' &&
      fact.data.finding === id &&
      !replaced.has(fact.id) &&
      seniors.has(fact.by),
  );
  const verdicts = new Set(settled.map(({ data }) => `${data.verdict} ${data.keeps ?? ''}`));
  const [verdict] = verdicts;
  const covers = settled.some(({ data }) => {
    const seen: readonly string[] = data.members;
    return members.every((member) => seen.includes(member));
  });
  return verdicts.size === 1 && covers && verdict !== undefined
    ? { id, members, verdict }
    : { id, members };
}
