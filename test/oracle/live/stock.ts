import type { Chance } from '../../../src/statistics/random/chance.ts';
import { between, type Draw, type LiveCase, logBetween, many, oneOf, vector, whole } from './case.ts';

const demand = (c: Chance): number[] => {
  const y = many(whole(c, 3, 40), () => oneOf(c, [0, 0, 1, whole(c, 0, 12)]));
  y[1] = whole(c, 1, 9);
  return y;
};
const service = (c: Chance): number => oneOf(c, [0.5, 0.8, 0.95, 0.99, between(c, 0.01, 0.999)]);

/** Costs of an order by summing over every demand that is likelier than nothing. */
function newsvendor(c: Chance, input: object, law: { readonly quantile: string; readonly pmf: string }): LiveCase {
  const [underCost, overCost] = [between(c, 0.5, 12), between(c, 0.5, 6)];
  return {
    fn: 'newsvendor',
    input: { ...input, underCost, overCost },
    r: `{u <- ${underCost}; o <- ${overCost}; p <- u / (u + o); Q <- ${law.quantile}; d <- 0:20000; w <- ${law.pmf}; cost <- function(q) sum(w * (u * pmax(d - q, 0) + o * pmax(q - d, 0))); list(criticalRatio = p, Q = Q, expectedCost = cost(Q), costAtQminus1 = cost(Q - 1), costAtQplus1 = cost(Q + 1))}`,
    tolerance: 1e-8,
  };
}

/** The same for a law with a density. */
function continuous(c: Chance, input: object, [quantile, density]: readonly [string, string], low = '0'): LiveCase {
  const [underCost, overCost] = [between(c, 1, 12), between(c, 1, 6)];
  return {
    fn: 'newsvendor',
    input: { ...input, underCost, overCost },
    r: `{u <- ${underCost}; o <- ${overCost}; p <- u / (u + o); Q <- ${quantile}; f <- function(d) ${density}; g <- function(a, b, h) integrate(h, a, b, rel.tol = 1e-11, subdivisions = 2000)$value; cost <- u * g(Q, Inf, function(d) (d - Q) * f(d)) + o * g(${low}, Q, function(d) (Q - d) * f(d)); list(Q = Q, expectedCost = cost)}`,
    tolerance: 1e-6,
  };
}

