import * as v from 'valibot';
import { given, type Outcome } from '../../statistics/refusal/refusal.ts';
import { croston } from '../../statistics/stock/croston.ts';
import { demandClass } from '../../statistics/stock/demand-class.ts';
import { expectedExpiryWaste } from '../../statistics/stock/expected-expiry-waste.ts';
import { negativeBinomialMoments } from '../../statistics/stock/negative-binomial-moments.ts';
import { type ReorderPoint, reorderPointRandomLead } from '../../statistics/stock/reorder-point.ts';
import { stockoutChanceOf } from '../../statistics/stock/stockout-chance.ts';
import { teunterSyntetosBabai } from '../../statistics/stock/teunter-syntetos-babai.ts';
import { cell, count, level, nonNegative, positive } from '../fields.ts';
import { statisticCommand } from '../statistic-command.ts';

const input = v.object({
  /** Kits used each day, oldest first. */
  demand: v.pipe(v.array(count), v.minLength(1, 'needs at least one day')),
  lead: v.object({ meanDays: nonNegative, sdDays: v.optional(nonNegative, 0) }),
  service: v.optional(level, 0.95),
  alpha: v.optional(v.pipe(positive, v.maxValue(1, 'must be 1 or less')), 0.1),
  batches: v.optional(
    v.array(
      v.object({
        quantity: count,
        expiryDay: v.pipe(
          count,
          v.description('The last day it may be used: 1 is tomorrow, 0 has expired by then.'),
        ),
      }),
    ),
    [],
  ),
});

const output = v.object({
  kind: v.nullable(v.picklist(['smooth', 'intermittent', 'erratic', 'lumpy'])),
  forecastPerDay: v.object({
    croston: v.number(),
    syntetosBoylan: v.number(),
    teunterSyntetosBabai: v.number(),
  }),
  reorderPoint: v.object({
    kits: v.number(),
    chanceItLasts: v.number(),
    meanDemand: v.number(),
    variance: v.pipe(v.number(), v.description('Variance of the demand until delivery.')),
    safetyStock: v.number(),
  }),
  stock: v.object({
    onHand: v.pipe(v.number(), v.description('Kits still good tomorrow.')),
    expired: v.pipe(v.number(), v.description('Kits no longer good tomorrow.')),
    expiresInLead: v.pipe(
      v.number(),
      v.description(
        'Kits of onHand that expire before a late delivery: the mean lead time and twice its spread.',
      ),
    ),
    lastsLead: v.pipe(v.number(), v.description('Kits of onHand that outlive that.')),
    stockoutInLead: v.pipe(
      v.number(),
      v.description(
        'Chance that demand until delivery is more than lastsLead, under the law of the reorder point.',
      ),
    ),
    expectedWaste: v.number(),
    expectedWasteByBatch: v.array(v.number()),
  }),
});

type Input = v.InferOutput<typeof input>;

const kitsIn = (batches: Input['batches']): number =>
  batches.reduce((sum, b) => sum + b.quantity, 0);

/** What a day's demand is like: its mean, and how far it spreads. */
interface Daily {
  readonly mean: number;
  readonly variance: number;
}

function stockOf(
  { batches, lead }: Input,
  daily: Daily,
  untilDelivery: ReorderPoint,
): Outcome<v.InferInput<typeof output>['stock']> {
  const waste = expectedExpiryWaste(batches, daily.mean, daily.variance);
  if (!waste.ok) return waste;
  const good = batches.filter((b) => b.expiryDay > 0);
  // A batch that ends before a late delivery cannot be counted on, though some of it may be used.
  const late = lead.meanDays + 2 * lead.sdDays;
  const lastsLead = kitsIn(good.filter((b) => b.expiryDay >= late));
  const out = stockoutChanceOf(lastsLead, untilDelivery);
  if (!out.ok) return out;
  const onHand = kitsIn(good);
  return given({
    onHand,
    expired: kitsIn(batches) - onHand,
    expiresInLead: onHand - lastsLead,
    lastsLead,
    stockoutInLead: out.value,
    expectedWaste: waste.value.total,
    expectedWasteByBatch: [...waste.value.byBatch],
  });
}

/** Demand varies at least as Poisson, and as much as the history does: kits go in rounds, not singly. */
function dailyOf(demand: readonly number[], mean: number): Daily {
  const seen = negativeBinomialMoments(demand);
  return { mean, variance: Math.max(mean, mean > 0 && seen.ok ? seen.value.variance : 0) };
}

function run(question: Input): Outcome<v.InferInput<typeof output>> {
  const { demand, lead, service, alpha } = question;
  const forecast = croston(demand, alpha);
  if (!forecast.ok) return forecast;
  const fading = teunterSyntetosBabai(demand, { alpha, beta: alpha });
  if (!fading.ok) return fading;
  const perDay = forecast.value.syntetosBoylan;
  const daily = dailyOf(demand, perDay);
  const point = reorderPointRandomLead({
    demandPerDay: daily.mean,
    variancePerDay: daily.variance,
    leadMean: lead.meanDays,
    leadSd: lead.sdDays,
    service,
  });
  if (!point.ok) return point;
  const stock = stockOf(question, daily, point.value);
  if (!stock.ok) return stock;
  const kind = demandClass(demand);
  return given({
    kind: kind.ok ? kind.value.kind : null,
    forecastPerDay: {
      croston: forecast.value.forecast,
      syntetosBoylan: perDay,
      teunterSyntetosBabai: fading.value.forecast,
    },
    reorderPoint: {
      kits: point.value.reorderPoint,
      chanceItLasts: point.value.chance,
      meanDemand: point.value.mean,
      variance: point.value.variance,
      safetyStock: point.value.safetyStock,
    },
    stock: stock.value,
  });
}

export const { definition, register } = statisticCommand({
  name: 'reorder',
  description:
    'From kits used each day: a forecast, the stock at which to order so that it lasts until delivery,\nand what of the batches at hand will run out or expire (expiry days counted from tomorrow as 1).\nOnly batches that outlive a late delivery (mean and twice the spread) count against running out.',
  input,
  output,
  example: {
    demand: [0, 2, 0, 1, 0, 6, 0, 0, 3, 0, 0, 2],
    lead: { meanDays: 3, sdDays: 1 },
    batches: [
      { quantity: 20, expiryDay: 10 },
      { quantity: 30, expiryDay: 25 },
    ],
  },
  csv: {
    columns: 'used (one day a line)',
    read: (rows) => ({ demand: rows.map((r) => cell(r, 'used')) }),
  },
  run,
});
