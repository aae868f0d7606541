import type { Accuracy, TestResult } from '../../../statistics/diagnostics/accuracy.ts';
import { betaPosterior } from '../../../statistics/diagnostics/beta-posterior.ts';
import {
  type FalseNegativeSet,
  falseNegativeRateByDay,
} from '../../../statistics/diagnostics/false-negative-rate-by-day.ts';
import { falseOmissionRate } from '../../../statistics/diagnostics/false-omission-rate.ts';
import { likelihoodRatios } from '../../../statistics/diagnostics/likelihood-ratios.ts';
import { postTest } from '../../../statistics/diagnostics/post-test.ts';
import { postTestCorrelatedNegatives } from '../../../statistics/diagnostics/post-test-correlated-negatives.ts';
import { postTestDraws } from '../../../statistics/diagnostics/post-test-draws.ts';
import { postTestSequence } from '../../../statistics/diagnostics/post-test-sequence.ts';
import { postTestUncertain } from '../../../statistics/diagnostics/post-test-uncertain.ts';
import {
  type Estimate,
  type IntervalMethod,
  truePrevalence,
} from '../../../statistics/diagnostics/true-prevalence.ts';
import { truePrevalenceDelta } from '../../../statistics/diagnostics/true-prevalence-delta.ts';
import type { TallyWithConfidence as Tally } from '../../../statistics/proportions/tally.ts';
import { seededChance } from '../../../statistics/random/chance.ts';
import { answer, InUse, valueOrNull } from '../answer.ts';
import type { Adapter, Adapters } from '../check.ts';
import { type Input, InputError } from '../input.ts';

/** Quantiles of so many draws err by about 0.002. */
const DRAWS = 200_000;

const accuracy = (i: Input): Accuracy => ({
  sensitivity: i.number('sens', 'se', 'sensitivity'),
  specificity: i.number('spec', 'sp', 'specificity'),
});
const RESULTS: Readonly<Record<string, TestResult>> = {
  positive: 'positive',
  pos: 'positive',
  p: 'positive',
  '+': 'positive',
  negative: 'negative',
  neg: 'negative',
  n: 'negative',
  '-': 'negative',
};
const result = (i: Input): TestResult => {
  const text = i.text('result');
  const found = Object.hasOwn(RESULTS, text.toLowerCase())
    ? RESULTS[text.toLowerCase()]
    : undefined;
  if (!found) throw new InputError(`there is no result "${text}": positive or negative`);
  return found;
};
const pair = (values: readonly number[]): readonly [number, number] => [
  values[0] ?? Number.NaN,
  values[1] ?? Number.NaN,
];

const METHODS: Readonly<Record<string, IntervalMethod>> = {
  'c-p': 'clopper-pearson',
  cp: 'clopper-pearson',
  exact: 'clopper-pearson',
  'clopper-pearson': 'clopper-pearson',
  clopperPearson: 'clopper-pearson',
  wilson: 'wilson',
  blaker: 'blaker',
  sterne: 'sterne',
  jeffreys: 'jeffreys',
  midP: 'mid-p',
  midp: 'mid-p',
  'mid-p': 'mid-p',
};

const triple = (e: Estimate): readonly number[] => [e.estimate, e.lower, e.upper];

/** epiR's Wilson limits beside one event or one short of all: one of the two is Poisson's there. */
function asEpiR(apparent: Estimate, { events, trials, confidence }: Required<Tally>): Estimate {
  const poisson = -Math.log(confidence) / trials;
  if (events === 1) return { ...apparent, lower: poisson };
  return events === trials - 1 ? { ...apparent, upper: 1 - poisson } : apparent;
}

const trueprevalence: Adapter = (i) => {
  const tally = {
    events: i.number('positives', 'pos', 'x'),
    trials: i.number('n', 'tested'),
    confidence: i.numberOr(0.95, 'conf', 'confidence'),
  };
  const name = i.textOr('wilson', 'method');
  const method = Object.hasOwn(METHODS, name) ? METHODS[name] : undefined;
  if (!method) throw new InputError(`there is no interval method "${name}"`);
  const { sensitivity, specificity } = accuracy(i);
  const behind = (apparent: number): number =>
    (apparent + specificity - 1) / (sensitivity + specificity - 1);
  return answer(truePrevalence(tally, accuracy(i), method), (t) => {
    const epiR = method === 'wilson' ? asEpiR(t.apparent, tally) : t.apparent;
    const named = triple(epiR).map(behind);
    const shown = named.map((x) => Math.min(1, Math.max(0, x)));
    return {
      ap: new InUse(triple(t.apparent), { epiR: triple(epiR) }),
      tp: new InUse(triple(t.unclamped), { epiR: named }),
      tpUnclamped: new InUse(triple(t.unclamped), { epiR: named }),
      tpClamped: new InUse(triple(t.clamped), { epiR: shown }),
      clamped: new InUse(triple(t.clamped), { epiR: shown }),
      atBoundary: t.atBoundary,
      boundary: t.atBoundary,
    };
  });
};

