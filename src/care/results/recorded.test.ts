import { describe, expect, it } from 'vitest';
import { house } from '../../../test/trial/house.ts';
import {
  foundAs,
  openKinds,
  reportOn,
  saysOf,
  settleAs,
  takeIn,
} from '../../../test/trial/reports.ts';
import { kitCode, pack, swab } from '../../../test/trial/round.ts';
import { meet, secondTablet } from '../../../test/trial/two-tablets.ts';
import { recordResult } from '../../procedures/record-result.ts';
import type { PersonId } from '../ids.ts';
import type { Day } from '../time.ts';
import { actionsFor } from './actions.ts';
import type { Outcome } from './facts.ts';
import { resultsFor } from './recorded.ts';

/** One code on two tablets: Oriel's tube went and its result came before the second tablet was heard of. */
function oneCode(whose: 'another' | 'the same' = 'another', outcome: Outcome = 'positive') {
  const { trial, people, round } = house();
  const [oriel, tamsin] = people as [PersonId, PersonId];
  const other = secondTablet(trial);
  const first = swab(trial, round, oriel, kitCode(1));
  trial.must(pack(trial, round, kitCode(1)));
  trial.at('15:00');
  takeIn(trial, reportOn(1, { outcome }));
  const second = swab(other, round, whose === 'another' ? tamsin : oriel, kitCode(1));
  meet(trial, other);
  return { trial, first, second };
}

describe('a result that was matched to one of two people with the same code', () => {
  it('is not the other’s because their tube was let stand: a senior says whose it is', () => {
    const { trial, first, second } = oneCode();
    expect(openKinds(trial)).toEqual(['code-on-two']);
    expect([saysOf(trial, first), saysOf(trial, second)]).toEqual(['held', 'waiting']);
    settleAs(trial, 'code-on-two', 'one-stands', { test: second });
    expect(openKinds(trial)).toContain('result-of-another');
    expect(foundAs(trial, 'result-of-another')).toMatchObject({ key: second, tests: [second] });
    expect(saysOf(trial, second)).toBe('held');
    expect(actionsFor(trial.home, second)).toEqual([]);
    settleAs(trial, 'result-of-another', 'explained');
    expect(openKinds(trial)).toEqual([]);
    expect(saysOf(trial, second)).toBe('positive');
    settleAs(trial, 'result-of-another', 'none-stands');
    expect(saysOf(trial, second)).toBe('waiting');
    // It is the first person's, then, whose tube was taken out: that is asked, and not lost.
    expect(openKinds(trial)).toEqual(['result-for-withdrawn']);
    expect(saysOf(trial, first)).toBe('held');
  });

  it('asks nothing where the first tube was let stand: it is hers', () => {
    const { trial, first, second } = oneCode();
    settleAs(trial, 'code-on-two', 'one-stands', { test: first });
    expect(openKinds(trial)).toEqual([]);
    expect([saysOf(trial, first), saysOf(trial, second)]).toEqual(['positive', 'withdrawn']);
  });

  it('is not replaced by a result that comes for the other person', () => {
    const { trial, first, second } = oneCode('another', 'negative');
    settleAs(trial, 'code-on-two', 'one-stands', { test: second });
    settleAs(trial, 'result-of-another', 'none-stands');
    const born = { is: 'born', value: '1942-06-02' } as const;
    const given = { code: kitCode(1), how: 'scanned', outcome: 'negative', second: born } as const;
    trial.must(recordResult(trial.home, { ...given, reported: '2026-03-03' as Day }, trial.doing));
    expect(saysOf(trial, second)).toBe('negative');
    expect(resultsFor(trial.home, first)).toHaveLength(1);
  });

  it('goes over to the tube that stands where both are one person’s', () => {
    const { trial, first, second } = oneCode('the same');
    expect(openKinds(trial)).toContain('code-on-two');
    for (const kind of ['code-on-two', 'two-tests'] as const)
      settleAs(trial, kind, 'one-stands', { test: second });
    expect(openKinds(trial)).toEqual([]);
    expect([saysOf(trial, first), saysOf(trial, second)]).toEqual(['withdrawn', 'positive']);
  });
});
