import type { Draft } from '../../src/ledger/append.ts';
import { canonicalText, type JsonObject } from '../../src/ledger/canonical.ts';
import type { LedgerFact } from '../../src/ledger/fact.ts';
import type { Fold } from '../../src/ledger/fold.ts';
import type { FactId } from '../../src/ledger/ids.ts';
import { type Catalogue, readerOf } from '../../src/ledger/upcast.ts';
import type { Chance } from './chance.ts';
import type { Conclusion, Model, Settlement } from './model.ts';
import { recount } from './recount.ts';

/**
 * A home small enough to see through: tests get codes, codes may be corrected, people have names,
 * clashes are settled, and what is not held may be released.
 */
export type Bags = Map<string, Map<FactId, Bead>>;
export type Bead = JsonObject;

const CODES = 7;
const TESTS = 12;

const labelled = 'test.labelled';
export const settled = 'settled';

const catalogue = (format: number): Catalogue => ({
  [labelled]:
    format === 1
      ? { current: 1 }
      : { current: 2, steps: { 1: (data) => ({ ...data, how: 'scanned' }) } },
  'person.named': { current: 1 },
  [settled]: { current: 1 },
  'test.released': { current: 1 },
  erased: { current: 1 },
});

function evolve(bags: Bags, { id, kind, data, private: secret }: LedgerFact): Bags {
  const about = (data['test'] ?? data['person'] ?? data['finding'] ?? '') as string;
  const key = `${kind}/${about}`;
  const bag = bags.get(key) ?? new Map<FactId, Bead>();
  bags.set(key, bag.set(id, secret === undefined ? data : { ...data, secret }));
  return bags;
}

/** Beads by key and id, in an order of their own. */
const listed = (bags: Bags) =>
  [...bags]
    .map(([key, bag]) => [key, [...bag].sort(([a], [b]) => (a < b ? -1 : 1))] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1));

const fold: Fold<Bags> = {
  fold: 1,
  initial: () => new Map(),
  evolve,
  first: {
    over: new Set([labelled]),
    recent: 24 * 60 * 60 * 1000,
    encode: (bags) => JSON.stringify(listed(bags)),
    decode: (text) =>
      new Map(
        (JSON.parse(text) as [string, [FactId, Bead][]][]).map(([key, bag]) => [key, new Map(bag)]),
      ),
  },
  digest: (bags) => JSON.stringify(listed(bags)),
};

/** What stands: not replaced by another of the same bag. */
function standing(bag: ReadonlyMap<FactId, Bead>): readonly (readonly [FactId, Bead])[] {
  const replaced = new Set(
    [...bag.values()].flatMap(({ replaces }) => (replaces ?? []) as FactId[]),
  );
  return [...bag].filter(([id]) => !replaced.has(id)).sort(([a], [b]) => (a < b ? -1 : 1));
}

interface Clash {
  readonly members: FactId[];
  readonly tests: Set<string>;
}

/** Open and settled clashes, and the tests they hold. */
function clashes(bags: Bags): ReadonlyMap<string, Clash> {
  const found = new Map<string, Clash & { readonly distinct: Set<string> }>();
  const add = (
    finding: string,
    id: FactId,
    by: { readonly test: string; readonly distinct: string },
  ) => {
    const clash = found.get(finding) ?? { members: [], tests: new Set(), distinct: new Set() };
    clash.members.push(id);
    clash.tests.add(by.test);
    found.set(finding, { ...clash, distinct: clash.distinct.add(by.distinct) });
  };
  for (const [key, bag] of bags) {
    if (!key.startsWith(`${labelled}/`)) continue;
    const test = key.slice(labelled.length + 1);
    for (const [id, bead] of standing(bag)) {
      const code = bead['code'] as string;
      add(`code-on-two:${code}`, id, { test, distinct: test });
      add(`labels-differ:${test}`, id, { test, distinct: code });
    }
  }
  return new Map([...found].filter(([, { distinct }]) => distinct.size > 1));
}

/** Settled only if all standing settlements agree and one of them covers every member. */
export function verdictOn(
  bags: Bags,
  finding: string,
  members: readonly FactId[],
): string | undefined {
  const settlements = settlementsOf(bags, finding);
  const [first] = settlements;
  if (!first || settlements.some(([, { verdict }]) => verdict !== first[1].verdict))
    return undefined;
  const covered = settlements.some(([, s]) => members.every((id) => s.members.includes(id)));
  return covered ? first[1].verdict : undefined;
}

