import { describe, expect, it } from 'vitest';
import { binomialAtLeast } from '../distributions/binomial.ts';
import { seededChance, uniform } from '../random/chance.ts';
import { got } from '../testing.ts';
import { testsToSignal } from './bernoulli-cusum-chain.ts';
import { bernoulliCusumDesign, bernoulliCusumReference } from './bernoulli-cusum-design.ts';
import { bernoulliCusumPath } from './bernoulli-cusum-path.ts';
import { bernoulliCusumRunLength } from './bernoulli-cusum-run.ts';
import { binomialSignal } from './binomial-signal.ts';
import { cusumAverageRunLength } from './cusum-run-length.ts';
import { ewma } from './ewma.ts';
import { ewmaProportion } from './ewma-proportion.ts';
import { ewmaAverageRunLength } from './ewma-run-length.ts';
import { gChart } from './g-chart.ts';
import { kGapQuantile, shortestGapSignal } from './gap-signals.ts';
import { gapCdf, gapQuantile } from './geometric.ts';
import { laneyPChart } from './laney-p-chart.ts';
import { commonDenominator } from './lattice.ts';
import { npChart } from './np-chart.ts';
import { pChart } from './p-chart.ts';
import { poissonCusumRunLength } from './poisson-cusum.ts';
import { tChart } from './t-chart.ts';

/** Tests to a signal by plain iteration of the expectation: slow, and nothing in common with the chain. */
function iterated(
  states: number,
  { rise, fall, p, from = 0 }: { rise: number; fall: number; p: number; from?: number },
): number {
  let e = new Float64Array(states);
  for (let step = 0; step < 200_000; step++) {
    const next = e.map(
      (_, k) =>
        1 +
        p * (k + rise < states ? (e[k + rise] as number) : 0) +
        (1 - p) * (e[Math.max(0, k - fall)] as number),
    );
    if (Math.abs((next[0] as number) - (e[0] as number)) < 1e-12 * (next[0] as number))
      return next[from] as number;
    e = next;
  }
  return e[from] as number;
}

describe('the Bernoulli CUSUM', () => {
  it.each([
    [5, 2, 0.1],
    [2, 1, 0.3],
    [10, 0.5, 0.1],
    [4, 3, 0.3],
    [7, 1.3, 0.2],
    [3, 4, 0.5],
    [6, 1, 0.25],
  ] as const)('m %d, limit %d, share %d: tests to a signal', (m, limit, share) => {
    const states = Math.ceil(limit * m - 1e-9);
    const found = got(bernoulliCusumRunLength({ m, limit, share }));
    expect(found / iterated(states, { rise: m - 1, fall: 1, p: share })).toBeCloseTo(1, 9);
  });

  it.each([0, 0.5, 1, 2, 3, 3.75])('from a head start of %d', (headStart) => {
    const m = 4;
    const states = m * 4;
    const from = Math.round(headStart * m);
    const found = got(bernoulliCusumRunLength({ m, limit: 4, share: 0.3, headStart }));
    expect(found / iterated(states, { rise: m - 1, fall: 1, p: 0.3, from })).toBeCloseTo(1, 9);
  });

  it('takes an m that is a fraction, and a head start', () => {
    expect(
      got(bernoulliCusumRunLength({ m: 3.5, limit: 1.5, share: 0.25 })) /
        iterated(Math.ceil(1.5 * 7 - 1e-9), { rise: 5, fall: 2, p: 0.25 }),
    ).toBeCloseTo(1, 9);
    const [none, half] = [0, 1].map((headStart) =>
      got(bernoulliCusumRunLength({ m: 5, limit: 2, share: 0.1, headStart })),
    );
    expect(half).toBeLessThan(none as number);
    expect(half).toBeCloseTo(testsToSignal(10, 5, 0.1)[5] as number, 9);
    expect(got(bernoulliCusumRunLength({ m: 5, limit: 2, share: 0.1, headStart: 2 }))).toBe(1);
    expect(got(bernoulliCusumRunLength({ m: 3.5, limit: 2, share: 0.1, headStart: 2 }))).toBe(1);
    expect(
      got(bernoulliCusumRunLength({ m: 3.5, limit: 1.5, share: 0.25, headStart: 1 })),
    ).toBeLessThan(got(bernoulliCusumRunLength({ m: 3.5, limit: 1.5, share: 0.25 })));
  });

  it('never signals without voids, and at once with voids only', () => {
    expect(got(bernoulliCusumRunLength({ m: 5, limit: 2, share: 0 }))).toBe(Infinity);
    expect(got(bernoulliCusumRunLength({ m: 5, limit: 2, share: 1 }))).toBe(3);
  });

  it('agrees with simulation', () => {
    const chance = seededChance(8);
    let total = 0;
    for (let run = 0; run < 3000; run++) {
      let [s, tests] = [0, 0];
      do {
        s = Math.max(0, s + (uniform(chance) < 0.1 ? 7 : -1));
        tests++;
      } while (s < 12);
      total += tests;
    }
    expect(
      total / 3000 / got(bernoulliCusumRunLength({ m: 8, limit: 1.5, share: 0.1 })),
    ).toBeCloseTo(1, 1);
  });

  it('is designed with the least limit that gives so few false alarms', () => {
    for (const [p0, p1, tests] of [
      [0.02, 0.06, 2000],
      [0.05, 0.15, 300],
      [0.01, 0.02, 5000],
      [0.3, 0.8, 5],
    ] as const) {
      const design = got(bernoulliCusumDesign(p0, p1, tests));
      const states = Math.round(design.limit * design.wholeM);
      expect(design.wholeM).toBe(Math.max(2, Math.round(design.m)));
      expect(design.gamma * design.m).toBeCloseTo(1, 12);
      expect(design.testsIfWell).toBeGreaterThanOrEqual(tests);
      expect(
        states === 1 || (testsToSignal(states - 1, design.wholeM, p0)[0] as number) < tests,
      ).toBe(true);
      expect(design.testsIfRisen).toBeLessThan(design.testsIfWell);
      expect(design.testsIfRisen).toBeCloseTo(
        got(bernoulliCusumRunLength({ m: design.wholeM, limit: design.limit, share: p1 })),
        8,
      );
      expect(got(bernoulliCusumReference(p0, p1))).toEqual({ gamma: design.gamma, m: design.m });
    }
  });

  it('marks the tests at which its sum stands at the limit', () => {
    const path = got(bernoulliCusumPath([true, false, 1, 0, 0], 2, { limit: 1, start: 0.5 }));
    expect(path.sums).toEqual([1, 0.5, 1, 0.5, 0]);
    expect(path.signals).toEqual([1, 3]);
    expect(got(bernoulliCusumPath([1, 1], 2)).signals).toEqual([]);
    expect(got(bernoulliCusumPath([], 2))).toEqual({ sums: [], signals: [] });
  });
});

