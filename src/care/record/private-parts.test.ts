import { describe, expect, it } from 'vitest';
import { Trial } from '../../../test/trial/home.ts';
import { kitCode, plan, swab } from '../../../test/trial/round.ts';
import { doAction } from '../../procedures/record-result.ts';
import type { Fact } from '../catalogue.ts';
import type { FactId, ReportId, StaffId, TestId } from '../ids.ts';
import type { Code } from '../kind.ts';
import type { Day } from '../time.ts';
import { privateOfColleague, privateOfPerson } from './private-parts.ts';

const kindsOf = (facts: readonly Fact[]) => facts.map(({ kind }) => kind).sort();
const idsOf = (facts: readonly Fact[]) => facts.map(({ id }) => id);

function house() {
  const trial = new Trial();
  trial.staff('Pia');
  trial.staff('Jonah');
  const [oriel, bram] = [
    trial.person('Oriel Finch', '1948-06-02'),
    trial.person('Bram Rook', '1951-01-30'),
  ];
  const round = plan(trial, [oriel, bram]);
  const tests = [
    swab(trial, round, oriel, kitCode(1)),
    swab(trial, round, bram, kitCode(2)),
  ] as const;
  const report = (id: string, code: string, name: string) => {
    const data = { report: id as ReportId, codes: [code as Code], outcome: 'positive' as const };
    const said = { name, born: '', said: 'Detected', number: 'L-1', laboratory: '' };
    const more = { status: 'final' as const, source: 'hl7' as const, tests: [] };
    return trial.add('report.received', { ...data, ...more }, said);
  };
  const result = (code: string, test: TestId, from: string, replaces: FactId[] = []) =>
    trial.add('result.recorded', {
      ...{ code: code as Code, test, outcome: 'positive', how: 'file', matched: 'name' },
      ...{ reported: '2026-03-03' as Day, report: from as ReportId, replaces },
    });
  return { trial, oriel, bram, tests, report, result };
}

describe('what is private about somebody', () => {
  it('is what stands about them, about their tests and on reports that were put on their record', () => {
    const { trial, oriel, bram, tests, report, result } = house();
    const [test, other] = tests;
    const before = idsOf(privateOfPerson(trial.home, bram).theirs);
    const mine = [
      report('r00001', kitCode(1), 'Finch, Oriel'),
      trial.add('result.chased', { test }, { whom: 'the desk', said: 'tomorrow' }),
    ];
    const first = result(kitCode(1), test, 'r00001');
    mine.push(report('r00005', kitCode(1), 'Finch, Oriel'));
    // Corrected by the next report: both were on her record.
    result(kitCode(1), test, 'r00005', [first.id]);
    // Its code leads nowhere; a named person said whose it is.
    mine.push(report('r00002', 'ZZZZ0001', 'Finch'));
    const settled = { report: 'r00002' as ReportId, verdict: 'belongs', test } as const;
    mine.push(trial.add('report.settled', settled, { reason: 'Same number on the form.' }));
    mine.push(
      ...trial.must(
        doAction(trial.home, { test, action: 'tell-person', outcome: 'done', note: 'Was calm.' }),
      ),
    );
    const theirs = idsOf(privateOfPerson(trial.home, oriel).theirs);
    for (const { kind, id } of mine) expect([kind, theirs.includes(id)]).toEqual([kind, true]);
    expect(kindsOf(privateOfPerson(trial.home, oriel).theirs)).toContain('consent.decided');
    expect(new Set(theirs).size).toBe(theirs.length);
    for (const fact of privateOfPerson(trial.home, oriel).theirs)
      expect(fact.private).toBeDefined();
    // Nothing of it is Bram's, and nothing of Bram's is in it.
    expect(idsOf(privateOfPerson(trial.home, bram).theirs)).toEqual(before);
    expect(theirs.filter((id) => before.includes(id))).toEqual([]);
    expect(other).not.toBe(test);
  });

  it('what may be about somebody else as well is named, and left to somebody who reads it', () => {
    const { trial, oriel, bram, tests, report, result } = house();
    const moved = report('r00004', 'ZZZZ0002', 'Rook');
    for (const test of tests) result(kitCode(1), test, 'r00004');
    const waits = report('r00003', kitCode(1), 'Rook, Bram');
    const own = trial.add('result.chased', { test: tests[0] }, { whom: 'a', said: 'b' });
    const others = trial.add('result.chased', { test: tests[1] }, { whom: 'a', said: 'b' });
    const settle = (finding: string, members: readonly Fact[]) =>
      trial.add(
        'settled',
        { finding, members: members.map(({ id }) => id), verdict: 'explained' },
        { reason: 'The two were side by side.' },
      );
    const [alone, both] = [settle('a:1', [own]), settle('a:2', [own, others])];
    const found = privateOfPerson(trial.home, oriel);
    expect(idsOf(found.perhaps).sort()).toEqual([moved.id, waits.id, both.id].sort());
    expect(idsOf(found.theirs)).toContain(alone.id);
    expect(idsOf(found.theirs)).not.toContain(others.id);
    expect(idsOf(privateOfPerson(trial.home, bram).perhaps)).toEqual([moved.id, both.id]);
  });

  it('of a colleague it is what stands about them, not what they wrote of others', () => {
    const { trial } = house();
    const staff = 'pia' as StaffId;
    trial.by = staff;
    const said = trial.add('staff.works-as', { staff }, { as: 'woman' });
    const person = trial.person('Odo Marsh', '1960-02-02');
    expect(kindsOf(privateOfColleague(trial.home, staff).theirs)).toEqual([
      'staff.described',
      'staff.works-as',
    ]);
    expect(idsOf(privateOfColleague(trial.home, staff).theirs)).toContain(said.id);
    expect(privateOfPerson(trial.home, person).theirs.every(({ by }) => by === staff)).toBe(true);
  });
});
