import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { got, reasonOf } from '../../statistics/testing.ts';
import { definition } from './reproduction.ts';

interface Answer {
  readonly windows: readonly {
    readonly early: boolean;
    readonly to: number;
    readonly mean: number | null;
    readonly sd: number | null;
    readonly lower: number | null;
    readonly upper: number | null;
  }[];
}

const ask = (input: object) => definition.run(v.parse(definition.input, input));
const windows = (input: object) => (got(ask(input)) as Answer).windows;

describe('tallyround reproduction', () => {
  // R package EpiEstim 2.2.4: estimate_R(cases, method = "parametric_si",
  // config = make_config(list(mean_si = 7.5, std_si = 3.4, t_start = 2, t_end = 8)))
  it('gives what EpiEstim gives where the serial interval is longer than the counts', () => {
    const [only, ...more] = windows({
      cases: [3, 2, 5, 4, 6, 8, 7, 9],
      serialInterval: { mean: 7.5, sd: 3.4 },
      window: 7,
    });
    expect(more).toEqual([]);
    expect(only?.to).toBe(8);
    expect(only?.mean).toBeCloseTo(7.23102317178487, 9);
    expect(only?.sd).toBeCloseTo(1.11577109905992, 9);
    expect(only?.lower).toBeCloseTo(5.21148547045929, 9);
    expect(only?.upper).toBeCloseTo(9.57613516025424, 9);
  });

  // The same with mean_si = 4.7, std_si = 2.9 and windows of 3 days.
  it('gives what EpiEstim gives for growing counts, and marks what comes too early to trust', () => {
    const found = windows({
      cases: [1, 2, 4, 8, 9, 12, 20, 25],
      serialInterval: { mean: 4.7, sd: 2.9 },
      window: 3,
    });
    const means = [
      11.40557486076579, 7.45884237414259, 5.20342170584914, 4.32274554573498, 3.88373777666849,
    ];
    expect(found.map((row) => row.to)).toEqual([4, 5, 6, 7, 8]);
    for (const [k, mean] of means.entries()) expect(found[k]?.mean).toBeCloseTo(mean, 9);
    expect(found.map((row) => row.early)).toEqual([true, false, false, false, false]);
  });

  it('refuses a list of chances that is cut short, and takes a whole one as it is', () => {
    const cases = [1, 2, 4, 8, 9, 12, 20, 25];
    const cut = ask({ cases, serialInterval: [0, 0.3, 0.3, 0.25], window: 3 });
    expect(reasonOf(cut)).toBe('out-of-range');
    const whole = windows({ cases, serialInterval: [0, 0.3, 0.3, 0.4], window: 3 });
    // By hand: (1 + 4 + 8 + 2) / (1/5 + (0.3) + (0.6 + 0.3) + (1.2 + 0.6 + 0.4)).
    expect(whole[0]?.mean).toBeCloseTo(15 / 3.6, 12);
  });
});
