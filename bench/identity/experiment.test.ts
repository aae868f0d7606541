import { describe, expect, it } from 'vitest';
import { seededChance } from '../../src/statistics/random/chance.ts';
import { rates } from './assumptions.ts';
import { drawSlips, play, type Slips } from './flow.ts';
import { simulate } from './simulate.ts';
import { slip } from './slips.ts';

const never = { ...rates, proxyScan: 0, proxyAgain: 0 };
const fateOf = (slips: Slips | undefined, given: typeof rates = never, seed = 5) =>
  play(slips, given, seededChance(seed));

describe('what the flow makes of a slip', () => {
  it('nothing, where nothing goes wrong', () => {
    expect(fateOf(undefined)).toEqual({ fate: 'fine' });
  });

  it.each([
    [{ wrongPerson: { asked: true } }, 'caught', 'blind choice'],
    [{ misTap: true }, 'false-alarm', 'blind choice'],
    [{ mislabelled: { both: true } }, 'caught', 'scan of the tube: labels-differ'],
    [{ mislabelled: { both: false } }, 'caught', 'scan of the tube: labels-differ'],
    [{ typed: { place: 0, twice: false } }, 'caught', 'typing twice'],
    [{ typed: { place: 0, twice: true } }, 'caught', 'spare label: code-check-failed'],
    [{ typedResult: { twice: false } }, 'caught', 'typing twice'],
    [{ typedResult: { twice: true } }, 'caught', 'result: code-near'],
  ] as const)('%j is %s at %s', (slips, fate, where) => {
    expect(fateOf(slips)).toEqual({ fate, where });
  });

  it('does not see somebody else whose birthday nobody asked for', () => {
    expect(fateOf({ wrongPerson: { asked: false } })).toEqual({ fate: 'undetected' });
  });

  it('does not see crossed tubes where only sheets are scanned and the bags are right', () => {
    const sheets = { ...rates, proxyScan: 1, proxyAgain: 1, bagToo: 0 };
    expect(fateOf({ mislabelled: { both: true } }, sheets)).toEqual({ fate: 'undetected' });
    // One leftover sticker ends as two tubes with one code, and that is seen.
    expect(fateOf({ mislabelled: { both: false } }, sheets)).toMatchObject({ fate: 'caught' });
  });

  it('sees at the pack table that a bag has a wrong sticker, though the sheet was scanned before', () => {
    const sheets = { ...rates, proxyScan: 1, proxyAgain: 1, bagToo: 1 };
    expect(fateOf({ mislabelled: { both: true } }, sheets)).toMatchObject({
      where: 'packing: code-unknown',
    });
  });
});

it('draws slips about as often as it is told', () => {
  const chance = seededChance(1);
  let wrong = 0;
  for (let i = 0; i < 100_000; i += 1) {
    if (drawSlips({ ...rates, wrongPerson: 0.1 }, chance)?.wrongPerson !== undefined) wrong += 1;
  }
  // Binomial(100,000, 0.1): five standard deviations are 474.
  expect(Math.abs(wrong - 10_000)).toBeLessThan(474);
});

it('a slip is never the code itself', () => {
  const chance = seededChance(3);
  for (let i = 0; i < 5000; i += 1) expect(slip('KQT00011222', chance)).not.toBe('KQT00011222');
});

it('gives the same table for the same seed, and paper is far worse', () => {
  const run = () => simulate(rates, { tests: 4000, seed: 11 });
  const [paper, typed, flow] = run();
  expect(run()).toEqual([paper, typed, flow]);
  expect(paper?.undetected).toBeGreaterThan(10);
  expect(flow?.undetected).toBeLessThanOrEqual(1);
});