describe('run lengths', () => {
  it('agree with simulation for counts', () => {
    const chance = seededChance(3);
    const weights = [
      Math.exp(-1),
      Math.exp(-1),
      Math.exp(-1) / 2,
      Math.exp(-1) / 6,
      Math.exp(-1) / 24,
    ];
    const draw = (): number => {
      let [u, k] = [uniform(chance), 0];
      while (k < 5 && u >= (weights[k] as number)) u -= weights[k++] as number;
      return k;
    };
    let total = 0;
    for (let run = 0; run < 3000; run++) {
      let [s, periods] = [0, 0];
      do {
        s = Math.max(0, s + draw() - 1.5);
        periods++;
      } while (s < 2.5);
      total += periods;
    }
    expect(
      Math.abs(
        total / 3000 / got(poissonCusumRunLength({ mean: 1, reference: 1.5, limit: 2.5 })) - 1,
      ),
    ).toBeLessThan(0.07);
  });

  it('shorten with a head start and a shift', () => {
    const poisson = (headStart: number): number =>
      got(poissonCusumRunLength({ mean: 1, reference: 1.5, limit: 3, headStart }));
    expect(poisson(1)).toBeLessThan(poisson(0));
    expect(poisson(3)).toBe(1);
    const normal = (shift: number, sides: 'one' | 'two', headStart = 0): number =>
      got(cusumAverageRunLength({ reference: 0.5, limit: 4, shift, sides, headStart }));
    expect(normal(1, 'one')).toBeLessThan(normal(0, 'one'));
    expect(normal(0, 'two')).toBeCloseTo(normal(0, 'one') / 2, 8);
    expect(normal(1, 'two')).toBeCloseTo(normal(-1, 'two'), 8);
    expect(normal(0, 'two', 2)).toBeLessThan(normal(0, 'two'));
    expect(normal(0, 'two', 1e-12)).toBeCloseTo(normal(0, 'two'), 6);
    const average = (shift: number): number =>
      got(ewmaAverageRunLength({ lambda: 0.2, width: 2.7, shift, sides: 'two' }));
    expect(average(1)).toBeLessThan(average(0));
    expect(average(1)).toBeCloseTo(average(-1), 8);
  });

  // R 4.2, spc 0.6.7: xewma.arl(lambda, width, shift, zr = barrier, hs = max(0, barrier), sided = "one", r = 100).
  it.each([
    [[0.1, 2.5, 0, 0], 273.780614491419],
    [[0.1, 2.5, 0.5, 0], 22.4878923841079],
    [[0.2, 2.8, 1, -1], 9.39441707022043],
    [[0.25, 3, 0, 0.5], 478.044115766844],
    [[0.1, 2.5, 0.5, -2], 23.6335730171244],
  ] as const)(
    'of an EWMA held above a barrier: %j',
    ([lambda, width, shift, barrier], expected) => {
      const question = { lambda, width, shift, barrier, sides: 'one' } as const;
      expect(got(ewmaAverageRunLength(question)) / expected).toBeCloseTo(1, 11);
      if (barrier === 0) {
        const { barrier: _, ...unsaid } = question;
        expect(got(ewmaAverageRunLength(unsaid)) / expected).toBeCloseTo(1, 11);
      }
    },
  );

  // R 4.2, spc 0.6.7: xcusum.arl(reference, limit, shift, hs = headStart, sided = "two", r = 100).
  it.each([
    [5, 0, 2.5, 430.390839191406],
    [4, 1, 2, 5.28688621489189],
    [5, 3, 2.5, 1.539642544971],
    [5, -3, 2.5, 1.539642544971],
  ])('of two CUSUMs with a head start: %d %d %d', (limit, shift, headStart, expected) => {
    const question = { reference: 0.5, limit, shift, headStart, sides: 'two' } as const;
    expect(got(cusumAverageRunLength(question)) / expected).toBeCloseTo(1, 8);
  });

  it('of an EWMA with all weight on the newest is that of single values', () => {
    expect(got(ewmaAverageRunLength({ lambda: 1, width: 3, shift: 0, sides: 'two' }))).toBeCloseTo(
      370.3983,
      3,
    );
  });
});

