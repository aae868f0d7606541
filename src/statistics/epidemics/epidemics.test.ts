import { describe, expect, it } from 'vitest';
import { seededChance } from '../random/chance.ts';
import { got } from '../testing.ts';
import { finalSize } from './final-size.ts';
import { fitChainBinomial } from './fit-chain-binomial.ts';
import { growthRate } from './growth-rate.ts';
import type { InfectiousPeriod } from './infectious-period.ts';
import { knoxTest } from './knox-test.ts';
import { linkedClusters } from './linked-clusters.ts';
import { longiniKoopman } from './longini-koopman.ts';
import { greenwoodFinalSize, reedFrostFinalSize } from './reed-frost.ts';
import { reproductionFromGrowth, reproductionFromGrowthSeir } from './reproduction-from-growth.ts';
import { infectionPressure, reproductionNumber } from './reproduction-number.ts';
import { screenedReproduction } from './screened-reproduction.ts';
import { screeningEffects } from './screening-effect.ts';
import { discreteSerialInterval } from './serial-interval.ts';
import { stochasticFinalSize } from './stochastic-final-size.ts';
import { twoTypeFinalSize } from './two-type-final-size.ts';
import { COURSE_DAYS, drawCourse, emptyCourse } from './viral-load-course.ts';

const total = (pmf: ArrayLike<number>): number => Array.from(pmf).reduce((a, b) => a + b, 0);
const PERIODS: readonly InfectiousPeriod[] = [
  { law: 'exponential', mean: 1.3 },
  { law: 'fixed', mean: 1.3 },
  { law: 'erlang', mean: 1.3, shape: 3 },
];

