import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { poissonPmf } from '../distributions/poisson.ts';
import { got } from '../testing.ts';
import { croston } from './croston.ts';
import { demandClass } from './demand-class.ts';
import { type DemandLaw, demandFigures } from './demand-law.ts';
import { expectedExpiryWaste } from './expected-expiry-waste.ts';
import { firstExpiredFirstOut } from './first-expired-first-out.ts';
import { kitsForValid } from './kits-for-valid.ts';
import { newsvendor } from './newsvendor.ts';
import { normalLoss } from './normal-loss.ts';
import {
  reorderPointNegativeBinomial,
  reorderPointPoisson,
  reorderPointRandomLead,
} from './reorder-point.ts';
import { stockoutChance, stockoutChanceOf } from './stockout-chance.ts';
import { teunterSyntetosBabai } from './teunter-syntetos-babai.ts';

const LAWS: readonly (readonly [DemandLaw, order: number, shortageAt: number, shortage: number])[] =
  [
    // Orders at a ratio of 0.75 and shortages by R: qpois, qnbinom, ...; closed forms where there are.
    [{ law: 'poisson', mean: 20 }, 23, 20, 1.776706],
    [{ law: 'negative-binomial', mean: 6, variance: 15 }, 8, 6, 1.504936],
    [{ law: 'binomial', trials: 24, chance: 0.25 }, 7, 6, 0.833657],
    [{ law: 'normal', mean: 10, sd: 3 }, 12.0234692506, 10, 3 * 0.3989422804],
    [{ law: 'lognormal', meanLog: 1, sdLog: 0.5 }, 3.808536, Math.E, 0.770713],
    [{ law: 'gamma', shape: 2, scale: 3 }, 8.0779045, 6, 12 * Math.exp(-2)],
    [{ law: 'exponential', mean: 4 }, 4 * Math.log(4), 4, 4 / Math.E],
    [{ law: 'uniform', low: 2, high: 10 }, 8, 6, 1],
    [{ law: 'empirical', values: [5, 1, 3, 9] }, 5, 4, 1.5],
    [{ law: 'empirical', values: [1, 2], weights: [3, 1] }, 1, 1, 0.25],
  ];

describe('a law of demand', () => {
  it.each(LAWS)('%j: order and shortage', (law, order, at, shortage) => {
    expect(got(newsvendor(law, { criticalRatio: 0.75 })).order).toBeCloseTo(order, 5);
    expect(demandFigures(law).shortage(at)).toBeCloseTo(shortage, 5);
  });

  it.each(LAWS)('%j: nothing ordered is short of the mean, plenty of nothing', (law) => {
    const figures = demandFigures(law);
    // A normal demand is now and then below 0.
    expect(figures.shortage(0)).toBeCloseTo(figures.mean, law.law === 'normal' ? 3 : 8);
    expect(figures.shortage(1000)).toBeCloseTo(0, 8);
    expect(figures.shortage(-3)).toBeCloseTo(figures.mean + 3, 4);
  });

  it.each(LAWS)('%j: no order costs less than the best', (law) => {
    const best = got(newsvendor(law, { under: 3, over: 1 }));
    expect(best.criticalRatio).toBe(0.75);
    expect(best.cost).toBeLessThanOrEqual((best.costBelow ?? 0) + 1e-9);
    expect(best.cost).toBeLessThanOrEqual((best.costAbove ?? 0) + 1e-9);
  });

  it('knows which demands are whole', () => {
    expect(LAWS.map(([law]) => demandFigures(law).whole)).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
      false,
      false,
      true,
      true,
    ]);
  });
});

describe('forecasts', () => {
  it('of steady demand are that demand', () => {
    const steady = got(croston([3, 3, 3, 3], 0.2));
    expect([steady.level, steady.interval, steady.forecast]).toEqual([3, 1, 3]);
    expect(steady.syntetosBoylan).toBeCloseTo(2.7, 12);
    expect(steady.shaleBoylanJohnston).toBeCloseTo(3 * (1 - 0.2 / 1.8), 12);
    expect(got(teunterSyntetosBabai([3, 3, 3], { alpha: 0.2, beta: 0.1 }))).toEqual({
      size: 3,
      chance: 1,
      forecast: 3,
    });
  });

  it('fade with TSB and stand still with Croston when demand ends', () => {
    const ended = [4, 0, 4, 0, 4, 0, 0, 0, 0, 0, 0, 0];
    expect(got(croston(ended, 0.1)).forecast).toBeGreaterThan(1.5);
    expect(got(teunterSyntetosBabai(ended, { alpha: 0.1, beta: 0.1 })).forecast).toBeLessThan(
      got(croston(ended, 0.1)).forecast,
    );
  });

  it('tell four kinds of demand', () => {
    expect(got(demandClass([5, 5, 5, 6])).kind).toBe('smooth');
    expect(got(demandClass([1, 9, 1, 12, 1])).kind).toBe('erratic');
    expect(got(demandClass([0, 5, 0, 5, 0, 6])).kind).toBe('intermittent');
    expect(got(demandClass([0, 1, 0, 0, 12])).kind).toBe('lumpy');
    expect(got(demandClass([0, 0, 7])).squaredVariation).toBe(0);
  });
});

