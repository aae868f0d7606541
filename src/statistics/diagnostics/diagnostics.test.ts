import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededChance } from '../random/chance.ts';
import { drawGamma } from '../random/draw-gamma.ts';
import { got } from '../testing.ts';
import { betaPosterior } from './beta-posterior.ts';
import { falseNegativeRateByDay } from './false-negative-rate-by-day.ts';
import { likelihoodRatios } from './likelihood-ratios.ts';
import { postTest } from './post-test.ts';
import { postTestCorrelatedNegatives } from './post-test-correlated-negatives.ts';
import { postTestSequence } from './post-test-sequence.ts';
import { postTestUncertain } from './post-test-uncertain.ts';
import { type IntervalMethod, truePrevalence } from './true-prevalence.ts';
import { truePrevalenceDelta } from './true-prevalence-delta.ts';

const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
const accuracy = fc.record({ sensitivity: share, specificity: share });

describe('the chance after a result', () => {
  it('is the odds before times the likelihood ratio, and averages to the chance before', () => {
    fc.assert(
      fc.property(share, accuracy, (pre, test) => {
        const ratios = got(likelihoodRatios(test));
        const plus = got(postTest({ pre, ...test, result: 'positive' }));
        const minus = got(postTest({ pre, ...test, result: 'negative' }));
        expect(plus / (1 - plus) / ((pre / (1 - pre)) * ratios.positive)).toBeCloseTo(1, 9);
        expect(minus / (1 - minus) / ((pre / (1 - pre)) * ratios.negative)).toBeCloseTo(1, 9);
        const positive = pre * test.sensitivity + (1 - pre) * (1 - test.specificity);
        expect(positive * plus + (1 - positive) * minus).toBeCloseTo(pre, 12);
      }),
    );
  });

  it('after a series does not depend on its order, and none changes nothing', () => {
    fc.assert(
      fc.property(share, fc.array(accuracy, { maxLength: 6 }), (pre, tests) => {
        const series = tests.map((t, i) => ({
          ...t,
          result: i % 2 === 0 ? ('positive' as const) : ('negative' as const),
        }));
        expect(got(postTestSequence(pre, series))).toBeCloseTo(
          got(postTestSequence(pre, [...series].reverse())),
          12,
        );
      }),
    );
    expect(got(postTestSequence(0.3, []))).toBe(0.3);
    const many = Array.from({ length: 4000 }, () => ({
      sensitivity: 0.7,
      specificity: 0.95,
      result: 'negative' as const,
    }));
    expect(got(postTestSequence(0.3, many))).toBeGreaterThanOrEqual(0);
  });

  it('with errors that do not go together is that of a series', () => {
    const test = { sensitivity: 0.7, specificity: 0.95 };
    const alone = got(
      postTestSequence(0.5, [
        { ...test, result: 'negative' },
        { ...test, result: 'negative' },
      ]),
    );
    const base = { pre: 0.5, first: test, second: test, covarianceUninfected: 0 };
    expect(got(postTestCorrelatedNegatives({ ...base, covarianceInfected: 0 }))).toBeCloseTo(
      alone,
      12,
    );
    // Fully together, the second negative adds nothing.
    expect(
      got(
        postTestCorrelatedNegatives({
          ...base,
          covarianceInfected: 0.21,
          covarianceUninfected: 0.0475,
        }),
      ),
    ).toBeCloseTo(got(postTest({ pre: 0.5, ...test, result: 'negative' })), 12);
  });

  it('names what made a result impossible', () => {
    const detail = (q: Parameters<typeof postTest>[0]): string => {
      const found = postTest(q);
      return found.ok ? '' : found.detail;
    };
    expect(detail({ pre: 0, sensitivity: 0.7, specificity: 1, result: 'positive' })).toBe(
      'impossible result: pre-test 0 and specificity 1',
    );
    expect(detail({ pre: 0, sensitivity: 0.7, specificity: 0, result: 'negative' })).toBe(
      'impossible result: pre-test 0 and specificity 0',
    );
    expect(detail({ pre: 1, sensitivity: 1, specificity: 0.9, result: 'negative' })).toBe(
      'impossible result: pre-test 1 and sensitivity 1',
    );
    expect(detail({ pre: 1, sensitivity: 0, specificity: 0.9, result: 'positive' })).toBe(
      'impossible result: pre-test 1 and sensitivity 0',
    );
    expect(detail({ pre: 0.5, sensitivity: 0, specificity: 1, result: 'positive' })).toBe(
      'impossible result: sensitivity 0 and specificity 1',
    );
  });

  it('perfect tests have infinite ratios, useless ones 1', () => {
    expect(got(likelihoodRatios({ sensitivity: 1, specificity: 1 }))).toEqual({
      positive: Infinity,
      negative: 0,
    });
    expect(got(likelihoodRatios({ sensitivity: 0, specificity: 1 }))).toEqual({
      positive: 1,
      negative: 1,
    });
    expect(got(likelihoodRatios({ sensitivity: 1, specificity: 0 }))).toEqual({
      positive: 1,
      negative: 1,
    });
  });
});

