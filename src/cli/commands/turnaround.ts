import * as v from 'valibot';
import { given, type Outcome } from '../../statistics/refusal/refusal.ts';
import { conditionalArrival } from '../../statistics/survival/conditional-arrival.ts';
import { cumulativeIncidence } from '../../statistics/survival/cumulative-incidence.ts';
import { type KaplanMeier, kaplanMeier } from '../../statistics/survival/kaplan-meier.ts';
import { survivalQuantiles } from '../../statistics/survival/quantiles.ts';
import { limitCurves } from '../../statistics/survival/survival-interval.ts';
import { cell, confidence, figure, interval, level, nonNegative, orNull } from '../fields.ts';
import { statisticCommand } from '../statistic-command.ts';

const outcome = v.picklist(['result', 'void', 'out'], 'must be "result", "void" or "out"');

const input = v.object({
  hours: v.pipe(v.array(nonNegative), v.minLength(1, 'needs at least one wait')),
  outcome: v.array(outcome),
  ages: v.optional(v.array(nonNegative), []),
  by: v.optional(nonNegative, 72),
  probabilities: v.optional(v.array(level), [0.5, 0.9]),
  scale: v.optional(v.picklist(['plain', 'log', 'log-log', 'logit', 'arcsin']), 'log-log'),
  confidence,
});

const output = v.object({
  waits: v.number(),
  ended: v.number(),
  curve: v.array(
    v.object({
      hours: v.number(),
      stillOut: v.number(),
      ...interval,
      atRisk: v.number(),
      ended: v.number(),
    }),
  ),
  quantiles: v.array(v.object({ probability: v.number(), hours: figure, ...interval })),
  arrival: v.array(
    v.object({
      age: v.number(),
      by: v.number(),
      probability: v.pipe(
        figure,
        v.description('Null where nothing in these data was watched for longer than the age.'),
      ),
      lower: figure,
      upper: v.pipe(
        figure,
        v.description(
          'Null where the figure is only a floor (beyondData, or nothing so old came by then) or where everything had come.',
        ),
      ),
      beyondData: v.pipe(
        v.boolean(),
        v.description(
          'True where the time asked about lies beyond the longest wait: the probability is then a floor, at least so much.',
        ),
      ),
    }),
  ),
  outcomes: v.array(
    v.object({ hours: v.number(), result: v.number(), void: v.number(), out: v.number() }),
  ),
});

type Input = v.InferOutput<typeof input>;

function arrivals(curve: KaplanMeier, { ages, by, confidence: c }: Input) {
  return ages.map((age) => {
    const found = conditionalArrival(curve, { age, by, confidence: c });
    if (!found.ok)
      return { age, by, probability: null, lower: null, upper: null, beyondData: true };
    const { probability, lower, upper, beyondData } = found.value;
    return { age, by, probability, lower: orNull(lower), upper: orNull(upper), beyondData };
  });
}

function run(given_: Input): Outcome<v.InferInput<typeof output>> {
  const { hours, probabilities, scale, confidence: c } = given_;
  const made = kaplanMeier({ time: hours, event: given_.outcome.map((o) => o !== 'out') });
  if (!made.ok) return made;
  const curve = made.value;
  const limits = limitCurves(curve, scale, c);
  if (!limits.ok) return limits;
  const quantiles = survivalQuantiles(curve, probabilities, { scale, confidence: c });
  if (!quantiles.ok) return quantiles;
  const times = Array.from(curve.time);
  const parts = cumulativeIncidence(
    { time: hours, state: given_.outcome.map((o) => ['out', 'result', 'void'].indexOf(o)) },
    times,
  );
  if (!parts.ok) return parts;
  return given({
    waits: hours.length,
    ended: given_.outcome.filter((o) => o !== 'out').length,
    curve: times.map((t, i) => ({
      hours: t,
      stillOut: curve.survival[i] as number,
      lower: orNull(limits.value.lower[i]),
      upper: orNull(limits.value.upper[i]),
      atRisk: curve.atRisk[i] as number,
      ended: curve.events[i] as number,
    })),
    quantiles: quantiles.value.map((q, i) => ({
      probability: probabilities[i] as number,
      hours: orNull(q.estimate),
      lower: orNull(q.lower),
      upper: orNull(q.upper),
    })),
    arrival: arrivals(curve, given_),
    outcomes: times.map((t, i) => ({
      hours: t,
      result: parts.value.result[i] as number,
      void: parts.value.void[i] as number,
      out: parts.value.pending[i] as number,
    })),
  });
}

export const { definition, register } = statisticCommand({
  name: 'turnaround',
  description:
    'How long tests are out before a result or a void comes back (Kaplan-Meier), and the chance that\none now out for so many hours is back by a time. Waits still going on count as far as they go.\nBeyond the longest wait the chance is a floor without an upper limit; at such an age it is not known.',
  input,
  output,
  example: {
    hours: [20, 22, 26, 30, 41, 55, 12],
    outcome: ['result', 'result', 'void', 'result', 'result', 'out', 'out'],
    ages: [12],
    by: 48,
  },
  csv: {
    columns: 'hours,outcome',
    read: (rows) => ({
      hours: rows.map((r) => cell(r, 'hours')),
      outcome: rows.map((r) => r['outcome']),
    }),
  },
  run,
});
