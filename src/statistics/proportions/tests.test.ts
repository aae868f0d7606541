import { describe, expect, it } from 'vitest';
import { betaDensity } from '../distributions/beta.ts';
import { binomialPmf } from '../distributions/binomial.ts';
import { got } from '../testing.ts';
import { attackRates } from './attack-rates.ts';
import { binomialTest } from './binomial-test.ts';
import { chiSquareTwoByTwo } from './chi-square-two-by-two.ts';
import { fisherExact } from './fisher-exact.ts';
import { probabilityHigher } from './probability-higher.ts';

describe("Fisher's exact test", () => {
  // R: the conditional likelihood solved to 1e-14, where fisher.test stops at 1e-4.
  it.each([
    [
      [
        [3, 1],
        [1, 3],
      ],
      [6.40831966, 0.2117356, 626.243531],
      6,
    ],
    [
      [
        [1, 9],
        [11, 3],
      ],
      [0.03720908, 0.000636, 0.42586648],
      7,
    ],
    [
      [
        [12, 5],
        [7, 14],
      ],
      [4.58673043, 1.00632982, 24.2644829],
      6,
    ],
    [
      [
        [2, 20],
        [9, 30],
      ],
      [0.33868983, 0.03235435, 1.88983579],
      6,
    ],
  ] as const)(
    'gives %j the odds ratio and limits of its likelihood',
    (table, [ratio, lower, upper], digits) => {
      const f = got(fisherExact(table));
      expect(f.oddsRatio).toBeCloseTo(ratio, digits);
      expect(f.oddsRatioLower).toBeCloseTo(lower, digits);
      expect(Math.abs(f.oddsRatioUpper / upper - 1)).toBeLessThan(1e-6);
    },
  );

  it('has no upper end where the first cell is full, and no lower where it is empty', () => {
    const full = got(
      fisherExact([
        [5, 0],
        [2, 4],
      ]),
    );
    expect(full.oddsRatio).toBe(Infinity);
    expect(full.oddsRatioUpper).toBe(Infinity);
    expect(full.oddsRatioLower).toBeGreaterThan(0);
    const empty = got(
      fisherExact([
        [0, 5],
        [4, 2],
      ]),
    );
    expect(empty.oddsRatio).toBe(0);
    expect(empty.oddsRatioLower).toBe(0);
    expect(empty.oddsRatioUpper).toBeCloseTo(1.3639501, 6);
  });

  it('says nothing of a table that could not be otherwise', () => {
    expect(
      got(
        fisherExact([
          [0, 0],
          [3, 4],
        ]),
      ),
    ).toEqual({
      p: 1,
      pGreater: 1,
      pLess: 1,
      oddsRatio: 0,
      oddsRatioLower: 0,
      oddsRatioUpper: Infinity,
    });
  });

  it('counts outcomes exactly as likely as the one seen', () => {
    // Symmetric margins: both ends are equally likely.
    expect(
      got(
        fisherExact([
          [0, 4],
          [4, 0],
        ]),
      ).p,
    ).toBeCloseTo(2 / 70, 12);
    expect(
      got(
        fisherExact([
          [2, 2],
          [2, 2],
        ]),
      ).p,
    ).toBeCloseTo(1, 12);
  });

  it('gives narrower limits at a lower confidence', () => {
    const [wide, narrow] = [0.99, 0.8].map((c) =>
      got(
        fisherExact(
          [
            [12, 5],
            [7, 14],
          ],
          c,
        ),
      ),
    );
    expect(narrow?.oddsRatioLower).toBeGreaterThan(wide?.oddsRatioLower as number);
    expect(narrow?.oddsRatioUpper).toBeLessThan(wide?.oddsRatioUpper as number);
  });
});

