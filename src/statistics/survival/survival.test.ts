import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededChance, uniform } from '../random/chance.ts';
import { drawExponential } from '../random/draw-exponential.ts';
import { drawNormal } from '../random/draw-normal.ts';
import { got, reasonOf } from '../testing.ts';
import { compareGroups } from './compare-groups.ts';
import { conditionalArrival } from './conditional-arrival.ts';
import { cumulativeIncidence } from './cumulative-incidence.ts';
import { kaplanMeier, rowAt, standardError, survivalAt } from './kaplan-meier.ts';
import { lognormalFit } from './lognormal-fit.ts';
import { survivalQuantiles } from './quantiles.ts';
import { restrictedMean } from './restricted-mean.ts';
import { type IntervalScale, limitCurves } from './survival-interval.ts';
import { weibullFit } from './weibull-fit.ts';

const wait = fc.record({ time: fc.integer({ min: 0, max: 12 }), event: fc.boolean() });
const waits = fc
  .array(wait, { minLength: 1, maxLength: 30 })
  .map((rows) => ({ time: rows.map((r) => r.time), event: rows.map((r) => r.event) }));
const SCALES: readonly IntervalScale[] = ['plain', 'log', 'log-log', 'logit', 'arcsin'];

describe('the waiting curve', () => {
  // R 4.2.2, survfit(Surv(time, event) ~ 1, conf.type = "plain"): its rows with an event.
  it('has plain limits as R gives them', () => {
    const curve = got(
      kaplanMeier({
        time: [2, 4, 6, 8, 9, 11, 12, 15, 16, 18],
        event: [1, 1, 0, 1, 1, 0, 1, 1, 0, 0],
      }),
    );
    const { lower, upper } = got(limitCurves(curve, 'plain'));
    [0.7140614903086316, 0.5520819870781754, 0.3887914676736542, 0.2504360274864553].forEach(
      (r, i) => expect(lower[i]).toBeCloseTo(r, 12),
    );
    [1, 1, 0.982637103754917, 0.892421115370687, 0.770266773951819, 0.608446639385689].forEach(
      (r, i) => expect(upper[i]).toBeCloseTo(r, 12),
    );
  });

  it('is the product over event times, counted plainly', () => {
    fc.assert(
      fc.property(waits, ({ time, event }) => {
        const curve = got(kaplanMeier({ time, event }));
        const times = [...new Set(time.filter((_, i) => event[i]))].sort((a, b) => a - b);
        expect(Array.from(curve.time)).toEqual(times);
        let s = 1;
        times.forEach((t, k) => {
          const n = time.filter((x) => x >= t).length;
          const d = time.filter((x, i) => x === t && event[i]).length;
          s *= (n - d) / n;
          expect([curve.atRisk[k], curve.events[k]]).toEqual([n, d]);
          expect(curve.survival[k]).toBeCloseTo(s, 12);
        });
        expect(curve.lastTime).toBe(Math.max(...time));
      }),
    );
  });

  it('is read off to the right', () => {
    const curve = got(kaplanMeier({ time: [2, 4, 6], event: [1, 1, 0] }));
    expect([
      rowAt(curve, 1),
      rowAt(curve, 2),
      rowAt(curve, 3.9),
      rowAt(curve, 4),
      rowAt(curve, 99),
    ]).toEqual([-1, 0, 0, 1, 1]);
    expect(
      [survivalAt(curve, 0), survivalAt(curve, 2), survivalAt(curve, 99)].map(
        (x) => Math.round(x * 1e9) / 1e9,
      ),
    ).toEqual([1, 0.666666667, 0.333333333]);
    expect(standardError(curve, 0)).toBeCloseTo(
      Math.sqrt((2 / 3 / 3) * (1 / 3) * 3) / Math.sqrt(3),
      9,
    );
    const over = got(kaplanMeier({ time: [2, 4], event: [1, 1] }));
    expect(standardError(over, 1)).toBeUndefined();
    expect(got(limitCurves(over)).lower[1]).toBeUndefined();
  });

  it.each(SCALES)('%s limits hold the curve and stay in 0 to 1', (scale) => {
    fc.assert(
      fc.property(waits, (data) => {
        const curve = got(kaplanMeier(data));
        const { lower, upper } = got(limitCurves(curve, scale));
        curve.survival.forEach((s, i) => {
          if (s === 0) return;
          expect(lower[i] as number).toBeLessThanOrEqual(s + 1e-12);
          expect(upper[i] as number).toBeGreaterThanOrEqual(s - 1e-12);
          expect(lower[i] as number).toBeGreaterThanOrEqual(0);
          expect(upper[i] as number).toBeLessThanOrEqual(1);
        });
      }),
      { numRuns: 40 },
    );
  });

  it.each(['log-log', 'logit', 'arcsin'] as const)(
    '%s limits cover the true share about 95 times in 100',
    (scale) => {
      const chance = seededChance(5);
      let held = 0;
      for (let i = 0; i < 600; i++) {
        const time: number[] = [];
        const event: boolean[] = [];
        for (let k = 0; k < 40; k++) {
          const [t, c] = [drawExponential(chance), 2 * uniform(chance)];
          time.push(Math.min(t, c));
          event.push(t <= c);
        }
        const curve = got(kaplanMeier({ time, event }));
        const row = rowAt(curve, 0.7);
        const { lower, upper } = got(limitCurves(curve, scale));
        if ((lower[row] as number) <= Math.exp(-0.7) && Math.exp(-0.7) <= (upper[row] as number))
          held++;
      }
      expect(held / 600).toBeGreaterThan(0.92);
      expect(held / 600).toBeLessThan(0.985);
    },
  );
});

