import * as v from 'valibot';
import type { InfectiousPeriod } from '../../statistics/epidemics/infectious-period.ts';
import { twoTypeFinalSize } from '../../statistics/epidemics/two-type-final-size.ts';
import { given, type Outcome } from '../../statistics/refusal/refusal.ts';
import { count, nonNegative, positive, positiveCount } from '../fields.ts';
import { statisticCommand } from '../statistic-command.ts';

const group = v.object({ residents: count, staff: count });

const input = v.object({
  susceptible: group,
  introductions: group,
  rates: v.object({
    residentToResident: nonNegative,
    residentToStaff: nonNegative,
    staffToResident: nonNegative,
    staffToStaff: nonNegative,
  }),
  period: v.object({
    law: v.picklist(['exponential', 'fixed', 'erlang']),
    mean: positive,
    shape: v.optional(positiveCount, 2),
  }),
});

const output = v.object({
  residents: v.array(v.number()),
  staff: v.array(v.number()),
  meanResidents: v.number(),
  meanStaff: v.number(),
  none: v.number(),
});

function run({
  susceptible,
  introductions,
  rates,
  period,
}: v.InferOutput<typeof input>): Outcome<v.InferInput<typeof output>> {
  const law: InfectiousPeriod =
    period.law === 'erlang'
      ? { law: 'erlang', mean: period.mean, shape: period.shape }
      : { law: period.law, mean: period.mean };
  const found = twoTypeFinalSize({
    residents: susceptible.residents,
    staff: susceptible.staff,
    introductions,
    rates,
    period: law,
  });
  if (!found.ok) return found;
  const { residents, staff, ...rest } = found.value;
  return given({ residents: Array.from(residents), staff: Array.from(staff), ...rest });
}

export const { definition, register } = statisticCommand({
  name: 'final-size',
  description:
    'The exact law of how many residents and staff are infected in the end, if nothing is done. Rates\nare per pair of people and per unit of the infectious period.',
  input,
  output,
  example: {
    susceptible: { residents: 6, staff: 5 },
    introductions: { residents: 0, staff: 1 },
    rates: {
      residentToResident: 0.12,
      residentToStaff: 0.05,
      staffToResident: 0.08,
      staffToStaff: 0.1,
    },
    period: { law: 'exponential', mean: 1 },
  },
  run,
});
