import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { below, seededChance, uniform } from '../random/chance.ts';
import { got } from '../testing.ts';
import { atLeastPositives } from './at-least-positives.ts';
import { detectionProbability } from './detection.ts';
import { detectionProbabilityLarge } from './detection-large.ts';
import { freedomSeries } from './freedom-series.ts';
import { homeClearCluster } from './home-clear-cluster.ts';
import { homeClearIndependent } from './home-clear-independent.ts';
import { mostInfectedConsistent } from './most-infected-consistent.ts';
import { poissonBinomial } from './poisson-binomial.ts';
import { sampleSize } from './sample-size.ts';
import {
  sampleSizeCannonRoe,
  sampleSizeLarge,
  sampleSizeMacDiarmid,
} from './sample-size-approximate.ts';
import { sampleSizeForFreedom } from './sample-size-for-freedom.ts';

const share = fc.double({ min: 0.05, max: 0.99, noNaN: true });
const survey = fc.integer({ min: 1, max: 40 }).chain((population) =>
  fc.record({
    population: fc.constant(population),
    infected: fc.integer({ min: 0, max: population }),
    tested: fc.integer({ min: 0, max: population }),
    sensitivity: share,
  }),
);

describe('detection', () => {
  it('rises with everything that helps', () => {
    fc.assert(
      fc.property(survey, (s) => {
        const p = got(detectionProbability(s));
        expect(p).toBeGreaterThanOrEqual(-1e-12);
        expect(p).toBeLessThanOrEqual(1);
        if (s.tested < s.population)
          expect(got(detectionProbability({ ...s, tested: s.tested + 1 }))).toBeGreaterThanOrEqual(
            p - 1e-12,
          );
        if (s.infected < s.population)
          expect(
            got(detectionProbability({ ...s, infected: s.infected + 1 })),
          ).toBeGreaterThanOrEqual(p - 1e-12);
        if (s.infected === 0 || s.tested === 0) expect(p).toBeCloseTo(0, 12);
        // Without false positives, one positive is a detection.
        expect(got(atLeastPositives({ ...s, specificity: 1, positives: 1 }))).toBeCloseTo(p, 10);
        expect(got(atLeastPositives({ ...s, specificity: 0.9, positives: 0 }))).toBeCloseTo(1, 10);
      }),
    );
  });

  it('agrees with simulation, false positives included', () => {
    const chance = seededChance(3);
    let hits = 0;
    for (let i = 0; i < 8000; i++) {
      const people = Array.from({ length: 12 }, (_, k) => k < 3);
      for (let k = 11; k > 0; k--) {
        const j = below(chance, k + 1);
        [people[k], people[j]] = [people[j] as boolean, people[k] as boolean];
      }
      const positives = people
        .slice(0, 7)
        .filter((infected) => uniform(chance) < (infected ? 0.7 : 0.1)).length;
      if (positives >= 2) hits++;
    }
    const exact = got(
      atLeastPositives({
        population: 12,
        infected: 3,
        tested: 7,
        sensitivity: 0.7,
        specificity: 0.9,
        positives: 2,
      }),
    );
    expect(Math.abs(hits / 8000 - exact)).toBeLessThan(0.02);
  });

  it('in a large population is the limit', () => {
    const near = got(
      detectionProbability({ population: 200_000, infected: 20_000, tested: 30, sensitivity: 0.9 }),
    );
    expect(
      got(detectionProbabilityLarge({ tested: 30, prevalence: 0.1, sensitivity: 0.9 })),
    ).toBeCloseTo(near, 4);
    expect(got(detectionProbabilityLarge({ tested: 0, prevalence: 1, sensitivity: 1 }))).toBe(0);
    expect(got(detectionProbabilityLarge({ tested: 3, prevalence: 1, sensitivity: 1 }))).toBe(1);
    expect(got(detectionProbabilityLarge({ tested: 0, prevalence: 0.1, sensitivity: 0.9 }))).toBe(
      0,
    );
  });
});

