import * as v from 'valibot';
import { given, type Outcome } from '../../statistics/refusal/refusal.ts';
import { croston } from '../../statistics/stock/croston.ts';
import { demandClass } from '../../statistics/stock/demand-class.ts';
import { expectedExpiryWaste } from '../../statistics/stock/expected-expiry-waste.ts';
import { reorderPointRandomLead } from '../../statistics/stock/reorder-point.ts';
import { stockoutChance } from '../../statistics/stock/stockout-chance.ts';
import { teunterSyntetosBabai } from '../../statistics/stock/teunter-syntetos-babai.ts';
import { cell, count, level, nonNegative, positive } from '../fields.ts';
import { statisticCommand } from '../statistic-command.ts';

const input = v.object({
  /** Kits used each day, oldest first. */
  demand: v.pipe(v.array(count), v.minLength(1, 'needs at least one day')),
  lead: v.object({ meanDays: nonNegative, sdDays: v.optional(nonNegative, 0) }),
  service: v.optional(level, 0.95),
  alpha: v.optional(v.pipe(positive, v.maxValue(1, 'must be 1 or less')), 0.1),
  batches: v.optional(v.array(v.object({ quantity: count, expiryDay: count })), []),
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
    safetyStock: v.number(),
  }),
  stock: v.object({
    onHand: v.number(),
    stockoutInLead: v.number(),
    expectedWaste: v.number(),
    expectedWasteByBatch: v.array(v.number()),
  }),
});

type Input = v.InferOutput<typeof input>;

function stockOf(
  { batches, lead }: Input,
  perDay: number,
): Outcome<v.InferInput<typeof output>['stock']> {
  const onHand = batches.reduce((sum, b) => sum + b.quantity, 0);
  const waste = expectedExpiryWaste(batches, perDay);
  if (!waste.ok) return waste;
  const out = stockoutChance(onHand, perDay, [lead.meanDays]);
  if (!out.ok) return out;
  return given({
    onHand,
    stockoutInLead: out.value[0] as number,
    expectedWaste: waste.value.total,
    expectedWasteByBatch: [...waste.value.byBatch],
  });
}

function run(question: Input): Outcome<v.InferInput<typeof output>> {
  const { demand, lead, service, alpha } = question;
  const forecast = croston(demand, alpha);
  if (!forecast.ok) return forecast;
  const fading = teunterSyntetosBabai(demand, { alpha, beta: alpha });
  if (!fading.ok) return fading;
  const perDay = forecast.value.syntetosBoylan;
  const point = reorderPointRandomLead({
    demandPerDay: perDay,
    leadMean: lead.meanDays,
    leadSd: lead.sdDays,
    service,
  });
  if (!point.ok) return point;
  const stock = stockOf(question, perDay);
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
      safetyStock: point.value.safetyStock,
    },
    stock: stock.value,
  });
}

export const { definition, register } = statisticCommand({
  name: 'reorder',
  description:
    'From kits used each day: a forecast, the stock at which to order so that it lasts until delivery,\nand what of the batches at hand will run out or expire (expiry days counted from tomorrow as 1).',
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
