import { poissonAtLeast } from '../../../statistics/distributions/poisson.ts';
import { finalSize } from '../../../statistics/epidemics/final-size.ts';
import { fitChainBinomial } from '../../../statistics/epidemics/fit-chain-binomial.ts';
import { growthRate } from '../../../statistics/epidemics/growth-rate.ts';
import type { InfectiousPeriod } from '../../../statistics/epidemics/infectious-period.ts';
import { knoxTest } from '../../../statistics/epidemics/knox-test.ts';
import { linkedClusters } from '../../../statistics/epidemics/linked-clusters.ts';
import { longiniKoopman } from '../../../statistics/epidemics/longini-koopman.ts';
import {
  greenwoodFinalSize,
  reedFrostFinalSize,
} from '../../../statistics/epidemics/reed-frost.ts';
import {
  reproductionFromGrowth,
  reproductionFromGrowthSeir,
} from '../../../statistics/epidemics/reproduction-from-growth.ts';
import {
  type ReproductionEstimate,
  type ReproductionQuestion,
  reproductionNumber,
} from '../../../statistics/epidemics/reproduction-number.ts';
import { screenedReproduction } from '../../../statistics/epidemics/screened-reproduction.ts';
import {
  type ScreeningPolicy,
  screeningEffects,
} from '../../../statistics/epidemics/screening-effect.ts';
import {
  discreteSerialInterval,
  serialIntervalFor,
} from '../../../statistics/epidemics/serial-interval.ts';
import { stochasticFinalSize } from '../../../statistics/epidemics/stochastic-final-size.ts';
import { twoTypeFinalSize } from '../../../statistics/epidemics/two-type-final-size.ts';
import { seededChance } from '../../../statistics/random/chance.ts';
import { given, type Outcome } from '../../../statistics/refusal/refusal.ts';
import { answer, InUse, Near, valueOrNull } from '../answer.ts';
import type { Adapter, Adapters } from '../check.ts';
import type { Input } from '../input.ts';

/** Simulations here draw so many courses of infection: errors of about 0.001, unless fewer are asked for. */
const COURSES = Number(process.env['ORACLE_COURSES'] ?? 200_000);

const intervalOf = (
  i: Input,
): Outcome<Pick<ReproductionQuestion, 'serialInterval' | 'meanInterval'>> =>
  i.has('siDistr')
    ? given({ serialInterval: i.numbers('siDistr') })
    : serialIntervalFor(
        i.numbers('incidence').length,
        i.number('siMean', 'meanSi', 'mean_si'),
        i.number('siSd', 'sdSi', 'std_si'),
      );

const rowsOf = (i: Input): Outcome<readonly ReproductionEstimate[]> => {
  const interval = intervalOf(i);
  if (!interval.ok) return interval;
  return reproductionNumber({
    ...interval.value,
    incidence: i.numbers('incidence'),
    window: i.numberOr(7, 'window'),
    priorMean: i.numberOr(5, 'priorMean'),
    priorSd: i.numberOr(5, 'priorSd'),
  });
};

const estimateR: Adapter = (i) =>
  answer(rowsOf(i), (rows) => ({
    tStart: rows.map((r) => r.from),
    tEnd: rows.map((r) => r.to),
    mean: rows.map((r) => r.mean),
    sd: rows.map((r) => r.sd),
    q025: rows.map((r) => r.lower),
    median: rows.map((r) => r.median),
    q975: rows.map((r) => r.upper),
  }));

/**
 * A limit of the doubling time. Own: none where that end of the interval does not grow. From memory:
 * the R package incidence divides all the same, and gives a negative time there.
 */
const orQuotient = (value: number | undefined, rate: number): InUse =>
  new InUse(value, {
    'R package incidence, fit(): log(2) / limit; 1.96 for the quantile, as textbooks round it':
      Math.LN2 / rate,
  });

const growth: Adapter = (i) =>
  answer(growthRate(i.numbers('counts')), (g) => {
    const [low, high] = [g.rate - 1.96 * g.standardError, g.rate + 1.96 * g.standardError];
    return {
      r: g.rate,
      se: g.standardError,
      lower: g.lower,
      upper: g.upper,
      doubling: g.doubling,
      halving: -g.doubling,
      doublingLower: orQuotient(g.doublingLower, high),
      doublingUpper: orQuotient(g.doublingUpper, low),
    };
  });