describe('reorder points', () => {
  it('rise with service and spread, and agree where laws meet', () => {
    const poisson = got(reorderPointPoisson(2, 3, 0.95));
    expect(got(reorderPointNegativeBinomial(6, 6, 0.95))).toEqual(poisson);
    expect(got(reorderPointNegativeBinomial(6, 12, 0.95)).reorderPoint).toBeGreaterThan(
      poisson.reorderPoint,
    );
    expect(got(reorderPointPoisson(2, 3, 0.999)).reorderPoint).toBeGreaterThan(
      poisson.reorderPoint,
    );
    expect(
      got(reorderPointRandomLead({ demandPerDay: 2, leadMean: 3, leadSd: 0, service: 0.95 }))
        .reorderPoint,
    ).toBe(poisson.reorderPoint);
    expect(
      got(
        reorderPointRandomLead({
          demandPerDay: 2,
          leadMean: 3,
          leadSd: 2,
          service: 0.95,
          law: 'poisson',
        }),
      ).reorderPoint,
    ).toBe(poisson.reorderPoint);
    expect(poisson.safetyStock).toBe(poisson.reorderPoint - 6);
  });

  it('under continuous laws meet the service exactly', () => {
    const normal = got(
      reorderPointRandomLead({
        demandPerDay: 2,
        leadMean: 3,
        leadSd: 1,
        service: 0.9,
        law: 'normal',
      }),
    );
    expect([normal.mean, normal.variance, normal.chance]).toEqual([6, 10, 0.9]);
    expect(normal.reorderPoint).toBeCloseTo(6 + 1.2815515655 * Math.sqrt(10), 8);
    const gamma = got(
      reorderPointRandomLead({
        demandPerDay: 2,
        leadMean: 3,
        leadSd: 1,
        service: 0.9,
        law: 'gamma',
      }),
    );
    expect(gamma.reorderPoint).toBeCloseTo(10.23997, 4);
    expect(gamma.safetyStock).toBeCloseTo(gamma.reorderPoint - 6, 12);
  });

  it('of no demand are 0', () => {
    expect(got(reorderPointNegativeBinomial(0, 3, 0.9))).toEqual({
      mean: 0,
      variance: 3,
      reorderPoint: 0,
      chance: 1,
      safetyStock: 0,
    });
    expect(got(reorderPointPoisson(0, 3, 0.9)).reorderPoint).toBe(0);
    expect(
      got(
        reorderPointRandomLead({
          demandPerDay: 0,
          leadMean: 3,
          leadSd: 1,
          service: 0.9,
          law: 'normal',
        }),
      ).reorderPoint,
    ).toBe(0);
  });
});

