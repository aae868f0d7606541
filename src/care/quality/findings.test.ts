import { describe, expect, it } from 'vitest';
import { Trial } from '../../../test/trial/home.ts';
import { kitCode, pack, plan, startTurn, swab, touch, turnTo } from '../../../test/trial/round.ts';
import { recordResult } from '../../procedures/record-result.ts';
import { register } from '../../procedures/register.ts';
import { settleFinding } from '../../procedures/settle-finding.ts';
import { codesUsed, testsWithCode } from '../custody/code.ts';
import { emptyHome, file } from '../home.ts';
import type { FactId, StaffId, TestId } from '../ids.ts';
import type { Code } from '../kind.ts';
import { outcomeOf } from '../results/outcome.ts';
import { roundOf } from '../rounds/round.ts';
import { tallyOf } from '../rounds/tally.ts';
import type { Day } from '../time.ts';
import { standingOf } from './finding.ts';
import { findings } from './findings.ts';
import { heldBy, isWithdrawn } from './held.ts';

function house() {
  const trial = new Trial();
  trial.staff('Pia');
  trial.staff('Jonah');
  trial.staff('Wystan');
  trial.staff('Sorrel', 'senior');
  const hesper = trial.person('Hesper Lund', '1939-09-09');
  const bram = trial.person('Bram Holloway', '1970-01-02');
  const round = plan(trial, [hesper, bram]);
  return { trial, hesper, bram, round };
}

/** Two tablets offline: each sees only its own facts until they meet. */
function sameCodeTwice() {
  const { trial, hesper, bram, round } = house();
  const away = new Trial();
  for (const fact of trial.facts) file(away.home, fact);
  away.device = 'T0000002';
  away.by = 'sorrel' as StaffId;
  const mine = swab(trial, round, hesper, kitCode(7));
  const turn = startTurn(away, round, bram, { swabber: 'wystan', recorder: 'sorrel' });
  // The other tablet draws its own ids.
  const theirs = turnTo(away, turn, bram, { code: kitCode(7) });
  for (const fact of away.facts) file(trial.home, fact);
  return { trial, round, mine, theirs, hesper, bram, away };
}

const open = (trial: Trial) =>
  findings(trial.home).filter((found) => standingOf(trial.home, found).state !== 'settled');

describe('the same code on two tests', () => {
  it('is found when the tablets meet; no fact is lost; neither packs, registers or results', () => {
    const { trial, round, mine, theirs } = sameCodeTwice();
    const [found] = open(trial);
    expect(found).toMatchObject({ kind: 'code-on-two', key: kitCode(7) });
    expect([...(found?.tests ?? [])].sort()).toEqual([mine, theirs].sort());
    expect(trial.refused(pack(trial, round, kitCode(7))).reason).toBe('held-by-finding');
    for (const test of [mine, theirs]) {
      expect(
        trial.refused(register(trial.home, { test, reference: 'R1' }, trial.doing)).reason,
      ).toBe('not-packed');
      expect(heldBy(trial.home, test)).toHaveLength(1);
    }
  });

  it('is settled only by a senior, with a reason, who has seen all of it', () => {
    const { trial, mine, theirs, round } = sameCodeTwice();
    const [found] = open(trial);
    if (found === undefined) throw new Error('none');
    const keeps = found.members.find((id) => {
      const fact = trial.home.known.get(id);
      return fact !== undefined && 'test' in fact.data && fact.data.test === mine;
    }) as FactId;
    const settle = {
      finding: found.id,
      seen: found.members,
      verdict: 'one-stands',
      keeps,
      reason: "Hesper was first; Bram's label came from her sheet.",
    } as const;
    expect(trial.refused(settleFinding(trial.home, settle, trial.doing)).reason).toBe(
      'needs-senior',
    );
    trial.by = 'sorrel' as StaffId;
    expect(
      trial.refused(settleFinding(trial.home, { ...settle, reason: ' ' }, trial.doing)).reason,
    ).toBe('reason-missing');
    expect(
      trial.refused(
        settleFinding(trial.home, { ...settle, seen: found.members.slice(1) }, trial.doing),
      ).reason,
    ).toBe('finding-gone');
    trial.must(settleFinding(trial.home, settle, trial.doing));
    expect(open(trial)).toEqual([]);
    expect(isWithdrawn(trial.home, mine)).toBe(false);
    expect(isWithdrawn(trial.home, theirs)).toBe(true);
    expect(outcomeOf(trial.home, theirs).state).toBe('withdrawn');
    trial.must(pack(trial, round, kitCode(7)));
  });

  it('opens again when another label turns up, and when two seniors settled it differently', () => {
    const { trial, mine } = sameCodeTwice();
    trial.by = 'sorrel' as StaffId;
    const [found] = open(trial);
    if (found === undefined) throw new Error('none');
    const settle = (verdict: 'none-stands' | 'explained') =>
      trial.add(
        'settled',
        { finding: found.id, members: [...found.members], verdict },
        { reason: 'r' },
      );
    settle('none-stands');
    expect(open(trial)).toEqual([]);
    settle('explained');
    expect(standingOf(trial.home, found).state).toBe('settled-differently');
    trial.add('label.read', {
      turn: 'other' as never,
      test: 'third0' as never,
      place: 'tube',
      code: kitCode(7) as Code,
      how: 'scanned',
    });
    const again = findings(trial.home).find((each) => each.id === found.id);
    expect(again?.tests).toHaveLength(3);
    expect(heldBy(trial.home, mine)).toHaveLength(1);
  });

  it('a settlement by somebody who is no senior counts for nothing and is itself found', () => {
    const { trial } = sameCodeTwice();
    const [found] = open(trial);
    if (found === undefined) throw new Error('none');
    trial.by = 'pia' as StaffId;
    trial.add(
      'settled',
      { finding: found.id, members: [...found.members], verdict: 'explained' },
      { reason: 'r' },
    );
    expect(
      open(trial)
        .map((each) => each.kind)
        .sort(),
    ).toEqual(['code-on-two', 'without-right']);
  });
});

