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
      value: (args[0] ?? []).map((_, row) => f(...args.map((column) => column[row] as number))),
    };
  };

type Two = [number, number];
type Three = [number, number, number];
const of = <A extends readonly number[]>(f: (...args: A) => number): Adapter =>
  columns(f as unknown as (...args: readonly number[]) => number);

/** Distributions under the names that R has for them: the quantity first, then the parameters. */
export const distributions: Adapters = {
  lgamma: of<[number]>(logGamma),
  pnorm: of<[number]>(normalCdf),
  qnorm: of<[number]>(normalQuantile),
  pbeta: of<Three>(betaCdf),
  'pbeta.upper': of<Three>(betaUpper),
  qbeta: of<Three>(betaQuantile),
  pgamma: of<Two>((x, shape) => gammaCdf(x, shape)),
  'pgamma.upper': of<Two>((x, shape) => gammaUpper(x, shape)),
  qgamma: of<Two>((p, shape) => gammaQuantile(p, shape)),
  'pchisq.upper': of<Two>(chiSquaredUpper),
  dbinom: of<Three>(binomialPmf),
  pbinom: of<Three>(binomialCdf),
  'pbinom.upper': of<Three>(binomialAtLeast),
  qbinom: of<Three>(binomialQuantile),
  dpois: of<Two>(poissonPmf),
  ppois: of<Two>(poissonCdf),
  'ppois.upper': of<Two>(poissonAtLeast),
  qpois: of<Two>(poissonQuantile),
  dnbinom: of<Three>(negativeBinomialPmf),
  pnbinom: of<Three>(negativeBinomialCdf),
  qnbinom: of<Three>(negativeBinomialQuantile),
  dhyper: of<[number, number, number, number]>((k, marked, others, drawn) =>
    hypergeometricPmf(k, { marked, others, drawn }),
  ),
};
