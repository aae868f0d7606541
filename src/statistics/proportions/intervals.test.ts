import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binomialPmf } from '../distributions/binomial.ts';
import { seededChance } from '../random/chance.ts';
import { drawBinomial } from '../random/draw-binomial.ts';
import { got } from '../testing.ts';
import { blaker } from './blaker.ts';
import { clopperPearson } from './clopper-pearson.ts';
import { jeffreys } from './jeffreys.ts';
import { midP } from './mid-p.ts';
import { newcombeDifference } from './newcombe-difference.ts';
import { sterne } from './sterne.ts';
import { wilson } from './wilson.ts';
import { zeroEventsUpper } from './zero-events-upper.ts';

const methods = { wilson, clopperPearson, jeffreys, midP, blaker, sterne };
const tally = fc
  .integer({ min: 1, max: 80 })
  .chain((trials) =>
    fc.record({ trials: fc.constant(trials), events: fc.integer({ min: 0, max: trials }) }),
  );

/** The chance, over what n trials may show, that the interval holds the true share. */
function coverage(
  method: (typeof methods)[keyof typeof methods],
  trials: number,
  share: number,
): number {
  let sum = 0;
  for (let events = 0; events <= trials; events++) {
    const { lower, upper } = got(method({ events, trials }));
    if (lower <= share && share <= upper) sum += binomialPmf(events, trials, share);
  }
  return sum;
}

const shares = Array.from({ length: 37 }, (_, i) => 0.013 + i * 0.0263);

describe.each(Object.entries(methods))('%s', (name, method) => {
  it('holds its estimate, stays in 0 to 1 and mirrors itself', () => {
    fc.assert(
      fc.property(tally, ({ events, trials }) => {
        const { lower, upper } = got(method({ events, trials }));
        const mirror = got(method({ events: trials - events, trials }));
        expect(lower).toBeLessThanOrEqual(events / trials);
        expect(upper).toBeGreaterThanOrEqual(events / trials);
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(upper).toBeLessThanOrEqual(1);
        expect(1 - mirror.upper).toBeCloseTo(lower, 9);
        expect(1 - mirror.lower).toBeCloseTo(upper, 9);
      }),
      { numRuns: 60 },
    );
  });

  it('is wider at a higher confidence, and narrower for more trials', () => {
    const at = (confidence: number, times = 1) => {
      const { lower, upper } = got(method({ events: 3 * times, trials: 20 * times, confidence }));
      return upper - lower;
    };
    expect(at(0.99)).toBeGreaterThan(at(0.95));
    expect(at(0.95)).toBeGreaterThan(at(0.8));
    expect(at(0.95, 10)).toBeLessThan(at(0.95));
  });

  it('is exactly 0 without events and 1 without misses', () => {
    expect(got(method({ events: 0, trials: 9 })).lower).toBe(0);
    expect(got(method({ events: 9, trials: 9 })).upper).toBe(1);
    expect(got(method({ events: 1, trials: 9 })).lower).toBeGreaterThan(0);
    expect(got(method({ events: 8, trials: 9 })).upper).toBeLessThan(1);
  });

  it(`covers as ${name} should`, () => {
    const exact = ['clopperPearson', 'blaker', 'sterne'].includes(name);
    const all = [5, 12, 24].flatMap((n) => shares.map((p) => coverage(method, n, p)));
    const mean = all.reduce((a, b) => a + b, 0) / all.length;
    if (exact) expect(Math.min(...all)).toBeGreaterThan(0.95 - 1e-9);
    else {
      expect(mean).toBeGreaterThan(0.935);
      expect(mean).toBeLessThan(0.975);
    }
  });
});

describe('exact intervals against each other', () => {
  it('Blaker lies inside Clopper and Pearson', () => {
    for (let trials = 1; trials < 40; trials += 3) {
      for (let events = 0; events <= trials; events++) {
        const [outer, inner] = [
          got(clopperPearson({ events, trials })),
          got(blaker({ events, trials })),
        ];
        expect(inner.lower).toBeGreaterThanOrEqual(outer.lower - 1e-12);
        expect(inner.upper).toBeLessThanOrEqual(outer.upper + 1e-12);
      }
    }
  });

  it('Sterne holds exactly the shares that its test does not reject', () => {
    const pValue = (events: number, trials: number, p: number): number => {
      const weights = Array.from({ length: trials + 1 }, (_, k) => binomialPmf(k, trials, p));
      return weights.reduce(
        (sum, w) => (w <= (weights[events] as number) * (1 + 1e-9) ? sum + w : sum),
        0,
      );
    };
    for (const [events, trials] of [
      [6, 54],
      [1, 12],
      [3, 7],
      [20, 33],
    ] as const) {
      const { lower, upper } = got(sterne({ events, trials }));
      for (const p of [lower - 1e-6, upper + 1e-6])
        expect(pValue(events, trials, p)).toBeLessThanOrEqual(0.05);
      for (const p of [lower + 1e-9, upper - 1e-9])
        expect(pValue(events, trials, p)).toBeGreaterThan(0.05 - 1e-6);
    }
  });

  it('the exact upper limit of nothing in n is one-sided at half the tail', () => {
    const one = got(zeroEventsUpper(24, 0.975));
    expect(one.upper).toBeCloseTo(got(clopperPearson({ events: 0, trials: 24 })).upper, 12);
    expect(got(zeroEventsUpper(0))).toEqual({ upper: 1, ruleOfThree: 1 });
    expect(got(zeroEventsUpper(2)).ruleOfThree).toBe(1);
  });
});

describe('differences of two proportions', () => {
  it('turn round when the groups are exchanged', () => {
    fc.assert(
      fc.property(tally, tally, (a, b) => {
        const there = got(newcombeDifference(a, b));
        const back = got(newcombeDifference(b, a));
        expect(there.difference).toBeCloseTo(-back.difference, 12);
        expect(there.lower).toBeCloseTo(-back.upper, 12);
        expect(there.lower).toBeLessThanOrEqual(there.difference);
        expect(there.upper).toBeGreaterThanOrEqual(there.difference);
      }),
      { numRuns: 60 },
    );
  });

  it('refuse a second share that cannot be, as they refuse a first', () => {
    const fine = { events: 1, trials: 4 };
    expect(newcombeDifference(fine, { events: 5, trials: 4 }).ok).toBe(false);
    expect(newcombeDifference({ events: 5, trials: 4 }, fine).ok).toBe(false);
  });

  it('cover the true difference about 95 times in 100', () => {
    const chance = seededChance(3);
    let held = 0;
    for (let i = 0; i < 2000; i++) {
      const { lower, upper } = got(
        newcombeDifference(
          { events: drawBinomial(chance, 30, 0.2), trials: 30 },
          { events: drawBinomial(chance, 40, 0.1), trials: 40 },
        ),
      );
      if (lower <= 0.1 && 0.1 <= upper) held++;
    }
    expect(held / 2000).toBeGreaterThan(0.93);
    expect(held / 2000).toBeLessThan(0.985);
  });
});