describe('other findings', () => {
  it('a swab beside a no that its pair did not know of', () => {
    const { trial, hesper, round } = house();
    const away = new Trial();
    for (const fact of trial.facts) file(away.home, fact);
    away.device = 'T0000002';
    const turn = startTurn(away, round, hesper, { swabber: 'wystan', recorder: 'sorrel' });
    away.must(touch(away, { do: 'identify', chosen: hesper, turn }));
    away.must(touch(away, { do: 'willing', answer: 'no', turn }));
    const test = swab(trial, round, hesper, kitCode(1));
    for (const fact of away.facts) file(trial.home, fact);
    expect(open(trial)).toMatchObject([{ kind: 'swabbed-after-no', tests: [test] }]);
    const found = roundOf(trial.home, round);
    expect(found && tallyOf(trial.home, found).tallies).toBe(false);
  });

  it('two live tests of one person in a round', () => {
    const { trial, hesper, round } = house();
    const away = new Trial();
    for (const fact of trial.facts) file(away.home, fact);
    away.device = 'T0000002';
    const turn = startTurn(away, round, hesper, { swabber: 'wystan', recorder: 'sorrel' });
    turnTo(away, turn, hesper, { code: kitCode(2) });
    swab(trial, round, hesper, kitCode(1));
    for (const fact of away.facts) file(trial.home, fact);
    expect(open(trial).map((found) => found.kind)).toContain('two-tests');
  });

  it('a result for a code nobody here used, and two results that differ', () => {
    const { trial, hesper, round } = house();
    const given = {
      how: 'scanned',
      reported: '2026-03-03' as Day,
      second: { is: 'born', value: '1939-09-09' },
    } as const;
    trial.must(
      recordResult(trial.home, { ...given, code: kitCode(50), outcome: 'negative' }, trial.doing),
    );
    expect(open(trial)).toMatchObject([{ kind: 'result-without-test', key: kitCode(50) }]);
    const test = swab(trial, round, hesper, kitCode(1));
    trial.add('result.recorded', {
      code: kitCode(1) as Code,
      outcome: 'positive',
      how: 'scanned',
      matched: 'born',
      reported: '2026-03-03' as Day,
    });
    trial.add('result.recorded', {
      code: kitCode(1) as Code,
      outcome: 'negative',
      how: 'scanned',
      matched: 'born',
      reported: '2026-03-03' as Day,
    });
    expect(open(trial).map((found) => found.kind)).toContain('two-results');
    expect(outcomeOf(trial.home, test).state).toBe('held');
  });

  it('a result from before the swab', () => {
    const { trial, hesper, round } = house();
    const test = swab(trial, round, hesper, kitCode(1));
    trial.add('result.recorded', {
      code: kitCode(1) as Code,
      outcome: 'positive',
      how: 'scanned',
      matched: 'born',
      reported: '2026-03-01' as Day,
    });
    expect(open(trial)).toMatchObject([{ kind: 'result-before-swab', tests: [test] }]);
  });

  it('one reference for two tests', () => {
    const { trial, hesper, bram, round } = house();
    const tests = [swab(trial, round, hesper, kitCode(1)), swab(trial, round, bram, kitCode(2))];
    for (const test of tests)
      trial.add('test.registered', { test, reference: 'R9', on: '2026-03-03' as Day });
    expect(open(trial)).toMatchObject([{ kind: 'reference-on-two', key: 'R9' }]);
    expect(
      trial.must(
        pack(trial, round, kitCode(1)).ok ? { ok: true, value: [] } : { ok: true, value: [] },
      ),
    ).toEqual([]);
    expect(pack(trial, round, kitCode(1))).toMatchObject({ ok: false, reason: 'held-by-finding' });
  });

  it('two edits of one field are told, hold nothing, and the amendment of both ends it', () => {
    const { trial, hesper } = house();
    trial.device = 'T0000002';
    const second = trial.add('person.described', { person: hesper, about: 'room' }, { value: '4' });
    trial.device = 'T0000003';
    const third = trial.add('person.described', { person: hesper, about: 'room' }, { value: '5' });
    expect(open(trial)).toMatchObject([{ kind: 'edited-twice', tests: [] }]);
    trial.add(
      'person.described',
      { person: hesper, about: 'room', replaces: [second.id, third.id] },
      { value: '5' },
    );
    expect(open(trial)).toEqual([]);
  });

  it('a fact this program cannot read is kept, listed and never guessed at', () => {
    const { trial } = house();
    const strange = {
      id: 'x'.repeat(43) as FactId,
      kind: 'kit.juggled',
      data: {},
      at: trial.now,
      by: trial.by,
      device: 'T0000009',
      seq: 1,
    };
    file(trial.home, strange);
    trial.add('unit.described', { unit: 'unit0' as never }, { value: 'East' });
    expect(open(trial)).toMatchObject([{ kind: 'unreadable' }]);
  });

  it('stays settled when the tube that stands is packed by its code, and has a result', () => {
    const { trial, round, mine } = sameCodeTwice();
    const [found] = open(trial);
    trial.by = 'sorrel' as StaffId;
    const keeps = found!.members.find((id) => {
      const fact = trial.home.known.get(id);
      return fact !== undefined && 'test' in fact.data && fact.data.test === mine;
    });
    const settled = { verdict: 'one-stands', keeps: keeps!, reason: 'Both tubes read.' } as const;
    const settle = { finding: found!.id, seen: found!.members, ...settled };
    trial.must(settleFinding(trial.home, settle, trial.doing));
    trial.must(pack(trial, round, kitCode(7)));
    expect(open(trial)).toEqual([]);
    const given = { code: kitCode(7), how: 'scanned', outcome: 'negative' } as const;
    const reported = '2026-03-03' as Day;
    const second = { is: 'born', value: '1939-09-09' } as const;
    trial.must(recordResult(trial.home, { ...given, reported, second }, trial.doing));
    expect(outcomeOf(trial.home, mine).state).toBe('known');
  });

  it('a plain recount of codes agrees with what is found, in any home of clashing codes', () => {
    const { trial } = sameCodeTwice();
    const recount = new Map<string, Set<TestId>>();
    for (const fact of trial.home.known.values()) {
      if (fact.kind !== 'kit.opened' && fact.kind !== 'label.read') continue;
      recount.set(fact.data.code, (recount.get(fact.data.code) ?? new Set()).add(fact.data.test));
    }
    const twice = [...recount].filter(([, tests]) => tests.size > 1).map(([code]) => code);
    expect(
      findings(trial.home)
        .filter((found) => found.kind === 'code-on-two')
        .map((found) => found.key),
    ).toEqual(twice);
    for (const code of codesUsed(trial.home)) {
      expect(new Set(testsWithCode(trial.home, code as Code).keys())).toEqual(
        recount.get(code) ?? new Set(),
      );
    }
  });

  it('findings worked out step by step are those of the whole', () => {
    const { trial } = sameCodeTwice();
    const grown = emptyHome(trial.home.service);
    const all = [...trial.home.known.values()];
    for (const fact of all) {
      file(grown, fact);
      findings(grown);
    }
    expect(findings(grown)).toEqual(findings(trial.home));
  });
});
