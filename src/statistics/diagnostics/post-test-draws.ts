import { type Chance, uniform } from '../random/chance.ts';
import { drawGamma } from '../random/draw-gamma.ts';
import {
  each,
  firstRefusal,
  notEmpty,
  positive,
  probability,
  properProbability,
  tractable,
} from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import type { TestResult } from './accuracy.ts';

export interface PostTestDrawsQuestion {
  readonly pre: number;
  /** What is known of the sensitivity at its best, and of the specificity, as Beta(a, b). */
  readonly sensitivity: readonly [number, number];
  readonly specificity: readonly [number, number];
  /** `share` is how much of the best sensitivity this swab had. */
  readonly tests: readonly { readonly share: number; readonly result: TestResult }[];
  /** Correlation among the infected of the misses of two tests. */
  readonly correlation: number;
  readonly draws: number;
  readonly chance: Chance;
  readonly probabilities?: readonly number[];
}

export interface PostTestDraws {
  readonly mean: number;
  readonly quantiles: readonly number[];
}

/**
 * The chance of infection after several tests of one kind, when how good the kind is is itself known
 * only as Beta distributions: one draw of each holds for all the tests. Misses go together with the
 * given correlation r: all n are missed with chance r min(m) + (1 - r) prod(m), which for two equal
 * tests is Vacek's covariance r m (1 - m). Tests that found something are taken as independent.
 * Source: Bayes' rule; Vacek (1985), Biometrics 41:959-968; the mixture for more than two is our own.
 */
export function postTestDraws(question: PostTestDrawsQuestion): Outcome<PostTestDraws> {
  const { pre, sensitivity, specificity, tests, correlation, draws, chance } = question;
  const { probabilities = [0.025, 0.5, 0.975] } = question;
  const refused = firstRefusal(
    probability('pre', pre),
    each('sensitivity', sensitivity, positive),
    each('specificity', specificity, positive),
    each('sensitivity', sensitivity, tractable),
    each('specificity', specificity, tractable),
    notEmpty('tests', tests),
    each(
      'shares',
      tests.map(({ share }) => share),
      probability,
    ),
    probability('correlation', correlation),
    each('probabilities', probabilities, properProbability),
  );
  if (refused) return refused;
  if (!Number.isInteger(draws) || draws < 100 || draws > 1_000_000)
    return refuse(
      'out-of-range',
      `draws must be a whole number from 100 to 1,000,000, not ${draws}.`,
    );
  const posts = new Float64Array(draws);
  for (let i = 0; i < draws; i++) {
    const se = drawBeta(chance, sensitivity);
    const sp = drawBeta(chance, specificity);
    const ifInfected = chanceInInfected(tests, se, correlation);
    const ifNot = tests.reduce((all, { result }) => all * (result === 'positive' ? 1 - sp : sp), 1);
    const all = pre * ifInfected + (1 - pre) * ifNot;
    posts[i] = all === 0 ? pre : (pre * ifInfected) / all;
  }
  posts.sort();
  const mean = posts.reduce((sum, post) => sum + post, 0) / draws;
  const quantiles = probabilities.map(
    (p) => posts[Math.min(draws - 1, Math.floor(p * draws))] ?? pre,
  );
  return given({ mean, quantiles });
}

function chanceInInfected(
  tests: PostTestDrawsQuestion['tests'],
  se: number,
  correlation: number,
): number {
  let found = 1;
  let least = 1;
  let product = 1;
  for (const { share, result } of tests) {
    const hit = se * share;
    if (result === 'positive') {
      found *= hit;
      continue;
    }
    least = Math.min(least, 1 - hit);
    product *= 1 - hit;
  }
  return found * (correlation * least + (1 - correlation) * product);
}

function drawBeta(chance: Chance, [a, b]: readonly [number, number]): number {
  const one = drawGamma(chance, a);
  const sum = one + drawGamma(chance, b);
  // Shapes so small that both draws are too small for doubles: all the mass is at the two ends.
  if (sum === 0) return uniform(chance) * (a + b) < a ? 1 : 0;
  return one / sum;
}
