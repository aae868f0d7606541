import { describe, expect, it } from 'vitest';
import { bernoulliCusumDesign, bernoulliCusumReference } from './charts/bernoulli-cusum-design.ts';
import { bernoulliCusumPath } from './charts/bernoulli-cusum-path.ts';
import { bernoulliCusumRunLength } from './charts/bernoulli-cusum-run.ts';
import { binomialSignal } from './charts/binomial-signal.ts';
import { cusumAverageRunLength } from './charts/cusum-run-length.ts';
import { ewma } from './charts/ewma.ts';
import { ewmaProportion } from './charts/ewma-proportion.ts';
import { ewmaAverageRunLength } from './charts/ewma-run-length.ts';
import { gChart } from './charts/g-chart.ts';
import { kGapQuantile, shortestGapSignal } from './charts/gap-signals.ts';
import { laneyPChart } from './charts/laney-p-chart.ts';
import { npChart } from './charts/np-chart.ts';
import { pChart } from './charts/p-chart.ts';
import { pChartFalseAlarm } from './charts/p-chart-false-alarm.ts';
import { poissonCusumRunLength } from './charts/poisson-cusum.ts';
import { tChart } from './charts/t-chart.ts';
import { betaPosterior } from './diagnostics/beta-posterior.ts';
import { falseNegativeRateByDay } from './diagnostics/false-negative-rate-by-day.ts';
import { falseOmissionRate } from './diagnostics/false-omission-rate.ts';
import { likelihoodRatios } from './diagnostics/likelihood-ratios.ts';
import { postTest } from './diagnostics/post-test.ts';
import { postTestCorrelatedNegatives } from './diagnostics/post-test-correlated-negatives.ts';
import { postTestSequence } from './diagnostics/post-test-sequence.ts';
import { postTestUncertain } from './diagnostics/post-test-uncertain.ts';
import { truePrevalence } from './diagnostics/true-prevalence.ts';
import { truePrevalenceDelta } from './diagnostics/true-prevalence-delta.ts';
import { finalSize } from './epidemics/final-size.ts';
import { fitChainBinomial } from './epidemics/fit-chain-binomial.ts';
import { growthRate } from './epidemics/growth-rate.ts';
import { knoxTest } from './epidemics/knox-test.ts';
import { linkedClusters } from './epidemics/linked-clusters.ts';
import { longiniKoopman } from './epidemics/longini-koopman.ts';
import { greenwoodFinalSize, reedFrostFinalSize } from './epidemics/reed-frost.ts';
import {
  reproductionFromGrowth,
  reproductionFromGrowthSeir,
} from './epidemics/reproduction-from-growth.ts';
import { reproductionNumber } from './epidemics/reproduction-number.ts';
import { screenedReproduction } from './epidemics/screened-reproduction.ts';
import { screeningEffects } from './epidemics/screening-effect.ts';
import { discreteSerialInterval } from './epidemics/serial-interval.ts';
import { stochasticFinalSize } from './epidemics/stochastic-final-size.ts';
import { twoTypeFinalSize } from './epidemics/two-type-final-size.ts';
import { atLeastPositives } from './freedom/at-least-positives.ts';
import { detectionProbability } from './freedom/detection.ts';
import { detectionProbabilityApproximate } from './freedom/detection-approximate.ts';
import { detectionProbabilityLarge } from './freedom/detection-large.ts';
import { freedomSeries } from './freedom/freedom-series.ts';
import { homeClearCluster } from './freedom/home-clear-cluster.ts';
import { homeClearIndependent } from './freedom/home-clear-independent.ts';
import { mostInfectedConsistent } from './freedom/most-infected-consistent.ts';
import { poissonBinomial } from './freedom/poisson-binomial.ts';
import { sampleSize } from './freedom/sample-size.ts';
import {
  sampleSizeCannonRoe,
  sampleSizeLarge,
  sampleSizeMacDiarmid,
} from './freedom/sample-size-approximate.ts';
import { sampleSizeForFreedom } from './freedom/sample-size-for-freedom.ts';
import { anyDuplicateChance } from './identity/birthday.ts';
import { checkCharacters } from './identity/check-characters.ts';
import { consecutiveNearDuplicates } from './identity/consecutive-near-duplicates.ts';
import { findScheme } from './identity/find-scheme.ts';
import { mod1271and36 } from './identity/iso7064-schemes.ts';
import { randomNearDuplicates } from './identity/random-near-duplicates.ts';
import { swapOdds } from './identity/swap-odds.ts';
import { upuS10 } from './identity/table-schemes.ts';
import { undetectedErrorRates } from './identity/undetected-error-rates.ts';
import { luhn, nhsNumber } from './identity/weighted-schemes.ts';
import { attackRates } from './proportions/attack-rates.ts';
import { binomialTest } from './proportions/binomial-test.ts';
import { blaker } from './proportions/blaker.ts';
import { chiSquareTwoByTwo } from './proportions/chi-square-two-by-two.ts';
import { clopperPearson } from './proportions/clopper-pearson.ts';
import { fisherExact } from './proportions/fisher-exact.ts';
import { funnelLimits } from './proportions/funnel-limits.ts';
import { jeffreys } from './proportions/jeffreys.ts';
import { midP } from './proportions/mid-p.ts';
import { newcombeDifference } from './proportions/newcombe-difference.ts';
import { probabilityHigher } from './proportions/probability-higher.ts';
import { sterne } from './proportions/sterne.ts';
import { wilson } from './proportions/wilson.ts';
import { zeroEventsUpper } from './proportions/zero-events-upper.ts';
import { seededChance } from './random/chance.ts';
import type { Outcome, RefusalReason } from './refusal/refusal.ts';
import { croston } from './stock/croston.ts';
import { demandClass } from './stock/demand-class.ts';
import { expectedExpiryWaste } from './stock/expected-expiry-waste.ts';
import { firstExpiredFirstOut } from './stock/first-expired-first-out.ts';
import { kitsForValid } from './stock/kits-for-valid.ts';
import { negativeBinomialMoments } from './stock/negative-binomial-moments.ts';
import { newsvendor } from './stock/newsvendor.ts';
import { normalLoss } from './stock/normal-loss.ts';
import {
  reorderPointNegativeBinomial,
  reorderPointPoisson,
  reorderPointRandomLead,
} from './stock/reorder-point.ts';
import { stockoutChance, stockoutChanceOf } from './stock/stockout-chance.ts';
import { teunterSyntetosBabai } from './stock/teunter-syntetos-babai.ts';
import { compareGroups } from './survival/compare-groups.ts';
import { conditionalArrival } from './survival/conditional-arrival.ts';
import { cumulativeIncidence } from './survival/cumulative-incidence.ts';
import { kaplanMeier, kaplanMeierOf } from './survival/kaplan-meier.ts';
import { lognormalFit } from './survival/lognormal-fit.ts';
import { survivalQuantiles } from './survival/quantiles.ts';
import { restrictedMean } from './survival/restricted-mean.ts';
import { limitCurves } from './survival/survival-interval.ts';
import { weibullFit } from './survival/weibull-fit.ts';
import { numbersIn, reasonOf } from './testing.ts';

const NaN_ = Number.NaN;
const curve = kaplanMeierOf({ events: Float64Array.of(1, 2), censored: Float64Array.of(3) });
const over = kaplanMeierOf({ events: Float64Array.of(1, 2), censored: Float64Array.of() });
const se = { sensitivity: 0.7, specificity: 0.95 };
const wait = { time: [1, 2, 3], event: [1, 0, 1] };
const period = { law: 'exponential', mean: 1 } as const;
const rates = {
  residentToResident: 0.1,
  residentToStaff: 0.1,
  staffToResident: 0.1,
  staffToStaff: 0.1,
};
const two = { residents: 3, staff: 3, introductions: { residents: 1, staff: 0 }, rates, period };
const survey = { population: 24, infected: 2, tested: 20, sensitivity: 0.7 };
const size = { population: 24, infected: 2, sensitivity: 1, confidence: 0.95 };
const series = { detection: [0.8], introduction: 0.02, prior: 0.5 };
const freedomSize = {
  population: 300,
  prior: 0.5,
  introduction: 0.01,
  designPrevalence: 0.05,
  target: 0.95,
  sensitivity: 0.9,
};
const cluster = {
  population: 24,
  tested: 22,
  sensitivity: 0.7,
  infected: [0, 1],
  prior: [0.8, 0.2],
};
const policy = { detectionLimit: 3, everyDays: 7, delayDays: 1 };
const weekly = { incidence: [1, 1, 0, 2, 5, 3, 3, 3, 6, 2], serialInterval: [0, 0.5, 0.5] };
const chance = () => seededChance(1);