const fromGrowth: Adapter = (i) => {
  const r = i.number('r');
  const [latent, infectious] = [
    ['latentMean', 'latent', 'meanLatent'],
    ['infectiousMean', 'infectious', 'meanInfectious'],
  ] as const;
  const seir =
    i.has(...latent) && i.has(...infectious)
      ? valueOrNull(reproductionFromGrowthSeir(r, i.number(...latent), i.number(...infectious)))
      : null;
  if (!i.has('gtMean')) return { seir_exp: seir };
  return answer(
    reproductionFromGrowth(r, { mean: i.number('gtMean'), sd: i.numberOr(0, 'gtSd') }),
    (v) => ({
      gamma: v.gamma,
      delta: v.fixed,
      exponential: 1 + r * i.number('gtMean'),
      seir_exp: seir,
    }),
  );
};

/** "exponential mean 1", "exponential rate 2", "fixed 2", "gamma shape 3 scale 2" and the like. */
function periodOf(i: Input): InfectiousPeriod {
  const text = i.textOr('exponential mean 1', 'infectiousPeriod', 'period').toLowerCase();
  const figure = (name: string): number | undefined => {
    const found = new RegExp(`${name}\\s*[=:]?\\s*([\\d.]+)`).exec(text)?.[1];
    return found === undefined ? undefined : Number(found);
  };
  const plain = /([\d.]+)/.exec(text)?.[1];
  const shape = figure('shape') ?? figure('k');
  const rate = figure('rate');
  const scale = figure('scale') ?? (rate === undefined ? undefined : 1 / rate);
  const mean =
    figure('mean') ??
    figure('length') ??
    figure('duration') ??
    (scale === undefined ? undefined : scale * (shape ?? 1)) ??
    (plain === undefined || shape !== undefined ? 1 : Number(plain));
  if (/fixed|const|determin/.test(text)) return { law: 'fixed', mean };
  if (shape !== undefined && shape !== 1) return { law: 'erlang', mean, shape };
  return { law: 'exponential', mean };
}

const household = (i: Input) => ({
  susceptible: i.number('susceptible', 'n', 'm'),
  introductions: i.numberOr(1, 'introductions', 'a'),
});

const twoType: Adapter = (i) => {
  const [seeds, rates] = [i.child('introductions'), i.child('rate', 'rates')];
  return answer(
    twoTypeFinalSize({
      residents: i.number('residents'),
      staff: i.number('staff'),
      introductions: {
        residents: seeds.numberOr(0, 'residents'),
        staff: seeds.numberOr(0, 'staff'),
      },
      rates: {
        residentToResident: rates.number('residentToResident'),
        residentToStaff: rates.number('residentToStaff'),
        staffToResident: rates.number('staffToResident'),
        staffToStaff: rates.number('staffToStaff'),
      },
      period: periodOf(i),
    }),
    (t) => ({ ...t, pNone: t.none }),
  );
};

const fit: Adapter = (i) => {
  const chains = i.entries('chains').map(([key, households]) => ({
    generations: key.split('-').map(Number),
    households: Number(households),
  }));
  return answer(
    fitChainBinomial(chains, {
      greenwood: i.textOr('', 'model').toLowerCase() === 'greenwood',
      ...(i.has('size') && { size: i.number('size') }),
    }),
    (f) => {
      // A maximum searched by comparing likelihoods is located to about sqrt(eps) = 1.5e-8 (Brent 1973,
      // chapter 5; R's ?optimize says the same), and what is printed from it is off by as much times
      // the slope, which is at most twice the households.
      const slack =
        2 * Math.sqrt(Number.EPSILON) * chains.reduce((sum, c) => sum + c.households, 0);
      return {
        p: f.p,
        q: 1 - f.p,
        se: f.standardError,
        expected: f.expected.map(
          (e) => new Near(e, slack, 'R optimize(): never closer than sqrt(eps)'),
        ),
      };
    },
  );
};

const clusters: Adapter = (i) =>
  answer(
    linkedClusters(
      i.list('cases').map((c) => ({
        id: c.label('id'),
        day: c.number('day'),
        ...(c.has('unit') && { unit: c.label('unit') }),
        staff: c.has('staff') ? c.texts('staff') : [],
      })),
      i.number('windowDays'),
    ),
    (l) => l,
  );

