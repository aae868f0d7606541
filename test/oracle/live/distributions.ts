import type { Chance } from '../../../src/statistics/random/chance.ts';
import { between, type Draw, type LiveCase, logBetween, many, oneOf, vector, whole } from './case.ts';

/** Forty rows of arguments, handed to both sides as columns; 1e-12 relative, tails included. */
function rows(fn: string, r: string, make: () => readonly number[], tolerance = 1e-12): LiveCase {
  const table = many(40, make);
  const columns = (table[0] ?? []).map((_, k) => table.map((row) => row[k] as number));
  const names = ['a', 'b', 'c', 'd'].slice(0, columns.length);
  const code = `{${names.map((n, k) => `${n} <- ${vector(columns[k] as number[])}`).join('; ')}; list(value = ${r})}`;
  const input = Object.fromEntries(names.map((n, k) => [n, columns[k]]));
  return { fn, input, r: code, tolerance, relative: true };
}

// R 4.2.2 is off by 3e-12 at dpois(59022, 60718.84914448294), where 40 figures (mpmath) agree with us to 1e-14.
const MASS = 2e-11;

const tail = (chance: Chance): number => oneOf(chance, [10 ** -between(chance, 0, 12), 1 - 10 ** -between(chance, 0, 6)]);
const near = (chance: Chance, mean: number, sd: number): number => mean + between(chance, -7, 7) * sd;

const betaArguments = (chance: Chance): readonly number[] => {
  const [a, b] = [logBetween(chance, 0.2, 1e5), logBetween(chance, 0.2, 1e5)];
  const mean = a / (a + b);
  const x = near(chance, mean, Math.sqrt((mean * (1 - mean)) / (a + b + 1)));
  return [x > 0 && x < 1 ? x : between(chance, 0, 1), a, b];
};
const gammaArguments = (chance: Chance): readonly number[] => {
  const shape = logBetween(chance, 0.2, 1e5);
  const x = near(chance, shape, Math.sqrt(shape));
  return [x > 0 ? x : shape * between(chance, 0, 1), shape];
};
const binomialArguments = (chance: Chance): readonly number[] => {
  const [n, p] = [Math.round(logBetween(chance, 1, 1e7)), logBetween(chance, 1e-5, 1)];
  const k = Math.round(near(chance, n * p, Math.sqrt(n * p * (1 - p))));
  return [Math.max(0, Math.min(n, k)), n, p];
};
const poissonArguments = (chance: Chance): readonly number[] => {
  const mean = logBetween(chance, 0.1, 1e5);
  return [Math.max(0, Math.round(near(chance, mean, Math.sqrt(mean)))), mean];
};
const negativeBinomialArguments = (chance: Chance): readonly number[] => [Math.round(logBetween(chance, 1, 300)), logBetween(chance, 0.3, 300), between(chance, 0.01, 1)];

export const distributions: readonly Draw[] = [
  (c) => rows('lgamma', 'lgamma(a)', () => [logBetween(c, 0.01, 1e8)]),
  (c) => rows('pnorm', 'pnorm(a)', () => [between(c, -37, 9)]),
  (c) => rows('qnorm', 'qnorm(a)', () => [10 ** -between(c, 0, 300)]),
  (c) => rows('pbeta', 'pbeta(a, b, c)', () => betaArguments(c)),
  (c) => rows('pbeta.upper', 'pbeta(a, b, c, lower.tail = FALSE)', () => betaArguments(c)),
  (c) => rows('qbeta', 'qbeta(a, b, c)', () => [tail(c), logBetween(c, 0.3, 1e4), logBetween(c, 0.3, 1e4)]),
  (c) => rows('pgamma', 'pgamma(a, b)', () => gammaArguments(c)),
  (c) => rows('pgamma.upper', 'pgamma(a, b, lower.tail = FALSE)', () => gammaArguments(c)),
  (c) => rows('qgamma', 'qgamma(a, b)', () => [tail(c), logBetween(c, 0.3, 1e4)]),
  (c) => rows('pchisq.upper', 'pchisq(a, b, lower.tail = FALSE)', () => [logBetween(c, 0.01, 300), whole(c, 1, 9)]),
  (c) => rows('pbinom', 'pbinom(a, b, c)', () => binomialArguments(c)),
  (c) => rows('pbinom.upper', 'pbinom(a - 1, b, c, lower.tail = FALSE)', () => binomialArguments(c)),
  (c) => rows('qbinom', 'qbinom(a, b, c)', () => [tail(c), ...binomialArguments(c).slice(1)]),
  (c) => rows('dbinom', 'dbinom(a, b, c)', () => binomialArguments(c), MASS),
  (c) => rows('dpois', 'dpois(a, b)', () => poissonArguments(c), MASS),
  (c) => rows('ppois', 'ppois(a, b)', () => poissonArguments(c)),
  (c) => rows('ppois.upper', 'ppois(a - 1, b, lower.tail = FALSE)', () => poissonArguments(c)),
  (c) => rows('qpois', 'qpois(a, b)', () => [tail(c), logBetween(c, 0.1, 1e5)]),
  (c) => rows('dnbinom', 'dnbinom(a, b, c)', () => negativeBinomialArguments(c)),
  (c) => rows('pnbinom', 'pnbinom(a, b, c)', () => negativeBinomialArguments(c)),
  (c) => rows('qnbinom', 'qnbinom(a, b, c)', () => [between(c, 0.001, 0.999), ...negativeBinomialArguments(c).slice(1)]),
  (c) =>
    rows('dhyper', 'dhyper(a, b, c, d)', () => {
      const [marked, others] = [whole(c, 1, 300), whole(c, 1, 300)];
      const drawn = whole(c, 0, marked + others);
      return [whole(c, Math.max(0, drawn - others), Math.min(marked, drawn)), marked, others, drawn];
    }),
];