type Row = readonly [what: string, reason: RefusalReason, ask: () => Outcome<unknown>];

const ROWS: readonly Row[] = [
  // Proportions
  ['no trials', 'not-a-count', () => wilson({ events: 0, trials: 0 })],
  ['negative events', 'not-a-count', () => clopperPearson({ events: -1, trials: 5 })],
  ['more events than trials', 'out-of-range', () => jeffreys({ events: 6, trials: 5 })],
  ['a confidence of 1', 'not-a-probability', () => midP({ events: 1, trials: 5, confidence: 1 })],
  ['half an event', 'not-a-count', () => blaker({ events: 0.5, trials: 5 })],
  ['NaN trials', 'not-a-count', () => sterne({ events: 1, trials: NaN_ })],
  ['too many trials for Sterne', 'too-large', () => sterne({ events: 1, trials: 20_001 })],
  [
    'an empty second group',
    'not-a-count',
    () => newcombeDifference({ events: 1, trials: 2 }, { events: 0, trials: 0 }),
  ],
  [
    'an empty first group',
    'not-a-count',
    () => newcombeDifference({ events: 0, trials: 0 }, { events: 1, trials: 2 }),
  ],
  [
    'a confidence of 0 for a difference',
    'not-a-probability',
    () => newcombeDifference({ events: 1, trials: 2 }, { events: 1, trials: 2 }, 0),
  ],
  [
    'a negative cell',
    'not-a-count',
    () =>
      fisherExact([
        [1, 2],
        [-3, 4],
      ]),
  ],
  [
    'a confidence of 2',
    'not-a-probability',
    () =>
      fisherExact(
        [
          [1, 2],
          [3, 4],
        ],
        2,
      ),
  ],
  [
    'a table too large',
    'too-large',
    () =>
      fisherExact([
        [2e6, 2e6],
        [2e6, 2e6],
      ]),
  ],
  [
    'an empty row',
    'undefined',
    () =>
      chiSquareTwoByTwo(
        [
          [0, 0],
          [3, 4],
        ],
        { correct: true },
      ),
  ],
  [
    'an empty column',
    'undefined',
    () =>
      chiSquareTwoByTwo(
        [
          [0, 1],
          [0, 4],
        ],
        { correct: true },
      ),
  ],
  [
    'a cell that is no count',
    'not-a-count',
    () =>
      chiSquareTwoByTwo(
        [
          [0.5, 1],
          [0, 4],
        ],
        { correct: true },
      ),
  ],
  ['a target of 0', 'not-a-probability', () => funnelLimits(0, [10], 0.025)],
  ['a tail of 0', 'not-a-probability', () => funnelLimits(0.1, [10], 0)],
  ['a unit without tests', 'not-a-count', () => funnelLimits(0.1, [10, 0], 0.025)],
  [
    'a prior of 0',
    'out-of-range',
    () => probabilityHigher({ events: 1, trials: 2 }, { events: 1, trials: 2 }, [0, 1]),
  ],
  [
    'a second prior of 0',
    'out-of-range',
    () => probabilityHigher({ events: 1, trials: 2 }, { events: 1, trials: 2 }, [1, 0]),
  ],
  [
    'a wrong first tally',
    'out-of-range',
    () => probabilityHigher({ events: 3, trials: 2 }, { events: 1, trials: 2 }),
  ],
  [
    'a wrong second tally',
    'out-of-range',
    () => probabilityHigher({ events: 1, trials: 2 }, { events: 3, trials: 2 }),
  ],
  ['p0 above 1', 'not-a-probability', () => binomialTest({ events: 1, trials: 2 }, 1.1)],
  ['a wrong tally to test', 'not-a-count', () => binomialTest({ events: 1, trials: 0 }, 0.1)],
  [
    'nobody exposed',
    'not-a-count',
    () => attackRates({ events: 0, trials: 0 }, { events: 1, trials: 2 }),
  ],
  [
    'nobody unexposed',
    'not-a-count',
    () => attackRates({ events: 1, trials: 2 }, { events: 0, trials: 0 }),
  ],
  ['negative trials', 'not-a-count', () => zeroEventsUpper(-1)],
  ['a confidence of 1 of nothing', 'not-a-probability', () => zeroEventsUpper(5, 1)],
  // Diagnostics
  [
    'a sensitivity above 1',
    'not-a-probability',
    () => postTest({ pre: 0.5, sensitivity: 1.2, specificity: 1, result: 'positive' }),
  ],
  [
    'a specificity that is NaN',
    'not-a-probability',
    () => postTest({ pre: 0.5, sensitivity: 1, specificity: NaN_, result: 'positive' }),
  ],
  [
    'a pre-test chance below 0',
    'not-a-probability',
    () => postTest({ pre: -0.1, ...se, result: 'positive' }),
  ],
  [
    'a positive that cannot be',
    'impossible',
    () => postTest({ pre: 0, sensitivity: 0.7, specificity: 1, result: 'positive' }),
  ],
  [
    'a negative that cannot be',
    'impossible',
    () => postTest({ pre: 1, sensitivity: 1, specificity: 0.9, result: 'negative' }),
  ],
  [
    'a test that is always negative coming out positive',
    'impossible',
    () => postTest({ pre: 0.5, sensitivity: 0, specificity: 1, result: 'positive' }),
  ],
  [
    'ratios of no probability',
    'not-a-probability',
    () => likelihoodRatios({ sensitivity: 2, specificity: 1 }),
  ],
  [
    'a series that cannot be',
    'impossible',
    () => postTestSequence(0, [{ sensitivity: 0.7, specificity: 1, result: 'positive' }]),
  ],
  [
    'a series with a wrong test',
    'not-a-probability',
    () => postTestSequence(0.5, [{ sensitivity: 7, specificity: 1, result: 'positive' }]),
  ],
  ['a series from no chance', 'not-a-probability', () => postTestSequence(NaN_, [])],
  [
    'a covariance too large in the infected',
    'out-of-range',
    () =>
      postTestCorrelatedNegatives({
        pre: 0.5,
        first: se,
        second: se,
        covarianceInfected: 0.5,
        covarianceUninfected: 0,
      }),
  ],
  [
    'a covariance too low in the infected',
    'out-of-range',
    () =>
      postTestCorrelatedNegatives({
        pre: 0.5,
        first: se,
        second: se,
        covarianceInfected: -0.2,
        covarianceUninfected: 0,
      }),
  ],
  [
    'a covariance too large in the uninfected',
    'out-of-range',
    () =>
      postTestCorrelatedNegatives({
        pre: 0.5,
        first: se,
        second: se,
        covarianceInfected: 0,
        covarianceUninfected: 0.2,
      }),
  ],
  [
    'a covariance that is NaN',
    'not-a-number',
    () =>
      postTestCorrelatedNegatives({
        pre: 0.5,
        first: se,
        second: se,
        covarianceInfected: NaN_,
        covarianceUninfected: 0,
      }),
  ],
  [
    'two negatives of tests never negative',
    'impossible',
    () =>
      postTestCorrelatedNegatives({
        pre: 1,
        first: { sensitivity: 1, specificity: 1 },
        second: se,
        covarianceInfected: 0,
        covarianceUninfected: 0,
      }),
  ],
  ['half a success', 'not-a-count', () => betaPosterior({ successes: 0.5, failures: 1 })],
  [
    'a probability of 2',
    'not-a-probability',
    () => betaPosterior({ successes: 1, failures: 1, probabilities: [2] }),
  ],
  [
    'a prior below 0',
    'out-of-range',
    () => betaPosterior({ successes: 1, failures: 1, prior: [-1, 1] }),
  ],
  [
    'an uncertain chance of 2',
    'not-a-probability',
    () =>
      postTestUncertain({ pre: 2, sensitivity: [1, 1], specificity: [1, 1], result: 'positive' }),
  ],
  [
    'a Beta of 0',
    'out-of-range',
    () =>
      postTestUncertain({ pre: 0.5, sensitivity: [0, 1], specificity: [1, 1], result: 'positive' }),
  ],
  [
    'a quantile at 0',
    'not-a-probability',
    () =>
      postTestUncertain({
        pre: 0.5,
        sensitivity: [1, 1],
        specificity: [1, 1],
        result: 'positive',
        probabilities: [0],
      }),
  ],
  ['a day before exposure', 'not-tabulated', () => falseNegativeRateByDay(0)],
  [
    'a day that the abstract does not give',
    'not-tabulated',
    () => falseNegativeRateByDay(2, 'abstract-2020-05'),
  ],
  [
    'a false-negative rate above 1',
    'not-a-probability',
    () => falseOmissionRate({ pre: 0.1, falseNegativeRate: 1.1, specificity: 1 }),
  ],
  [
    'a test no better than chance',
    'undefined',
    () => truePrevalence({ events: 1, trials: 2 }, { sensitivity: 0.5, specificity: 0.5 }),
  ],
  ['a prevalence of nobody', 'not-a-count', () => truePrevalence({ events: 0, trials: 0 }, se)],
  [
    'a prevalence with a wrong test',
    'not-a-probability',
    () => truePrevalence({ events: 0, trials: 5 }, { sensitivity: -1, specificity: 1 }),
  ],
  [
    'a useless test, delta method',
    'undefined',
    () =>
      truePrevalenceDelta(
        { events: 1, trials: 2 },
        { sensitivity: 0.5, specificity: 0.5, sensitivityTrials: 10, specificityTrials: 10 },
      ),
  ],
  [
    'a sensitivity from nobody',
    'out-of-range',
    () =>
      truePrevalenceDelta(
        { events: 1, trials: 2 },
        { ...se, sensitivityTrials: 0, specificityTrials: 10 },
      ),
  ],
  [
    'a specificity from nobody',
    'out-of-range',
    () =>
      truePrevalenceDelta(
        { events: 1, trials: 2 },
        { ...se, sensitivityTrials: 10, specificityTrials: 0 },
      ),
  ],
  [
    'a delta confidence of 1',
    'not-a-probability',
    () =>
      truePrevalenceDelta(
        { events: 1, trials: 2 },
        { ...se, sensitivityTrials: 10, specificityTrials: 10 },
        1,
      ),
  ],
  // Freedom
  ['nobody in the home', 'not-a-count', () => detectionProbability({ ...survey, population: 0 })],
  [
    'more infected than people',
    'out-of-range',
    () => detectionProbability({ ...survey, infected: 25 }),
  ],
  [
    'more tested than people',
    'out-of-range',
    () => detectionProbability({ ...survey, tested: 25 }),
  ],
  [
    'half a person infected',
    'not-a-count',
    () => detectionProbability({ ...survey, infected: 0.5 }),
  ],
  ['half a person tested', 'not-a-count', () => detectionProbability({ ...survey, tested: 0.5 })],
  [
    'detection with a wrong test',
    'not-a-probability',
    () => detectionProbabilityApproximate({ ...survey, sensitivity: 2 }),
  ],
  [
    'a prevalence of 2',
    'not-a-probability',
    () => detectionProbabilityLarge({ tested: 3, prevalence: 2, sensitivity: 1 }),
  ],
  [
    'minus one tested',
    'not-a-count',
    () => detectionProbabilityLarge({ tested: -1, prevalence: 0.1, sensitivity: 1 }),
  ],
  [
    'a sensitivity of NaN',
    'not-a-probability',
    () => detectionProbabilityLarge({ tested: 1, prevalence: 0.1, sensitivity: NaN_ }),
  ],
  [
    'minus one positive',
    'not-a-count',
    () => atLeastPositives({ ...survey, specificity: 1, positives: -1 }),
  ],
  [
    'a specificity of 2',
    'not-a-probability',
    () => atLeastPositives({ ...survey, specificity: 2, positives: 1 }),
  ],
  [
    'a survey that cannot be',
    'out-of-range',
    () => atLeastPositives({ ...survey, tested: 99, specificity: 1, positives: 1 }),
  ],
  [
    'a sample beyond everybody',
    'out-of-range',
    () => sampleSize({ ...size, infected: 1, sensitivity: 0.7 }),
  ],
  ['a sample to find nobody', 'out-of-range', () => sampleSize({ ...size, infected: 0 })],
  ['a sample with confidence 1', 'not-a-probability', () => sampleSize({ ...size, confidence: 1 })],
  [
    'an approximate sample beyond everybody',
    'out-of-range',
    () => sampleSizeMacDiarmid({ ...size, infected: 1, sensitivity: 0.7 }),
  ],
  [
    'an approximate sample to find nobody',
    'not-a-count',
    () => sampleSizeMacDiarmid({ ...size, infected: 0 }),
  ],
  [
    'an approximate sample with confidence 0',
    'not-a-probability',
    () => sampleSizeMacDiarmid({ ...size, confidence: 0 }),
  ],
  [
    'more infected than people, approximately',
    'out-of-range',
    () => sampleSizeCannonRoe({ ...size, infected: 25 }),
  ],
  ['nobody, approximately', 'not-a-count', () => sampleSizeCannonRoe({ ...size, population: 0 })],
  ['a sample of no prevalence', 'out-of-range', () => sampleSizeLarge(0, 1, 0.95)],
  ['a sample of a prevalence above 1', 'not-a-probability', () => sampleSizeLarge(2, 1, 0.95)],
  ['a sample by a wrong test', 'not-a-probability', () => sampleSizeLarge(0.1, 2, 0.95)],
  ['a sample with a confidence of 1', 'not-a-probability', () => sampleSizeLarge(0.1, 1, 1)],
  ['no rounds', 'empty', () => freedomSeries({ ...series, detection: [] })],
  ['a detection of 2', 'not-a-probability', () => freedomSeries({ ...series, detection: [2] })],
  [
    'an introduction of 2',
    'not-a-probability',
    () => freedomSeries({ ...series, introduction: 2 }),
  ],
  ['a prior of 2', 'not-a-probability', () => freedomSeries({ ...series, prior: 2 })],
  [
    'risks for other rounds',
    'lengths-differ',
    () => freedomSeries({ ...series, introduction: [0.1, 0.1] }),
  ],
  ['a target of 1', 'not-a-probability', () => sampleSizeForFreedom({ ...freedomSize, target: 1 })],
  ['a hopeless prior', 'out-of-range', () => sampleSizeForFreedom({ ...freedomSize, prior: 0 })],
  ['a wrong prior', 'not-a-probability', () => sampleSizeForFreedom({ ...freedomSize, prior: -1 })],
  [
    'a wrong introduction',
    'not-a-probability',
    () => sampleSizeForFreedom({ ...freedomSize, introduction: -1 }),
  ],
  [
    'a wrong sensitivity',
    'not-a-probability',
    () => sampleSizeForFreedom({ ...freedomSize, sensitivity: -1 }),
  ],
  [
    'half a population',
    'not-a-count',
    () => sampleSizeForFreedom({ ...freedomSize, population: 0.5 }),
  ],
  [
    'a home too small for the target',
    'out-of-range',
    () => sampleSizeForFreedom({ ...freedomSize, population: 5, sensitivity: 0.3 }),
  ],
  ['a chance of 2', 'not-a-probability', () => poissonBinomial([0.5, 2])],
  [
    'people without tests',
    'lengths-differ',
    () => homeClearIndependent({ prior: [0.1], sensitivity: [], specificity: 1 }),
  ],
  [
    'a person with a wrong prior',
    'not-a-probability',
    () => homeClearIndependent({ prior: [2], sensitivity: [1], specificity: 1 }),
  ],
  [
    'a person with a wrong test',
    'not-a-probability',
    () => homeClearIndependent({ prior: [0.2], sensitivity: [2], specificity: 1 }),
  ],
  [
    'a home with a wrong specificity',
    'not-a-probability',
    () => homeClearIndependent({ prior: [0.2], sensitivity: [1], specificity: 2 }),
  ],
  [
    'a cluster larger than the home',
    'out-of-range',
    () => homeClearCluster({ ...cluster, infected: [0, 25] }),
  ],
  ['half a cluster', 'not-a-count', () => homeClearCluster({ ...cluster, infected: [0, 0.5] })],
  [
    'clusters without weights',
    'lengths-differ',
    () => homeClearCluster({ ...cluster, prior: [1] }),
  ],
  ['a negative weight', 'out-of-range', () => homeClearCluster({ ...cluster, prior: [1, -1] })],
  ['no clusters', 'empty', () => homeClearCluster({ ...cluster, infected: [], prior: [] })],
  [
    'more tested than there are',
    'out-of-range',
    () => homeClearCluster({ ...cluster, tested: 25 }),
  ],
  [
    'a clear round that cannot be',
    'impossible',
    () => homeClearCluster({ population: 3, tested: 3, sensitivity: 1, infected: [1], prior: [1] }),
  ],
  [
    'a cluster found by a wrong test',
    'not-a-probability',
    () => homeClearCluster({ ...cluster, sensitivity: 2 }),
  ],
  [
    'nobody to be infected',
    'not-a-count',
    () => mostInfectedConsistent({ population: 0, tested: 0, sensitivity: 1, confidence: 0.9 }),
  ],
  [
    'certainty',
    'not-a-probability',
    () => mostInfectedConsistent({ population: 5, tested: 3, sensitivity: 1, confidence: 1 }),
  ],
  // Survival
  ['no waits', 'empty', () => kaplanMeier({ time: [], event: [] })],
  ['a wait below 0', 'out-of-range', () => kaplanMeier({ time: [-1], event: [1] })],
  ['a wait that is NaN', 'out-of-range', () => kaplanMeier({ time: [NaN_], event: [1] })],
  ['an event of 2', 'out-of-range', () => kaplanMeier({ time: [1], event: [2] })],
  ['waits without events', 'lengths-differ', () => kaplanMeier({ time: [1, 2], event: [1] })],
  ['limits of certainty', 'not-a-probability', () => limitCurves(curve, 'log', 1)],
  ['a quantile of 2', 'not-a-probability', () => survivalQuantiles(curve, [2])],
  [
    'quantiles of certainty',
    'not-a-probability',
    () => survivalQuantiles(curve, [0.5], { confidence: 1 }),
  ],
  ['an age below 0', 'out-of-range', () => conditionalArrival(curve, { age: -1, by: 3 })],
  ['a time below 0', 'out-of-range', () => conditionalArrival(curve, { age: 1, by: -3 })],
  [
    'arrival with certainty',
    'not-a-probability',
    () => conditionalArrival(curve, { age: 1, by: 3, confidence: 1 }),
  ],
  ['an age nothing reached', 'undefined', () => conditionalArrival(over, { age: 2, by: 3 })],
  [
    'an age nothing was watched beyond',
    'undefined',
    () => conditionalArrival(curve, { age: curve.lastTime, by: 99 }),
  ],
  ['one group', 'empty', () => compareGroups([wait])],
  ['a group of nobody', 'empty', () => compareGroups([wait, { time: [], event: [] }])],
  ['a negative rho', 'out-of-range', () => compareGroups([wait, wait], -1)],
  [
    'groups without events',
    'undefined',
    () =>
      compareGroups([
        { time: [1], event: [0] },
        { time: [2], event: [0] },
      ]),
  ],
  ['a Weibull of nothing arrived', 'undefined', () => weibullFit({ time: [1, 2], event: [0, 0] })],
  ['a Weibull of one time', 'undefined', () => weibullFit({ time: [2, 2], event: [1, 1] })],
  ['a Weibull with a wait of 0', 'out-of-range', () => weibullFit({ time: [0, 2], event: [1, 1] })],
  [
    'a lognormal of nothing arrived',
    'undefined',
    () => lognormalFit({ time: [1, 2], event: [0, 0] }),
  ],
  ['a lognormal of one time', 'undefined', () => lognormalFit({ time: [2, 2], event: [1, 1] })],
  [
    'a lognormal with a wait of 0',
    'out-of-range',
    () => lognormalFit({ time: [0, 2], event: [1, 1] }),
  ],
  ['a horizon of 0', 'out-of-range', () => restrictedMean(curve, 0)],
  ['a state of 3', 'out-of-range', () => cumulativeIncidence({ time: [1], state: [3] }, [1])],
  [
    'states without times',
    'lengths-differ',
    () => cumulativeIncidence({ time: [1], state: [] }, [1]),
  ],
  ['no states', 'empty', () => cumulativeIncidence({ time: [], state: [] }, [1])],
  [
    'a time below 0 asked for',
    'out-of-range',
    () => cumulativeIncidence({ time: [1], state: [1] }, [-1]),
  ],
  [
    'a wait below 0 with a state',
    'out-of-range',
    () => cumulativeIncidence({ time: [-1], state: [1] }, [1]),
  ],
  // Charts
  ['no samples', 'empty', () => pChart({ counts: [], sizes: 5 })],
  ['more voids than tests', 'out-of-range', () => pChart({ counts: [6], sizes: 5 })],
  ['a sample of nobody', 'not-a-count', () => pChart({ counts: [0], sizes: 0 })],
  ['samples without sizes', 'lengths-differ', () => pChart({ counts: [1, 2], sizes: [5] })],
  ['no sigmas', 'out-of-range', () => npChart([1], 5, 0)],
  ['one moving range', 'empty', () => laneyPChart({ counts: [1], sizes: 5 })],
  ['a Laney chart of nothing', 'empty', () => laneyPChart({ counts: [], sizes: 5 })],
  ['a false alarm of share 0', 'not-a-probability', () => pChartFalseAlarm(5, 0)],
  ['a false alarm of nobody', 'not-a-count', () => pChartFalseAlarm(0, 0.1)],
  ['a false alarm at sigma 0', 'out-of-range', () => pChartFalseAlarm(5, 0.1, 0)],
  [
    'a lambda of 0',
    'out-of-range',
    () => ewma({ values: [1], target: 1, sigma: 1, lambda: 0, width: 3 }),
  ],
  [
    'a lambda above 1',
    'out-of-range',
    () => ewma({ values: [1], target: 1, sigma: 1, lambda: 1.1, width: 3 }),
  ],
  ['no values', 'empty', () => ewma({ values: [], target: 1, sigma: 1, lambda: 0.1, width: 3 })],
  [
    'a value of NaN',
    'not-a-number',
    () => ewma({ values: [NaN_], target: 1, sigma: 1, lambda: 0.1, width: 3 }),
  ],
  [
    'a sigma of 0',
    'out-of-range',
    () => ewma({ values: [1], target: 1, sigma: 0, lambda: 0.1, width: 3 }),
  ],
  [
    'a width of 0',
    'out-of-range',
    () => ewma({ values: [1], target: 1, sigma: 1, lambda: 0.1, width: 0 }),
  ],
  [
    'a target of NaN',
    'not-a-number',
    () => ewma({ values: [1], target: NaN_, sigma: 1, lambda: 0.1, width: 3 }),
  ],
  [
    'a trend to 0',
    'not-a-probability',
    () => ewmaProportion({ counts: [1], sizes: 5, lambda: 0.1, target: 0, width: 3 }),
  ],
  [
    'a trend with lambda 2',
    'out-of-range',
    () => ewmaProportion({ counts: [1], sizes: 5, lambda: 2, target: 0.1, width: 3 }),
  ],
  [
    'a trend of width 0',
    'out-of-range',
    () => ewmaProportion({ counts: [1], sizes: 5, lambda: 0.2, target: 0.1, width: 0 }),
  ],
  [
    'a trend of nothing',
    'empty',
    () => ewmaProportion({ counts: [], sizes: 5, lambda: 0.2, target: 0.1, width: 3 }),
  ],
  [
    'a CUSUM limit of 0',
    'out-of-range',
    () => cusumAverageRunLength({ reference: 0.5, limit: 0, shift: 0, sides: 'one' }),
  ],
  [
    'a CUSUM reference below 0',
    'out-of-range',
    () => cusumAverageRunLength({ reference: -0.5, limit: 4, shift: 0, sides: 'one' }),
  ],
  [
    'a CUSUM shift of NaN',
    'not-a-number',
    () => cusumAverageRunLength({ reference: 0.5, limit: 4, shift: NaN_, sides: 'one' }),
  ],
  [
    'a CUSUM start below 0',
    'out-of-range',
    () =>
      cusumAverageRunLength({ reference: 0.5, limit: 4, shift: 0, sides: 'one', headStart: -1 }),
  ],
  [
    'a barrier at the limit',
    'out-of-range',
    () => ewmaAverageRunLength({ lambda: 0.1, width: 3, shift: 0, sides: 'one', barrier: 3 }),
  ],
  [
    'an EWMA of lambda 0',
    'out-of-range',
    () => ewmaAverageRunLength({ lambda: 0, width: 3, shift: 0, sides: 'two' }),
  ],
  [
    'an EWMA of width 0',
    'out-of-range',
    () => ewmaAverageRunLength({ lambda: 0.1, width: 0, shift: 0, sides: 'two' }),
  ],
  [
    'an EWMA shift of NaN',
    'not-a-number',
    () => ewmaAverageRunLength({ lambda: 0.1, width: 3, shift: NaN_, sides: 'two' }),
  ],
  [
    'a Poisson mean of 0',
    'out-of-range',
    () => poissonCusumRunLength({ mean: 0, reference: 1, limit: 5 }),
  ],
  [
    'a Poisson limit of 0',
    'out-of-range',
    () => poissonCusumRunLength({ mean: 1, reference: 1, limit: 0 }),
  ],
  [
    'a Poisson reference below 0',
    'out-of-range',
    () => poissonCusumRunLength({ mean: 1, reference: -1, limit: 5 }),
  ],
  [
    'a Poisson head start below 0',
    'out-of-range',
    () => poissonCusumRunLength({ mean: 1, reference: 1, limit: 5, headStart: -1 }),
  ],
  [
    'a reference off the grid',
    'out-of-range',
    () => poissonCusumRunLength({ mean: 1, reference: Math.PI, limit: 5 }),
  ],
  [
    'a Poisson chart too large',
    'too-large',
    () => poissonCusumRunLength({ mean: 1, reference: 1.01, limit: 50 }),
  ],
  ['an m of 1', 'out-of-range', () => bernoulliCusumRunLength({ m: 1, limit: 2, share: 0.1 })],
  ['an m of 0', 'out-of-range', () => bernoulliCusumRunLength({ m: 0, limit: 2, share: 0.1 })],
  [
    'an m off the grid',
    'out-of-range',
    () => bernoulliCusumRunLength({ m: 27.3629, limit: 2, share: 0.1 }),
  ],
  [
    'a Bernoulli limit of 0',
    'out-of-range',
    () => bernoulliCusumRunLength({ m: 30, limit: 0, share: 0.1 }),
  ],
  [
    'a Bernoulli share of 2',
    'not-a-probability',
    () => bernoulliCusumRunLength({ m: 30, limit: 2, share: 2 }),
  ],
  [
    'a Bernoulli head start below 0',
    'out-of-range',
    () => bernoulliCusumRunLength({ m: 30, limit: 2, share: 0.2, headStart: -1 }),
  ],
  [
    'a Bernoulli chart too large',
    'too-large',
    () => bernoulliCusumRunLength({ m: 1e6, limit: 6, share: 0.2 }),
  ],
  [
    'a fractional chart too large',
    'too-large',
    () => bernoulliCusumRunLength({ m: 1000.5, limit: 2, share: 0.2 }),
  ],
  ['shares that do not rise', 'out-of-range', () => bernoulliCusumReference(0.06, 0.06)],
  ['a usual share of 0', 'not-a-probability', () => bernoulliCusumReference(0, 0.06)],
  ['a raised share of 1', 'not-a-probability', () => bernoulliCusumReference(0.1, 1)],
  ['a design without tests', 'out-of-range', () => bernoulliCusumDesign(0.02, 0.06, 0)],
  ['a design of wrong shares', 'out-of-range', () => bernoulliCusumDesign(0.06, 0.02, 100)],
  ['a void of 2', 'out-of-range', () => bernoulliCusumPath([0, 2], 30)],
  ['a path of m 0', 'out-of-range', () => bernoulliCusumPath([0], 0)],
  ['a path from below 0', 'out-of-range', () => bernoulliCusumPath([0], 30, { start: -1 })],
  ['no gaps', 'empty', () => gChart([])],
  ['a gap of half', 'not-a-count', () => gChart([0.5])],
  ['voids only', 'undefined', () => gChart([0, 0])],
  ['a g chart of tail 0', 'not-a-probability', () => gChart([3], 0)],
  ['a gap signal of share 0', 'not-a-probability', () => shortestGapSignal(0, 0.01)],
  ['a gap signal of alpha 0', 'not-a-probability', () => shortestGapSignal(0.1, 0)],
  ['no gaps together', 'not-a-count', () => kGapQuantile(0.1, 0, 0.01)],
  ['gaps of share 1', 'not-a-probability', () => kGapQuantile(1, 2, 0.01)],
  ['gaps of alpha 1', 'not-a-probability', () => kGapQuantile(0.1, 2, 1)],
  ['a signal of alpha 0', 'not-a-probability', () => binomialSignal(10, 0.1, 0)],
  ['a signal of share 0', 'not-a-probability', () => binomialSignal(10, 0, 0.1)],
  ['a signal of half a test', 'not-a-count', () => binomialSignal(0.5, 0.1, 0.1)],
  [
    'a CUSUM that never signals',
    'too-large',
    () => cusumAverageRunLength({ reference: 1e7, limit: 4, shift: 0, sides: 'two' }),
  ],
  [
    'a CUSUM that signals once in 1e13',
    'too-large',
    () => cusumAverageRunLength({ reference: 4, limit: 8, shift: 0, sides: 'one' }),
  ],
  ['a power beyond all numbers', 'out-of-range', () => tChart([286, 948, 4], { power: 1e7 })],
  [
    'odds of a swap that is certain',
    'impossible',
    () => swapOdds({ swapChance: 1, ifSwapped: 0.5, ifRight: 0.5 }),
  ],
  [
    'odds against what cannot be',
    'impossible',
    () => swapOdds({ swapChance: 0.1, ifSwapped: 0.5, ifRight: 0 }),
  ],
  [
    'odds of a chance above 1',
    'not-a-probability',
    () => swapOdds({ swapChance: 0.1, ifSwapped: 1.5, ifRight: 0.5 }),
  ],
  ['one time', 'empty', () => tChart([5])],
  ['a time below 0 to chart', 'out-of-range', () => tChart([5, -1])],
  ['a power of 0', 'out-of-range', () => tChart([5, 1], { power: 0 })],
  ['a range factor of 0', 'out-of-range', () => tChart([5, 1], { rangeFactor: 0 })],
  // Epidemics
  [
    'too few days',
    'empty',
    () => reproductionNumber({ incidence: [1, 2, 3], serialInterval: [0, 1] }),
  ],
  ['no days', 'empty', () => reproductionNumber({ incidence: [], serialInterval: [0, 1] })],
  ['no serial interval', 'empty', () => reproductionNumber({ ...weekly, serialInterval: [] })],
  [
    'a serial interval on day 0',
    'out-of-range',
    () => reproductionNumber({ ...weekly, serialInterval: [0.5, 0.5] }),
  ],
  [
    'a serial interval that sums to 2',
    'out-of-range',
    () => reproductionNumber({ ...weekly, serialInterval: [0, 1, 1] }),
  ],
  [
    'a negative weight of the interval',
    'out-of-range',
    () => reproductionNumber({ ...weekly, serialInterval: [0, 2, -1] }),
  ],
  [
    'negative cases',
    'out-of-range',
    () => reproductionNumber({ ...weekly, incidence: [1, -1, 2, 3, 3, 3, 3, 3, 3] }),
  ],
  ['a window of 0', 'not-a-count', () => reproductionNumber({ ...weekly, window: 0 })],
  ['a prior mean of 0', 'out-of-range', () => reproductionNumber({ ...weekly, priorMean: 0 })],
  ['a prior spread of 0', 'out-of-range', () => reproductionNumber({ ...weekly, priorSd: 0 })],
  ['a serial interval of mean 1', 'out-of-range', () => discreteSerialInterval(1, 1, [1])],
  ['a serial interval without spread', 'out-of-range', () => discreteSerialInterval(4, 0, [1])],
  ['half a day', 'not-a-count', () => discreteSerialInterval(4, 1, [0.5])],
  ['an infinite interval', 'out-of-range', () => discreteSerialInterval(Infinity, 1, [1])],
  ['cases on one day', 'undefined', () => growthRate([0, 5, 0])],
  ['half a case', 'not-a-count', () => growthRate([0.5, 5])],
  ['growth with certainty', 'not-a-probability', () => growthRate([1, 5], 1)],
  ['a rate of NaN', 'not-a-number', () => reproductionFromGrowth(NaN_, { mean: 5, sd: 2 })],
  ['a generation of 0', 'out-of-range', () => reproductionFromGrowth(0.1, { mean: 0, sd: 2 })],
  ['a spread below 0', 'out-of-range', () => reproductionFromGrowth(0.1, { mean: 5, sd: -2 })],
  ['a fall too fast', 'out-of-range', () => reproductionFromGrowth(-2, { mean: 5, sd: 3 })],
  ['a fall too fast for SEIR', 'out-of-range', () => reproductionFromGrowthSeir(-2, 1, 0.1)],
  [
    'a fall too fast for the infectious',
    'out-of-range',
    () => reproductionFromGrowthSeir(-2, 0.1, 1),
  ],
  ['a latent period below 0', 'out-of-range', () => reproductionFromGrowthSeir(0.1, -1, 1)],
  ['an infectious period below 0', 'out-of-range', () => reproductionFromGrowthSeir(0.1, 1, -1)],
  ['a SEIR rate of NaN', 'not-a-number', () => reproductionFromGrowthSeir(NaN_, 1, 1)],
  ['a reproduction number below 0', 'out-of-range', () => finalSize(-1)],
  ['a susceptible share of 2', 'not-a-probability', () => finalSize(2, { susceptible: 2 })],
  ['a seed of 2', 'not-a-probability', () => finalSize(2, { seed: 2 })],
  [
    'half a susceptible',
    'not-a-count',
    () => reedFrostFinalSize({ susceptible: 0.5, introductions: 1 }, 0.1),
  ],
  [
    'half an introduction',
    'not-a-count',
    () => reedFrostFinalSize({ susceptible: 5, introductions: 0.5 }, 0.1),
  ],
  [
    'a chance of infection of 2',
    'not-a-probability',
    () => reedFrostFinalSize({ susceptible: 5, introductions: 1 }, 2),
  ],
  [
    'too many people',
    'out-of-range',
    () => reedFrostFinalSize({ susceptible: 601, introductions: 1 }, 0.1),
  ],
  [
    'too many introductions',
    'out-of-range',
    () => reedFrostFinalSize({ susceptible: 6, introductions: 601 }, 0.1),
  ],
  [
    'a Greenwood chance of 2',
    'not-a-probability',
    () => greenwoodFinalSize({ susceptible: 5, introductions: 1 }, 2),
  ],
  [
    'too many for Greenwood',
    'out-of-range',
    () => greenwoodFinalSize({ susceptible: 601, introductions: 1 }, 0.2),
  ],
  [
    'a household of half',
    'not-a-count',
    () => longiniKoopman({ people: 0.5, escapeCommunity: 0.9, escapePerInfective: 0.9 }),
  ],
  [
    'a household of 101',
    'out-of-range',
    () => longiniKoopman({ people: 101, escapeCommunity: 0.9, escapePerInfective: 0.9 }),
  ],
  [
    'an escape of 2',
    'not-a-probability',
    () => longiniKoopman({ people: 5, escapeCommunity: 2, escapePerInfective: 0.9 }),
  ],
  [
    'an escape from each of 2',
    'not-a-probability',
    () => longiniKoopman({ people: 5, escapeCommunity: 0.9, escapePerInfective: 2 }),
  ],
  ['no chains', 'empty', () => fitChainBinomial([])],
  [
    'a chain of nothing',
    'not-a-count',
    () => fitChainBinomial([{ generations: [], households: 1 }]),
  ],
  [
    'a chain with half a case',
    'not-a-count',
    () => fitChainBinomial([{ generations: [1, 0.5], households: 1 }]),
  ],
  [
    'half a household',
    'not-a-count',
    () => fitChainBinomial([{ generations: [1], households: 0.5 }]),
  ],
  [
    'nobody infected',
    'undefined',
    () => fitChainBinomial([{ generations: [1], households: 5 }], { size: 3 }),
  ],
  [
    'everybody infected',
    'undefined',
    () => fitChainBinomial([{ generations: [1, 2], households: 5 }], { size: 3 }),
  ],
  [
    'a case twice',
    'out-of-range',
    () =>
      linkedClusters(
        [
          { id: 'A', day: 1 },
          { id: 'A', day: 2 },
        ],
        14,
      ),
  ],
  ['a case on no day', 'not-a-number', () => linkedClusters([{ id: 'A', day: NaN_ }], 14)],
  ['a window below 0', 'out-of-range', () => linkedClusters([], -1)],
  ['one case to test', 'empty', () => knoxTest({ days: [1], units: [1], windowDays: 3 }, chance())],
  [
    'cases without units',
    'lengths-differ',
    () => knoxTest({ days: [1, 2], units: [1], windowDays: 3 }, chance()),
  ],
  [
    'a Knox window below 0',
    'out-of-range',
    () => knoxTest({ days: [1, 2], units: [1, 1], windowDays: -3 }, chance()),
  ],
  [
    'a Knox day of NaN',
    'not-a-number',
    () => knoxTest({ days: [1, NaN_], units: [1, 1], windowDays: 3 }, chance()),
  ],
  [
    'a pair rate below 0',
    'out-of-range',
    () => stochasticFinalSize({ susceptible: 5, introductions: 1, pairRate: -1, period }),
  ],
  [
    'an infectious period of 0',
    'out-of-range',
    () =>
      stochasticFinalSize({
        susceptible: 5,
        introductions: 1,
        pairRate: 1,
        period: { ...period, mean: 0 },
      }),
  ],
  [
    'half a stage',
    'not-a-count',
    () =>
      stochasticFinalSize({
        susceptible: 5,
        introductions: 1,
        pairRate: 1,
        period: { law: 'erlang', mean: 1, shape: 0.5 },
      }),
  ],
  [
    'half a susceptible at risk',
    'not-a-count',
    () => stochasticFinalSize({ susceptible: 0.5, introductions: 1, pairRate: 1, period }),
  ],
  [
    'a rate below 0 between groups',
    'out-of-range',
    () => twoTypeFinalSize({ ...two, rates: { ...rates, staffToResident: -1 } }),
  ],
  ['half a resident', 'not-a-count', () => twoTypeFinalSize({ ...two, residents: 0.5 })],
  ['half a member of staff', 'not-a-count', () => twoTypeFinalSize({ ...two, staff: 0.5 })],
  [
    'half a stage of two groups',
    'not-a-count',
    () => twoTypeFinalSize({ ...two, period: { law: 'erlang', mean: 1, shape: 0.5 } }),
  ],
  ['groups too large', 'too-large', () => twoTypeFinalSize({ ...two, residents: 150, staff: 150 })],
  [
    'a test every 0 days',
    'not-a-count',
    () => screeningEffects([{ ...policy, everyDays: 0 }], chance()),
  ],
  [
    'a delay of half a day',
    'not-a-count',
    () => screeningEffects([{ ...policy, delayDays: 0.5 }], chance()),
  ],
  [
    'a detection limit below 0',
    'out-of-range',
    () => screeningEffects([{ ...policy, detectionLimit: -1 }], chance()),
  ],
  [
    'a test sensitivity of 2',
    'not-a-probability',
    () => screeningEffects([{ ...policy, sensitivity: 2 }], chance()),
  ],
  ['no courses', 'not-a-count', () => screeningEffects([policy], chance(), { courses: 0 })],
  [
    'symptoms in two of one',
    'not-a-probability',
    () => screeningEffects([policy], chance(), { symptomatic: 2 }),
  ],
  ['a reproduction below 0', 'out-of-range', () => screenedReproduction(-1, 0.5, 0.5)],
  ['a factor of 2', 'not-a-probability', () => screenedReproduction(2, 2, 0.5)],
  ['a participation of 2', 'not-a-probability', () => screenedReproduction(2, 0.5, 2)],
  // Stock
  ['demand below 0', 'out-of-range', () => croston([1, -1], 0.1)],
  ['an alpha of 2', 'out-of-range', () => croston([1], 2)],
  ['an alpha below 0', 'out-of-range', () => croston([1], -0.1)],
  ['a beta of 2', 'out-of-range', () => teunterSyntetosBabai([1], { alpha: 0.1, beta: 2 })],
  ['demand of NaN', 'out-of-range', () => teunterSyntetosBabai([NaN_], { alpha: 0.1, beta: 0.1 })],
  ['no demand to class', 'undefined', () => demandClass([0, 0])],
  ['demand below 0 to class', 'out-of-range', () => demandClass([-1])],
  ['a service of 1', 'not-a-probability', () => reorderPointPoisson(2, 3, 1)],
  ['demand below 0 a day', 'out-of-range', () => reorderPointPoisson(-2, 3, 0.9)],
  ['a lead below 0', 'out-of-range', () => reorderPointPoisson(2, -3, 0.9)],
  ['a mean below 0', 'out-of-range', () => reorderPointNegativeBinomial(-1, 3, 0.9)],
  ['a variance below 0', 'out-of-range', () => reorderPointNegativeBinomial(1, -3, 0.9)],
  [
    'a negative binomial service of 0',
    'not-a-probability',
    () => reorderPointNegativeBinomial(1, 3, 0),
  ],
  [
    'a lead spread below 0',
    'out-of-range',
    () => reorderPointRandomLead({ demandPerDay: 1, leadMean: 1, leadSd: -1, service: 0.9 }),
  ],
  [
    'a mean lead below 0',
    'out-of-range',
    () => reorderPointRandomLead({ demandPerDay: 1, leadMean: -1, leadSd: 1, service: 0.9 }),
  ],
  [
    'demand below 0 with a random lead',
    'out-of-range',
    () => reorderPointRandomLead({ demandPerDay: -1, leadMean: 1, leadSd: 1, service: 0.9 }),
  ],
  [
    'a service of 0 with a random lead',
    'not-a-probability',
    () => reorderPointRandomLead({ demandPerDay: 1, leadMean: 1, leadSd: 1, service: 0 }),
  ],
  ['one count', 'empty', () => negativeBinomialMoments([3])],
  ['a count below 0', 'out-of-range', () => negativeBinomialMoments([3, -1])],
  [
    'a cost of 0',
    'out-of-range',
    () => newsvendor({ law: 'poisson', mean: 5 }, { under: 0, over: 1 }),
  ],
  [
    'an over cost of 0',
    'out-of-range',
    () => newsvendor({ law: 'poisson', mean: 5 }, { under: 1, over: 0 }),
  ],
  [
    'a ratio of 1',
    'not-a-probability',
    () => newsvendor({ law: 'poisson', mean: 5 }, { criticalRatio: 1 }),
  ],
  [
    'a mean demand below 0',
    'out-of-range',
    () => newsvendor({ law: 'poisson', mean: -5 }, { criticalRatio: 0.5 }),
  ],
  [
    'a negative binomial that varies less',
    'out-of-range',
    () => newsvendor({ law: 'negative-binomial', mean: 5, variance: 5 }, { criticalRatio: 0.5 }),
  ],
  [
    'a negative binomial of mean 0',
    'out-of-range',
    () => newsvendor({ law: 'negative-binomial', mean: 0, variance: 5 }, { criticalRatio: 0.5 }),
  ],
  [
    'a binomial of no trials',
    'not-a-count',
    () => newsvendor({ law: 'binomial', trials: 0, chance: 0.5 }, { criticalRatio: 0.5 }),
  ],
  [
    'a binomial of chance 2',
    'not-a-probability',
    () => newsvendor({ law: 'binomial', trials: 5, chance: 2 }, { criticalRatio: 0.5 }),
  ],
  [
    'a normal without spread',
    'out-of-range',
    () => newsvendor({ law: 'normal', mean: 5, sd: 0 }, { criticalRatio: 0.5 }),
  ],
  [
    'a normal of mean below 0',
    'out-of-range',
    () => newsvendor({ law: 'normal', mean: -5, sd: 1 }, { criticalRatio: 0.5 }),
  ],
  [
    'a lognormal without spread',
    'out-of-range',
    () => newsvendor({ law: 'lognormal', meanLog: 1, sdLog: 0 }, { criticalRatio: 0.5 }),
  ],
  [
    'a lognormal of NaN',
    'not-a-number',
    () => newsvendor({ law: 'lognormal', meanLog: NaN_, sdLog: 1 }, { criticalRatio: 0.5 }),
  ],
  [
    'a gamma of shape 0',
    'out-of-range',
    () => newsvendor({ law: 'gamma', shape: 0, scale: 1 }, { criticalRatio: 0.5 }),
  ],
  [
    'a gamma of scale 0',
    'out-of-range',
    () => newsvendor({ law: 'gamma', shape: 1, scale: 0 }, { criticalRatio: 0.5 }),
  ],
  [
    'an exponential of mean 0',
    'out-of-range',
    () => newsvendor({ law: 'exponential', mean: 0 }, { criticalRatio: 0.5 }),
  ],
  [
    'a uniform of no width',
    'out-of-range',
    () => newsvendor({ law: 'uniform', low: 5, high: 5 }, { criticalRatio: 0.5 }),
  ],
  [
    'a uniform from below 0',
    'out-of-range',
    () => newsvendor({ law: 'uniform', low: -5, high: 5 }, { criticalRatio: 0.5 }),
  ],
  [
    'no demand seen',
    'empty',
    () => newsvendor({ law: 'empirical', values: [] }, { criticalRatio: 0.5 }),
  ],
  ['a loss at NaN', 'not-a-number', () => normalLoss(NaN_)],
  ['all void', 'not-a-probability', () => kitsForValid(24, 1, 0.9)],
  ['a void chance below 0', 'not-a-probability', () => kitsForValid(24, -0.1, 0.9)],
  ['certain kits', 'not-a-probability', () => kitsForValid(24, 0.1, 1)],
  ['half a valid result', 'not-a-count', () => kitsForValid(0.5, 0.1, 0.9)],
  ['half a kit', 'not-a-count', () => firstExpiredFirstOut([{ quantity: 0.5, expiryDay: 3 }], [1])],
  [
    'an expiry on half a day',
    'not-a-count',
    () => firstExpiredFirstOut([{ quantity: 5, expiryDay: 0.5 }], [1]),
  ],
  ['half a demand', 'not-a-count', () => firstExpiredFirstOut([], [0.5])],
  ['too much stock', 'too-large', () => expectedExpiryWaste([{ quantity: 5001, expiryDay: 3 }], 1)],
  ['waste under demand below 0', 'out-of-range', () => expectedExpiryWaste([], -1)],
  [
    'waste of half a kit',
    'not-a-count',
    () => expectedExpiryWaste([{ quantity: 0.5, expiryDay: 3 }], 1),
  ],
  ['half a kit at hand', 'not-a-count', () => stockoutChance(0.5, 1, [1])],
  ['a stockout under demand below 0', 'out-of-range', () => stockoutChance(5, -1, [1])],
  [
    'half a kit under any law',
    'not-a-count',
    () => stockoutChanceOf(0.5, { mean: 1, variance: 2 }),
  ],
  [
    'a stockout of more varied demand below 0',
    'out-of-range',
    () => stockoutChanceOf(5, { mean: -1, variance: 2 }),
  ],
  [
    'a spread of demand below 0',
    'out-of-range',
    () => stockoutChanceOf(5, { mean: 1, variance: -2 }),
  ],
  [
    'waste under a spread below 0',
    'out-of-range',
    () => expectedExpiryWaste([{ quantity: 5, expiryDay: 3 }], 1, -1),
  ],
  ['a stockout within days below 0', 'out-of-range', () => stockoutChance(5, 1, [-1])],
  // Identity
  ['a scheme nobody knows', 'unknown-scheme', () => findScheme('guess')],
  ['a letter in digits', 'unknown-character', () => checkCharacters(luhn, '12A4')],
  ['no payload', 'empty', () => checkCharacters(luhn, '')],
  ['a payload of the wrong length', 'out-of-range', () => checkCharacters(upuS10, '123')],
  ['a number that is not issued', 'undefined', () => checkCharacters(nhsNumber, '000000006')],
  ['a code of the check digit alone', 'out-of-range', () => undetectedErrorRates(luhn, 1)],
  ['half a character', 'not-a-count', () => undetectedErrorRates(luhn, 0.5)],
  ['a scheme of too many states', 'too-large', () => undetectedErrorRates(mod1271and36, 8)],
  ['half a code', 'not-a-count', () => randomNearDuplicates(0.5, 6, 10)],
  ['codes of no length', 'not-a-count', () => randomNearDuplicates(5, 0, 10)],
  ['codes of no alphabet', 'not-a-count', () => randomNearDuplicates(5, 6, 0)],
  ['no space for codes', 'not-a-count', () => anyDuplicateChance(5, 0)],
  ['minus one code', 'not-a-count', () => anyDuplicateChance(-1, 5)],
  [
    'serials that outgrow their width',
    'out-of-range',
    () => consecutiveNearDuplicates({ start: 98, n: 5, width: 2 }),
  ],
  [
    'too long a run',
    'out-of-range',
    () => consecutiveNearDuplicates({ start: 1, n: 5001, width: 8 }),
  ],
  [
    'a start below 0',
    'not-a-count',
    () => consecutiveNearDuplicates({ start: -1, n: 5, width: 8 }),
  ],
  ['a run of half', 'not-a-count', () => consecutiveNearDuplicates({ start: 1, n: 0.5, width: 8 })],
  [
    'serials without width',
    'not-a-count',
    () => consecutiveNearDuplicates({ start: 1, n: 5, width: 0 }),
  ],
  [
    'serials too short for their scheme',
    'out-of-range',
    () => consecutiveNearDuplicates({ start: 1, n: 5, width: 3, scheme: upuS10 }),
  ],
];

