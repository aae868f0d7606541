import { describe, expect, it } from 'vitest';
import { binomialSignal } from './charts/binomial-signal.ts';
import { kGapQuantile } from './charts/gap-signals.ts';
import { pChartFalseAlarm } from './charts/p-chart-false-alarm.ts';
import { poissonCusumRunLength } from './charts/poisson-cusum.ts';
import { betaPosterior } from './diagnostics/beta-posterior.ts';
import { type PostTestDrawsQuestion, postTestDraws } from './diagnostics/post-test-draws.ts';
import { postTestUncertain } from './diagnostics/post-test-uncertain.ts';
import {
  negativeBinomialAtLeast,
  negativeBinomialCdf,
  negativeBinomialPmf,
} from './distributions/negative-binomial.ts';
import { reproductionFromGrowth } from './epidemics/reproduction-from-growth.ts';
import { reproductionNumber } from './epidemics/reproduction-number.ts';
import { screeningEffects } from './epidemics/screening-effect.ts';
import { discreteSerialInterval } from './epidemics/serial-interval.ts';
import { atLeastPositives } from './freedom/at-least-positives.ts';
import { detectionProbability } from './freedom/detection.ts';
import { homeClearCluster } from './freedom/home-clear-cluster.ts';
import { sampleSize } from './freedom/sample-size.ts';
import { consecutiveNearDuplicates } from './identity/consecutive-near-duplicates.ts';
import { undetectedErrorRates } from './identity/undetected-error-rates.ts';
import { luhn } from './identity/weighted-schemes.ts';
import { chiSquareTwoByTwo } from './proportions/chi-square-two-by-two.ts';
import { fisherExact } from './proportions/fisher-exact.ts';
import { funnelLimits } from './proportions/funnel-limits.ts';
import { probabilityHigher } from './proportions/probability-higher.ts';
import { checkTwoByTwo, type TwoByTwo } from './proportions/two-by-two.ts';
import { wilson } from './proportions/wilson.ts';
import { seededChance } from './random/chance.ts';
import type { Outcome, RefusalReason } from './refusal/refusal.ts';
import { withinReach } from './refusal/refusal.ts';
import { longestFirst } from './scheduling/longest-first.ts';
import { binomialWeight } from './special/binomial-weight.ts';
import { incompleteBeta } from './special/incomplete-beta.ts';
import { incompleteGamma } from './special/incomplete-gamma.ts';
import { poissonWeight } from './special/poisson-weight.ts';
import { kitsForValid } from './stock/kits-for-valid.ts';
import { newsvendor } from './stock/newsvendor.ts';
import { reorderPointNegativeBinomial, reorderPointPoisson } from './stock/reorder-point.ts';
import { stockoutChance } from './stock/stockout-chance.ts';
import { got, numbersIn, reasonOf } from './testing.ts';

const shaped = (table: unknown): TwoByTwo => table as TwoByTwo;
const survey = { population: 24, infected: 2, tested: 20, sensitivity: 0.7 };
const uncertain = {
  pre: 0.5,
  sensitivity: [57, 25],
  specificity: [96, 6],
  result: 'negative',
} as const;
const drawn: PostTestDrawsQuestion = {
  pre: 0.1,
  sensitivity: [57, 25],
  specificity: [96, 6],
  correlation: 0.3,
  draws: 500,
  tests: [{ share: 1, result: 'negative' }],
  chance: seededChance(1),
};
const weekly = { incidence: [1, 1, 0, 2, 5, 3, 3, 3, 6, 2], serialInterval: [0, 0.5, 0.5] };

