import type { Batch } from '../../../statistics/stock/batches.ts';
import { croston } from '../../../statistics/stock/croston.ts';
import { demandClass } from '../../../statistics/stock/demand-class.ts';
import type { DemandLaw } from '../../../statistics/stock/demand-law.ts';
import { expectedExpiryWaste } from '../../../statistics/stock/expected-expiry-waste.ts';
import { firstExpiredFirstOut } from '../../../statistics/stock/first-expired-first-out.ts';
import { kitsForValid } from '../../../statistics/stock/kits-for-valid.ts';
import { negativeBinomialMoments } from '../../../statistics/stock/negative-binomial-moments.ts';
import { newsvendor } from '../../../statistics/stock/newsvendor.ts';
import { normalLoss } from '../../../statistics/stock/normal-loss.ts';
import {
  type RandomLead,
  reorderPointNegativeBinomial,
  reorderPointPoisson,
  reorderPointRandomLead,
} from '../../../statistics/stock/reorder-point.ts';
import { stockoutChance, stockoutChanceOf } from '../../../statistics/stock/stockout-chance.ts';
import { teunterSyntetosBabai } from '../../../statistics/stock/teunter-syntetos-babai.ts';
import { answer, InUse, valueOrNull } from '../answer.ts';
import type { Adapter, Adapters } from '../check.ts';
import { type Input, InputError } from '../input.ts';

const crostonOf: Adapter = (i) =>
  answer(croston(i.numbers('y'), i.numberOr(0.1, 'alpha')), (c) => ({
    demand: c.sizes,
    intervals: c.intervals,
    level: c.level,
    interval: c.interval,
    forecast: c.forecast,
    rForecast: c.forecast,
    sba: c.syntetosBoylan,
    sbj: c.shaleBoylanJohnston,
  }));

const LAWS: Readonly<Record<string, RandomLead['law']>> = {
  negbin: 'negative-binomial',
  negativebinomial: 'negative-binomial',
  nbinom: 'negative-binomial',
  nb: 'negative-binomial',
  poisson: 'poisson',
  normal: 'normal',
  gamma: 'gamma',
};

const randomLead: Adapter = (i) => {
  const name = i
    .textOr('negbin', 'dist')
    .toLowerCase()
    .replace(/[^a-z]/g, '');
  const law = Object.hasOwn(LAWS, name) ? LAWS[name] : undefined;
  if (!law) throw new InputError(`there is no law of demand "${i.text('dist')}"`);
  return answer(
    reorderPointRandomLead({
      demandPerDay: i.number('demandPerDay'),
      leadMean: i.number('leadMean'),
      leadSd: i.number('leadSd'),
      service: i.number('service'),
      law,
    }),
    (r) => ({
      mean: r.mean,
      var: r.variance,
      // A continuous law's point. From memory: the decision rules of Silver, Pyke & Peterson say
      // "increased to the next higher integer (if not already exactly an integer)".
      reorderPoint: new InUse(r.reorderPoint, {
        'Silver, Pyke & Peterson 1998: rounded up': Math.ceil(r.reorderPoint),
      }),
      prob: r.chance,
      safetyStock: r.safetyStock,
    }),
  );
};

function demandOf(i: Input): DemandLaw {
  const name = i
    .textOr('poisson', 'dist', 'distribution')
    .toLowerCase()
    .replace(/[^a-z]/g, '');
  const sd = (): number => (i.has('sd') ? i.number('sd') : Math.sqrt(i.number('var', 'variance')));
  switch (name) {
    case 'poisson':
      return { law: 'poisson', mean: i.number('mean', 'lambda') };
    case 'normal':
      return { law: 'normal', mean: i.number('mean'), sd: sd() };
    case 'negbin':
    case 'nbinom':
    case 'negativebinomial': {
      const mean = i.has('mean', 'mu')
        ? i.number('mean', 'mu')
        : (i.number('size') * (1 - i.number('prob'))) / i.number('prob');
      return {
        law: 'negative-binomial',
        mean,
        variance: i.has('size') ? mean + mean ** 2 / i.number('size') : sd() ** 2,
      };
    }
    case 'binomial':
      return {
        law: 'binomial',
        trials: i.number('n', 'size', 'trials'),
        chance: i.number('p', 'prob'),
      };
    case 'lognormal': {
      if (i.has('meanlog', 'mu'))
        return {
          law: 'lognormal',
          meanLog: i.number('meanlog', 'mu'),
          sdLog: i.number('sdlog', 'sigma'),
        };
      const s2 = Math.log1p((sd() / i.number('mean')) ** 2);
      return {
        law: 'lognormal',
        meanLog: Math.log(i.number('mean')) - s2 / 2,
        sdLog: Math.sqrt(s2),
      };
    }
    case 'gamma':
      return i.has('shape')
        ? {
            law: 'gamma',
            shape: i.number('shape'),
            scale: i.has('scale') ? i.number('scale') : 1 / i.number('rate'),
          }
        : {
            law: 'gamma',
            shape: (i.number('mean') / sd()) ** 2,
            scale: sd() ** 2 / i.number('mean'),
          };
    case 'exponential':
      return { law: 'exponential', mean: i.has('mean') ? i.number('mean') : 1 / i.number('rate') };
    case 'uniform':
      return {
        law: 'uniform',
        low: i.number('low', 'min', 'a'),
        high: i.number('high', 'max', 'b'),
      };
    case 'empirical':
    case 'discrete':
      return {
        law: 'empirical',
        values: i.numbers('values', 'demand', 'd', 'x'),
        ...(i.has('probs', 'p', 'weights') && { weights: i.numbers('probs', 'p', 'weights') }),
      };
    default:
      throw new InputError(`there is no law of demand "${name}"`);
  }
}