describe('charts of shares', () => {
  it('name the samples outside, strictly', () => {
    const chart = got(pChart({ counts: [1, 0, 9, 1], sizes: [10, 10, 10, 10] }, 2));
    expect(chart.outside).toEqual([3]);
    expect(chart.lower).toEqual([0, 0, 0, 0]);
    expect(chart.z[0]).toBeCloseTo((0.1 - 0.275) / Math.sqrt((0.275 * 0.725) / 10), 12);
    const low = got(pChart({ counts: [50, 50, 50, 10], sizes: 60 }, 2));
    expect(low.outside).toContain(4);
    expect(low.upper.every((u) => u <= 1)).toBe(true);
    expect(got(npChart([1, 0, 9, 1], 10, 2)).outside).toEqual([3]);
    expect(got(pChart({ counts: [0, 0], sizes: 5 })).z).toEqual([0, 0]);
  });

  it("Laney's limits follow each sample's size and its own samples outside", () => {
    const chart = got(
      laneyPChart({ counts: [1, 2, 1, 2, 1, 30], sizes: [20, 40, 20, 40, 20, 60] }),
    );
    expect(chart.upper[0]).toBeGreaterThan(chart.upper[1] as number);
    expect(chart.lower.every((l) => l === 0)).toBe(true);
    expect(
      got(laneyPChart({ counts: [10, 11, 10, 11, 10, 11, 10, 3], sizes: 20 })).outside,
    ).toContain(8);
    const steady = { counts: Array.from({ length: 30 }, (_, i) => 50 + (i % 2)), sizes: 100 };
    expect(got(laneyPChart(steady)).outside).toEqual([]);
    const jump = { counts: [...steady.counts, 58], sizes: 100 };
    expect(got(laneyPChart(jump)).outside).toEqual([31]);
  });

  it('say which sample is wrong, and need two for a moving range', () => {
    const wrong = pChart({ counts: [1, -1], sizes: 4 });
    expect(!wrong.ok && wrong.detail).toContain('counts, item 2');
    const many = pChart({ counts: [1, 5], sizes: 4 });
    expect(!many.ok && many.detail).toContain('counts, item 2');
    const size = pChart({ counts: [1, 1], sizes: [4, 0] });
    expect(!size.ok && size.detail).toContain('sizes, item 2');
    expect(laneyPChart({ counts: [1], sizes: 4 }).ok).toBe(false);
    expect(got(laneyPChart({ counts: [1, 2], sizes: 4 })).meanMovingRange).toBeGreaterThan(0);
  });

  it('averages start at the target and are judged one by one', () => {
    const chart = got(ewma({ values: [5, 0, 0], target: 0, sigma: 1, lambda: 0.5, width: 2 }));
    expect(chart.averages).toEqual([0, 2.5, 1.25, 0.625]);
    expect(chart.upper).toBeCloseTo(2 * Math.sqrt(1 / 3), 12);
    expect(chart.lower).toBe(-chart.upper);
    expect(chart.outside).toEqual([1, 2]);
    expect(got(ewma({ values: [-5], target: 0, sigma: 1, lambda: 0.5, width: 2 })).outside).toEqual(
      [1],
    );
  });

  it('a trend has wider limits after small weeks', () => {
    const trend = got(
      ewmaProportion({
        counts: [0, 1, 6],
        sizes: [50, 5, 50],
        lambda: 0.3,
        target: 0.05,
        width: 2,
      }),
    );
    expect(trend.averages[0]).toBeCloseTo(0.035, 12);
    expect(trend.upper[1]).toBeGreaterThan(trend.upper[0] as number);
    expect(trend.upper[2]).toBeLessThan(trend.upper[1] as number);
    expect(trend.outside).toEqual([]);
    expect(
      got(ewmaProportion({ counts: [30], sizes: [50], lambda: 0.3, target: 0.05, width: 2 }))
        .outside,
    ).toEqual([1]);
    expect(
      got(ewmaProportion({ counts: [10], sizes: [50], lambda: 0.9, target: 0.9, width: 2 }))
        .outside,
    ).toEqual([1]);
    expect(
      got(ewmaProportion({ counts: [10], sizes: [50], lambda: 0.9, target: 0.9, width: 9 })).upper,
    ).toEqual([1]);
  });
});