describe('how many to test', () => {
  it('is the least that will do', () => {
    fc.assert(
      fc.property(survey, share, ({ population, infected, sensitivity }, confidence) => {
        const found = sampleSize({ population, infected, sensitivity, confidence });
        const reach = (tested: number): number =>
          got(detectionProbability({ population, infected, tested, sensitivity }));
        if (!found.ok) {
          expect(reach(population)).toBeLessThan(confidence);
          return;
        }
        expect(reach(found.value)).toBeGreaterThanOrEqual(confidence - 1e-11);
        expect(found.value === 0 || reach(found.value - 1) < confidence).toBe(true);
      }),
    );
  });

  it('approximately: not fewer than one, and rounded up', () => {
    const q = { population: 100, infected: 10, sensitivity: 1, confidence: 0.95 };
    expect([
      got(sampleSizeMacDiarmid(q)),
      got(sampleSizeCannonRoe(q)),
      got(sampleSizeLarge(0.1, 1, 0.95)),
    ]).toEqual([26, 25, 29]);
    expect(got(sampleSizeLarge(1, 1, 0.95))).toBe(1);
    expect(got(sampleSizeMacDiarmid({ ...q, infected: 100, confidence: 0.5 }))).toBe(1);
  });

  it('so many could be infected and all tests be negative', () => {
    for (const [population, tested, sensitivity, confidence] of [
      [24, 20, 0.7, 0.95],
      [12, 12, 0.5, 0.9],
      [5, 5, 1, 0.9],
      [8, 2, 0.9, 0.99],
    ] as const) {
      const { most, approximatePrevalence } = got(
        mostInfectedConsistent({ population, tested, sensitivity, confidence }),
      );
      const at = (infected: number): number =>
        got(detectionProbability({ population, tested, sensitivity, infected }));
      expect(at(most)).toBeLessThan(confidence);
      expect(most === population || at(most + 1) >= confidence - 1e-11).toBe(true);
      expect(approximatePrevalence).toBeLessThanOrEqual(1);
    }
    expect(
      got(mostInfectedConsistent({ population: 5, tested: 0, sensitivity: 1, confidence: 0.9 })),
    ).toEqual({ most: 5, approximatePrevalence: 1 });
  });
});

describe('freedom over rounds', () => {
  it('settles where it says it will', () => {
    const series = got(
      freedomSeries({
        detection: new Array<number>(400).fill(0.6),
        introduction: 0.05,
        prior: 0.2,
      }),
    );
    expect(series.free.at(-1)).toBeCloseTo(series.equilibriumFree, 9);
    expect(series.discountedPrior.at(-1)).toBeCloseTo(series.equilibriumPrior, 9);
    const hopeless = got(
      freedomSeries({
        detection: new Array<number>(400).fill(0.05),
        introduction: 0.06,
        prior: 0.9,
      }),
    );
    expect([hopeless.equilibriumFree, hopeless.equilibriumPrior]).toEqual([0, 0]);
    expect(hopeless.free.at(-1)).toBeLessThan(0.05);
    const safe = got(freedomSeries({ detection: [0.5], introduction: 0, prior: 0.5 }));
    expect([safe.equilibriumFree, safe.equilibriumPrior]).toEqual([1, 1]);
  });

  it('takes a risk for each round, before that round', () => {
    const series = got(
      freedomSeries({ detection: [0.5, 0.5], introduction: [0, 0.5], prior: 0.5 }),
    );
    expect(series.discountedPrior).toEqual([0.5, 1 / 3]);
    expect(series.free[0]).toBeCloseTo(2 / 3, 12);
    expect(got(freedomSeries({ detection: [1], introduction: 0, prior: 0 })).free).toEqual([0]);
  });

  it('asks for no tests where the target is met, and for a bounded or unbounded home', () => {
    const q = {
      population: 300,
      prior: 0.5,
      introduction: 0.01,
      designPrevalence: 0.05,
      target: 0.95,
      sensitivity: 0.9,
    };
    expect(got(sampleSizeForFreedom({ ...q, prior: 0.99 }))).toEqual({
      tested: 0,
      testedExact: 0,
      detection: 0,
      discountedPrior: 0.99 * 0.99,
    });
    const found = got(sampleSizeForFreedom(q));
    expect(found.testedExact as number).toBeLessThanOrEqual(found.tested);
    expect(got(sampleSizeForFreedom({ ...q, designPrevalence: 15 }))).toEqual(found);
    const { population: _, ...unbounded } = q;
    expect(got(sampleSizeForFreedom(unbounded)).testedExact).toBeUndefined();
    expect(got(sampleSizeForFreedom(unbounded)).tested).toBe(65);
  });
});

describe('is the home clear', () => {
  it('person by person: the chance is a product, the number a sum of laws', () => {
    const found = got(
      homeClearIndependent({ prior: [0.1, 0.4, 1], sensitivity: [0.5, 0, 0.9], specificity: 0.8 }),
    );
    expect(found.posterior[0]).toBeCloseTo(0.05 / (0.05 + 0.72), 12);
    expect(found.posterior.slice(1)).toEqual([0.4, 1]);
    expect(found.clear).toBe(0);
    const pmf = got(poissonBinomial(found.posterior));
    expect(pmf.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    expect(pmf.reduce((sum, p, k) => sum + p * k, 0)).toBeCloseTo(found.expectedInfected, 12);
    expect(got(poissonBinomial([]))).toEqual([1]);
    expect(got(homeClearIndependent({ prior: [], sensitivity: [], specificity: 1 }))).toEqual({
      posterior: [],
      clear: 1,
      expectedInfected: 0,
    });
  });

  it('in clusters: by how likely each number is to be missed', () => {
    const found = got(
      homeClearCluster({
        population: 10,
        tested: 10,
        sensitivity: 0.5,
        infected: [2, 0],
        prior: [3, 1],
      }),
    );
    expect(found.posterior[0]).toBeCloseTo(0.75 / 1.75, 12);
    expect(found.clear).toBeCloseTo(1 / 1.75, 12);
  });
});
