import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../../test/trial/home.ts';
import { kitCode, plan, swab } from '../../../test/trial/round.ts';
import { secondTablet } from '../../../test/trial/tablets.ts';
import { seededChance, uniform } from '../../statistics/random/chance.ts';
import type { Fact } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { emptyHome, file } from '../home.ts';
import type { StaffId, TestId, TurnId } from '../ids.ts';
import type { Code } from '../kind.ts';
import type { Day } from '../time.ts';
import { isOpenFinding } from './finding.ts';
import { findings } from './findings.ts';

const DAYS = ['2026-03-03', '2026-03-10', '2026-03-17'] as Day[];
const NAMES = ['Oriel Finch', 'Tamsin Oake', 'Bram Hollow'];

/** The policy carried challenges nothing; the service's own second version does. */
const silent = demoPolicy((policy) => {
  delete policy.fit;
});
const second = JSON.stringify(demoPolicy((policy) => Object.assign(policy, { version: 2 })));

const isOpened = (fact: Fact): fact is Fact & { kind: 'turn.opened' } =>
  fact.kind === 'turn.opened';
type Lived = ReturnType<typeof lived>;

/** Three people, each swabbed on three days, one after the other by one pair. */
function lived() {
  const trial = new Trial({ policy: silent });
  trial.staff('Pia');
  trial.staff('Jonah');
  trial.staff('Sorrel', 'manager');
  const people = NAMES.map((name, at) => trial.person(name, `${1941 + at}-06-02`));
  const swabs: { test: TestId; code: Code; turn: TurnId }[] = [];
  for (const day of DAYS) {
    trial.at('09:00', day);
    const round = plan(trial, people);
    for (const person of people) {
      const code = kitCode(swabs.length + 1) as Code;
      const test = swab(trial, round, person, code);
      swabs.push({ test, code, turn: trial.facts.findLast(isOpened)!.data.turn });
    }
  }
  trial.at('09:00', '2026-03-20');
  trial.by = 'sorrel' as StaffId;
  return { trial, people, swabs };
}
const asPlanned = lived();
/** The same again, to go on from on the office's tablet. */
const again = (): Lived => ({ ...asPlanned, trial: secondTablet(asPlanned.trial, 'T0000003') });

const which = fc.nat(NAMES.length * DAYS.length - 1);
const change = fc.oneof(
  { weight: 5, arbitrary: fc.record({ what: fc.constant('sign' as const), at: which }) },
  {
    weight: 10,
    arbitrary: fc.record({
      what: fc.constant('result' as const),
      at: which,
      outcome: fc.constantFrom('positive', 'negative', 'positive', 'negative', 'void' as const),
      corrects: fc.boolean(),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      what: fc.constant('policy' as const),
      at: fc.nat(DAYS.length - 1),
      version: fc.constantFrom(1, 2),
    }),
  },
  fc.record({ what: fc.constant('strike-out' as const) }),
  fc.record({ what: fc.constant('settle' as const) }),
  fc.record({ what: fc.constant('spoil' as const), at: which }),
  fc.record({ what: fc.constant('somebody-else' as const), at: which }),
  fc.record({ what: fc.constant('stop' as const), at: which }),
);
type Change = typeof change extends fc.Arbitrary<infer T> ? T : never;
/** Facts as they may come, whether or not a procedure of today would allow each. */
function happen({ trial, people, swabs }: Lived, given: Change): void {
  const { home } = trial;
  switch (given.what) {
    case 'sign': {
      const about = { person: people[given.at % 3]!, on: DAYS[Math.trunc(given.at / 3)]! };
      trial.add('symptoms.noticed', { ...about, signs: ['fever'] }, { note: '' });
      return;
    }
    case 'strike-out': {
      const sign = trial.facts.findLast(({ kind }) => kind === 'symptoms.noticed');
      if (sign?.kind !== 'symptoms.noticed') return;
      const gone = { person: sign.data.person, replaces: [sign.id] };
      trial.add('entry.struck-out', gone, { reason: 'Another person.' });
      return;
    }
    case 'result': {
      const { test, code } = swabs[given.at]!;
      const before = trial.facts.findLast(
        (fact) => fact.kind === 'result.recorded' && fact.data.test === test,
      );
      trial.add('result.recorded', {
        ...{ test, code, outcome: given.outcome, how: 'file', matched: 'born' },
        reported: '2026-03-18' as Day,
        ...(given.corrects && before !== undefined && { replaces: [before.id] }),
      });
      return;
    }
    case 'policy': {
      const { policy } = silent;
      const about = { policy, version: given.version, digest: `${given.version}`.repeat(43) };
      if (given.version === 2) trial.add('policy.written', { ...about, text: second });
      trial.add('policy.confirmed', { ...about, from: DAYS[given.at]! });
      return;
    }
    case 'settle': {
      const open = findings(home).find((found) => isOpenFinding(home, found));
      if (open === undefined) return;
      const data = {
        finding: open.id,
        members: [...open.members],
        verdict: 'none-stands' as const,
      };
      trial.add('settled', data, { reason: 'Asked.' });
      return;
    }
    case 'spoil': {
      const { turn, test } = swabs[given.at]!;
      trial.add('kit.spoiled', { turn, test, why: 'leak' });
      return;
    }
    case 'somebody-else': {
      const { turn } = swabs[given.at]!;
      const opened = trial.facts.findLast((fact) => isOpened(fact) && fact.data.turn === turn);
      if (opened?.kind !== 'turn.opened') return;
      const person = people.find((id) => id !== opened.data.person)!;
      trial.add('turn.opened', { ...opened.data, person, replaces: [opened.id] });
      return;
    }
    case 'stop': {
      const { device } = trial;
      trial.device = 'T0000002';
      trial.add('turn.stopped', { turn: swabs[given.at]!.turn });
      trial.device = device;
    }
  }
}