describe('rare events', () => {
  it('signal counts are the least that are rare enough', () => {
    for (const [n, p, alpha] of [
      [0, 0.1, 0.01],
      [5, 0.03, 0.005],
      [60, 0.03, 0.005],
      [24, 0.5, 0.2],
      [3, 0.9, 0.001],
    ] as const) {
      const { signalAtOrAbove: c, probability } = got(binomialSignal(n, p, alpha));
      expect(probability).toBeLessThanOrEqual(alpha * (1 + 1e-12));
      expect(probability).toBe(binomialAtLeast(c, n, p));
      expect(c === 0 || binomialAtLeast(c - 1, n, p) > alpha).toBe(true);
    }
  });

  it('a count whose chance is the level itself signals, whatever rounding does', () => {
    // R 4.2.2: 1 - pbinom(0, 1, p) <= p.
    for (const p of [0.001, 0.002, 0.005, 0.01, 0.03])
      expect([p, got(binomialSignal(1, p, p)).signalAtOrAbove]).toEqual([p, 1]);
  });

  it('gap signals are the longest that are rare enough', () => {
    for (const [share, alpha] of [
      [0.001, 0.005],
      [0.004, 0.01],
      [0.02, 0.005],
      [0.02, 0.1],
      [0.005, 0.005],
    ] as const) {
      const gap = got(shortestGapSignal(share, alpha));
      expect(gapCdf(gap, share)).toBeLessThanOrEqual(alpha + 1e-15);
      expect(gapCdf(gap + 1, share)).toBeGreaterThan(alpha);
    }
    expect(gapCdf(-1, 0.1)).toBe(0);
    expect(gapCdf(0.7, 0.1)).toBeCloseTo(0.1, 14);
    for (const p of [0.01, 0.3])
      for (const q of [0.005, 0.5, 0.995])
        expect([gapCdf(gapQuantile(q, p), p) >= q, gapCdf(gapQuantile(q, p) - 1, p) < q]).toEqual([
          true,
          true,
        ]);
    expect(got(kGapQuantile(0.02, 1, 0.3)).quantile).toBe(gapQuantile(0.3, 0.02));
  });

  it('a g chart takes any tail', () => {
    const [wide, narrow] = [0.001, 0.1].map((tail) => got(gChart([20, 30, 40], tail)));
    expect(narrow?.lower).toBeGreaterThanOrEqual(wide?.lower as number);
    expect(narrow?.upper).toBeLessThan(wide?.upper as number);
    expect(wide?.median).toBe(gapQuantile(0.5, 1 / 31));
  });

  it('a t chart gives its limits back as times', () => {
    const chart = got(tChart([100, 100, 100]));
    expect([chart.meanMovingRange, chart.lower, chart.upper]).toEqual([0, chart.mean, chart.mean]);
    expect(chart.centreTime).toBeCloseTo(100, 9);
    expect(chart.lowerTime).toBeCloseTo(100, 9);
    const plain = got(tChart([4, 9, 4], { power: 0.5, rangeFactor: 1 }));
    expect([plain.meanMovingRange, plain.upperTime, plain.lowerTime]).toEqual([
      1,
      (7 / 3 + 1) ** 2,
      plain.lower ** 2,
    ]);
  });

  it('a grid is found where there is one', () => {
    expect([
      commonDenominator([1, 2], 9),
      commonDenominator([0.5, 0.25], 9),
      commonDenominator([1 / 3], 9),
      commonDenominator([Math.PI], 50),
    ]).toEqual([1, 4, 3, undefined]);
  });
});
