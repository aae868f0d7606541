import { atLeastPositives } from '../../../statistics/freedom/at-least-positives.ts';
import { detectionProbability, type Survey } from '../../../statistics/freedom/detection.ts';
import { detectionProbabilityApproximate } from '../../../statistics/freedom/detection-approximate.ts';
import { detectionProbabilityLarge } from '../../../statistics/freedom/detection-large.ts';
import { freedomSeries } from '../../../statistics/freedom/freedom-series.ts';
import { homeClearCluster } from '../../../statistics/freedom/home-clear-cluster.ts';
import { homeClearIndependent } from '../../../statistics/freedom/home-clear-independent.ts';
import { mostInfectedConsistent } from '../../../statistics/freedom/most-infected-consistent.ts';
import { poissonBinomial } from '../../../statistics/freedom/poisson-binomial.ts';
import { sampleSize } from '../../../statistics/freedom/sample-size.ts';
import {
  sampleSizeCannonRoe,
  sampleSizeLarge,
  sampleSizeMacDiarmid,
} from '../../../statistics/freedom/sample-size-approximate.ts';
import { sampleSizeForFreedom } from '../../../statistics/freedom/sample-size-for-freedom.ts';
import { zeroEventsUpper } from '../../../statistics/proportions/zero-events-upper.ts';
import { Asked, answer, valueOrNull } from '../answer.ts';
import type { Adapter, Adapters } from '../check.ts';
import type { Input } from '../input.ts';

/** Infected as a count D, or as a share of the population, rounded as epiR does. */
function infectedOf(i: Input, population: number): number {
  const d = i.number('D', 'd', 'pstar', 'prevalence');
  return d > 0 && d < 1 ? Math.max(1, Math.round(population * d)) : d;
}

function survey(i: Input): Survey {
  const population = i.number('N', 'population');
  return {
    population,
    infected: infectedOf(i, population),
    tested: i.number('n', 'tested'),
    sensitivity: i.numberOr(1, 'sens', 'se'),
  };
}

/**
 * A table by population N and infected D. Which rows a source tabulates stands in its answer alone:
 * those labels are the question.
 */
const tableOf = (i: Input, figures: (N: number, D: readonly number[]) => object): unknown => {
  const row = (r: Input) => figures(r.number('N'), r.numbers('D'));
  return i.has('rows')
    ? i.list('rows').map((r) => ({ N: r.number('N'), D: r.numbers('D'), ...row(r) }))
    : new Asked(['N', 'D'], row);
};

const sampleSizeTable95: Adapter = (i) => {
  const confidence = i.numberOr(0.95, 'confidence');
  const sensitivity = i.numberOr(1, 'sens');
  return {
    rows: tableOf(i, (population, D) => {
      const each = D.map((infected) => ({ population, infected, sensitivity, confidence }));
      return {
        exact: each.map((q) => valueOrNull(sampleSize(q))),
        cannonRoe: each.map((q) => valueOrNull(sampleSizeCannonRoe(q))),
      };
    }),
  };
};

const sampleSizeTable95imperfect: Adapter = (i) => {
  const confidence = i.numberOr(0.95, 'confidence');
  return {
    rows: tableOf(i, (population, D) =>
      Object.fromEntries(
        i
          .numbers('sens')
          .map((sensitivity) => [
            `n${Math.round(sensitivity * 100)}`,
            D.map((infected) =>
              valueOrNull(sampleSize({ population, infected, sensitivity, confidence })),
            ),
          ]),
      ),
    ),
  };
};

const sampleSizeApprox: Adapter = (i) => {
  const confidence = i.numberOr(0.95, 'confidence');
  const sensitivity = i.numberOr(1, 'sens');
  if (!i.has('N')) {
    const n = valueOrNull(
      sampleSizeLarge(i.number('prevalence', 'pstar', 'D'), sensitivity, confidence),
    );
    return { epiR: n, exact: n };
  }
  const population = i.number('N');
  const d = i.number('D', 'pstar', 'prevalence');
  const infected = d > 0 && d < 1 ? Math.ceil(population * d - 1e-9) : d;
  const question = { population, infected, sensitivity, confidence };
  return {
    epiR: valueOrNull(sampleSizeMacDiarmid(question)),
    exact: valueOrNull(sampleSize(question)),
    cannonRoe: valueOrNull(sampleSizeCannonRoe(question)),
  };
};