describe('the final size of an outbreak', () => {
  it.each(PERIODS.map((p) => [p.law, p] as const))(
    '%s: a law that sums to 1, alone and in two groups',
    (_, period) => {
      const one = got(
        stochasticFinalSize({ susceptible: 9, introductions: 2, pairRate: 0.15, period }),
      );
      expect(total(one)).toBeCloseTo(1, 12);
      const even = {
        residentToResident: 0.15,
        residentToStaff: 0.15,
        staffToResident: 0.15,
        staffToStaff: 0.15,
      };
      const two = got(
        twoTypeFinalSize({
          residents: 5,
          staff: 4,
          introductions: { residents: 1, staff: 1 },
          rates: even,
          period,
        }),
      );
      expect(total(two.residents)).toBeCloseTo(1, 12);
      expect(total(two.staff)).toBeCloseTo(1, 12);
      // Mixing evenly, two groups are one.
      const mean = Array.from(one).reduce((sum, p, j) => sum + p * j, 0);
      expect(two.meanResidents + two.meanStaff).toBeCloseTo(mean, 11);
      expect(two.meanResidents / 5).toBeCloseTo(two.meanStaff / 4, 11);
      expect(two.none).toBeCloseTo(one[0] as number, 12);
    },
  );

  it.each(PERIODS.map((p) => [p.law, p] as const))(
    '%s: staff who meet nobody leave residents to themselves',
    (_, period) => {
      const rates = {
        residentToResident: 0.2,
        residentToStaff: 0,
        staffToResident: 0,
        staffToStaff: 0.3,
      };
      const two = got(
        twoTypeFinalSize({
          residents: 6,
          staff: 3,
          introductions: { residents: 1, staff: 2 },
          rates,
          period,
        }),
      );
      const residents = got(
        stochasticFinalSize({ susceptible: 6, introductions: 1, pairRate: 0.2, period }),
      );
      const staff = got(
        stochasticFinalSize({ susceptible: 3, introductions: 2, pairRate: 0.3, period }),
      );
      residents.forEach((p, j) => expect(two.residents[j]).toBeCloseTo(p, 12));
      staff.forEach((p, j) => expect(two.staff[j]).toBeCloseTo(p, 12));
      expect(two.none).toBeCloseTo((residents[0] as number) * (staff[0] as number), 12);
    },
  );

  it('keeps its figures where the triangular equations lose them', () => {
    const big = got(
      twoTypeFinalSize({
        residents: 40,
        staff: 30,
        introductions: { residents: 1, staff: 0 },
        rates: {
          residentToResident: 0.05,
          residentToStaff: 0.02,
          staffToResident: 0.03,
          staffToStaff: 0.02,
        },
        period: { law: 'exponential', mean: 1 },
      }),
    );
    expect(total(big.residents)).toBeCloseTo(1, 11);
    expect(big.none).toBeCloseTo(1 / (1 + 40 * 0.05 + 30 * 0.02), 12);
  });

  it('more stages lie between exponential and fixed', () => {
    const none = PERIODS.map(
      (period) =>
        got(
          stochasticFinalSize({ susceptible: 9, introductions: 1, pairRate: 0.15, period }),
        )[0] as number,
    );
    expect(none[0]).toBeGreaterThan(none[2] as number);
    expect(none[2]).toBeGreaterThan(none[1] as number);
  });

  it('of chains without or with certain infection is plain', () => {
    const home = { susceptible: 3, introductions: 1 };
    expect(Array.from(got(reedFrostFinalSize(home, 0)))).toEqual([1, 0, 0, 0]);
    expect(Array.from(got(reedFrostFinalSize(home, 1)))).toEqual([0, 0, 0, 1]);
    expect(Array.from(got(greenwoodFinalSize(home, 1)))).toEqual([0, 0, 0, 1]);
    expect(Array.from(got(reedFrostFinalSize({ susceptible: 3, introductions: 0 }, 0.5)))).toEqual([
      1, 0, 0, 0,
    ]);
    expect(Array.from(got(greenwoodFinalSize({ susceptible: 3, introductions: 0 }, 0.5)))).toEqual([
      1, 0, 0, 0,
    ]);
  });

  it('with community infection alone is binomial', () => {
    const pmf = got(longiniKoopman({ people: 4, escapeCommunity: 0.7, escapePerInfective: 1 }));
    [0.2401, 0.4116, 0.2646, 0.0756, 0.0081].forEach((p, j) => expect(pmf[j]).toBeCloseTo(p, 12));
    expect(
      Array.from(got(longiniKoopman({ people: 0, escapeCommunity: 0.7, escapePerInfective: 0.5 }))),
    ).toEqual([1]);
  });

  it('in a large population solves its equation, with a seed or with immunes too', () => {
    for (const [r, susceptible, seed] of [
      [2, 1, 0],
      [1.01, 1, 0],
      [3, 0.5, 0],
      [0.5, 1, 0.1],
      [5, 0.9, 0.01],
    ] as const) {
      const z = got(finalSize(r, { susceptible, seed }));
      expect(z).toBeCloseTo(susceptible * (1 - Math.exp(-r * (z + seed))), 12);
      expect(z).toBeGreaterThan(0);
    }
    expect([
      got(finalSize(1)),
      got(finalSize(0)),
      got(finalSize(2, { susceptible: 0.5 })),
      got(finalSize(3, { susceptible: 0 })),
    ]).toEqual([0, 0, 0, 0]);
  });
});

describe('chains fitted to households', () => {
  it('find the chance that made them, for both models and for larger homes', () => {
    for (const greenwood of [false, true]) {
      const exact = [
        { generations: [1], households: 0 },
        { generations: [2, 1], households: 40 },
        { generations: [2, 1, 1], households: 25 },
        { generations: [2, 2], households: 20 },
        { generations: [2], households: 30 },
      ];
      const fit = got(fitChainBinomial(exact, { size: 4, greenwood }));
      const loglik = (p: number): number => {
        const i = greenwood ? 1 : 2;
        const q2 = (1 - p) ** i;
        const single = 1 - p;
        return (
          40 * Math.log(2 * (1 - q2) * q2 * single) +
          25 * Math.log(2 * (1 - q2) * q2 * p) +
          20 * Math.log((1 - q2) ** 2) +
          30 * Math.log(q2 ** 2)
        );
      };
      expect(loglik(fit.p)).toBeGreaterThan(loglik(fit.p + 1e-4));
      expect(loglik(fit.p)).toBeGreaterThan(loglik(fit.p - 1e-4));
      const h = 1e-4;
      const curve = (loglik(fit.p + h) - 2 * loglik(fit.p) + loglik(fit.p - h)) / h ** 2;
      expect(fit.standardError).toBeCloseTo(1 / Math.sqrt(-curve), 4);
      expect(fit.expected.slice(1).reduce((a, b) => a + b, 0)).toBeCloseTo(115, 8);
    }
  });
});

