import { describe, expect, it } from 'vitest';
import { seededChance, uniform } from '../random/chance.ts';
import { got } from '../testing.ts';
import { fitChainBinomial } from './fit-chain-binomial.ts';
import { type ScreeningPolicy, screeningEffects } from './screening-effect.ts';
import { COURSE_DAYS, drawCourse, emptyCourse } from './viral-load-course.ts';

const COURSES = 1500;

/** The same told plainly: every phase of the rota is walked day by day, every test is met with its chance. */
function plainly({ detectionLimit, everyDays, delayDays, sensitivity = 1 }: ScreeningPolicy) {
  const chance = seededChance(9);
  const course = emptyCourse();
  let [all, byTesting, bySymptoms, alone] = [0, 0, 0, 0];
  for (let c = 0; c < COURSES; c++) {
    drawCourse(chance, uniform(chance) < 0.35, course);
    const infectious = Array.from(course.load, (load) => Math.max(0, load - 6));
    const from = (day: number): number => infectious.slice(day).reduce((a, b) => a + b, 0);
    const symptoms = course.symptomDay;
    all += from(0);
    alone += from(symptoms);
    const found = (day: number): boolean => {
      const first = course.load.findIndex((load) => load > detectionLimit);
      const gone = course.load.findIndex((load, d) => d > first && load <= detectionLimit);
      return first >= 0 && day >= first && (gone < 0 || day < gone);
    };
    const start = course.load.findIndex((load) => load > detectionLimit);
    for (let phase = 0; phase < everyDays; phase++) {
      let left = 1 / everyDays;
      for (let day = start + phase; start >= 0 && day < COURSE_DAYS; day += everyDays) {
        if (!found(day)) continue;
        const known = day + delayDays;
        const removed = left * sensitivity * from(Math.min(known, symptoms));
        if (known < symptoms) byTesting += removed;
        else if (known > symptoms || symptoms === COURSE_DAYS) bySymptoms += removed;
        else {
          byTesting += removed / 2;
          bySymptoms += removed / 2;
        }
        left *= 1 - sensitivity;
      }
      bySymptoms += left * from(symptoms);
    }
  }
  const remaining = all - byTesting - bySymptoms;
  return {
    removedByTesting: byTesting / all,
    removedBySymptoms: bySymptoms / all,
    remaining: remaining / all,
    reduction: 1 - remaining / (all - alone),
    publishedFactor: remaining / (all - bySymptoms),
  };
}

describe('what testing takes off, told plainly day by day', () => {
  it.each([
    { detectionLimit: 3, everyDays: 1, delayDays: 0 },
    { detectionLimit: 5, everyDays: 3, delayDays: 1 },
    { detectionLimit: 3, everyDays: 7, delayDays: 2, sensitivity: 0.7 },
    { detectionLimit: 6, everyDays: 1, delayDays: 5, sensitivity: 0.4 },
    { detectionLimit: 0, everyDays: 14, delayDays: 0, sensitivity: 0.9 },
    { detectionLimit: 12, everyDays: 3, delayDays: 0 },
  ])('%j', (policy) => {
    const [effect] = got(screeningEffects([policy], seededChance(9), { courses: COURSES }));
    const plain = plainly(policy);
    for (const [name, figure] of Object.entries(plain))
      expect(effect?.[name as keyof typeof plain], name).toBeCloseTo(figure, 10);
  });
});

describe('a course of infection', () => {
  // Larremore et al. (2021): straight from the peak through 10^6 on the log scale, 4 to 9 days later,
  // with symptoms up to 3 days more; the peak itself is 10^7 to 10^11.
  it('rises to its peak and falls from there in one straight line', () => {
    const course = emptyCourse();
    const chance = seededChance(12);
    for (let i = 0; i < 500; i++) {
      drawCourse(chance, i % 2 === 0, course);
      const load = [...course.load];
      const top = load.indexOf(Math.max(...load));
      const falling = load.slice(top + 1).filter((value) => value > 0);
      expect(falling.length).toBeGreaterThan(3);
      const slope = (falling[1] as number) - (falling[0] as number);
      falling
        .slice(1)
        .forEach((value, k) => expect(value - (falling[k] as number)).toBeCloseTo(slope, 9));
      // The peak lies within a day of the highest whole day.
      expect(load[top + 1] as number).toBeGreaterThanOrEqual((load[top] as number) + slope - 1e-9);
      expect(slope).toBeGreaterThanOrEqual(-5 / 4);
      expect(slope).toBeLessThanOrEqual(-1 / 12);
    }
  });
});

describe('chains of infection in households', () => {
  it('are Reed and Frost’s unless Greenwood’s are asked for', () => {
    const chains = [
      { generations: [1], households: 20 },
      { generations: [1, 1], households: 9 },
      { generations: [1, 2], households: 7 },
      { generations: [1, 2, 1], households: 4 },
      { generations: [1, 1, 1], households: 3 },
    ];
    const usual = got(fitChainBinomial(chains));
    expect(usual).toEqual(got(fitChainBinomial(chains, { greenwood: false })));
    expect(usual.p).not.toBeCloseTo(got(fitChainBinomial(chains, { greenwood: true })).p, 3);
  });
});