describe('what cannot be answered is refused, with the reason', () => {
  it.each(ROWS)('%s: %s', (_, reason, ask) => {
    expect(reasonOf(ask())).toBe(reason);
  });
});

type Limit = readonly [what: string, ask: () => Outcome<unknown>];

// Degenerate but answerable: every figure has to be a number (infinite only where said).
const LIMITS: readonly Limit[] = [
  ['ten million trials, none an event', () => wilson({ events: 0, trials: 1e7 })],
  ['ten million trials, all events', () => clopperPearson({ events: 1e7, trials: 1e7 })],
  ['ten million trials, mid-P', () => midP({ events: 3, trials: 1e7 })],
  ['ten million trials, Jeffreys', () => jeffreys({ events: 5e6, trials: 1e7 })],
  ['ten million trials, Blaker', () => blaker({ events: 12, trials: 1e7 })],
  [
    'a table with one outcome only',
    () =>
      fisherExact([
        [0, 0],
        [3, 4],
      ]),
  ],
  [
    'an empty table',
    () =>
      fisherExact([
        [0, 0],
        [0, 0],
      ]),
  ],
  ['p0 of 0 against nothing', () => binomialTest({ events: 0, trials: 5 }, 0)],
  ['p0 of 1 against all', () => binomialTest({ events: 5, trials: 5 }, 1)],
  ['p0 of 0 against something', () => binomialTest({ events: 2, trials: 5 }, 0)],
  [
    'attack rates with a zero cell',
    () => attackRates({ events: 0, trials: 5 }, { events: 2, trials: 5 }),
  ],
  ['rates both 0', () => probabilityHigher({ events: 0, trials: 5 }, { events: 0, trials: 5 })],
  [
    'a pre-test chance of 0 with uncertainty',
    () =>
      postTestUncertain({ pre: 0, sensitivity: [5, 2], specificity: [9, 2], result: 'positive' }),
  ],
  [
    'a pre-test chance of 1 with uncertainty',
    () =>
      postTestUncertain({ pre: 1, sensitivity: [5, 2], specificity: [9, 2], result: 'negative' }),
  ],
  [
    'a home of one, tested perfectly',
    () => homeClearIndependent({ prior: [1], sensitivity: [1], specificity: 1 }),
  ],
  [
    'nobody tested',
    () => mostInfectedConsistent({ population: 5, tested: 0, sensitivity: 1, confidence: 0.9 }),
  ],
  [
    'a perfect test of everybody',
    () => mostInfectedConsistent({ population: 5, tested: 5, sensitivity: 1, confidence: 0.9 }),
  ],
  [
    'detection that is certain, prior 0',
    () => freedomSeries({ detection: [1, 1], introduction: 0, prior: 0 }),
  ],
  ['no waits over', () => kaplanMeier({ time: [1, 2], event: [0, 0] })],
  ['all waits 0', () => kaplanMeier({ time: [0, 0], event: [1, 1] })],
  ['a chart without voids', () => pChart({ counts: [0, 0, 0], sizes: 10 })],
  ['a chart of voids only', () => pChart({ counts: [3, 3], sizes: 3 })],
  [
    'days without cases',
    () => reproductionNumber({ ...weekly, incidence: new Array<number>(12).fill(0) }),
  ],
  [
    'an outbreak of nobody',
    () => stochasticFinalSize({ susceptible: 0, introductions: 1, pairRate: 1, period }),
  ],
  [
    'no introduction',
    () => twoTypeFinalSize({ ...two, introductions: { residents: 0, staff: 0 } }),
  ],
  ['no demand', () => croston([], 0.1)],
  ['no stock', () => expectedExpiryWaste([], 1)],
  ['a mean demand of 0', () => newsvendor({ law: 'poisson', mean: 0 }, { under: 1, over: 1 })],
];

describe('limits are answered with figures', () => {
  it.each(LIMITS)('%s', (_, ask) => {
    const outcome = ask();
    expect(outcome.ok).toBe(true);
    expect(numbersIn(outcome).every((x) => !Number.isNaN(x))).toBe(true);
  });
});