export function settlementsOf(
  bags: Bags,
  finding: string,
): readonly (readonly [FactId, Settlement])[] {
  return standing(bags.get(`${settled}/${finding}`) ?? new Map()) as unknown as readonly (readonly [
    FactId,
    Settlement,
  ])[];
}

export type Judge = typeof verdictOn;

export function concludeWith(bags: Bags, verdictOf: Judge): Conclusion {
  const held = new Set<string>();
  const findings = [...clashes(bags)].map(([id, { members, tests }]) => {
    const verdict = verdictOf(bags, id, members);
    if (verdict === undefined) for (const test of tests) held.add(test);
    return { id, members: [...members].sort(), ...(verdict !== undefined && { verdict }) };
  });
  return { findings: findings.sort((a, b) => (a.id < b.id ? -1 : 1)), held: [...held].sort() };
}

function act(bags: Bags, chance: Chance, format: number): Draft | undefined {
  const what = chance.weighted([
    ['label', 5],
    ['correct', 2],
    ['name', 2],
    ['settle', 5],
    ['release', 1],
  ] as const);
  if (what === 'label') return label(chance, format, { test: `t${chance.below(TESTS)}` });
  if (what === 'correct') return correct(bags, chance, format);
  if (what === 'name')
    return {
      kind: 'person.named',
      v: 1,
      data: { person: `p${chance.below(5)}` },
      private: `name-${chance.below(1e9)}`,
    };
  if (what === 'settle') return settle(bags, chance);
  const { held } = concludeWith(bags, verdictOn);
  const free = [...bags.keys()]
    .filter((key) => key.startsWith(`${labelled}/`))
    .map((key) => key.slice(labelled.length + 1))
    .filter((test) => !held.includes(test));
  const test = chance.one(free);
  return test === undefined ? undefined : { kind: 'test.released', v: 1, data: { test } };
}

function label(
  chance: Chance,
  format: number,
  more: { readonly test: string; readonly replaces?: readonly FactId[] },
): Draft {
  const data = { ...more, code: `c${chance.below(CODES)}` };
  return { kind: labelled, v: format, data: format === 1 ? data : { ...data, how: 'typed' } };
}

function correct(bags: Bags, chance: Chance, format: number): Draft | undefined {
  const [key, bag] = chance.one([...bags].filter(([k]) => k.startsWith(`${labelled}/`))) ?? [];
  if (key === undefined || !bag) return undefined;
  const replaces = standing(bag).map(([id]) => id);
  return label(chance, format, { test: key.slice(labelled.length + 1), replaces });
}

function settle(bags: Bags, chance: Chance): Draft | undefined {
  const open = [...clashes(bags)].filter(
    ([id, { members }]) => verdictOn(bags, id, members) === undefined,
  );
  const [finding, clash] = chance.one(open) ?? [];
  if (finding === undefined || !clash) return undefined;
  const replaces = settlementsOf(bags, finding).map(([id]) => id);
  const verdict = `v${chance.below(2)}`;
  const data = {
    finding,
    members: [...clash.members].sort(),
    verdict,
    ...(replaces.length > 0 && { replaces }),
  };
  return { kind: settled, v: 1, data };
}

/** Names are unique, and a bead keeps the name right behind the id. */
function hasSecret(text: string, id: FactId): boolean {
  const from = text.indexOf(id);
  return from >= 0 && text.slice(from, text.indexOf('}', from)).includes('secret');
}

export const homeModel: Model<Bags> = {
  fold,
  read: (format) => readerOf(catalogue(format)),
  burst: 1,
  ids: (bags) => [...bags.values()].flatMap((bag) => [...bag.keys()]),
  conclude: (bags) => concludeWith(bags, verdictOn),
  act: (bags, chance, { format }) => {
    const draft = act(bags, chance, format);
    return draft && { drafts: [draft] };
  },
  verdictIn: ({ verdict }) => verdict,
  stillTells: (parts, id) => hasSecret(JSON.stringify(parts), id),
  recount,
};

/** The same text for the same decisions. */
export const textOf = (conclusion: Conclusion): string => canonicalText(conclusion);
