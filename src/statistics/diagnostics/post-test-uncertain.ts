import { betaCdf, betaQuantile, betaUpper } from '../distributions/beta.ts';
import { findRoot } from '../numeric/find-root.ts';
import { gaussLegendre } from '../numeric/gauss-legendre.ts';
import {
  each,
  firstRefusal,
  positive,
  probability,
  properProbability,
  tractable,
} from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { TestResult } from './accuracy.ts';

export interface UncertainQuestion {
  readonly pre: number;
  /** What is known of the sensitivity, as Beta(a, b). */
  readonly sensitivity: readonly [number, number];
  readonly specificity: readonly [number, number];
  readonly result: TestResult;
  readonly probabilities?: readonly number[];
}

export interface UncertainPostTest {
  readonly mean: number;
  readonly quantiles: readonly number[];
}

type Shape = readonly [number, number];

const POINTS = 64;
/** Nodes within each panel, where the integrand falls from one of these levels to the next. */
const PANEL_POINTS = 12;
/** Where else panels end: a Beta's quantiles turn steep towards 0 and 1. */
const CUTS = [1e-6, 1e-3, 0.03, 0.2, 0.5, 0.8, 0.97, 0.999, 1 - 1e-6];
const LEVELS = [1 - 1e-12, 1 - 1e-4, 0.95, 0.7, 0.3, 0.05, 1e-4, 1e-12];
// A likelihood ratio of e^300 or e^-300 is as good as certainty.
const FARTHEST = 300;

/** The Beta's quantiles at Gauss-Legendre nodes of probability: an average over it is a sum. */
function average(shape: Shape, f: (x: number) => number): number {
  const { nodes, weights } = gaussLegendre(POINTS, 0, 1);
  let sum = 0;
  for (let i = 0; i < POINTS; i++) {
    sum += (weights[i] as number) * f(betaQuantile(nodes[i] as number, ...shape));
  }
  return sum;
}

/**
 * P(log(chance in the infected / chance in the others) > logRatio), both Beta. Where one Beta is far
 * narrower than the other the integrand is nearly a step, so the panels begin and end where it passes
 * through the levels; before the first it is 1, after the last 0.
 */
function exceeds(infected: Shape, others: Shape): (logRatio: number) => number {
  const falls = LEVELS.map((level) => betaQuantile(1 - level, ...infected));
  return (logRatio) => {
    const ratio = Math.exp(logRatio);
    const passed = falls.map((x) => betaCdf(Math.min(1, x / ratio), ...others));
    const [first, last] = [passed[0] as number, passed.at(-1) as number];
    const cuts = CUTS.filter((u) => u > first && u < last);
    const ends = [...passed, ...cuts].sort((a, b) => a - b);
    let sum = first;
    for (let i = 1; i < ends.length; i++) {
      const [from, to] = [ends[i - 1] as number, ends[i] as number];
      if (to <= from) continue;
      const { nodes, weights } = gaussLegendre(PANEL_POINTS, from, to);
      for (let k = 0; k < PANEL_POINTS; k++) {
        const x = Math.min(1, ratio * betaQuantile(nodes[k] as number, ...others));
        sum += (weights[k] as number) * betaUpper(x, ...infected);
      }
    }
    return sum;
  };
}

/**
 * The chance of infection after a result when sensitivity and specificity are themselves known only
 * as Beta distributions: mean and quantiles, by quadrature instead of simulation.
 * A pre-test chance of 0 or 1 stays what it was. Error: below 1e-6 in what was compared with R's integrate, against 0.002 for
 * 100,000 draws.
 */
export function postTestUncertain({
  pre,
  sensitivity,
  specificity,
  result,
  probabilities = [0.025, 0.5, 0.975],
}: UncertainQuestion): Outcome<UncertainPostTest> {
  const refused = firstRefusal(
    probability('pre', pre),
    each('sensitivity', sensitivity, positive),
    each('specificity', specificity, positive),
    each('sensitivity', sensitivity, tractable),
    each('specificity', specificity, tractable),
    each('probabilities', probabilities, properProbability),
  );
  if (refused) return refused;
  if (pre === 0 || pre === 1) return given({ mean: pre, quantiles: probabilities.map(() => pre) });
  const odds = pre / (1 - pre);
  // The chance of the result in the infected is 1 - se or se; in the others sp or 1 - sp.
  const turned = ([a, b]: Shape): Shape => [b, a];
  const positiveResult = result === 'positive';
  const infected = positiveResult ? sensitivity : turned(sensitivity);
  const others = positiveResult ? turned(specificity) : specificity;
  // On its log scale every pre-test chance, however small, has its quantiles within the same ends.
  const above = exceeds(infected, others);
  const quantile = (p: number): number => {
    const below = (logRatio: number): number => 1 - above(logRatio) - p;
    if (below(-FARTHEST) >= 0) return 0;
    if (below(FARTHEST) <= 0) return 1;
    const post = odds * Math.exp(findRoot(below, -FARTHEST, FARTHEST));
    return post === Infinity ? 1 : post / (1 + post);
  };
  return given({
    mean: average(infected, (inInfected) =>
      average(others, (inOthers) => {
        const a = odds * inInfected;
        return a === 0 ? 0 : a / (a + inOthers);
      }),
    ),
    quantiles: probabilities.map(quantile),
  });
}