describe('quantiles of the wait', () => {
  const curve = got(kaplanMeier({ time: [1, 2, 3, 4, 9], event: [1, 1, 1, 1, 0] }));
  it('lie halfway where the curve stands exactly there, and at the steps elsewhere', () => {
    const q = got(survivalQuantiles(curve, [0, 0.1, 0.2, 0.5, 0.8, 0.81])).map((x) => x.estimate);
    expect(q).toEqual([0, 1, 1.5, 3, 6.5, undefined]);
  });

  it('of a curve without steps are not reached', () => {
    const none = got(kaplanMeier({ time: [1, 2], event: [0, 0] }));
    expect(got(survivalQuantiles(none, [0.5]))).toEqual([
      { estimate: undefined, lower: undefined, upper: undefined },
    ]);
  });
});

describe('when a result will come', () => {
  const curve = got(kaplanMeier({ time: [1, 2, 3, 4, 9], event: [1, 1, 1, 1, 0] }));
  it('grows with the time given', () => {
    const at = (age: number, by: number) => got(conditionalArrival(curve, { age, by }));
    expect(at(0, 2).probability).toBeCloseTo(0.4, 12);
    expect(at(2, 4).probability).toBeCloseTo(2 / 3, 12);
    expect(at(2, 1)).toEqual({
      probability: 0,
      lower: 0,
      upper: 0,
      standardErrorLog: 0,
      beyondData: false,
    });
    expect([at(2, 9).beyondData, at(2, 9.1).beyondData]).toEqual([false, true]);
    const { lower, upper, probability } = at(1, 3);
    expect(lower as number).toBeLessThan(probability);
    expect(upper as number).toBeGreaterThan(probability);
    expect(
      got(conditionalArrival(curve, { age: 1, by: 3, confidence: 0.5 })).lower as number,
    ).toBeGreaterThan(lower as number);
  });

  // R's survfit carries the last step on, summary(extend = TRUE), which is no more than a floor.
  it('has no upper limit where it is a floor: beyond the longest wait, or where nothing came', () => {
    const at = (age: number, by: number) => got(conditionalArrival(curve, { age, by }));
    expect(at(2, 9.1)).toEqual({ ...at(2, 9), upper: undefined, beyondData: true });
    // R: s <- summary(survfit(Surv(c(1,2,3,4,9), c(1,1,1,1,0)) ~ 1, start.time = 2.5), times = 9); 1 - c(s$upper, s$lower)
    expect(at(2, 9).lower).toBe(0);
    expect(at(2, 9).upper).toBeCloseTo(0.932721609148078, 9);
    expect(at(5, 8)).toMatchObject({
      probability: 0,
      lower: 0,
      upper: undefined,
      beyondData: false,
    });
    const lone = got(kaplanMeier({ time: [5], event: [0] }));
    expect(got(conditionalArrival(lone, { age: 4, by: 10 }))).toMatchObject({
      lower: 0,
      upper: undefined,
      beyondData: true,
    });
    for (const age of [5, 6])
      expect(reasonOf(conditionalArrival(lone, { age, by: 10 }))).toBe('undefined');
  });

  it('is certain, without limits, once everything had come by then', () => {
    const over = got(kaplanMeier({ time: [1, 2], event: [1, 1] }));
    expect(got(conditionalArrival(over, { age: 1, by: 5 }))).toEqual({
      probability: 1,
      lower: undefined,
      upper: undefined,
      standardErrorLog: undefined,
      beyondData: true,
    });
  });
});

