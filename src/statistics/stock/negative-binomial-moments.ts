import { each, nonNegative } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface NegativeBinomialMoments {
  readonly mean: number;
  readonly variance: number;
  /** Undefined where the counts vary no more than Poisson. */
  readonly size: number | undefined;
}

/** The negative binomial by moments: size = m^2 / (v - m), sample variance. Two counts at least. */
export function negativeBinomialMoments(
  counts: readonly number[],
): Outcome<NegativeBinomialMoments> {
  const refused = each('counts', counts, nonNegative);
  if (refused) return refused;
  if (counts.length < 2) return refuse('empty', 'A variance needs at least two counts.');
  const mean = counts.reduce((sum, y) => sum + y, 0) / counts.length;
  const variance = counts.reduce((sum, y) => sum + (y - mean) ** 2, 0) / (counts.length - 1);
  return given({
    mean,
    variance,
    size: variance > mean ? mean ** 2 / (variance - mean) : undefined,
  });
}
