import { describe, expect, it } from 'vitest';
import { got } from '../testing.ts';
import { chanceOfResult, swapOdds } from './swap-odds.ts';

describe('the odds of a swap', () => {
  it('are the odds before times the likelihood ratio: by hand 1/1999 * 50', () => {
    const odds = got(swapOdds({ swapChance: 1 / 2000, ifSwapped: 0.5, ifRight: 0.01 }));
    expect(odds).toBeCloseTo(50 / 1999, 14);
  });

  it('stay as they were when the results are as likely either way, and are 0 without swaps', () => {
    expect(got(swapOdds({ swapChance: 0.2, ifSwapped: 0.3, ifRight: 0.3 }))).toBeCloseTo(0.25, 14);
    expect(got(swapOdds({ swapChance: 0, ifSwapped: 0.3, ifRight: 0.3 }))).toBe(0);
  });

  it('rest on chances of results: 0.1 * 0.8 + 0.9 * 0.05 positive, the rest negative', () => {
    const accuracy = { sensitivity: 0.8, specificity: 0.95 };
    expect(chanceOfResult(0.1, accuracy, 'positive')).toBeCloseTo(0.125, 14);
    expect(chanceOfResult(0.1, accuracy, 'negative')).toBeCloseTo(0.875, 14);
  });
});
