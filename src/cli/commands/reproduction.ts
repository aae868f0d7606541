import * as v from 'valibot';
import { growthRate } from '../../statistics/epidemics/growth-rate.ts';
import { reproductionNumber } from '../../statistics/epidemics/reproduction-number.ts';
import { serialIntervalFor } from '../../statistics/epidemics/serial-interval.ts';
import { given, type Outcome } from '../../statistics/refusal/refusal.ts';
import {
  cell,
  count,
  figure,
  interval,
  orNull,
  positive,
  positiveCount,
  probability,
} from '../fields.ts';
import { statisticCommand } from '../statistic-command.ts';

const input = v.object({
  cases: v.pipe(v.array(count), v.minLength(2, 'needs at least two days')),
  serialInterval: v.union(
    [v.object({ mean: positive, sd: positive }), v.array(probability)],
    'must be { mean, sd } in days, or a list of chances from day 0 that sum to 1',
  ),
  window: v.optional(positiveCount, 7),
});

const output = v.object({
  windows: v.array(
    v.object({
      from: v.number(),
      to: v.number(),
      /** Ends before one mean serial interval has passed. */
      early: v.pipe(
        v.boolean(),
        v.description(
          'The window ends before one mean serial interval has passed: infections from before the first day are missed, so R may be far too high.',
        ),
      ),
      mean: figure,
      sd: figure,
      median: figure,
      ...interval,
    }),
  ),
  growth: v.nullable(
    v.object({ rate: v.number(), standardError: v.number(), doublingDays: figure, ...interval }),
  ),
});

type Input = v.InferOutput<typeof input>;

const meanOf = (weights: readonly number[]): number =>
  weights.reduce((sum, w, s) => sum + w * s, 0);

function run({
  cases,
  serialInterval: asked,
  window,
}: Input): Outcome<v.InferInput<typeof output>> {
  const known = 'mean' in asked;
  const interval = known
    ? serialIntervalFor(cases.length, asked.mean, asked.sd)
    : given({ serialInterval: asked });
  if (!interval.ok) return interval;
  const meanDays = known ? asked.mean : meanOf(asked);
  const found = reproductionNumber({ ...interval.value, incidence: cases, window });
  if (!found.ok) return found;
  const growth = growthRate(cases);
  return given({
    windows: found.value.map((r) => ({
      from: r.from,
      to: r.to,
      early: r.to <= meanDays,
      mean: orNull(r.mean),
      sd: orNull(r.sd),
      median: orNull(r.median),
      lower: orNull(r.lower),
      upper: orNull(r.upper),
    })),
    growth: growth.ok
      ? {
          rate: growth.value.rate,
          standardError: growth.value.standardError,
          doublingDays: orNull(growth.value.doubling),
          lower: growth.value.lower,
          upper: growth.value.upper,
        }
      : null,
  });
}

export const { definition, register } = statisticCommand({
  name: 'reproduction',
  description:
    'The reproduction number over sliding windows (Cori) and the growth rate, from new cases each day.',
  input,
  output,
  example: {
    cases: [1, 1, 0, 2, 5, 3, 3, 3, 6, 2, 5, 9, 13, 12],
    serialInterval: { mean: 3.6, sd: 1.6 },
  },
  csv: {
    columns: 'cases (one day a line)',
    read: (rows) => ({ cases: rows.map((r) => cell(r, 'cases')) }),
  },
  run,
});
