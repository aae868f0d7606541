import { describe, expect, it } from 'vitest';
import { house, sendAll } from '../../../test/trial/house.ts';
import { kitCode } from '../../../test/trial/round.ts';
import { recordResult } from '../../procedures/record-result.ts';
import type { PersonId } from '../ids.ts';
import { swabsOf } from '../rounds/history.ts';
import type { Day } from '../time.ts';
import type { Outcome } from './facts.ts';
import { houseChance } from './house-chance.ts';
import { meaningOf } from './meaning.ts';

function home() {
  const all = house();
  sendAll(all);
  const { trial, people } = all;
  const result = (at: number, outcome: Outcome) =>
    trial.must(
      recordResult(
        trial.home,
        {
          ...{ code: kitCode(at), how: 'scanned', outcome, reported: '2026-03-03' as Day },
          second: { is: 'born', value: `${1940 + at}-06-02` },
        },
        trial.doing,
      ),
    );
  const meaning = (at: number, moved?: number) =>
    meaningOf(trial.home, swabsOf(trial.home, people[at - 1] as PersonId).at(-1)!, moved);
  return { ...all, result, meaning };
}

describe('what a result means', () => {
  it('a negative lowers the chance and never to nothing; what is known before counts', () => {
    const { result, meaning, trial, people } = home();
    result(1, 'negative');
    const plain = meaning(1)!;
    expect(plain).toMatchObject({
      result: 'negative',
      known: 'background',
      cases: false,
      counted: 1,
    });
    expect(plain.after).toBeLessThan(plain.before);
    expect(plain.lower).toBeGreaterThan(0);
    trial.add(
      'symptoms.noticed',
      { person: people[0]!, on: '2026-03-02' as Day, signs: ['cough'] },
      { note: '' },
    );
    expect(meaning(1)!.before).toBeGreaterThan(plain.before);
    expect(meaning(1)!.strength.day).toBe(6);
  });
  // By hand: pre 0.3, se = 58/84 * 0.97, sp = 996/1002: 0.3 m / (0.3 m + 0.7 sp) at the means.
  it('agrees with Bayes by hand where the user moves the chance before', () => {
    const { result, meaning } = home();
    result(1, 'negative');
    const se = (58 / 84) * 0.97;
    const sp = 996 / 1002;
    const byHand = (0.3 * (1 - se)) / (0.3 * (1 - se) + 0.7 * sp);
    expect(meaning(1, 0.3)!.after).toBeCloseTo(byHand, 2);
  });
  it('says nothing of a void, nor while a result is held or not here', () => {
    const { result, meaning } = home();
    result(1, 'void');
    expect(meaning(1)).toBeUndefined();
    expect(meaning(2)).toBeUndefined();
  });
  it('a case in the home raises the chance of the others', () => {
    const { result, meaning } = home();
    result(1, 'negative');
    const alone = meaning(1)!.before;
    result(2, 'positive');
    expect(meaning(1)!.cases).toBe(true);
    expect(meaning(1)!.before).toBeGreaterThan(alone);
  });
});

describe('the chance that somebody was missed', () => {
  it('counts those who have no result as they were before, and gives the same by simulation', () => {
    const { result, trial } = home();
    result(1, 'negative');
    result(2, 'void');
    const found = houseChance(trial.home, '2026-03-04' as Day)!;
    expect(found.people.map(({ not }) => not).sort()).toEqual(
      ['void', 'waiting', undefined].sort(),
    );
    expect(found.tested).toBe(1);
    expect(found.missed).toBeGreaterThan(0);
    // 20,000 runs: three standard errors of a chance near 0.02.
    expect(Math.abs(found.simulated - found.missed)).toBeLessThan(0.004);
    expect(houseChance(trial.home, '2026-03-04' as Day, 0.5)?.more).toBe(0);
    expect(houseChance(trial.home, '2026-03-04' as Day, 0.9999)?.more).toBeUndefined();
  });
  it('leaves a known case out and takes the others as near it', () => {
    const { result, trial } = home();
    result(1, 'negative');
    const before = houseChance(trial.home, '2026-03-04' as Day)!.missed;
    result(2, 'positive');
    const found = houseChance(trial.home, '2026-03-04' as Day)!;
    expect(found.positives).toHaveLength(1);
    expect(found.missed).toBeGreaterThan(before);
  });
});
