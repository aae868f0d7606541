import * as v from 'valibot';
import { likelihoodRatios } from '../../statistics/diagnostics/likelihood-ratios.ts';
import { postTestSequence } from '../../statistics/diagnostics/post-test-sequence.ts';
import { postTestUncertain } from '../../statistics/diagnostics/post-test-uncertain.ts';
import { given, type Outcome } from '../../statistics/refusal/refusal.ts';
import { figure, orNull, positive, probability } from '../fields.ts';
import { statisticCommand } from '../statistic-command.ts';

const test = v.object({
  sensitivity: probability,
  specificity: probability,
  result: v.picklist(['positive', 'negative']),
});
const beta = v.tuple([positive, positive]);

const input = v.object({
  pre: probability,
  tests: v.pipe(v.array(test), v.minLength(1, 'needs at least one test')),
  evidence: v.optional(v.object({ sensitivity: beta, specificity: beta })),
});

const output = v.object({
  post: v.number(),
  steps: v.array(v.number()),
  likelihoodRatios: v.array(v.object({ positive: figure, negative: figure })),
  outOf1000: v.object({ infected: v.number(), notInfected: v.number() }),
  uncertain: v.nullable(
    v.object({ mean: v.number(), lower: v.number(), median: v.number(), upper: v.number() }),
  ),
  caution: v.string(),
});

const CAUTION =
  'A chance, not a diagnosis. Tests of one person are taken as independent here, which two swabs seldom are. Follow local policy and the health protection team.';

type Input = v.InferOutput<typeof input>;

function uncertain({
  pre,
  tests,
  evidence,
}: Input): Outcome<v.InferInput<typeof output>['uncertain']> {
  const [only, more] = tests;
  if (!evidence || !only || more) return given(null);
  const found = postTestUncertain({ pre, ...evidence, result: only.result });
  if (!found.ok) return found;
  const [lower, median, upper] = found.value.quantiles as readonly [number, number, number];
  return given({ mean: found.value.mean, lower, median, upper });
}

function run(question: Input): Outcome<v.InferInput<typeof output>> {
  const steps: number[] = [];
  for (let n = 1; n <= question.tests.length; n++) {
    const post = postTestSequence(question.pre, question.tests.slice(0, n));
    if (!post.ok) return post;
    steps.push(post.value);
  }
  const ratios = [];
  for (const t of question.tests) {
    const ratio = likelihoodRatios(t);
    if (!ratio.ok) return ratio;
    ratios.push({ positive: orNull(ratio.value.positive), negative: orNull(ratio.value.negative) });
  }
  const spread = uncertain(question);
  if (!spread.ok) return spread;
  const post = steps[steps.length - 1] as number;
  const infected = Math.round(1000 * post);
  return given({
    post,
    steps,
    likelihoodRatios: ratios,
    outOf1000: { infected, notInfected: 1000 - infected },
    uncertain: spread.value,
    caution: CAUTION,
  });
}

export const { definition, register } = statisticCommand({
  name: 'interpret',
  description:
    'The chance of infection after one or more results, from the chance before and how good each test\nis. With evidence (Beta counts of a validation study) one result also gets an uncertainty.',
  input,
  output,
  example: {
    pre: 0.8,
    tests: [{ sensitivity: 0.7, specificity: 0.95, result: 'negative' }],
    evidence: { sensitivity: [57, 25], specificity: [96, 6] },
  },
  run,
});