const probFreedomSeries: Adapter = (i) => {
  const intro = i.numbers('pIntro');
  return answer(
    freedomSeries({
      detection: i.numbers('sep'),
      introduction: intro.length === 1 ? (intro[0] as number) : intro,
      prior: i.number('prior'),
    }),
    (s) => ({
      pFree: s.free,
      discountedPrior: s.discountedPrior,
      equilibriumPFree: s.equilibriumFree,
      equilibriumPrior: s.equilibriumPrior,
    }),
  );
};

export const freedom: Adapters = {
  detectProbExact: (i) => answer(detectionProbability(survey(i)), (p) => ({ p })),
  detectProbApprox: (i) =>
    answer(detectionProbabilityApproximate(survey(i)), (p) => ({ p, epiR: p })),
  detectProbBinomial: (i) =>
    answer(
      detectionProbabilityLarge({
        tested: i.number('n'),
        prevalence: i.number('prevalence', 'pstar'),
        sensitivity: i.numberOr(1, 'sens'),
      }),
      (p) => ({ p, epiR: p }),
    ),
  atLeastCPositives: (i) =>
    answer(
      atLeastPositives({
        ...survey(i),
        specificity: i.numberOr(1, 'spec'),
        positives: i.numberOr(1, 'c'),
      }),
      (p) => ({ p, epiR: p }),
    ),
  sampleSizeTable95,
  sampleSizeTable95imperfect,
  sampleSizeApprox,
  sampleSizeExact: (i) => ({
    n: (sampleSizeApprox(i, { lookup: () => undefined }) as { exact: unknown }).exact,
  }),
  probFreedomSeries,
  sampleSizeForFreedom: (i) =>
    answer(
      sampleSizeForFreedom({
        ...(i.has('N') && { population: i.number('N') }),
        prior: i.number('prior'),
        introduction: i.numberOr(0, 'pIntro'),
        designPrevalence: i.number('pstar'),
        target: i.number('pfree', 'pFree'),
        sensitivity: i.numberOr(1, 'sens'),
      }),
      (s) => ({
        n: s.tested,
        exact: s.testedExact,
        nExact: s.testedExact,
        sep: s.detection,
        adjPrior: s.discountedPrior,
      }),
    ),
  homeClearIndependent: (i) => {
    const prior = i.numbers('prior');
    const sens = i.numbers('sensByPerson', 'sens');
    const sensitivity = sens.length === 1 ? prior.map(() => sens[0] as number) : sens;
    return answer(
      homeClearIndependent({ prior, sensitivity, specificity: i.numberOr(1, 'spec') }),
      (h) => ({
        post: h.posterior,
        pClear: h.clear,
        expectedInfected: h.expectedInfected,
      }),
    );
  },
  homeClearClusterPrior: (i) => {
    const prior = i.child('priorD');
    return answer(
      homeClearCluster({
        population: i.number('N'),
        tested: i.number('n'),
        sensitivity: i.number('sens'),
        infected: prior.numbers('d'),
        prior: prior.numbers('p'),
      }),
      (c) => ({ posteriorD: c.posterior, pClear: c.clear }),
    );
  },
  numberInfectedDistribution: (i) =>
    answer(poissonBinomial(i.numbers('post', 'p')), (pmf) => ({ pmf })),
  maxInfectedConsistent: (i) =>
    answer(
      mostInfectedConsistent({
        population: i.number('N'),
        tested: i.number('n'),
        sensitivity: i.number('sens'),
        confidence: i.numberOr(0.95, 'confidence'),
      }),
      (m) => ({ epiRpstar: m.approximatePrevalence, exactMaxD: m.most }),
    ),
  zeroEventsUpper: (i) =>
    answer(zeroEventsUpper(i.number('n'), i.numberOr(0.95, 'confidence', 'conf')), (z) => ({
      oneSided: z.upper,
      ruleOfThree: z.ruleOfThree,
    })),
};