type Row = readonly [what: string, reason: RefusalReason, ask: () => Outcome<unknown>];
const BEYOND: readonly Row[] = [
  ['a table of nothing', 'empty', () => fisherExact(shaped([]))],
  ['no table', 'empty', () => chiSquareTwoByTwo(shaped(null), { correct: true })],
  ['a table of one row', 'lengths-differ', () => fisherExact(shaped([[1, 2]]))],
  [
    'a table of three columns',
    'lengths-differ',
    () =>
      fisherExact(
        shaped([
          [1, 2, 3],
          [4, 5, 6],
        ]),
      ),
  ],
  ['a table of texts', 'lengths-differ', () => fisherExact(shaped(['ab', 'cd']))],
  ['more trials than a continent', 'too-large', () => wilson({ events: 1, trials: 2e9 })],
  [
    'a prior worth more',
    'too-large',
    () => betaPosterior({ successes: 1, failures: 1, prior: [2e9, 1] }),
  ],
  [
    'its other half',
    'too-large',
    () => probabilityHigher({ events: 1, trials: 2 }, { events: 1, trials: 2 }, [1, 2e9]),
  ],
  [
    'a study of more',
    'too-large',
    () => postTestUncertain({ ...uncertain, sensitivity: [2e9, 1] }),
  ],
  ['of the others', 'too-large', () => postTestUncertain({ ...uncertain, specificity: [1, 2e9] })],
  ['and drawn', 'too-large', () => postTestDraws({ ...drawn, sensitivity: [2e9, 1] })],
  [
    'and drawn, of the others',
    'too-large',
    () => postTestDraws({ ...drawn, specificity: [2e9, 1] }),
  ],
  ['a funnel of more', 'too-large', () => funnelLimits(0.1, [10, 2e9], 0.025)],
  ['a home of more', 'too-large', () => detectionProbability({ ...survey, population: 2e9 })],
  [
    'in a cluster',
    'too-large',
    () =>
      homeClearCluster({ population: 2e9, tested: 1, sensitivity: 1, infected: [0], prior: [1] }),
  ],
  [
    'too many sums',
    'too-large',
    () =>
      atLeastPositives({
        population: 1e4,
        infected: 5000,
        tested: 5000,
        sensitivity: 0.7,
        specificity: 0.99,
        positives: 3,
      }),
  ],
  ['a void in a life', 'too-large', () => kGapQuantile(1e-300, 2, 0.05)],
  ['too many voids', 'too-large', () => kGapQuantile(0.1, 2e9, 0.05)],
  ['a month of more tests', 'too-large', () => binomialSignal(2e9, 0.1, 0.01)],
  ['a sample of more', 'too-large', () => pChartFalseAlarm(2e9, 0.1)],
  [
    'a CUSUM that never signals',
    'too-large',
    () => poissonCusumRunLength({ mean: 1e-9, reference: 20, limit: 3 }),
  ],
  [
    'a mean beyond',
    'too-large',
    () => poissonCusumRunLength({ mean: 2e9, reference: 20, limit: 3 }),
  ],
  [
    'a reference beyond',
    'too-large',
    () => poissonCusumRunLength({ mean: 1, reference: 2e9, limit: 3 }),
  ],
  ['an interval of ages', 'out-of-range', () => discreteSerialInterval(2e9, 1, [1])],
  ['an interval without spread', 'too-large', () => discreteSerialInterval(5, 1e-12, [1])],
  ['a prior without spread', 'too-large', () => reproductionNumber({ ...weekly, priorSd: 1e-9 })],
  [
    'cases beyond',
    'too-large',
    () => reproductionNumber({ ...weekly, incidence: weekly.incidence.map(() => 5e8) }),
  ],
  ['a code of hundreds', 'out-of-range', () => undetectedErrorRates(luhn, 65)],
  [
    'serials too wide',
    'out-of-range',
    () => consecutiveNearDuplicates({ start: 1, n: 2, width: 17 }),
  ],
  ['kits beyond', 'too-large', () => kitsForValid(2e9, 0.1, 0.9)],
  ['stock beyond', 'too-large', () => stockoutChance(2e9, 1, [1])],
  ['demand beyond', 'too-large', () => reorderPointPoisson(1e6, 1e6, 0.9)],
  ['demand that varies, beyond', 'too-large', () => reorderPointNegativeBinomial(2e9, 3e9, 0.9)],
  [
    'a spread beyond the special functions',
    'too-large',
    () => reorderPointNegativeBinomial(1e9, 1e18, 1 - 1e-12),
  ],
  [
    'an order beyond',
    'too-large',
    () => newsvendor({ law: 'poisson', mean: 2e9 }, { criticalRatio: 0.5 }),
  ],
  [
    'trials beyond',
    'too-large',
    () => newsvendor({ law: 'binomial', trials: 2e9, chance: 0.5 }, { criticalRatio: 0.5 }),
  ],
  [
    'a mean beyond numbers',
    'too-large',
    () => newsvendor({ law: 'lognormal', meanLog: 700, sdLog: 1 }, { criticalRatio: 0.5 }),
  ],
  [
    'a list with no number',
    'not-a-number',
    () => newsvendor({ law: 'empirical', values: [1, Number.NaN] }, { criticalRatio: 0.5 }),
  ],
  [
    'weights of another length',
    'lengths-differ',
    () => newsvendor({ law: 'empirical', values: [1, 2], weights: [1] }, { criticalRatio: 0.5 }),
  ],
  [
    'weights of nothing',
    'out-of-range',
    () => newsvendor({ law: 'empirical', values: [1, 2], weights: [0, 0] }, { criticalRatio: 0.5 }),
  ],
  [
    'a weight below 0',
    'out-of-range',
    () =>
      newsvendor({ law: 'empirical', values: [1, 2], weights: [3, -1] }, { criticalRatio: 0.5 }),
  ],
  [
    'an upper end without end',
    'not-a-number',
    () => newsvendor({ law: 'uniform', low: 0, high: Infinity }, { criticalRatio: 0.5 }),
  ],
  ['a figure whose square is none', 'too-large', () => reorderPointPoisson(1e300, 1, 0.9)],
];

