import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../test/trial/home.ts';
import { meet, secondTablet } from '../../test/trial/tablets.ts';
import type { StaffId } from '../care/ids.ts';
import { policyOn } from '../care/policy/in-force.ts';
import { findings } from '../care/quality/findings.ts';
import type { Day } from '../care/time.ts';
import { nodeHash } from '../ledger/stores/sqlite/node-hash.ts';
import { confirmPolicy } from './supplies.ts';
import { writePolicy } from './write-policy.ts';

const from = '2026-03-03' as Day;
const daysIn = ({ home }: Trial) => policyOn(home, from).policy.due.symptomsCountForDays.value;

function managers() {
  const trial = new Trial();
  for (const name of ['Sorrel', 'Wren']) trial.staff(name, 'manager');
  return { trial, away: secondTablet(trial) };
}

/** A manager writes version 2, by which signs count for so many days, and confirms it. */
function give(trial: Trial, by: string, days: number): string {
  trial.by = by as StaffId;
  const file = demoPolicy((policy) => {
    policy.version = 2;
    policy.due.symptomsCountForDays.value = days;
  });
  const text = { file: JSON.stringify(file), hash: nodeHash };
  const [written] = trial.must(writePolicy(trial.home, text, trial.doing));
  if (written?.kind !== 'policy.written') throw new Error('not written');
  const { policy, version, digest } = written.data;
  trial.must(confirmPolicy(trial.home, { policy, version, digest, from }, trial.doing));
  return digest;
}

describe('two managers who each write and confirm version 2, not hearing of each other', () => {
  it('each with other values: the text of the confirmation that holds is in force, and both are found', () => {
    const { trial, away } = managers();
    give(trial, 'sorrel', 3);
    const later = give(away.wait(5), 'wren', 10);
    meet(trial, away);
    for (const tablet of [trial, away]) {
      expect(policyOn(tablet.home, from).confirmed?.data.digest).toBe(later);
      expect(daysIn(tablet)).toBe(10);
      expect(findings(tablet.home)).toMatchObject([
        { kind: 'edited-twice', key: `confirmed/policy.confirmed.${from}` },
      ]);
    }
    // Confirmed again by one who has seen both: that ends it.
    const again = policyOn(trial.home, from).confirmed!.data;
    const { policy, version, digest } = again;
    trial.must(confirmPolicy(trial.home, { policy, version, digest, from }, trial.doing));
    expect(findings(trial.home)).toEqual([]);
    expect(daysIn(trial)).toBe(10);
  });

  it('with the same text: they say one thing', () => {
    const { trial, away } = managers();
    give(trial, 'sorrel', 3);
    give(away.wait(5), 'wren', 3);
    meet(trial, away);
    expect(findings(trial.home)).toEqual([]);
    expect(daysIn(trial)).toBe(3);
  });
});

describe('a confirmation whose text is not here', () => {
  it('does not carry the text of another with the same name and version', () => {
    const { trial } = managers();
    give(trial, 'sorrel', 3);
    const other = { policy: demoPolicy().policy, version: 2, digest: 'x'.repeat(43) };
    trial.must(confirmPolicy(trial.home, { ...other, from }, trial.doing));
    expect(policyOn(trial.home, from)).toEqual({ policy: trial.home.service.policies[0] });
  });
});