describe('growth and reproduction', () => {
  it('grows as made, and falls as made', () => {
    const up = got(growthRate([10, 20, 40, 80, 160]));
    expect(up.rate).toBeCloseTo(Math.LN2, 9);
    expect(up.doubling).toBeCloseTo(1, 9);
    expect(up.doublingLower).toBeLessThan(1);
    expect(up.doublingUpper).toBeGreaterThan(1);
    const down = got(growthRate([160, 80, 40, 20, 10]));
    expect(down.rate).toBeCloseTo(-Math.LN2, 9);
    expect(down.doubling).toBeCloseTo(-1, 9);
    expect(down.lower).toBeLessThan(down.rate);
    expect([down.doublingLower, down.doublingUpper].every((d) => d !== undefined && d < 0)).toBe(
      true,
    );
    const flat = got(growthRate([3, 2, 4, 3, 3]));
    expect([flat.doublingLower, flat.doublingUpper].filter((d) => d === undefined)).toHaveLength(1);
  });

  it('turns growth into a reproduction number and no growth into 1', () => {
    expect(got(reproductionFromGrowth(0, { mean: 5, sd: 2 }))).toEqual({ gamma: 1, fixed: 1 });
    expect(got(reproductionFromGrowth(0.1, { mean: 5, sd: 0 })).gamma).toBe(Math.exp(0.5));
    expect(got(reproductionFromGrowth(0.1, { mean: 5, sd: 5 })).gamma).toBeCloseTo(1.5, 12);
    // The scale is sd^2 / mean = 4: from a rate of -1/4 on no such generation time lets cases fall.
    expect(reproductionFromGrowth(-0.3, { mean: 4, sd: 4 }).ok).toBe(false);
    expect(got(reproductionFromGrowth(-0.2, { mean: 4, sd: 4 })).gamma).toBeCloseTo(0.2, 12);
    expect(reproductionFromGrowthSeir(-0.3, 3, 4).ok).toBe(false);
    expect(reproductionFromGrowthSeir(-0.25, 3, 4).ok).toBe(false);
    expect(got(reproductionFromGrowthSeir(0.1, 3, 4))).toBeCloseTo(1.3 * 1.4, 12);
  });

  it('has a serial interval that sums to 1 with the mean asked for', () => {
    const days = Array.from({ length: 200 }, (_, k) => k);
    const p = got(discreteSerialInterval(4.7, 2.9, days));
    expect(total(p)).toBeCloseTo(1, 9);
    expect(p.reduce((sum, w, k) => sum + w * k, 0)).toBeCloseTo(4.7, 6);
    expect(p[0]).toBe(0);
  });

  it('gives no window before one serial interval has passed, and the prior where nothing happens', () => {
    const rows = got(
      reproductionNumber({
        incidence: [1, 0, 0, 0, 0, 0, 0, 0, 0, 0],
        serialInterval: [0, 0, 0, 0, 0, 1],
        window: 3,
      }),
    );
    expect(rows.map((r) => r.to)).toEqual([4, 5, 6, 7, 8, 9, 10]);
    expect(rows[0]?.mean).toBeUndefined();
    expect(rows[1]?.upper).toBeUndefined();
    const last = rows.at(-1);
    expect([last?.from, last?.to, last?.mean, last?.sd]).toEqual([8, 10, 5, 5]);
    // The exponential prior's own quantiles.
    expect(last?.lower).toBeCloseTo(-5 * Math.log(0.975), 9);
    expect(last?.median).toBeCloseTo(5 * Math.LN2, 9);
    expect(last?.upper).toBeCloseTo(-5 * Math.log(0.025), 9);
  });

  it('weighs past cases by the serial interval', () => {
    expect(Array.from(infectionPressure([1, 2, 0, 4], [0, 0.5, 0.25]))).toEqual([
      0, 0.5, 1.25, 0.5,
    ]);
  });
});