describe('beyond what can be counted, a refusal', () => {
  it.each(BEYOND)('%s: %s', (_, reason, ask) => {
    expect(reasonOf(ask())).toBe(reason);
  });

  it('of a table says what it must be, and takes a good one', () => {
    expect(
      checkTwoByTwo([
        [1, 2],
        [3, 4],
      ]),
    ).toBeUndefined();
    expect(
      checkTwoByTwo([
        [1, 2],
        [3, -4],
      ])?.detail,
    ).toContain('row 2, column 2');
    expect(checkTwoByTwo(shaped([[1, 2], 5]))?.detail).toContain('two rows of two');
  });

  it('turns a RangeError below into a refusal, and no other fault', () => {
    expect(withinReach(() => 3)).toEqual({ ok: true, value: 3 });
    const outside = withinReach(() => incompleteGamma(-1, 1).lower);
    expect(outside).toMatchObject({ ok: false, reason: 'too-large' });
    expect(() =>
      withinReach(() => {
        throw new TypeError('another fault');
      }),
    ).toThrow('another fault');
  });

  it('the special functions throw outside their domain instead of going on for ever', () => {
    for (const bad of [0, -1, Number.NaN, Infinity, 1.1e10]) {
      expect(() => incompleteBeta(0.5, bad, 2)).toThrow(RangeError);
      expect(() => incompleteBeta(0.5, 2, bad)).toThrow(RangeError);
      expect(() => incompleteGamma(bad, 1)).toThrow(RangeError);
    }
    for (const bad of [-1, Number.NaN, Infinity]) {
      expect(() => binomialWeight(bad, 2, 0.5, 0.5)).toThrow(RangeError);
      expect(() => binomialWeight(2, bad, 0.5, 0.5)).toThrow(RangeError);
      expect(() => poissonWeight(bad, 2)).toThrow(RangeError);
      expect(() => poissonWeight(2, bad)).toThrow(RangeError);
    }
    expect(() => binomialWeight(1, 2, Number.NaN, 0.5)).toThrow(RangeError);
    expect(() => binomialWeight(1, 2, 0.5, -0.5)).toThrow(RangeError);
    for (const bad of [0, -1, Number.NaN])
      expect(() => negativeBinomialPmf(1, bad, 0.5)).toThrow(RangeError);
  });
});

