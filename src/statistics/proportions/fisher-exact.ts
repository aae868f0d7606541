import { hypergeometricPmf, urnRange } from '../distributions/hypergeometric.ts';
import { findRoot } from '../numeric/find-root.ts';
import { properProbability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { checkTwoByTwo, type TwoByTwo } from './two-by-two.ts';

export interface FisherExact {
  /** Two-sided: the tables no likelier than the one seen. */
  readonly p: number;
  readonly pGreater: number;
  readonly pLess: number;
  /** Conditional maximum likelihood; 0 or Infinity at an end of the range. */
  readonly oddsRatio: number;
  readonly oddsRatioLower: number;
  readonly oddsRatioUpper: number;
}

// R's tolerance for "no likelier".
const EQUAL = 1 + 1e-7;

interface Margins {
  readonly least: number;
  /** ln P(X = least + i) up to a constant, at odds ratio 1. */
  readonly logWeights: readonly number[];
}

/** Probabilities of the top-left cell when the odds ratio is exp(logOdds). */
function tilted({ least, logWeights }: Margins, logOdds: number): readonly number[] {
  const logs = logWeights.map((w, i) => w + logOdds * (least + i));
  const top = Math.max(...logs);
  const raw = logs.map((w) => Math.exp(w - top));
  const total = raw.reduce((sum, w) => sum + w, 0);
  return raw.map((w) => w / total);
}

const sumFrom = (weights: readonly number[], from: number): number =>
  weights.slice(from).reduce((sum, w) => sum + w, 0);

/** Solves on the log odds: far beyond 700 either way the answer has left the range of doubles. */
const solveLogOdds = (f: (logOdds: number) => number): number => Math.exp(findRoot(f, -600, 600));

function limits(margins: Margins, cell: number, tail: number): readonly [number, number] {
  const i = cell - margins.least;
  const last = margins.logWeights.length - 1;
  return [
    i === 0 ? 0 : solveLogOdds((t) => sumFrom(tilted(margins, t), i) - tail),
    i === last
      ? Infinity
      : solveLogOdds((t) => sumFrom([...tilted(margins, t)].reverse(), last - i) - tail),
  ];
}

function estimate(margins: Margins, cell: number): number {
  const i = cell - margins.least;
  if (i === 0) return 0;
  if (i === margins.logWeights.length - 1) return Infinity;
  return solveLogOdds((t) => tilted(margins, t).reduce((sum, w, j) => sum + w * (j - i), 0));
}

/**
 * Fisher's exact test of a two by two table, with the conditional odds ratio and its exact
 * interval. Where the margins leave one table only, p is 1 and the odds ratio is refused as 0 to
 * Infinity. Refused above 1e6 in the smaller margin.
 * Source: Fisher (1935); definitions as in R's fisher.test.
 */
export function fisherExact(table: TwoByTwo, confidence = 0.95): Outcome<FisherExact> {
  const refused = checkTwoByTwo(table) ?? properProbability('confidence', confidence);
  if (refused) return refused;
  const [[a, b], [c, d]] = table;
  const urn = { marked: a + c, others: b + d, drawn: a + b };
  const [least, most] = urnRange(urn);
  if (most - least > 1e6)
    return {
      ok: false,
      reason: 'too-large',
      detail: 'The table is too large for the exact test: use chi-squared.',
    };
  const weights = Array.from({ length: most - least + 1 }, (_, i) =>
    hypergeometricPmf(least + i, urn),
  );
  const seen = (weights[a - least] as number) * EQUAL;
  const margins = { least, logWeights: weights.map(Math.log) };
  const only = least === most;
  const [oddsRatioLower, oddsRatioUpper] = only
    ? [0, Infinity]
    : limits(margins, a, (1 - confidence) / 2);
  return given({
    p: Math.min(
      1,
      weights.reduce((sum, w) => (w <= seen ? sum + w : sum), 0),
    ),
    pGreater: Math.min(1, sumFrom(weights, a - least)),
    pLess: Math.min(1, sumFrom([...weights].reverse(), most - a)),
    oddsRatio: estimate(margins, a),
    oddsRatioLower,
    oddsRatioUpper,
  });
}
