import { binomialPmf } from '../distributions/binomial.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { clopperPearson } from './clopper-pearson.ts';
import type { Interval } from './interval.ts';
import { checkTally, type Tally, type TallyWithConfidence } from './tally.ts';

// Two outcomes count as equally likely when they agree to this much: the rest is rounding.
const EQUAL = 1 + 1e-9;

/** The total probability of the outcomes no likelier than the one seen. */
function pValue({ events, trials }: Tally, p: number): number {
  const seen = binomialPmf(events, trials, p) * EQUAL;
  let sum = 0;
  for (let k = 0; k <= trials; k++) {
    const weight = binomialPmf(k, trials, p);
    if (weight <= seen) sum += weight;
  }
  return sum;
}

/** The outermost p, from the exact limit inwards, whose p-value exceeds the level. */
function limit(tally: Tally, from: number, level: number): number {
  const estimate = tally.events / tally.trials;
  // Sterne's set may stick out of the exact interval: start a quarter of its width further out.
  const start = Math.min(1, Math.max(0, from + (from - estimate) / 4));
  const step = (estimate - start) / 1000;
  let outside = start;
  while (pValue(tally, outside + step) <= level) outside += step;
  let inside = outside + step;
  for (let i = 0; i < 50; i++) {
    const middle = (outside + inside) / 2;
    if (pValue(tally, middle) > level) inside = middle;
    else outside = middle;
  }
  return inside;
}

/**
 * Sterne's interval: the values of p not rejected by the test that sums the outcomes no likelier
 * than the one seen. Refused above 20,000 trials, where the others serve as well.
 * Source: Sterne (1954), Biometrika 41:275-278.
 */
export function sterne(tally: TallyWithConfidence): Outcome<Interval> {
  const refused = checkTally(tally);
  if (refused) return refused;
  if (tally.trials > 20_000) {
    return {
      ok: false,
      reason: 'too-large',
      detail: 'Sterne limits are given up to 20,000 trials: use Wilson.',
    };
  }
  const exact = clopperPearson(tally);
  if (!exact.ok) return exact;
  const level = 1 - (tally.confidence ?? 0.95);
  return given({
    lower: tally.events === 0 ? 0 : limit(tally, exact.value.lower, level),
    upper: tally.events === tally.trials ? 1 : limit(tally, exact.value.upper, level),
  });
}