describe('at the far ends of what can be counted, figures', () => {
  // R 4.2.2: 1 - sum(dhyper(k, D, N - D, n) * (1 - se)^k).
  it.each([
    [{ population: 1e7, infected: 1e6, tested: 30, sensitivity: 0.7 }, 0.886632780943051],
    [{ population: 1e7, infected: 2e6, tested: 5, sensitivity: 0.9 }, 0.629260228257307],
    [{ population: 1000, infected: 400, tested: 300, sensitivity: 0.01 }, 0.699856027048267],
    [{ population: 5e4, infected: 2e4, tested: 3e4, sensitivity: 1e-5 }, 0.113079967717684],
    [{ population: 24, infected: 2, tested: 20, sensitivity: 0.7 }, 0.829347826086956],
  ])('detection in %j', (asked, p) => {
    expect(got(detectionProbability(asked))).toBeCloseTo(p, 10);
  });

  it('detection and sample size in ten million take no longer than in ten', () => {
    const begun = performance.now();
    const half = { population: 1e7, infected: 5e6, sensitivity: 0.5 };
    expect(got(detectionProbability({ ...half, tested: 5e6 }))).toBe(1);
    // Each person tested is missed with 3/4: 0.75^n falls to 0.05 at n = 10.4.
    expect(got(sampleSize({ ...half, confidence: 0.95 }))).toBe(11);
    expect(performance.now() - begun).toBeLessThan(1000);
  });

  // R 4.2.2: qpois, and sums of (d - Q) dpois over 80,000 counts around the mean.
  it('an order at a mean demand of ten million, at once', () => {
    const begun = performance.now();
    const found = got(newsvendor({ law: 'poisson', mean: 1e7 }, { under: 3, over: 1 }));
    expect(performance.now() - begun).toBeLessThan(500);
    expect(found.order).toBe(10_002_133);
    expect(found.cost).toBeCloseTo(4019.73388224397, 5);
    expect(found.costBelow).toBeCloseTo(4019.73401609877, 5);
    expect(found.costAbove).toBeCloseTo(4019.73415030538, 5);
  });

  it('an order of nothing costs the mean short, whatever the law', () => {
    const laws = [
      [{ law: 'poisson', mean: 0.01 }, 0.01],
      [{ law: 'negative-binomial', mean: 0.01, variance: 0.02 }, 0.01],
      [{ law: 'binomial', trials: 3, chance: 0.001 }, 0.003],
    ] as const;
    for (const [law, mean] of laws) {
      const { order, cost, costBelow } = got(newsvendor(law, { under: 1, over: 1e6 }));
      expect([order, cost]).toEqual([0, mean]);
      // One below nothing is one more short.
      expect(costBelow).toBeCloseTo(mean + 1, 12);
    }
  });

  // R 4.2.2: qnbinom(.9, 2, 1e-6), pnbinom of it, 1e6 + qnbinom(.95, 1e6, .96), pbeta, pgamma.
  it('quantiles and laws of huge counts', () => {
    const gap = got(kGapQuantile(1e-6, 2, 0.9));
    expect(gap.quantile).toBe(3_889_717);
    expect(gap.cdf).toBeCloseTo(0.900000021875401, 12);
    expect(got(kitsForValid(1e6, 0.04, 0.95))).toBe(1_042_010);
    expect(incompleteBeta(0.3, 3e8, 7e8).lower).toBeCloseTo(0.500003670617706, 9);
    expect(incompleteGamma(1e9, 1e9).lower).toBeCloseTo(0.50000420522087, 9);
    expect(got(stockoutChance(1e9, 1e6, [900, 1100]))).toEqual([0, 1]);
  });

  it('both tails of the negative binomial sum to 1', () => {
    for (const [k, size, prob] of [
      [0, 2, 0.3],
      [3, 2, 0.3],
      [40, 5.5, 0.1],
    ] as const)
      expect(
        negativeBinomialAtLeast(k, size, prob) + negativeBinomialCdf(k - 1, size, prob),
      ).toBeCloseTo(1, 14);
    expect(negativeBinomialAtLeast(1, 2, 0.3)).toBeCloseTo(1 - 0.09, 14);
  });

  it('a likelihood ratio is the same for every pre-test chance, however small', () => {
    const ratios = (pre: number): readonly number[] =>
      got(postTestUncertain({ ...uncertain, pre })).quantiles.map(
        (post) => (post / (1 - post) / pre) * (1 - pre),
      );
    const usual = ratios(0.5);
    for (const pre of [0.1, 1e-9, 1e-100, 1e-300])
      ratios(pre).forEach((ratio, k) => expect(ratio / (usual[k] as number)).toBeCloseTo(1, 9));
  });

  it('a test of which next to nothing is known leaves limits', () => {
    const vague = got(
      postTestUncertain({ ...uncertain, sensitivity: [1e-9, 1], probabilities: [0.5, 0.9999] }),
    );
    expect(numbersIn(vague).every((x) => x >= 0 && x <= 1)).toBe(true);
    const drawnVaguely = got(
      postTestDraws({ ...drawn, sensitivity: [1e-12, 1e-12], specificity: [1e-12, 1e-12] }),
    );
    expect(numbersIn(drawnVaguely).every((x) => x >= 0 && x <= 1)).toBe(true);
    // Bernoulli halves: a quarter each of se, sp in 0, 1. Post-test 1, 0, undefined (stays 0.1) and 0.1.
    expect(drawnVaguely.mean).toBeGreaterThan(0.2);
    expect(drawnVaguely.mean).toBeLessThan(0.4);
  });

  it('a spread that cannot be seen is a fixed generation time', () => {
    const { gamma, fixed } = got(reproductionFromGrowth(0.1, { mean: 5, sd: 1e-17 }));
    expect(gamma).toBe(fixed);
    expect(got(reproductionFromGrowth(0.1, { mean: 5, sd: 1e-6 })).gamma).toBeCloseTo(fixed, 9);
  });

  it('testing once in thirty years takes off next to nothing, at once; once a month what it did', () => {
    const ask = (everyDays: number) => {
      const policy = { detectionLimit: 3, everyDays, delayDays: 0 };
      return got(screeningEffects([policy], seededChance(3), { courses: 2000 }))[0]!;
    };
    const [never, rare, often] = [ask(1e7), ask(60), ask(28)];
    expect(never.removedByTesting).toBeLessThan(1e-5);
    expect(never.removedBySymptoms + never.removedByTesting + never.remaining).toBeCloseTo(1, 12);
    expect(rare.removedByTesting / often.removedByTesting).toBeCloseTo(28 / 60, 6);
  });

  it('machines that stand idle change nothing', () => {
    const { longestFirst: value, optimum, ratioBound } = got(longestFirst(1e7, [5, 3, 2]));
    expect([value, optimum]).toEqual([5, 5]);
    expect(ratioBound).toBeCloseTo(4 / 3, 6);
  });
});
