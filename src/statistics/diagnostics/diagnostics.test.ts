import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededChance } from '../random/chance.ts';
import { drawGamma } from '../random/draw-gamma.ts';
import { got, reasonOf } from '../testing.ts';
import { betaPosterior } from './beta-posterior.ts';
import { falseNegativeRateByDay } from './false-negative-rate-by-day.ts';
import { falseOmissionRate } from './false-omission-rate.ts';
import { likelihoodRatios } from './likelihood-ratios.ts';
import { postTest } from './post-test.ts';
import { postTestCorrelatedNegatives } from './post-test-correlated-negatives.ts';
import { postTestSequence } from './post-test-sequence.ts';
import { postTestUncertain } from './post-test-uncertain.ts';
import { type IntervalMethod, truePrevalence } from './true-prevalence.ts';
import { truePrevalenceDelta } from './true-prevalence-delta.ts';

const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
const accuracy = fc.record({ sensitivity: share, specificity: share });

describe('what was certain before', () => {
  it.each([0, 1])('stays so after a test: %d', (pre) => {
    const question = {
      pre,
      sensitivity: [18, 8],
      specificity: [40, 3],
      result: 'positive',
    } as const;
    const after = got(postTestUncertain({ ...question, probabilities: [0.1, 0.5, 0.9] }));
    expect(after).toEqual({ mean: pre, quantiles: [pre, pre, pre] });
  });
});

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

  it("with errors that go together is Vacek's, up to the largest covariance there can be", () => {
    const ask = (covarianceInfected: number, covarianceUninfected: number, pre = 0.5) =>
      postTestCorrelatedNegatives({
        pre,
        first: { sensitivity: 0.8, specificity: 0.9 },
        second: { sensitivity: 0.6, specificity: 0.95 },
        covarianceInfected,
        covarianceUninfected,
      });
    // By hand: 0.2 * 0.4 + 0.05 = 0.13 and 0.9 * 0.95 + 0.01 = 0.865.
    expect(got(ask(0.05, 0.01, 0.3))).toBeCloseTo((0.3 * 0.13) / (0.3 * 0.13 + 0.7 * 0.865), 14);
    // Both missed no oftener than the better test misses (0.2), both clear no oftener than 0.9.
    expect(got(ask(0.12, 0.045))).toBeCloseTo(0.2 / 1.1, 12);
    expect(reasonOf(ask(0.1201, 0))).toBe('out-of-range');
    expect(reasonOf(ask(0, 0.0451))).toBe('out-of-range');
    // Nor less often than 0, or than 0.9 + 0.95 - 1.
    expect(got(ask(-0.08, -0.005))).toBeCloseTo(0, 12);
    expect(reasonOf(ask(-0.0801, 0))).toBe('out-of-range');
    expect(reasonOf(ask(0, -0.0051))).toBe('out-of-range');
    expect(reasonOf(ask(-0.08, 0, 1))).toBe('impossible');
    for (const [infected, uninfected, where] of [
      [0.2, 0, 'among the infected'],
      [0, 0.2, 'among the uninfected'],
    ] as const) {
      const refused = ask(infected, uninfected);
      expect(refused.ok ? '' : refused.detail).toContain(where);
    }
  });

  it('with tests that never both come out negative is refused', () => {
    const sure = { sensitivity: 1, specificity: 0.9 };
    const question = { pre: 1, first: sure, second: sure };
    expect(
      reasonOf(
        postTestCorrelatedNegatives({
          ...question,
          covarianceInfected: 0,
          covarianceUninfected: 0,
        }),
      ),
    ).toBe('impossible');
  });

  it('after a negative by day is what Kucirka et al. print', () => {
    // Results table of HopkinsIDD/covidRTPCR, attack rate 77/686: day 4 0.081, day 8 0.024 (medians of
    // draws, so to 0.0015).
    const left = (falseNegativeRate: number): number =>
      got(falseOmissionRate({ pre: 77 / 686, falseNegativeRate, specificity: 1 }));
    expect(Math.abs(left(0.71) - 0.081)).toBeLessThan(0.0015);
    expect(Math.abs(left(0.191) - 0.024)).toBeLessThan(0.0015);
  });

  it('after an impossible series is refused, and after a long one still a figure', () => {
    const perfect = { sensitivity: 1, specificity: 1 };
    expect(
      reasonOf(
        postTestSequence(0.5, [
          { ...perfect, result: 'positive' },
          { ...perfect, result: 'negative' },
        ]),
      ),
    ).toBe('impossible');
    // 4000 useless tests change nothing, though each halves both chances.
    const useless = { sensitivity: 0.5, specificity: 0.5, result: 'positive' as const };
    expect(
      got(
        postTestSequence(
          0.3,
          Array.from({ length: 4000 }, () => useless),
        ),
      ),
    ).toBeCloseTo(0.3, 12);
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

  // R 4.2.2: uniroot over integrate(pbeta, dbeta) in panels to 1e-10; 2.5, 50 and 97.5 %. One Beta is far
  // narrower than the other, so that what is integrated is nearly a step.
  it.each([
    ['positive', 0.02, [300, 40], [2, 1], [0.0209197806, 0.0579150999, 0.5887332785]],
    ['positive', 0.02, [3000, 300], [2, 1], [0.0215604027, 0.0595697508, 0.595942392]],
    ['positive', 0.02, [300, 40], [20, 2], [0.0702311213, 0.1862931805, 0.6051876806]],
    ['positive', 0.1, [2, 1], [3000, 30], [0.6358105148, 0.8866451395, 0.9327390824]],
    ['negative', 0.1, [300, 40], [2, 1], [0.011067607, 0.018339696, 0.0771316324]],
    ['negative', 0.1, [2000, 400], [3, 3], [0.0210287287, 0.0357141268, 0.112302094]],
  ] as const)('after a %s, from %d, %o and %o, is what R integrates', (...row) => {
    const [result, pre, sensitivity, specificity, expected] = row;
    const { quantiles } = got(postTestUncertain({ pre, sensitivity, specificity, result }));
    for (const [i, q] of expected.entries()) expect(quantiles[i]).toBeCloseTo(q, 6);
  });

  // R 4.2.2: 4000 by 4000 qbeta points, sorted; mean and 2.5, 50 and 97.5 %.
  it.each([
    ['negative', [0.1232058570307, 0.0642382277439, 0.1224095587982, 0.1867263833899]],
    ['positive', [0.8159439498506, 0.6355980727341, 0.8237889526358, 0.9524589460913]],
  ] as const)('after a %s is what R finds on a grid', (result, expected) => {
    const { mean, quantiles } = got(
      postTestUncertain({ pre: 0.3, sensitivity: [18, 8], specificity: [40, 3], result }),
    );
    [mean, ...quantiles].forEach((x, i) =>
      expect(Math.abs(x - (expected[i] as number))).toBeLessThan(2e-5),
    );
  });

  it('of a study has the quantiles of qbeta, at the usual three places or those asked for', () => {
    const usual = got(betaPosterior({ successes: 3, failures: 1 })).quantiles;
    [0.2835820638819105, 0.6861898295443025, 0.9472550494736831].forEach((r, i) =>
      expect(usual[i]).toBeCloseTo(r, 12),
    );
    const asked = { successes: 3, failures: 1, probabilities: [0.5] };
    expect(got(betaPosterior(asked)).quantiles).toEqual([usual[1]]);
  });

  it('of nothing known is the uniform prior', () => {
    const found = got(betaPosterior({ successes: 0, failures: 0, probabilities: [0, 0.3, 1] }));
    expect([found.a, found.b, found.mean]).toEqual([1, 1, 0.5]);
    expect(found.sd).toBeCloseTo(Math.sqrt(1 / 12), 14);
    [0, 0.3, 1].forEach((p, i) => expect(found.quantiles[i]).toBeCloseTo(p, 14));
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

describe('true prevalence against printed figures', () => {
  // R 4.2.2: Rogan & Gladen's formulas, 20 of 120, sensitivity 0.9 (of 100), specificity 0.99 (of 200).
  it('by the delta method', () => {
    const ask = (confidence?: number) =>
      got(
        truePrevalenceDelta(
          { events: 20, trials: 120 },
          { sensitivity: 0.9, specificity: 0.99, sensitivityTrials: 100, specificityTrials: 200 },
          confidence,
        ),
      );
    expect(ask().estimate).toBeCloseTo(0.1760299625468165, 14);
    expect(ask().standardError).toBeCloseTo(0.0392278420665122, 14);
    expect(ask().lower).toBeCloseTo(0.09914480490522733, 12);
    expect(ask().upper).toBeCloseTo(0.2529151201884057, 12);
    expect(ask(0.9).lower).toBeCloseTo(0.1115059042462344, 12);
  });

  // epiR 2.0.57 epi.prev, as printed by RSurveillance tp().
  it('by the limits of the apparent prevalence', () => {
    const test = { sensitivity: 0.9, specificity: 0.99 };
    const { unclamped } = got(truePrevalence({ events: 20, trials: 120 }, test));
    expect([unclamped.lower, unclamped.upper].map((x) => x.toFixed(7))).toEqual([
      '0.1129887',
      '0.2623065',
    ]);
  });

  it('says nothing with a test that says nothing', () => {
    for (const specificity of [0.3, 0.2]) {
      const test = { sensitivity: 0.7, specificity };
      expect(reasonOf(truePrevalence({ events: 2, trials: 9 }, test))).toBe('undefined');
      expect(
        reasonOf(
          truePrevalenceDelta(
            { events: 2, trials: 9 },
            { ...test, sensitivityTrials: 9, specificityTrials: 9 },
          ),
        ),
      ).toBe('undefined');
    }
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