describe('the exact binomial test', () => {
  it('sums outcomes no likelier than the one seen', () => {
    // Every outcome of small rounds: the definition, summed plainly, as R's binom.test does.
    const chances = [0.001, 0.03, 0.2, 0.25, 0.3, 1 / 3, 0.4, 0.5, 0.6, 2 / 3, 0.9];
    const rounds = [1, 2, 3, 4, 5, 7, 10, 12, 24].flatMap((trials) =>
      Array.from({ length: trials + 1 }, (_, events) => ({ events, trials })),
    );
    for (const { events, trials, p } of chances.flatMap((p) =>
      rounds.map((round) => ({ ...round, p })),
    )) {
      const weights = Array.from({ length: trials + 1 }, (_, k) => binomialPmf(k, trials, p));
      const both = weights.reduce(
        (sum, w) => (w <= (weights[events] as number) * (1 + 1e-7) ? sum + w : sum),
        0,
      );
      const found = got(binomialTest({ events, trials }, p));
      expect(found.twoSided).toBeCloseTo(Math.min(1, both), 12);
      expect(found.greater).toBeCloseTo(
        weights.slice(events).reduce((a, b) => a + b, 0),
        12,
      );
      expect(found.less).toBeCloseTo(
        weights.slice(0, events + 1).reduce((a, b) => a + b, 0),
        12,
      );
    }
  });

  it('gives what R gives next to the mean', () => {
    // R 4.2.2, binom.test(x, n, p)$p.value.
    for (const [events, trials, p, r] of [
      [1, 1, 0.5, 1],
      [2, 3, 0.5, 1],
      [3, 5, 0.5, 1],
      [0, 24, 0.03, 1],
      [9, 24, 0.4, 1],
      [4, 24, 0.03, 0.0053210301],
    ] as const)
      expect(got(binomialTest({ events, trials }, p)).twoSided).toBeCloseTo(r, 9);
  });

  it('gives 1 to exactly what was expected', () => {
    expect(got(binomialTest({ events: 5, trials: 10 }, 0.5)).twoSided).toBe(1);
    expect(got(binomialTest({ events: 0, trials: 10 }, 0)).twoSided).toBe(1);
  });
});

describe('chi-squared', () => {
  it('is corrected by a half at most, and by no more than there is', () => {
    const table = [
      [4, 20],
      [1, 59],
    ] as const;
    const [plain, yates] = [false, true].map((correct) =>
      got(chiSquareTwoByTwo(table, { correct })),
    );
    expect(yates?.statistic).toBeLessThan(plain?.statistic as number);
    expect(
      got(
        chiSquareTwoByTwo(
          [
            [10, 10],
            [10, 10],
          ],
          { correct: true },
        ),
      ).statistic,
    ).toBe(0);
  });

  it('says the least expected count', () => {
    expect(
      got(
        chiSquareTwoByTwo(
          [
            [4, 20],
            [1, 59],
          ],
          { correct: false },
        ),
      ).leastExpected,
    ).toBeCloseTo((5 * 24) / 84, 12);
  });
});

describe('the chance that one rate is higher', () => {
  it('and its opposite make 1', () => {
    const [a, b] = [
      { events: 4, trials: 24 },
      { events: 1, trials: 60 },
    ];
    expect(got(probabilityHigher(a, b)) + got(probabilityHigher(b, a))).toBeCloseTo(1, 9);
    expect(got(probabilityHigher(a, a))).toBeCloseTo(0.5, 9);
    const none = { events: 0, trials: 7 };
    expect(got(probabilityHigher(none, none))).toBeCloseTo(0.5, 8);
    const all = { events: 7, trials: 7 };
    expect(got(probabilityHigher(all, none))).toBeGreaterThan(0.9999);
    expect(got(probabilityHigher(all, all))).toBeCloseTo(0.5, 8);
  });

  it('agrees with a plain sum over a fine grid', () => {
    const steps = 20_000;
    let [below, sum] = [0, 0];
    for (let i = 0; i < steps; i++) {
      const x = (i + 0.5) / steps;
      const b = betaDensity(x, 3 + 2, 9 + 2) / steps;
      sum += (betaDensity(x, 6 + 2, 6 + 2) / steps) * (below + b / 2);
      below += b;
    }
    expect(
      got(probabilityHigher({ events: 6, trials: 12 }, { events: 3, trials: 12 }, [2, 2])),
    ).toBeCloseTo(sum, 7);
  });
});

describe('attack rates', () => {
  it('leave out what a zero cell leaves undefined', () => {
    const none = got(attackRates({ events: 0, trials: 5 }, { events: 2, trials: 5 }));
    expect(none.riskRatio).toEqual({ estimate: 0 });
    expect(none.oddsRatio).toEqual({ estimate: 0 });
    const other = got(attackRates({ events: 2, trials: 5 }, { events: 0, trials: 5 }));
    expect(other.riskRatio).toEqual({});
    expect(other.oddsRatio).toEqual({});
    const all = got(attackRates({ events: 5, trials: 5 }, { events: 2, trials: 5 }));
    expect(all.oddsRatio).toEqual({});
    expect(all.riskRatio.estimate).toBe(2.5);
    expect(all.riskRatio.lower).toBeLessThan(2.5);
  });
});
