import { describe, expect, it } from 'vitest';
import { asSenior, house, sendAll } from '../../../test/trial/house.ts';
import { kitCode } from '../../../test/trial/round.ts';
import { recordResult } from '../../procedures/record-result.ts';
import { register } from '../../procedures/register.ts';
import { settleFinding } from '../../procedures/settle-finding.ts';
import { findings } from '../quality/findings.ts';
import type { Day } from '../time.ts';
import { beadNames } from './frame.ts';
import { storyOf } from './story.ts';

const given = {
  code: kitCode(1),
  how: 'scanned',
  outcome: 'negative',
  reported: '2026-03-03' as Day,
  second: { is: 'born', value: '1941-06-02' },
} as const;

describe('the story of a test', () => {
  it('has something under every bead of a test that went all the way, and names nobody else', () => {
    const all = house();
    const [test, other] = sendAll(all);
    all.trial.must(register(all.trial.home, { test: test!, reference: 'R-1' }, all.trial.doing));
    all.trial.must(recordResult(all.trial.home, given, all.trial.doing));
    const story = storyOf(all.trial.home, test!)!;
    for (const bead of beadNames) expect(story.beads[bead].length, bead).toBeGreaterThan(0);
    for (const { fact } of beadNames.flatMap((bead) => story.beads[bead])) {
      if ('test' in fact.data && fact.kind !== 'consent.decided')
        expect(fact.data.test).not.toBe(other);
    }
    expect(story.policy.policy.policy).toBe('windlestraw-house');
  });

  it('keeps both versions of a result that was corrected, and marks the one that was put right', () => {
    const all = house();
    const [test] = sendAll(all);
    const { trial } = all;
    trial.must(recordResult(trial.home, given, trial.doing));
    trial.must(
      recordResult(trial.home, { ...given, outcome: 'void', corrects: true }, trial.doing),
    );
    const results = storyOf(trial.home, test!)!.beads.result.map(({ fact, replaced }) => [
      fact.kind === 'result.recorded' && fact.data.outcome,
      replaced,
    ]);
    expect(results).toEqual([
      ['negative', true],
      ['void', false],
    ]);
  });

  it('tells what did not fit and how it was settled', () => {
    const all = house();
    const [test] = sendAll(all);
    const { trial } = all;
    const doubtful = { ...given, second: undefined, doubtful: true } as const;
    trial.must(recordResult(trial.home, doubtful, trial.doing));
    asSenior(trial);
    const found = findings(trial.home)[0]!;
    const settle = { finding: found.id, seen: found.members, reason: 'Rang them.' };
    trial.must(settleFinding(trial.home, { ...settle, verdict: 'explained' }, trial.doing));
    const story = storyOf(trial.home, test!)!;
    expect(story.findings).toMatchObject([{ standing: { state: 'settled' } }]);
    expect(story.settlements).toHaveLength(1);
  });
});
