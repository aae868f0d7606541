import type { Chance } from '../../../src/statistics/random/chance.ts';
import { between, type Draw, many, oneOf, vector, whole } from './case.ts';

const weekly = (c: Chance) => {
  const n = many(whole(c, 5, 20), () => whole(c, 20, 60));
  const counts = n.map((size) => whole(c, 0, Math.min(size, 8)));
  counts[0] = 2;
  return { counts, n };
};
const numbers = ({ counts, n }: { counts: readonly number[]; n: readonly number[] }): string => `x <- ${vector(counts)}; n <- ${vector(n)}; p <- sum(x) / sum(n)`;
/** Average run length by a Markov chain on the sums that can be reached, the textbooks' way. */
const chain = `runs <- function(h, moves, start) { S <- 0:(h - 1); M <- diag(h); for (i in S) for (m in moves) { to <- max(0, i + m[1]); if (to < h) M[i + 1, to + 1] <- M[i + 1, to + 1] - m[2] }; solve(M, rep(1, h))[start + 1] }`;

export const charts: readonly Draw[] = [
  (c) => {
    const w = weekly(c);
    const sigma = oneOf(c, [2, 3]);
    return {
      fn: 'pChartVariable',
      input: { ...w, sigma },
      r: `{${numbers(w)}; s <- sqrt(p * (1 - p) / n); list(pbar = p, ucl = pmin(1, p + ${sigma} * s), lcl = pmax(0, p - ${sigma} * s), z = (x / n - p) / s)}`,
      tolerance: 1e-11,
    };
  },
  (c) => {
    const counts = weekly(c).counts;
    const n = whole(c, 20, 80);
    return {
      fn: 'npChart',
      input: { counts, n },
      r: `{x <- ${vector(counts)}; p <- mean(x) / ${n}; s <- sqrt(${n} * p * (1 - p)); list(pbar = p, center = ${n} * p, ucl = min(${n}, ${n} * p + 3 * s), lcl = max(0, ${n} * p - 3 * s))}`,
      tolerance: 1e-11,
    };
  },
  (c) => {
    const w = weekly(c);
    return {
      fn: 'laneyP',
      input: w,
      r: `{${numbers(w)}; s <- sqrt(p * (1 - p) / n); z <- (x / n - p) / s; mr <- mean(abs(diff(z))); list(pbar = p, mrBar = mr, sigmaZ = mr / 1.128, ucl = pmin(1, p + 3 * s * mr / 1.128), lcl = pmax(0, p - 3 * s * mr / 1.128))}`,
      tolerance: 1e-10,
    };
  },
  (c) => {
    const x = many(12, () => between(c, -3, 3));
    const [target, s, lambda, L] = [between(c, -1, 1), between(c, 0.5, 2), between(c, 0.05, 1), between(c, 2, 3.5)];
    return {
      fn: 'ewma',
      input: { x, target, s, lambda, L },
      r: `{z <- Reduce(function(a, v) ${lambda} * v + (1 - ${lambda}) * a, ${vector(x)}, ${target}, accumulate = TRUE); t <- seq_along(z) - 1; w <- ${L} * ${s} * sqrt(${lambda} / (2 - ${lambda})); list(z = z)}`,
      tolerance: 1e-11,
    };
  },
  (c) => {
    const w = weekly(c);
    const [lambda, p0, L] = [between(c, 0.05, 0.9), between(c, 0.01, 0.2), between(c, 2, 3)];
    return {
      fn: 'ewmaProportion',
      input: { ...w, lambda, p0, L },
      r: `{x <- ${vector(w.counts)}; n <- ${vector(w.n)}; z <- ${p0}; v <- 0; Z <- U <- c(); for (i in seq_along(n)) { z <- ${lambda} * x[i] / n[i] + (1 - ${lambda}) * z; v <- ${lambda}^2 * ${p0} * (1 - ${p0}) / n[i] + (1 - ${lambda})^2 * v; Z <- c(Z, z); U <- c(U, min(1, ${p0} + ${L} * sqrt(v))) }; list(z = Z, ucl = U)}`,
      tolerance: 1e-11,
    };
  },
  (c) => {
    const [n, p] = [many(4, () => whole(c, 4, 400)), between(c, 0.005, 0.4)];
    return { fn: 'pChartFalseAlarmExact', input: { n, p }, r: `{n <- ${vector(n)}; p <- ${p}; q <- pbinom(floor(n * p + 3 * sqrt(n * p * (1 - p))), n, p, lower.tail = FALSE); list(prob = q, arl = 1 / q)}`, tolerance: 1e-10, relative: true };
  },
  (c) => {
    const [p, alpha] = [10 ** -between(c, 0.3, 4), between(c, 0.001, 0.2)];
    return { fn: 'gChartLowerSignal', input: { p, alpha }, r: `{q <- qgeom(${alpha}, ${p}); list(maxGapSignal = if (pgeom(q, ${p}) <= ${alpha}) q else q - 1)}`, tolerance: 0 };
  },
  (c) => {
    const [p, k, alpha] = [10 ** -between(c, 0.3, 3.5), whole(c, 1, 8), between(c, 0.0005, 0.3)];
    return { fn: 'kGapLower', input: { p, k, alpha }, r: `{q <- qnbinom(${alpha}, ${k}, ${p}); list(q = q, cdf = pnbinom(q, ${k}, ${p}))}`, tolerance: 1e-11 };
  },
  (c) => {
    const [n, p, alpha] = [many(4, () => whole(c, 1, 500)), between(c, 0.002, 0.3), between(c, 0.0005, 0.1)];
    return {
      fn: 'binomialSignalCount',
      input: { n, p, alpha },
      r: `{n <- ${vector(n)}; k <- sapply(n, function(n) { c <- 0:(n + 1); c[pbinom(c - 1, n, ${p}, lower.tail = FALSE) <= ${alpha}][1] }); list(signalAtOrAbove = k, prob = pbinom(k - 1, n, ${p}, lower.tail = FALSE))}`,
      tolerance: 1e-12,
    };
  },
  (c) => {
    const conformingBetween = many(whole(c, 3, 20), () => whole(c, 0, 200));
    return {
      fn: 'gChart',
      input: { conformingBetween },
      r: `{x <- ${vector(conformingBetween)}; g <- mean(x); list(mean = g, ucl3 = g + 3 * sqrt(g * (g + 1)))}`,
      tolerance: 1e-10,
    };
  },
  (c) => {
    const [m, share] = [whole(c, 5, 60), between(c, 0.005, 0.2)];
    const limit = whole(c, m + 1, 4 * m);
    return {
      fn: 'bernoulliCusumAnos',
      input: { m, h: `${limit}/${m}`, p: [share] },
      r: `{${chain}; list(anos = runs(${limit}, list(c(${m} - 1, ${share}), c(-1, 1 - ${share})), 0))}`,
      tolerance: 1e-7,
      relative: true,
    };
  },
  (c) => {
    const x = many(60, () => (between(c, 0, 1) < 0.12 ? 1 : 0));
    const m = whole(c, 5, 40);
    return { fn: 'bernoulliCusumPath', input: { x, m }, r: `list(S = Reduce(function(s, v) max(0, s + v - 1 / ${m}), ${vector(x)}, 0, accumulate = TRUE)[-1])`, tolerance: 1e-11 };
  },
  // The density of a step between nodes of a fine grid: Page's integral equation by trapezium, to a few figures.
  (c) => {
    const [k, h, shift] = [between(c, 0.2, 1), between(c, 1, 5), between(c, 0, 1.5)];
    return {
      fn: 'cusumArlNormal',
      input: { k, h, shift, sided: 'one' },
      r: `{N <- 600; w <- 2 * ${h} / (2 * N - 1); S <- (seq_len(N) - 1) * w; P <- outer(S, S, function(i, j) pnorm(j - i + w / 2 + ${k} - ${shift}) - pnorm(j - i - w / 2 + ${k} - ${shift})); P[, 1] <- pnorm(w / 2 - S + ${k} - ${shift}); list(arl = solve(diag(N) - P, rep(1, N))[1])}`,
      tolerance: 2e-4,
      relative: true,
    };
  },
  (c) => {
    const [lambda, L, shift] = [between(c, 0.1, 0.9), between(c, 2, 3), between(c, 0, 1.5)];
    return {
      fn: 'ewmaArlNormal',
      input: { lambda, L, shift, sided: 'two' },
      r: `{N <- 601; b <- ${L} * sqrt(${lambda} / (2 - ${lambda})); w <- 2 * b / N; S <- -b + (seq_len(N) - .5) * w; P <- outer(S, S, function(i, j) pnorm((j + w / 2 - (1 - ${lambda}) * i) / ${lambda} - ${shift}) - pnorm((j - w / 2 - (1 - ${lambda}) * i) / ${lambda} - ${shift})); list(arl = solve(diag(N) - P, rep(1, N))[(N + 1) / 2])}`,
      tolerance: 2e-3,
      relative: true,
    };
  },
];