const knox: Adapter = (i) =>
  answer(
    knoxTest(
      {
        days: i.numbers('day'),
        units: i.numbers('unit'),
        windowDays: i.number('windowDays'),
        permutations: 99_999,
      },
      seededChance(1),
    ),
    (k) => ({
      statistic: k.statistic,
      timePairs: k.timePairs,
      spacePairs: k.spacePairs,
      lambda: k.expected,
      // Own: a p-value counts what was seen too (P(X >= x)), and days are shuffled (Mantel 1967).
      pPoisson: new InUse(k.pPoisson, {
        'R package surveillance 1.20.3, knox(): ppois(x, lambda, lower.tail = FALSE) is P(X > x)':
          poissonAtLeast(k.statistic + 1, k.expected),
      }),
      pPermutation: new InUse(k.pPermutation, {
        'R package surveillance 1.20.3, knox(): shuffles pairs, not days': k.pPairs,
      }),
    }),
  );

const policy = ([detectionLimit, everyDays, delayDays]: readonly number[]): ScreeningPolicy => ({
  detectionLimit: detectionLimit ?? Number.NaN,
  everyDays: everyDays ?? Number.NaN,
  delayDays: delayDays ?? Number.NaN,
});

const screening: Adapter = (i) => {
  const policies = i.rows('grid').map(policy);
  return answer(screeningEffects(policies, seededChance(1), { courses: COURSES }), (effects) => ({
    rows: effects.map((e, k) => ({
      lod: policies[k]?.detectionLimit,
      everyDays: policies[k]?.everyDays,
      delayDays: policies[k]?.delayDays,
      removedByTesting: e.removedByTesting,
      removedBySymptoms: e.removedBySymptoms,
      remaining: e.remaining,
      reductionVsSelfIsolation: e.reduction,
      factorReferenceCode: e.publishedFactor,
    })),
  }));
};

const screened: Adapter = (i) => {
  const cases = i.list('cases');
  const policies = cases.map((c) => ({
    ...policy([c.number('lod'), c.number('everyDays'), c.numberOr(0, 'delay', 'delayDays')]),
    sensitivity: c.numberOr(1, 'se', 'sens'),
  }));
  return answer(screeningEffects(policies, seededChance(1), { courses: COURSES }), (effects) => {
    const r = cases.map((c, k) =>
      valueOrNull(
        screenedReproduction(
          i.number('R0'),
          effects[k]?.publishedFactor ?? Number.NaN,
          c.numberOr(1, 'participation'),
        ),
      ),
    );
    return { R: r, r, ownR: r, publishedR: r };
  });
};

export const epidemics: Adapters = {
  estimateR,
  discreteSerialInterval: (i) =>
    answer(discreteSerialInterval(i.number('mean'), i.number('sd'), i.numbers('k')), (p) => ({
      p,
    })),
  growthRate: growth,
  RfromGrowth: fromGrowth,
  finalSizeKM: (i) => ({ z: i.numbers('R0').map((r) => valueOrNull(finalSize(r))) }),
  reedFrostFinalSize: (i) =>
    answer(reedFrostFinalSize(household(i), i.number('p')), (pmf) => ({ pmfNewCases: pmf, pmf })),
  greenwoodFinalSize: (i) =>
    answer(greenwoodFinalSize(household(i), i.number('p')), (pmf) => ({ pmfNewCases: pmf, pmf })),
  reedFrostFit: fit,
  greenwoodFit: fit,
  longiniKoopman: (i) =>
    answer(
      longiniKoopman({
        people: i.number('n'),
        escapeCommunity: i.number('escapeCommunity'),
        escapePerInfective: i.number('escapePerInfective'),
      }),
      (pmf) => ({ pmf }),
    ),
  linkedClusters: clusters,
  knoxTest: knox,
  stochasticFinalSize: (i) =>
    answer(
      stochasticFinalSize({ ...household(i), pairRate: i.number('pairRate'), period: periodOf(i) }),
      (pmf) => ({ pmf, pmfNewCases: pmf }),
    ),
  twoTypeFinalSize: twoType,
  screeningEffect: screening,
  screeningR: screened,
};
