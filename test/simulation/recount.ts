import type { LedgerFact } from '../../src/ledger/fact.ts';
import type { FactId } from '../../src/ledger/ids.ts';
import type { Concluded, Conclusion, Settlement } from './model.ts';

type Label = LedgerFact & {
  readonly data: {
    readonly test: string;
    readonly code: string;
    readonly replaces?: readonly FactId[];
  };
};
type Verdict = LedgerFact & { readonly data: Settlement & Record<string, never> };

/**
 * The conclusion by brute force: every pair of labels compared with every other, nothing kept in
 * bags. It shares no line with the model that it checks.
 */
export function recount(facts: readonly LedgerFact[]): Conclusion {
  const labels = stand(
    facts.filter(({ kind }) => kind === 'test.labelled'),
  ) as unknown as readonly Label[];
  const verdicts = stand(
    facts.filter(({ kind }) => kind === 'settled'),
  ) as unknown as readonly Verdict[];
  const findings = new Map<string, Set<FactId>>();
  const tests = new Map<string, Set<string>>();
  for (const a of labels)
    for (const b of labels) {
      const [sameCode, sameTest] = [a.data.code === b.data.code, a.data.test === b.data.test];
      if (sameCode === sameTest) continue;
      const id = sameCode ? `code-on-two:${a.data.code}` : `labels-differ:${a.data.test}`;
      findings.set(id, new Set([...(findings.get(id) ?? []), a.id, b.id]));
      tests.set(id, new Set([...(tests.get(id) ?? []), a.data.test, b.data.test]));
    }
  const held = new Set<string>();
  const concluded: Concluded[] = [];
  for (const id of [...findings.keys()].sort()) {
    // A settlement counts labels of the same code that do not clash as members too.
    const members = [...withTwins(id, labels, findings.get(id) ?? new Set())].sort();
    const verdict = judge(
      verdicts.filter(({ data }) => data.finding === id),
      members,
    );
    if (verdict === undefined) for (const test of tests.get(id) ?? []) held.add(test);
    concluded.push({ id, members, ...(verdict !== undefined && { verdict }) });
  }
  return { findings: concluded, held: [...held].sort() };
}

function stand(facts: readonly LedgerFact[]): readonly LedgerFact[] {
  return facts.filter(
    (fact) =>
      !facts.some(({ data }) => ((data['replaces'] ?? []) as readonly string[]).includes(fact.id)),
  );
}

function withTwins(
  id: string,
  labels: readonly Label[],
  found: ReadonlySet<FactId>,
): ReadonlySet<FactId> {
  const about = id.slice(id.indexOf(':') + 1);
  const all = new Set(found);
  for (const { id: label, data } of labels)
    if ((id.startsWith('code') ? data.code : data.test) === about) all.add(label);
  return all;
}

function judge(verdicts: readonly Verdict[], members: readonly FactId[]): string | undefined {
  if (new Set(verdicts.map(({ data }) => data.verdict)).size !== 1) return undefined;
  const covering = verdicts.find(({ data }) => members.every((id) => data.members.includes(id)));
  return covering?.data.verdict;
}
