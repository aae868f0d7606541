import { betaCdf, betaQuantile, betaUpper } from '../../../statistics/distributions/beta.ts';
import {
  binomialAtLeast,
  binomialCdf,
  binomialPmf,
  binomialQuantile,
} from '../../../statistics/distributions/binomial.ts';
import { chiSquaredUpper } from '../../../statistics/distributions/chi-squared.ts';
import { gammaCdf, gammaQuantile, gammaUpper } from '../../../statistics/distributions/gamma.ts';
import { hypergeometricPmf } from '../../../statistics/distributions/hypergeometric.ts';
import {
  negativeBinomialCdf,
  negativeBinomialPmf,
  negativeBinomialQuantile,
} from '../../../statistics/distributions/negative-binomial.ts';
import { normalCdf, normalQuantile } from '../../../statistics/distributions/normal.ts';
import {
  poissonAtLeast,
  poissonCdf,
  poissonPmf,
  poissonQuantile,
} from '../../../statistics/distributions/poisson.ts';
import { logGamma } from '../../../statistics/special/log-gamma.ts';
import type { Adapter, Adapters } from '../check.ts';

/** Columns of arguments `a`, `b`, ... give a column of answers. */
const columns =
  (f: (...args: readonly number[]) => number): Adapter =>
  (i) => {
    const names = ['a', 'b', 'c', 'd'].filter((name) => i.has(name));
    const args = names.map((name) => i.numbers(name));
    return {
      value: (args[0] ?? []).map((_, row) =>
        insideDomain(() => f(...args.map((column) => column[row] as number))),
      ),
    };
  };

/** Distributions throw a RangeError outside their domain, since their callers check first. */
function insideDomain(ask: () => number): number | null {
  try {
    return ask();
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

type Two = [number, number];
type Three = [number, number, number];
/** A function of so many numbers. */
type Of<A extends readonly number[]> = (...args: A) => number;
const of = (f: Of<[number]> | Of<Two> | Of<Three> | Of<[...Three, number]>): Adapter => columns(f);

/** Distributions under the names that R has for them: the quantity first, then the parameters. */
export const distributions: Adapters = {
  lgamma: of(logGamma),
  pnorm: of(normalCdf),
  qnorm: of(normalQuantile),
  pbeta: of(betaCdf),
  'pbeta.upper': of(betaUpper),
  qbeta: of(betaQuantile),
  pgamma: of((x: number, shape: number) => gammaCdf(x, shape)),
  'pgamma.upper': of((x: number, shape: number) => gammaUpper(x, shape)),
  qgamma: of((p: number, shape: number) => gammaQuantile(p, shape)),
  'pchisq.upper': of(chiSquaredUpper),
  dbinom: of(binomialPmf),
  pbinom: of(binomialCdf),
  'pbinom.upper': of(binomialAtLeast),
  qbinom: of(binomialQuantile),
  dpois: of(poissonPmf),
  ppois: of(poissonCdf),
  'ppois.upper': of(poissonAtLeast),
  qpois: of(poissonQuantile),
  dnbinom: of(negativeBinomialPmf),
  pnbinom: of(negativeBinomialCdf),
  qnbinom: of(negativeBinomialQuantile),
  dhyper: of((k: number, marked: number, others: number, drawn: number) =>
    hypergeometricPmf(k, { marked, others, drawn }),
  ),
};
