import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../test/trial/home.ts';
import type { StaffId } from '../care/ids.ts';
import { policyOn } from '../care/policy/in-force.ts';
import type { Day } from '../care/time.ts';
import { pureHash as hash } from '../ledger/hash.ts';
import { confirmPolicy } from './supplies.ts';
import { writePolicy } from './write-policy.ts';

const own = (version = 2) =>
  JSON.stringify(
    demoPolicy((policy) => {
      policy.policy = 'our-rules';
      policy.version = version;
      policy.due.routineEveryDays.value = 14;
    }),
  );

function managed() {
  const trial = new Trial();
  trial.staff('Maren', 'manager');
  trial.by = 'maren' as StaffId;
  return trial;
}

describe("a service's own policy", () => {
  it('is written down by a manager, confirmed from a day, and in force from that day only', () => {
    const trial = managed();
    const [written] = trial.must(writePolicy(trial.home, { file: own(), hash }, trial.doing));
    if (written?.kind !== 'policy.written') throw new Error('nothing was written');
    const { policy, version, digest } = written.data;
    trial.must(
      confirmPolicy(
        trial.home,
        { policy, version, digest, from: '2026-03-10' as Day },
        trial.doing,
      ),
    );
    expect(policyOn(trial.home, '2026-03-09' as Day).policy.due.routineEveryDays.value).toBe(7);
    const later = policyOn(trial.home, '2026-03-10' as Day);
    expect(later.policy.due.routineEveryDays.value).toBe(14);
    expect(later.confirmed?.by).toBe('maren');
  });

  it('says which value of a bad file is wrong, and keeps nothing', () => {
    const trial = managed();
    const bad = own().replace(
      '"routineEveryDays":{"value":14',
      '"routineEveryDays":{"value":"often"',
    );
    expect(trial.refused(writePolicy(trial.home, { file: bad, hash }, trial.doing))).toMatchObject({
      reason: 'policy-unreadable',
      where: '/due/routineEveryDays/value',
    });
    expect(trial.refused(writePolicy(trial.home, { file: '{', hash }, trial.doing)).reason).toBe(
      'policy-unreadable',
    );
  });

  it('never changes a version that was written: the same text again is nothing new, another is refused', () => {
    const trial = managed();
    trial.must(writePolicy(trial.home, { file: own(), hash }, trial.doing));
    expect(trial.must(writePolicy(trial.home, { file: own(), hash }, trial.doing))).toEqual([]);
    const other = own().replace('"value":14', '"value":10');
    expect(trial.refused(writePolicy(trial.home, { file: other, hash }, trial.doing)).reason).toBe(
      'policy-version-taken',
    );
  });

  it('is a manager’s to write', () => {
    const trial = new Trial();
    trial.staff('Pia');
    expect(trial.refused(writePolicy(trial.home, { file: own(), hash }, trial.doing)).reason).toBe(
      'needs-manager',
    );
  });
});
