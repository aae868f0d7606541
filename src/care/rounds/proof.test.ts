import { describe, expect, it } from 'vitest';
import { asSenior, house, sendAll, swabAll } from '../../../test/trial/house.ts';
import { kitCode } from '../../../test/trial/round.ts';
import { recordResult } from '../../procedures/record-result.ts';
import { register, registrationFailed } from '../../procedures/register.ts';
import { settleFinding } from '../../procedures/settle-finding.ts';
import type { Home } from '../home.ts';
import type { StaffId, TestId } from '../ids.ts';
import { findings } from '../quality/findings.ts';
import type { Day } from '../time.ts';
import { after, HOUR } from '../time.ts';
import { proofOf } from './proof.ts';
import { storyOf } from './story.ts';

const given = {
  code: kitCode(1),
  how: 'scanned',
  outcome: 'negative',
  reported: '2026-03-03' as Day,
  second: { is: 'born', value: '1941-06-02' },
} as const;

const held = (home: Home, test: TestId | undefined) =>
  Object.fromEntries(
    proofOf(home, storyOf(home, test!)!).map(({ link, holds }) => [link, holds] as const),
  );

describe('how we know that a result is hers', () => {
  it('every link holds once it went all the way', () => {
    const all = house();
    const [test] = sendAll(all);
    all.trial.must(register(all.trial.home, { test: test!, reference: 'R-1' }, all.trial.doing));
    all.trial.must(recordResult(all.trial.home, given, all.trial.doing));
    expect(new Set(Object.values(held(all.trial.home, test)))).toEqual(new Set(['yes']));
  });

  it('what is still to come is told from what failed', () => {
    const all = house();
    const [test] = swabAll(all);
    const { trial } = all;
    expect(held(trial.home, test)).toMatchObject({
      ...{ person: 'yes', kit: 'yes', labels: 'yes', reference: 'not-yet', result: 'not-yet' },
    });
    const failed = { test: test!, why: 'site-down', who: 'jonah' as StaffId } as const;
    const nextTry = after(trial.now, HOUR);
    trial.must(registrationFailed(trial.home, { ...failed, nextTry }, trial.doing));
    expect(held(trial.home, test)['reference']).toBe('no');
  });

  it("a result that the laboratory took back is nobody's, whatever else agrees", () => {
    const all = house();
    const [test] = sendAll(all);
    const { trial } = all;
    trial.must(recordResult(trial.home, given, trial.doing));
    const back = { ...given, outcome: 'withdrawn', corrects: true } as const;
    trial.must(recordResult(trial.home, back, trial.doing));
    expect(held(trial.home, test)['result']).toBe('over');
  });

  it('a result that nothing else matched is in doubt, and stays so after it was explained', () => {
    const all = house();
    const [test] = sendAll(all);
    const { trial } = all;
    const doubtful = { ...given, second: undefined, doubtful: true } as const;
    trial.must(recordResult(trial.home, doubtful, trial.doing));
    expect(held(trial.home, test)).toMatchObject({ result: 'no', doubts: 'no' });
    asSenior(trial);
    const found = findings(trial.home)[0]!;
    const settle = { finding: found.id, seen: found.members, reason: 'Rang them.' };
    trial.must(settleFinding(trial.home, { ...settle, verdict: 'explained' }, trial.doing));
    expect(held(trial.home, test)).toMatchObject({ result: 'no', doubts: 'yes' });
  });
});
