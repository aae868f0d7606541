import { binomialAtLeast, binomialCdf, binomialQuantile } from '../distributions/binomial.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { clopperPearson } from './clopper-pearson.ts';
import type { Interval } from './interval.ts';
import { checkTally, type Tally, type TallyWithConfidence } from './tally.ts';

/** Blaker's acceptability of p: the smaller tail, with the largest opposite tail no bigger. */
function acceptability({ events, trials }: Tally, p: number): number {
  const above = binomialAtLeast(events, trials, p);
  const belowTail = binomialCdf(events, trials, p);
  if (above <= belowTail) {
    const opposite = binomialQuantile(above, trials, p) - 1;
    return Math.min(1, above + binomialCdf(opposite, trials, p));
  }
  const opposite = binomialQuantile(1 - belowTail, trials, p) + 1;
  return Math.min(1, belowTail + binomialAtLeast(opposite, trials, p));
}

/** The first p from the exact limit inwards whose acceptability reaches the level. */
function limit(tally: Tally, from: number, level: number): number {
  const estimate = tally.events / tally.trials;
  const step = (estimate - from) / 2000;
  let outside = from;
  while (Math.abs(outside - from) < Math.abs(estimate - from)) {
    if (acceptability(tally, outside + step) >= level) break;
    outside += step;
  }
  let inside = outside + step;
  for (let i = 0; i < 60; i++) {
    const middle = (outside + inside) / 2;
    if (acceptability(tally, middle) >= level) inside = middle;
    else outside = middle;
  }
  return inside;
}

/**
 * Blaker's interval: exact as Clopper and Pearson's, and inside it. The limit is the outermost
 * value accepted on a grid of 1/2000 of the way in, then bisected to the last figure.
 * Source: Blaker (2000), Canadian Journal of Statistics 28:783-798.
 */
export function blaker(tally: TallyWithConfidence): Outcome<Interval> {
  const refused = checkTally(tally);
  if (refused) return refused;
  const exact = clopperPearson(tally);
  if (!exact.ok) return exact;
  const level = 1 - (tally.confidence ?? 0.95);
  return given({
    lower: tally.events === 0 ? 0 : limit(tally, exact.value.lower, level),
    upper: tally.events === tally.trials ? 1 : limit(tally, exact.value.upper, level),
  });
}