describe('linked cases', () => {
  const cases = [
    { id: 'A', day: 0, unit: 'north', staff: ['x'] },
    { id: 'B', day: 14, unit: 'south', staff: ['x', 'y'] },
    { id: 'C', day: 29, unit: 'south' },
    { id: 'D', day: 28, unit: 'south', staff: [] },
    { id: 'E', day: 1 },
  ];
  it('hang together by place or person within the window, and by chains of links', () => {
    const found = got(linkedClusters(cases, 14));
    expect(found.links).toEqual([
      ['A', 'B'],
      ['B', 'D'],
      ['C', 'D'],
    ]);
    expect(found.clusters).toEqual([['A', 'B', 'C', 'D'], ['E']]);
    expect(got(linkedClusters(cases, 13)).clusters).toEqual([['A'], ['B'], ['C', 'D'], ['E']]);
    expect(got(linkedClusters([], 14))).toEqual({ links: [], clusters: [] });
  });

  it('are told from chance by Knox', () => {
    const days = [0, 1, 2, 30, 31, 32, 60, 61, 62];
    const units = [1, 1, 1, 2, 2, 2, 3, 3, 3];
    const close = got(
      knoxTest({ days, units, windowDays: 3, permutations: 1999 }, seededChance(1)),
    );
    expect([close.statistic, close.timePairs, close.spacePairs, close.expected]).toEqual([
      9,
      9,
      9,
      81 / 36,
    ]);
    expect(close.pPermutation).toBeLessThan(0.01);
    expect(close.pPairs).toBeLessThan(1e-6);
    const apart = got(
      knoxTest(
        { days, units: [1, 2, 3, 1, 2, 3, 1, 2, 3], windowDays: 3, permutations: 199 },
        seededChance(1),
      ),
    );
    expect([apart.statistic, apart.pPermutation, apart.pPoisson]).toEqual([0, 1, 1]);
    expect(apart.pPairs).toBeCloseTo(1, 12);
  });
});

describe('how often to test', () => {
  const at = (everyDays: number, delayDays: number, sensitivity = 1, detectionLimit = 3) =>
    got(
      screeningEffects([{ detectionLimit, everyDays, delayDays, sensitivity }], seededChance(2), {
        courses: 4000,
      }),
    )[0] as {
      reduction: number;
      remaining: number;
      removedByTesting: number;
      removedBySymptoms: number;
      publishedFactor: number;
    };

  it('oftener, sooner, better and finer tests take off more', () => {
    expect(at(3, 0).reduction).toBeGreaterThan(at(7, 0).reduction);
    expect(at(7, 0).reduction).toBeGreaterThan(at(7, 2).reduction);
    expect(at(7, 0).reduction).toBeGreaterThan(at(7, 0, 0.7).reduction);
    expect(at(7, 0).reduction).toBeGreaterThan(at(7, 0, 1, 6).reduction);
  });

  it('shares add up, and no test at all changes nothing', () => {
    const weekly = at(7, 1);
    expect(weekly.removedByTesting + weekly.removedBySymptoms + weekly.remaining).toBeCloseTo(
      1,
      12,
    );
    expect(weekly.publishedFactor).toBeCloseTo(
      weekly.remaining / (1 - weekly.removedBySymptoms),
      12,
    );
    const none = at(7, 1, 0);
    expect(none.removedByTesting).toBe(0);
    expect(none.reduction).toBeCloseTo(0, 12);
  });

  it('courses rise to their peak and fall, on whole days', () => {
    const course = emptyCourse();
    const chance = seededChance(6);
    for (let i = 0; i < 200; i++) {
      drawCourse(chance, i % 2 === 0, course);
      const top = Math.max(...course.load);
      expect(course.load).toHaveLength(COURSE_DAYS);
      expect(top).toBeLessThanOrEqual(11);
      expect(Math.min(...course.load)).toBe(0);
      expect(course.load[0]).toBe(0);
      expect(course.load[2]).toBe(0);
      expect(
        i % 2 === 0
          ? course.symptomDay >= 3 && course.symptomDay <= 10
          : course.symptomDay === COURSE_DAYS,
      ).toBe(true);
    }
  });

  it('only those who take part are held back', () => {
    expect(got(screenedReproduction(2.5, 0.4, 0.5))).toBeCloseTo(1.75, 12);
    expect(got(screenedReproduction(2.5, 0.4, 0))).toBe(2.5);
  });
});
