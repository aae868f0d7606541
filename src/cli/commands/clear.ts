import * as v from 'valibot';
import { homeClearCluster } from '../../statistics/freedom/home-clear-cluster.ts';
import { homeClearIndependent } from '../../statistics/freedom/home-clear-independent.ts';
import { poissonBinomial } from '../../statistics/freedom/poisson-binomial.ts';
import { given, type Outcome } from '../../statistics/refusal/refusal.ts';
import { cell, count, nonNegative, probability } from '../fields.ts';
import { statisticCommand } from '../statistic-command.ts';

const person = v.object({
  id: v.optional(v.string()),
  prior: probability,
  /** null for someone without a valid test. */
  sensitivity: v.nullable(probability),
});

const input = v.object({
  people: v.pipe(v.array(person), v.minLength(1, 'needs at least one person')),
  specificity: v.optional(probability, 1),
  cluster: v.optional(
    v.object({ infected: v.array(count), weight: v.array(nonNegative), sensitivity: probability }),
  ),
});

const output = v.object({
  clear: v.number(),
  expectedInfected: v.number(),
  people: v.array(v.object({ id: v.string(), chance: v.number() })),
  infectedDistribution: v.array(v.number()),
  cluster: v.nullable(v.object({ clear: v.number(), posterior: v.array(v.number()) })),
  caution: v.string(),
});

const CAUTION =
  'For a round without a positive. People are taken as independent unless a cluster is given. Follow local policy and the health protection team.';

type Input = v.InferOutput<typeof input>;

function clusterOf({ people, cluster }: Input): Outcome<v.InferInput<typeof output>['cluster']> {
  if (!cluster) return given(null);
  const found = homeClearCluster({
    population: people.length,
    tested: people.filter((p) => p.sensitivity !== null).length,
    sensitivity: cluster.sensitivity,
    infected: cluster.infected,
    prior: cluster.weight,
  });
  return found.ok
    ? given({ clear: found.value.clear, posterior: [...found.value.posterior] })
    : found;
}

function run(question: Input): Outcome<v.InferInput<typeof output>> {
  const { people, specificity } = question;
  const found = homeClearIndependent({
    prior: people.map((p) => p.prior),
    sensitivity: people.map((p) => p.sensitivity ?? 0),
    specificity,
  });
  if (!found.ok) return found;
  const distribution = poissonBinomial(found.value.posterior);
  if (!distribution.ok) return distribution;
  const cluster = clusterOf(question);
  if (!cluster.ok) return cluster;
  return given({
    clear: found.value.clear,
    expectedInfected: found.value.expectedInfected,
    people: people.map((p, i) => ({
      id: p.id ?? String(i + 1),
      chance: found.value.posterior[i] as number,
    })),
    infectedDistribution: [...distribution.value],
    cluster: cluster.value,
    caution: CAUTION,
  });
}

export const { definition, register } = statisticCommand({
  name: 'clear',
  description:
    "The chance that nobody in a home is infected after a round in which nobody tested positive, from\neach person's chance before and the sensitivity of their test (null where there was no valid test).",
  input,
  output,
  example: {
    people: [
      { id: 'A', prior: 0.02, sensitivity: 0.8 },
      { id: 'B', prior: 0.1, sensitivity: 0.71 },
      { id: 'C', prior: 0.05, sensitivity: null },
    ],
  },
  csv: {
    columns: 'id,prior,sensitivity (empty where there was no valid test)',
    read: (rows) => ({
      people: rows.map((r) => ({
        ...(r['id'] && { id: r['id'] }),
        prior: cell(r, 'prior'),
        sensitivity: r['sensitivity'] ? cell(r, 'sensitivity') : null,
      })),
    }),
  },
  run,
});