const byDay =
  (set: FalseNegativeSet): Adapter =>
  (i) => {
    const rows = i
      .numbers('day', 'days')
      .map((day) => valueOrNull(falseNegativeRateByDay(day, set)));
    return {
      fnr: rows.map((r) => r?.rate),
      lower: rows.map((r) => r?.lower),
      upper: rows.map((r) => r?.upper),
    };
  };

const falseOmissionByDay: Adapter = (i) => {
  const days = i.numbers('days', 'day');
  const rates = i.has('fnr')
    ? i.numbers('fnr')
    : days.map((d) => valueOrNull(falseNegativeRateByDay(d))?.rate ?? Number.NaN);
  const computed = rates.map((falseNegativeRate) =>
    valueOrNull(
      falseOmissionRate({
        pre: i.number('pre'),
        specificity: i.numberOr(1, 'spec'),
        falseNegativeRate,
      }),
    ),
  );
  return { computed, for: computed, published: computed };
};

export const diagnostics: Adapters = {
  postTest: (i) =>
    answer(postTest({ pre: i.number('pre'), ...accuracy(i), result: result(i) }), (post) => ({
      post,
      published: post,
    })),
  likelihoodRatios: (i) =>
    answer(likelihoodRatios(accuracy(i)), ({ positive, negative }) => ({
      lrPos: positive,
      lrNeg: negative,
    })),
  postTestSequence: (i) =>
    answer(
      postTestSequence(
        i.number('pre'),
        i.list('tests').map((t) => ({ ...accuracy(t), result: result(t) })),
      ),
      (post) => ({ post, published: post }),
    ),
  postTestTwoCorrelatedNegatives: (i) =>
    answer(
      postTestCorrelatedNegatives({
        pre: i.number('pre'),
        first: { sensitivity: i.number('sens1', 'sens'), specificity: i.number('spec1', 'spec') },
        second: { sensitivity: i.number('sens2', 'sens'), specificity: i.number('spec2', 'spec') },
        covarianceInfected: i.numberOr(0, 'covSens'),
        covarianceUninfected: i.numberOr(0, 'covSpec'),
      }),
      (post) => ({ post }),
    ),
  betaPosterior: (i) =>
    answer(
      betaPosterior({
        successes: i.number('successes'),
        failures: i.number('failures'),
        ...(i.has('prior') && { prior: pair(i.numbers('prior')) }),
        ...(i.has('probs') && { probabilities: i.numbers('probs') }),
      }),
      (b) => ({ ...b, alpha: b.a, beta: b.b }),
    ),
  postTestUncertain: (i) =>
    answer(
      postTestUncertain({
        pre: i.number('pre'),
        sensitivity: pair(i.numbers('sensBeta')),
        specificity: pair(i.numbers('specBeta')),
        result: result(i),
      }),
      ({ mean, quantiles: [q025, median, q975] }) => ({ mean, q025, median, q975 }),
    ),
  postTestDraws: (i) =>
    answer(
      postTestDraws({
        pre: i.number('pre'),
        sensitivity: pair(i.numbers('sensBeta')),
        specificity: pair(i.numbers('specBeta')),
        tests: i.list('tests').map((t) => ({ share: t.numberOr(1, 'share'), result: result(t) })),
        correlation: i.numberOr(0, 'correlation'),
        draws: DRAWS,
        chance: seededChance(1),
        ...(i.has('probs') && { probabilities: i.numbers('probs') }),
      }),
      (d) => d,
    ),
  falseNegativeRateByDay: byDay('repository-2020-10'),
  'falseNegativeRateByDay.abstract': byDay('abstract-2020-05'),
  falseOmissionByDay,
  trueprevalence,
  truePrevalence: trueprevalence,
  trueprevalenceDelta: (i) =>
    answer(
      truePrevalenceDelta(
        { events: i.number('positives'), trials: i.number('n') },
        {
          ...accuracy(i),
          sensitivityTrials: i.number('nSens'),
          specificityTrials: i.number('nSpec'),
        },
        i.numberOr(0.95, 'conf', 'confidence'),
      ),
      (t) => ({
        est: t.estimate,
        se: t.standardError,
        lower: t.lower,
        upper: t.upper,
        ci: [t.lower, t.upper],
      }),
    ),
};