describe('dated stock', () => {
  it('is used in order of expiry, whatever order it is listed in', () => {
    const batches = [
      { quantity: 5, expiryDay: 9 },
      { quantity: 4, expiryDay: 2 },
    ];
    expect(got(firstExpiredFirstOut(batches, [1, 2, 1, 0]))).toEqual({
      wasted: 1,
      short: 0,
      left: 4,
      wastedByBatch: [0, 1],
    });
    expect(got(firstExpiredFirstOut([], [2, 3]))).toEqual({
      wasted: 0,
      short: 5,
      left: 0,
      wastedByBatch: [],
    });
    expect(got(firstExpiredFirstOut(batches, []))).toEqual({
      wasted: 0,
      short: 0,
      left: 9,
      wastedByBatch: [0, 0],
    });
  });

  it('neither makes nor loses a kit', () => {
    const batch = fc.record({
      quantity: fc.integer({ min: 0, max: 20 }),
      expiryDay: fc.integer({ min: 0, max: 12 }),
    });
    fc.assert(
      fc.property(
        fc.array(batch, { maxLength: 5 }),
        fc.array(fc.integer({ min: 0, max: 6 }), { maxLength: 12 }),
        (batches, demand) => {
          const end = got(firstExpiredFirstOut(batches, demand));
          const stock = batches.reduce((sum, b) => sum + b.quantity, 0);
          const asked = demand.reduce((a, b) => a + b, 0);
          expect(end.left + end.wasted + asked - end.short).toBe(stock);
          expect(end.wastedByBatch.reduce((a, b) => a + b, 0)).toBe(end.wasted);
        },
      ),
    );
  });

  it('is expected to waste what a single batch leaves, batch by batch in any order', () => {
    const single = got(expectedExpiryWaste([{ quantity: 6, expiryDay: 3 }], 1.5));
    let left = 0;
    for (let d = 0; d < 6; d++) left += (6 - d) * poissonPmf(d, 4.5);
    expect(single.total).toBeCloseTo(left, 12);
    const [a, b] = [
      { quantity: 6, expiryDay: 3 },
      { quantity: 4, expiryDay: 8 },
    ];
    const there = got(expectedExpiryWaste([a, b], 1.5));
    const back = got(expectedExpiryWaste([b, a], 1.5));
    expect(there.byBatch[0]).toBeCloseTo(left, 12);
    expect(back.byBatch).toEqual([...there.byBatch].reverse());
    expect(got(expectedExpiryWaste([a, b], 0)).total).toBe(10);
  });

  // R, mean 2 and variance 9 a day, p <- 2/9, nb(u, t) <- dnbinom(u, size = 2 * t * p / (1 - p), prob = p):
  // sum((30 - 0:30) * nb(0:30, 10)) for the first batch, and the law of what is left carried on to day 25.
  it('wastes more where demand is lumpy', () => {
    const batches = [
      { quantity: 30, expiryDay: 10 },
      { quantity: 20, expiryDay: 25 },
    ];
    const lumpy = got(expectedExpiryWaste(batches, 2, 9));
    expect(lumpy.byBatch[0]).toBeCloseTo(10.9876389895911, 10);
    expect(lumpy.byBatch[1]).toBeCloseTo(0.80881002319981, 10);
    expect(lumpy.total).toBeGreaterThan(got(expectedExpiryWaste(batches, 2)).total);
    expect(got(expectedExpiryWaste(batches, 2, 1))).toEqual(got(expectedExpiryWaste(batches, 2)));
  });

  it('runs out by the same law as the reorder point, whatever the spread', () => {
    for (const variance of [2, 57, 58, 1501]) {
      const point = got(reorderPointNegativeBinomial(57, variance, 0.95));
      const out = got(stockoutChanceOf(point.reorderPoint, { mean: 57, variance }));
      expect(out).toBeCloseTo(1 - point.chance, 12);
    }
    expect(got(stockoutChanceOf(0, { mean: 0, variance: 9 }))).toBe(0);
    // R: pnbinom(80, size = 57^2 / (1501 - 57), mu = 57, lower.tail = FALSE)
    expect(got(stockoutChanceOf(80, { mean: 57, variance: 1501 }))).toBeCloseTo(
      0.224320912868771,
      13,
    );
  });

  it('runs out with a chance that grows with time', () => {
    const p = got(stockoutChance(5, 1, [0, 3, 6, 12]));
    expect(p[0]).toBe(0);
    expect([...p].sort((x, y) => x - y)).toEqual(p);
  });
});

describe('kits and losses', () => {
  it('without voids no kit is spare', () => {
    expect(got(kitsForValid(24, 0, 0.99))).toBe(24);
    expect(got(kitsForValid(0, 0.5, 0.99))).toBe(0);
    expect(got(kitsForValid(24, 0.2, 0.95))).toBeGreaterThan(got(kitsForValid(24, 0.05, 0.95)));
  });

  it('the normal loss is convex, ends as it should and is smooth where its form changes', () => {
    expect(got(normalLoss(-30))).toBeCloseTo(30, 12);
    expect(got(normalLoss(-1)) - got(normalLoss(1))).toBeCloseTo(1, 14);
    const [before, after] = [got(normalLoss(7.9999999)), got(normalLoss(8.0000001))];
    expect(Math.abs(before / after - 1)).toBeLessThan(1e-5);
    // R: integrate(function(z) pnorm(z, lower.tail = FALSE), 9, Inf)
    expect(Math.abs(got(normalLoss(9)) / 1.224779e-20 - 1)).toBeLessThan(1e-3);
  });
});