describe('groups', () => {
  it('that are the same do not differ, and their order does not matter', () => {
    fc.assert(
      fc.property(waits, waits, (a, b) => {
        const [there, back] = [compareGroups([a, b]), compareGroups([b, a])];
        expect(there.ok).toBe(back.ok);
        if (there.ok && back.ok) {
          expect(there.value.chiSquared).toBeCloseTo(back.value.chiSquared, 8);
          expect(there.value.observed[0]).toBe(back.value.observed[1]);
          const seen = there.value.observed.reduce((x, y) => x + y, 0);
          expect(there.value.expected.reduce((x, y) => x + y, 0)).toBeCloseTo(seen, 9);
        }
        const same = compareGroups([a, a]);
        if (same.ok) expect(same.value.chiSquared).toBeCloseTo(0, 8);
      }),
      { numRuns: 60 },
    );
  });

  it('that wait alike are told apart about 5 times in 100', () => {
    const chance = seededChance(4);
    const draw = () => ({
      time: Array.from({ length: 25 }, () => drawExponential(chance)),
      event: new Array<number>(25).fill(1),
    });
    let told = 0;
    for (let i = 0; i < 600; i++) if (got(compareGroups([draw(), draw()])).p < 0.05) told++;
    expect(told / 600).toBeGreaterThan(0.025);
    expect(told / 600).toBeLessThan(0.085);
  });

  it('that were never at risk when something happened take no degree of freedom', () => {
    // R survival 3.5-3, survdiff: observed 2 0 6, expected 2.1373737374 0 5.8626262626, chi-square 0.0124160352 on 1.
    const found = got(
      compareGroups([
        { time: [55, 49], event: [1, 1] },
        { time: [4], event: [0] },
        {
          time: [82, 30, 45, 22, 53, 55, 14, 9, 27, 46],
          event: [0, 1, 0, 0, 1, 0, 1, 1, 1, 1],
        },
      ]),
    );
    expect(found.observed).toEqual([2, 0, 6]);
    for (const [g, e] of [2.1373737374, 0, 5.8626262626].entries())
      expect(found.expected[g]).toBeCloseTo(e, 9);
    expect(found.chiSquared).toBeCloseTo(0.0124160352, 9);
    expect(found.degreesOfFreedom).toBe(1);
  });
});