export const stock: readonly Draw[] = [
  (c) => {
    const [y, alpha] = [demand(c), between(c, 0.02, 0.6)];
    return {
      fn: 'croston',
      input: { y, alpha },
      r: `{y <- ${vector(y)}; a <- ${alpha}; at <- which(y > 0); z <- y[at]; x <- diff(c(0, at)); s <- function(v) Reduce(function(l, n) l + a * (n - l), v); f <- s(z) / s(x); list(forecast = f, sba = f * (1 - a / 2), sbj = f * (1 - a / (2 - a)))}`,
      tolerance: 1e-11,
    };
  },
  (c) => {
    const [y, alpha, beta] = [demand(c), between(c, 0.02, 0.6), between(c, 0.02, 0.6)];
    return {
      fn: 'tsb',
      input: { y, alpha, beta },
      r: `{y <- ${vector(y)}; k <- which(y > 0)[1]; z <- y[k]; p <- 1 / k; for (v in y[-seq_len(k)]) if (v > 0) { p <- p + ${beta} * (1 - p); z <- z + ${alpha} * (v - z) } else p <- p * (1 - ${beta}); list(z = z, p = p, f = z * p)}`,
      tolerance: 1e-11,
    };
  },
  (c) => {
    const y = [...demand(c), 2, 3];
    return { fn: 'demandClass', input: { y }, r: `{y <- ${vector(y)}; z <- y[y > 0]; list(adi = length(y) / length(z), cv2 = var(z) / mean(z)^2)}`, tolerance: 1e-11 };
  },
  (c) => {
    const [demandPerDay, leadTimeDays, s] = [logBetween(c, 0.01, 1e5), whole(c, 0, 20), service(c)];
    return {
      fn: 'reorderPointPoisson',
      input: { demandPerDay, leadTimeDays, service: s },
      r: `{m <- ${demandPerDay} * ${leadTimeDays}; q <- qpois(${s}, m); list(meanLT = m, reorderPoint = q, prob = ppois(q, m))}`,
      tolerance: 1e-9,
    };
  },
  (c) => {
    const [meanLT, s] = [logBetween(c, 0.05, 2000), service(c)];
    const varLT = meanLT * between(c, 1.05, 9);
    return {
      fn: 'reorderPointNegBin',
      input: { meanLT, varLT, service: s },
      r: `{k <- ${meanLT}^2 / (${varLT} - ${meanLT}); pr <- ${meanLT} / ${varLT}; q <- qnbinom(${s}, k, pr); list(size = k, prob = pr, reorderPoint = q, cdf = pnbinom(q, k, pr))}`,
      tolerance: 1e-9,
    };
  },
  (c) => {
    const [demandPerDay, leadMean, leadSd, s] = [between(c, 0.1, 30), between(c, 0.5, 12), between(c, 0.2, 4), service(c)];
    const dist = oneOf(c, ['negbin', 'normal', 'gamma']);
    const point = { negbin: `qnbinom(${s}, m^2 / (v - m), m / v)`, normal: `qnorm(${s}, m, sqrt(v))`, gamma: `qgamma(${s}, m^2 / v, m / v)` }[dist];
    return {
      fn: 'reorderPointRandomLead',
      input: { demandPerDay, leadMean, leadSd, service: s, dist },
      r: `{m <- ${demandPerDay} * ${leadMean}; v <- m + ${demandPerDay}^2 * ${leadSd}^2; list(mean = m, var = v, reorderPoint = ${point})}`,
      tolerance: 1e-7,
    };
  },
  (c) => {
    const y = [...many(whole(c, 2, 30), () => whole(c, 0, 15)), 0, 20];
    return { fn: 'negBinMoments', input: { y }, r: `{y <- ${vector(y)}; m <- mean(y); v <- var(y); list(mean = m, var = v, size = if (v > m) m^2 / (v - m) else NA)}`, tolerance: 1e-10 };
  },
  (c) => {
    const mean = logBetween(c, 0.2, 5000);
    return newsvendor(c, { dist: 'poisson', mean }, { quantile: `qpois(p, ${mean})`, pmf: `dpois(d, ${mean})` });
  },
  (c) => {
    const mean = logBetween(c, 0.5, 60);
    const variance = mean * between(c, 1.1, 6);
    const size = `${mean}^2 / (${variance} - ${mean}), ${mean} / ${variance}`;
    return newsvendor(c, { dist: 'negbin', mean, var: variance }, { quantile: `qnbinom(p, ${size})`, pmf: `dnbinom(d, ${size})` });
  },
  (c) => {
    const [n, p] = [whole(c, 1, 400), between(c, 0.01, 0.99)];
    return newsvendor(c, { dist: 'binomial', n, p }, { quantile: `qbinom(p, ${n}, ${p})`, pmf: `dbinom(d, ${n}, ${p})` });
  },
  (c) => {
    const [mean, sd] = [between(c, 5, 60), between(c, 1, 12)];
    return continuous(c, { dist: 'normal', mean, sd }, [`qnorm(p, ${mean}, ${sd})`, `dnorm(d, ${mean}, ${sd})`], '-Inf');
  },
  (c) => {
    const [shape, scale] = [between(c, 1.2, 20), between(c, 0.5, 5)];
    return continuous(c, { dist: 'gamma', shape, scale }, [`qgamma(p, ${shape}, scale = ${scale})`, `dgamma(d, ${shape}, scale = ${scale})`]);
  },
  (c) => {
    const [meanlog, sdlog] = [between(c, 0, 4), between(c, 0.2, 0.9)];
    return continuous(c, { dist: 'lognormal', meanlog, sdlog }, [`qlnorm(p, ${meanlog}, ${sdlog})`, `dlnorm(d, ${meanlog}, ${sdlog})`]);
  },
  (c) => {
    const rate = between(c, 0.02, 3);
    return continuous(c, { dist: 'exponential', rate }, [`qexp(p, ${rate})`, `dexp(d, ${rate})`]);
  },
  (c) => {
    const k = many(6, () => between(c, -6, 25));
    return { fn: 'normalLoss', input: { k }, r: `list(G = sapply(${vector(k)}, function(k) integrate(function(t) t * dnorm(k + t), 0, Inf, rel.tol = 1e-12)$value))`, tolerance: 1e-9 };
  },
  (c) => {
    const [n, voidProb] = [whole(c, 0, 300), oneOf(c, [0, between(c, 0.001, 0.4)])];
    const s = many(3, () => service(c));
    return { fn: 'kitsForValid', input: { n, voidProb, service: s }, r: `list(kits = ${n} + ${n === 0 ? 'c(0, 0, 0)' : `qnbinom(${vector(s)}, ${n}, 1 - ${voidProb})`})`, tolerance: 0 };
  },
  (c) => {
    const [onHand, poissonPerDay] = [whole(c, 0, 500), logBetween(c, 0.05, 40)];
    const days = many(4, () => whole(c, 0, 30));
    return { fn: 'stockoutProb', input: { onHand, poissonPerDay, days }, r: `list(p = ppois(${onHand}, ${poissonPerDay} * ${vector(days)}, lower.tail = FALSE))`, tolerance: 1e-12 };
  },
  (c) => {
    const batches = many(whole(c, 1, 3), (): { qty: number; expiryDay: number } => ({ qty: whole(c, 0, 25), expiryDay: whole(c, 0, 30) }));
    batches.sort((a, b) => a.expiryDay - b.expiryDay);
    const rate = between(c, 0.05, 3);
    return {
      fn: 'expectedExpiryWaste',
      input: { batches, poissonPerDay: rate },
      // Every path: what is used by each expiry, carried as a vector of chances.
      r: `{q <- ${vector(batches.map((b) => b.qty))}; e <- ${vector(batches.map((b) => b.expiryDay))}; w <- c(1, numeric(sum(q))); day <- 0; out <- c(); for (i in seq_along(q)) { m <- ${rate} * (e[i] - day); day <- e[i]; top <- length(w); n <- numeric(top); for (u in seq_len(top)) { k <- 0:(top - u); pr <- dpois(k, m); pr[length(pr)] <- ppois(top - u - 1, m, lower.tail = FALSE); n[u + k] <- n[u + k] + w[u] * pr }; out <- c(out, sum(pmax(q[i] - (seq_along(n) - 1), 0) * n)); g <- numeric(top - q[i]); for (u in seq_len(top)) { j <- max(u - q[i], 1); g[j] <- g[j] + n[u] }; w <- g }; list(wasteByBatch = out, total = sum(out))}`,
      tolerance: 1e-10,
    };
  },
];
