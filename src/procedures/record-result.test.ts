import { describe, expect, it } from 'vitest';
import { asSenior, house, sendAll, swabAll } from '../../test/trial/house.ts';
import { kitCode } from '../../test/trial/round.ts';
import { isOpenFinding } from '../care/quality/finding.ts';
import { findings } from '../care/quality/findings.ts';
import { outcomeOf } from '../care/results/outcome.ts';
import type { Day } from '../care/time.ts';
import { after, HOUR } from '../care/time.ts';
import { leakedAtPacking } from './pack.ts';
import { chaseResult, recordResult } from './record-result.ts';
import { settleFinding } from './settle-finding.ts';

const born = { is: 'born', value: '1941-06-02' } as const;
const given = {
  code: kitCode(1),
  how: 'scanned',
  outcome: 'negative',
  reported: '2026-03-03' as Day,
} as const;

function sent() {
  const all = house();
  const [test] = sendAll(all);
  const open = () =>
    findings(all.trial.home)
      .filter((found) => isOpenFinding(all.trial.home, found))
      .map(({ kind }) => kind);
  return { ...all, test: test!, open };
}

describe('a result by its code', () => {
  it('is kept when the second detail agrees, however it is spaced or accented', () => {
    const { trial, test } = sent();
    const second = { is: 'name', value: ' oriel  FÍNCH ' } as const;
    trial.must(recordResult(trial.home, { ...given, second }, trial.doing));
    expect(outcomeOf(trial.home, test)).toMatchObject({ state: 'known' });
  });

  it('is stopped when it does not, and nothing is kept', () => {
    const { trial, test } = sent();
    const second = { is: 'born', value: '1942-06-02' } as const;
    expect(trial.refused(recordResult(trial.home, { ...given, second }, trial.doing)).reason).toBe(
      'second-identifier-differs',
    );
    expect(outcomeOf(trial.home, test).state).toBe('waiting');
  });

  it('given as doubtful it is kept and held; the right one, when it comes, ends the doubt', () => {
    const { trial, test, open } = sent();
    const doubtful = { ...given, outcome: 'positive', second: undefined, doubtful: true } as const;
    trial.must(recordResult(trial.home, doubtful, trial.doing));
    expect(open()).toEqual(['result-unmatched']);
    expect(outcomeOf(trial.home, test).state).toBe('held');
    trial.must(recordResult(trial.home, { ...given, second: born, corrects: true }, trial.doing));
    expect(open()).toEqual([]);
    expect(outcomeOf(trial.home, test)).toMatchObject({
      state: 'known',
      result: { data: { outcome: 'negative' } },
    });
  });

  it('given a senior says that a doubtful one is theirs, then it counts', () => {
    const { trial, test } = sent();
    trial.must(
      recordResult(trial.home, { ...given, second: undefined, doubtful: true }, trial.doing),
    );
    const found = findings(trial.home).find(({ kind }) => kind === 'result-unmatched')!;
    asSenior(trial);
    const settle = { finding: found.id, seen: found.members, reason: 'Rang the laboratory.' };
    trial.must(settleFinding(trial.home, { ...settle, verdict: 'explained' }, trial.doing));
    expect(outcomeOf(trial.home, test).state).toBe('known');
  });

  it('for a kit that was closed is kept, and found', () => {
    const all = house();
    const { trial } = all;
    const [test] = swabAll(all);
    trial.must(
      leakedAtPacking(
        trial.home,
        { round: all.round, code: kitCode(1), how: 'scanned' },
        trial.doing,
      ),
    );
    trial.must(recordResult(trial.home, { ...given, second: born }, trial.doing));
    expect(findings(trial.home)).toMatchObject([{ kind: 'result-for-closed', tests: [test] }]);
  });

  it('a second one is asked about; as a correction it replaces the first, and both can be read', () => {
    const { trial, test } = sent();
    trial.must(recordResult(trial.home, { ...given, second: born }, trial.doing));
    const again = { ...given, outcome: 'positive', second: born } as const;
    expect(trial.refused(recordResult(trial.home, again, trial.doing)).reason).toBe(
      'result-exists',
    );
    trial.must(recordResult(trial.home, { ...again, corrects: true }, trial.doing));
    expect(outcomeOf(trial.home, test)).toMatchObject({
      state: 'known',
      result: { data: { outcome: 'positive' } },
    });
    const all = [...trial.home.known.values()].filter(({ kind }) => kind === 'result.recorded');
    expect(all).toHaveLength(2);
  });
});

describe('a finding is settled by what fits it', () => {
  it('nobody can explain away one code on two tubes, or settle without picking', () => {
    const { trial, test } = sent();
    trial.add('label.read', {
      ...{ turn: 'other' as never, test: 'other0' as never },
      ...{ place: 'bag', code: kitCode(1) as never, how: 'scanned' },
    });
    asSenior(trial);
    const found = findings(trial.home).find(({ kind }) => kind === 'code-on-two')!;
    expect(found.tests).toContain(test);
    const settle = { finding: found.id, seen: found.members, reason: 'r' };
    expect(
      trial.refused(settleFinding(trial.home, { ...settle, verdict: 'explained' }, trial.doing))
        .reason,
    ).toBe('verdict-unfit');
    expect(
      trial.refused(
        settleFinding(
          trial.home,
          { ...settle, verdict: 'one-stands', keeps: trial.facts[0]!.id },
          trial.doing,
        ),
      ).reason,
    ).toBe('keeps-missing');
  });
});

describe('ringing about a late result', () => {
  it('keeps whom, what was said and when to ring again; not a time that is over', () => {
    const { trial, test } = sent();
    const rang = { test, whom: 'Front desk', said: 'In the morning' };
    expect(trial.refused(chaseResult({ ...rang, next: trial.now }, trial.doing)).reason).toBe(
      'in-the-past',
    );
    trial.must(chaseResult({ ...rang, next: after(trial.now, HOUR) }, trial.doing));
  });
});