function shuffled(facts: readonly Fact[], order: number): Fact[] {
  const chance = seededChance(order);
  const drawn = facts.map((fact) => ({ fact, at: uniform(chance) }));
  return drawn.sort((a, b) => a.at - b.at).map(({ fact }) => fact);
}

const told = (home: Home) =>
  findings(home).map((found) => [found, isOpenFinding(home, found)] as const);

/** A home as it learns facts one by one, its findings asked for after so many each time; 0 for never. */
function learning(trial: Trial, facts: readonly Fact[], ask: number): Home {
  const home = emptyHome(trial.home.service);
  for (const [at, fact] of facts.entries()) {
    file(home, fact);
    if (ask > 0 && at % ask === 0) findings(home);
  }
  return home;
}

describe('findings kept as facts arrive', () => {
  /** Oriel was positive, Tamsin after her negative, and both were swabbed again a week later. */
  function twoResults() {
    const all = again();
    happen(all, { what: 'result', at: 0, outcome: 'positive', corrects: false });
    happen(all, { what: 'result', at: 1, outcome: 'negative', corrects: false });
    return all;
  }
  const misfits = (home: Home) => told(home).map(([{ key }]) => key.split('/')[0]);

  it('have the signs that came last, though their person was swabbed again since', () => {
    const { trial, people, swabs } = twoResults();
    happen({ trial, people, swabs }, { what: 'policy', at: 0, version: 2 });
    expect(misfits(trial.home)).toEqual([]);
    happen({ trial, people, swabs }, { what: 'sign', at: 1 });
    expect(misfits(trial.home)).toEqual(['crossed']);
  });

  it('have the policy that came last', () => {
    const all = twoResults();
    happen(all, { what: 'result', at: 3, outcome: 'positive', corrects: false });
    expect(misfits(all.trial.home)).toEqual([]);
    happen(all, { what: 'policy', at: 0, version: 2 });
    expect(misfits(all.trial.home)).toEqual(['positive-again']);
  });

  it('have the earlier positive that came last, by which a neighbour’s round is weighed', () => {
    const all = again();
    happen(all, { what: 'policy', at: 0, version: 2 });
    happen(all, { what: 'result', at: 3, outcome: 'positive', corrects: false });
    happen(all, { what: 'result', at: 4, outcome: 'negative', corrects: false });
    expect(misfits(all.trial.home)).toEqual([]);
    happen(all, { what: 'result', at: 1, outcome: 'positive', corrects: false });
    expect(misfits(all.trial.home)).toEqual(['crossed']);
  });

  it('are those of a home made anew from the same facts, in whatever order these came', () => {
    const seen = new Map<string, number>();
    const story = fc.record({
      changes: fc.array(change, { minLength: 12, maxLength: 36 }),
      ask: fc.constantFrom(1, 2, 7, 40),
      // All mixed, or only the last few late, as from a tablet that was away.
      late: fc.constantFrom(2, 4, 8, 30, Infinity),
      order: fc.nat(),
    });
    fc.assert(
      fc.property(story, ({ changes, ask, late, order }) => {
        const all = again();
        for (const each of changes) happen(all, each);
        const { facts } = all.trial;
        const from = Math.max(0, facts.length - late);
        const came = [...facts.slice(0, from), ...shuffled(facts.slice(from), order)];
        const kept = told(learning(all.trial, came, ask));
        expect(kept).toEqual(told(learning(all.trial, facts, 0)));
        for (const [{ kind }] of kept) seen.set(kind, (seen.get(kind) ?? 0) + 1);
      }),
      { numRuns: 160, seed: 20260310 },
    );
    // The property is about something: these all came up.
    for (const kind of ['result-does-not-fit', 'two-results', 'swabbed-after-no'])
      expect(seen.get(kind), kind).toBeGreaterThan(10);
  });
});