const newsvendorOf: Adapter = (i) => {
  const costs = i.has('underCost', 'cu')
    ? { under: i.number('underCost', 'cu'), over: i.number('overCost', 'co') }
    : { criticalRatio: i.number('criticalRatio') };
  return answer(newsvendor(demandOf(i), costs), (n) => ({
    criticalRatio: n.criticalRatio,
    Q: n.order,
    expectedCost: n.cost,
    costAtQminus1: n.costBelow,
    costAtQplus1: n.costAbove,
  }));
};

const batches = (i: Input): readonly Batch[] =>
  i
    .list('batches')
    .map((b) => ({ quantity: b.number('qty', 'quantity'), expiryDay: b.number('expiryDay') }));

export const stock: Adapters = {
  croston: crostonOf,
  sba: crostonOf,
  tsb: (i) => {
    const alpha = i.numberOr(0.1, 'alpha');
    return answer(
      teunterSyntetosBabai(i.numbers('y'), { alpha, beta: i.numberOr(alpha, 'beta') }),
      (t) => ({ z: t.size, p: t.chance, f: t.forecast, forecast: t.forecast }),
    );
  },
  demandClass: (i) =>
    answer(demandClass(i.numbers('y')), (d) => ({
      adi: d.averageInterval,
      cv2: d.squaredVariation,
      class: d.kind,
    })),
  reorderPointPoisson: (i) =>
    answer(
      reorderPointPoisson(
        i.number('demandPerDay'),
        i.number('leadTimeDays') + i.numberOr(0, 'reviewDays'),
        i.number('service'),
      ),
      (r) => ({
        meanLT: r.mean,
        reorderPoint: r.reorderPoint,
        prob: r.chance,
        safetyStock: r.safetyStock,
      }),
    ),
  reorderPointNegBin: (i) => {
    const [mean, variance] = [i.number('meanLT'), i.number('varLT')];
    return answer(reorderPointNegativeBinomial(mean, variance, i.number('service')), (r) => ({
      size: variance > mean ? mean ** 2 / (variance - mean) : null,
      prob: variance > mean ? mean / variance : null,
      reorderPoint: r.reorderPoint,
      cdf: r.chance,
      safetyStock: r.safetyStock,
    }));
  },
  reorderPointRandomLead: randomLead,
  negBinMoments: (i) =>
    answer(negativeBinomialMoments(i.numbers('y')), (m) => ({
      mean: m.mean,
      var: m.variance,
      size: m.size,
    })),
  newsvendor: newsvendorOf,
  normalLoss: (i) => ({ G: i.numbers('k').map((k) => valueOrNull(normalLoss(k))) }),
  kitsForValid: (i) => {
    const kits = i
      .numbers('service')
      .map((s) => valueOrNull(kitsForValid(i.number('n'), i.number('voidProb'), s)));
    return { kits };
  },
  fefo: (i) =>
    answer(firstExpiredFirstOut(batches(i), i.numbers('demandByDay')), (f) => ({
      waste: f.wasted,
      short: f.short,
      left: f.left,
      wasteByBatch: f.wastedByBatch,
    })),
  expectedExpiryWaste: (i) =>
    answer(
      expectedExpiryWaste(
        batches(i),
        i.number('poissonPerDay', 'demandPerDay'),
        i.numberOr(0, 'variancePerDay'),
      ),
      (w) => ({ wasteByBatch: w.byBatch, total: w.total }),
    ),
  stockoutProb: (i) =>
    i.has('mean', 'meanLT')
      ? answer(
          stockoutChanceOf(i.number('onHand'), {
            mean: i.number('mean', 'meanLT'),
            variance: i.number('variance', 'varLT'),
          }),
          (p) => ({ p }),
        )
      : answer(
          stockoutChance(i.number('onHand'), i.number('poissonPerDay'), i.numbers('days')),
          (p) => ({ p }),
        ),
};