describe('fitted distributions', () => {
  const chance = seededChance(2);
  const n = 3000;
  const censor = (time: number[]) => {
    const limit = time.map(() => 60 * uniform(chance));
    return {
      time: time.map((t, i) => Math.min(t, limit[i] as number)),
      event: time.map((t, i) => t <= (limit[i] as number)),
    };
  };

  it('find the Weibull that made the waits', () => {
    const fit = got(
      weibullFit(
        censor(Array.from({ length: n }, () => 30 * drawExponential(chance) ** (1 / 1.8))),
      ),
    );
    expect(Math.abs(fit.shape / 1.8 - 1)).toBeLessThan(0.06);
    expect(Math.abs(fit.scale / 30 - 1)).toBeLessThan(0.04);
  });

  it('find the lognormal that made the waits', () => {
    const fit = got(
      lognormalFit(censor(Array.from({ length: n }, () => Math.exp(3 + 0.4 * drawNormal(chance))))),
    );
    expect(Math.abs(fit.meanLog - 3)).toBeLessThan(0.04);
    expect(Math.abs(fit.sdLog / 0.4 - 1)).toBeLessThan(0.06);
  });

  it('of waits in days and in hours are the same', () => {
    const time = [18, 20, 21, 25, 33, 47, 20, 55];
    const event = [1, 1, 1, 1, 1, 1, 0, 0];
    const [hours, days] = [1, 24].map((unit) => ({
      w: got(weibullFit({ time: time.map((t) => t / unit), event })),
      l: got(lognormalFit({ time: time.map((t) => t / unit), event })),
    }));
    expect(hours?.w.shape).toBeCloseTo(days?.w.shape as number, 9);
    expect((hours?.w.scale as number) / (days?.w.scale as number)).toBeCloseTo(24, 8);
    expect(hours?.l.sdLog).toBeCloseTo(days?.l.sdLog as number, 9);
    expect((hours?.l.meanLog as number) - (days?.l.meanLog as number)).toBeCloseTo(Math.log(24), 9);
  });

  it('cannot be found where all came at the end', () => {
    expect(weibullFit({ time: [1, 2, 3], event: [0, 0, 1] }).ok).toBe(false);
    expect(weibullFit({ time: [1, 2, 3], event: [1, 0, 1] }).ok).toBe(true);
  });
});

describe('restricted means and shares', () => {
  it('the mean up to a time is the area', () => {
    const curve = got(kaplanMeier({ time: [2, 4, 6], event: [1, 1, 0] }));
    expect(got(restrictedMean(curve, 1))).toEqual({ mean: 1, standardError: 0, beyondData: false });
    expect(got(restrictedMean(curve, 4)).mean).toBeCloseTo(2 + 2 * (2 / 3), 12);
    expect(got(restrictedMean(curve, 9)).mean).toBeCloseTo(2 + 4 / 3 + 5 / 3, 12);
    expect([
      got(restrictedMean(curve, 6)).beyondData,
      got(restrictedMean(curve, 6.1)).beyondData,
    ]).toEqual([false, true]);
    expect(
      got(restrictedMean(got(kaplanMeier({ time: [1, 2], event: [1, 1] })), 5)).mean,
    ).toBeCloseTo(1.5, 12);
  });

  it('results, voids and what is out make a whole, and results alone are Kaplan and Meier', () => {
    const state = fc.record({
      time: fc.integer({ min: 0, max: 9 }),
      state: fc.integer({ min: 0, max: 2 }),
    });
    fc.assert(
      fc.property(fc.array(state, { minLength: 1, maxLength: 25 }), (rows) => {
        const times = [0, 3, 5.5, 9, 20];
        const data = { time: rows.map((r) => r.time), state: rows.map((r) => r.state) };
        const found = got(cumulativeIncidence(data, times));
        const curve = got(kaplanMeier({ time: data.time, event: data.state.map((s) => s > 0) }));
        times.forEach((t, i) => {
          expect(
            (found.result[i] as number) + (found.void[i] as number) + (found.pending[i] as number),
          ).toBeCloseTo(1, 12);
          expect(found.pending[i]).toBeCloseTo(survivalAt(curve, t), 12);
        });
      }),
    );
  });
});
