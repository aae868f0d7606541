import * as v from 'valibot';
import { bernoulliCusumDesign } from '../../statistics/charts/bernoulli-cusum-design.ts';
import { bernoulliCusumPath } from '../../statistics/charts/bernoulli-cusum-path.ts';
import { binomialSignal } from '../../statistics/charts/binomial-signal.ts';
import { gChart } from '../../statistics/charts/g-chart.ts';
import { wilson } from '../../statistics/proportions/wilson.ts';
import { given, type Outcome } from '../../statistics/refusal/refusal.ts';
import { cell, level, positive, positiveCount } from '../fields.ts';
import { statisticCommand } from '../statistic-command.ts';

const input = v.object({
  voids: v.pipe(
    v.array(v.picklist([0, 1], 'must be 0 or 1')),
    v.minLength(1, 'needs at least one test'),
  ),
  usual: v.optional(level, 0.02),
  raised: v.optional(level, 0.06),
  testsBetweenFalseAlarms: v.optional(positive, 2000),
  periodTests: v.optional(positiveCount, 100),
  alpha: v.optional(level, 0.005),
});

const output = v.object({
  tests: v.number(),
  voids: v.number(),
  share: v.object({ estimate: v.number(), lower: v.number(), upper: v.number() }),
  cusum: v.object({
    m: v.number(),
    limit: v.number(),
    testsIfWell: v.number(),
    testsIfRaised: v.number(),
    sums: v.array(v.number()),
    signals: v.array(v.number()),
  }),
  gaps: v.nullable(
    v.object({
      good: v.array(v.number()),
      mean: v.number(),
      lower: v.number(),
      median: v.number(),
      upper: v.number(),
    }),
  ),
  period: v.object({ tests: v.number(), signalAtOrAbove: v.number(), falseAlarm: v.number() }),
});

/** Good tests before each void. */
function gapsOf(voids: readonly number[]): number[] {
  const gaps: number[] = [];
  let good = 0;
  for (const isVoid of voids) {
    if (isVoid === 0) good++;
    else {
      gaps.push(good);
      good = 0;
    }
  }
  return gaps;
}

function run({
  voids,
  usual,
  raised,
  testsBetweenFalseAlarms,
  periodTests,
  alpha,
}: v.InferOutput<typeof input>): Outcome<v.InferInput<typeof output>> {
  const design = bernoulliCusumDesign(usual, raised, testsBetweenFalseAlarms);
  if (!design.ok) return design;
  const path = bernoulliCusumPath(voids, design.value.wholeM, { limit: design.value.limit });
  if (!path.ok) return path;
  const total = voids.filter((x) => x === 1).length;
  const share = wilson({ events: total, trials: voids.length });
  if (!share.ok) return share;
  const period = binomialSignal(periodTests, usual, alpha);
  if (!period.ok) return period;
  const good = gapsOf(voids);
  const chart = gChart(good);
  return given({
    tests: voids.length,
    voids: total,
    share: { estimate: total / voids.length, ...share.value },
    cusum: {
      m: design.value.wholeM,
      limit: design.value.limit,
      testsIfWell: design.value.testsIfWell,
      testsIfRaised: design.value.testsIfRisen,
      sums: [...path.value.sums],
      signals: [...path.value.signals],
    },
    gaps: chart.ok
      ? {
          good,
          mean: chart.value.mean,
          lower: chart.value.lower,
          median: chart.value.median,
          upper: chart.value.upper,
        }
      : null,
    period: {
      tests: periodTests,
      signalAtOrAbove: period.value.signalAtOrAbove,
      falseAlarm: period.value.probability,
    },
  });
}

export const { definition, register } = statisticCommand({
  name: 'voids',
  description:
    'Charts of void tests in the order they were taken (1 void, 0 good): a running sum that alarms when\nthe share rises from usual to raised, gaps between voids, and the count that is rare in a period.',
  input,
  output,
  example: { voids: [0, 0, 1, 0, 0, 0, 1, 1, 0, 0, 0, 0, 1, 0], usual: 0.02, raised: 0.06 },
  csv: {
    columns: 'void (1 or 0, tests in order)',
    read: (rows) => ({ voids: rows.map((r) => cell(r, 'void')) }),
  },
  run,
});