describe('uncertainty', () => {
  it.each(['positive', 'negative'] as const)('after a %s agrees with simulation', (result) => {
    const chance = seededChance(1);
    const beta = (a: number, b: number): number => {
      const x = drawGamma(chance, a);
      return x / (x + drawGamma(chance, b));
    };
    const draws = Array.from({ length: 20_000 }, () =>
      got(postTest({ pre: 0.3, sensitivity: beta(18, 8), specificity: beta(40, 3), result })),
    ).sort((a, b) => a - b);
    const exact = got(
      postTestUncertain({
        pre: 0.3,
        sensitivity: [18, 8],
        specificity: [40, 3],
        result,
        probabilities: [0.1, 0.5, 0.9],
      }),
    );
    expect(Math.abs(exact.mean - draws.reduce((a, b) => a + b, 0) / 20_000)).toBeLessThan(0.006);
    [0.1, 0.5, 0.9].forEach((p, i) =>
      expect(
        Math.abs((exact.quantiles[i] as number) - (draws[Math.floor(p * 20_000)] as number)),
      ).toBeLessThan(0.012),
    );
  });

  it('of a study is a Beta with its mean and spread', () => {
    const b = got(betaPosterior({ successes: 3, failures: 1 }));
    expect([b.a, b.b, b.mean]).toEqual([4, 2, 4 / 6]);
    expect(b.sd).toBeCloseTo(Math.sqrt(8 / (36 * 7)), 12);
    expect(b.quantiles).toHaveLength(3);
    expect(got(betaPosterior({ successes: 0, failures: 0, prior: [2, 3] })).mean).toBe(0.4);
  });
});

describe('true prevalence', () => {
  const methods: readonly IntervalMethod[] = [
    'wilson',
    'clopper-pearson',
    'jeffreys',
    'mid-p',
    'blaker',
    'sterne',
  ];
  it.each(methods)('%s: stays in 0 to 1 when shown, and says when that changed it', (method) => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30 }), (events) => {
        const found = got(
          truePrevalence({ events, trials: 30 }, { sensitivity: 0.8, specificity: 0.9 }, method),
        );
        const { clamped, unclamped } = found;
        for (const key of ['estimate', 'lower', 'upper'] as const) {
          expect(clamped[key]).toBe(Math.min(1, Math.max(0, unclamped[key])));
          expect(unclamped[key]).toBeCloseTo((found.apparent[key] - 0.1) / 0.7, 10);
        }
        expect(found.atBoundary).toBe(
          (['estimate', 'lower', 'upper'] as const).some(
            (k) => Math.abs(clamped[k] - unclamped[k]) > 1e-12,
          ),
        );
      }),
      { numRuns: 15 },
    );
  });

  it('with a perfect test is what was seen', () => {
    const found = got(
      truePrevalence({ events: 3, trials: 30 }, { sensitivity: 1, specificity: 1 }),
    );
    for (const key of ['estimate', 'lower', 'upper'] as const)
      expect(found.unclamped[key]).toBeCloseTo(found.apparent[key], 12);
    expect(found.atBoundary).toBe(false);
    const delta = got(
      truePrevalenceDelta(
        { events: 3, trials: 30 },
        { sensitivity: 1, specificity: 1, sensitivityTrials: 50, specificityTrials: 50 },
      ),
    );
    expect(delta.standardError).toBeCloseTo(Math.sqrt((0.1 * 0.9) / 30), 12);
    expect(delta.upper - delta.estimate).toBeCloseTo(1.959963984540054 * delta.standardError, 12);
    expect(delta.estimate - delta.lower).toBeCloseTo(delta.upper - delta.estimate, 12);
  });
});

describe('missed infections by day', () => {
  it('come from the set named, and from no other', () => {
    expect(got(falseNegativeRateByDay(8))).toEqual({ rate: 0.191, lower: 0.12, upper: 0.291 });
    expect(got(falseNegativeRateByDay(8, 'abstract-2020-05'))).toEqual({
      rate: 0.2,
      lower: 0.12,
      upper: 0.3,
    });
    expect([22, 0, 4.5, -1].every((d) => !falseNegativeRateByDay(d).ok)).toBe(true);
  });
});
