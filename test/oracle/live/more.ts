// Proportions, freedom, outbreaks, codes and small plans: closed forms, enumerations and R's own functions.
import type { Chance } from '../../../src/statistics/random/chance.ts';
import { between, type Draw, logBetween, many, oneOf, vector, whole } from './case.ts';

const tally = (c: Chance, most = 200) => {
  const n = whole(c, 1, most);
  return { x: whole(c, 0, n), n };
};
/** The chances of a binomial test over a fine search of p, R's pbinom inside. */
const solve = (f: string, low: string, high: string): string => `uniroot(function(p) ${f}, c(${low}, ${high}), tol = 1e-13)$root`;

const proportions: readonly Draw[] = [
  (c) => {
    const [a, b] = [tally(c), tally(c)];
    const conf = oneOf(c, [0.9, 0.95, 0.99]);
    return {
      fn: 'newcombeDifference',
      input: { x1: a.x, n1: a.n, x2: b.x, n2: b.n, conf },
      r: `{w <- function(x, n) suppressWarnings(prop.test(x, n, conf.level = ${conf}, correct = FALSE)$conf.int); p <- ${a.x / a.n}; q <- ${b.x / b.n}; a <- w(${a.x}, ${a.n}); b <- w(${b.x}, ${b.n}); d <- p - q; list(diff = d, ci = c(d - sqrt((p - a[1])^2 + (b[2] - q)^2), d + sqrt((a[2] - p)^2 + (q - b[1])^2)))}`,
      tolerance: 1e-9,
    };
  },
  (c) => {
    const n = whole(c, 2, 200);
    const [x, conf] = [whole(c, 1, n - 1), oneOf(c, [0.9, 0.95])];
    const a = (1 - conf) / 2;
    const lower = solve(`pbinom(${x}, ${n}, p, lower.tail = FALSE) + dbinom(${x}, ${n}, p) / 2 - ${a}`, '1e-12', `${x / n}`);
    const upper = solve(`pbinom(${x} - 1, ${n}, p) + dbinom(${x}, ${n}, p) / 2 - ${a}`, `${x / n}`, '1 - 1e-12');
    return { fn: 'midP', input: { x, n, conf }, r: `list(ci = c(${lower}, ${upper}))`, tolerance: 1e-9 };
  },
  // Blaker (2000): the p-value over a grid of p; the ends of where it is above 1 - conf, to the grid's step.
  (c) => {
    const { x, n } = tally(c, 60);
    return {
      fn: 'blaker',
      input: { x, n },
      r: `{g <- seq(0, 1, by = 2e-5); a <- pbinom(${x} - 1, ${n}, g, lower.tail = FALSE); b <- pbinom(${x}, ${n}, g); s <- pmin(a, b); v <- ifelse(a < b, a + pbinom(qbinom(s, ${n}, g) - 1, ${n}, g), b + 1 - pbinom(qbinom(1 - s, ${n}, g), ${n}, g)); k <- g[pmin(1, v) > .05]; list(ci = range(k))}`,
      tolerance: 1e-4,
    };
  },
  // Sterne (1954): counts no likelier than the one seen.
  (c) => {
    const { x, n } = tally(c, 40);
    return {
      fn: 'sterne',
      input: { x, n },
      r: `{g <- seq(0, 1, by = 5e-5); v <- sapply(g, function(p) { d <- dbinom(0:${n}, ${n}, p); sum(d[d <= d[${x + 1}] * (1 + 1e-9)]) }); list(ci = range(g[v > .05]))}`,
      tolerance: 2e-4,
    };
  },
  (c) => {
    const { x, n } = tally(c);
    const p0 = between(c, 0.01, 0.99);
    return { fn: 'binomTestLess', input: { x, n, p0 }, r: `list(p = binom.test(${x}, ${n}, ${p0}, "less")$p.value)`, tolerance: 1e-11 };
  },
  (c) => {
    const { x, n } = tally(c);
    const p0 = between(c, 0.01, 0.99);
    return { fn: 'binomTestTwoSided', input: { x, n, p0 }, r: `list(p = binom.test(${x}, ${n}, ${p0})$p.value)`, tolerance: 1e-11 };
  },
  (c) => {
    const { x, n } = tally(c);
    const p0 = between(c, 0.01, 0.99);
    return { fn: 'binomTestGreater', input: { x, n, p0 }, r: `list(p = binom.test(${x}, ${n}, ${p0}, "greater")$p.value)`, tolerance: 1e-11 };
  },
  (c) => {
    const [a, b] = [tally(c, 80), tally(c, 80)];
    const prior = oneOf(c, [[0.5, 0.5], [1, 1], [2, 5]] as const);
    const shape = ({ x, n }: { x: number; n: number }): string => `${x + prior[0]}, ${n - x + prior[1]}`;
    return {
      fn: 'probRateHigher',
      input: { A: a, B: b, prior },
      // Over the first's probability, so that no density is infinite at an end.
      r: `list(p = integrate(function(u) pbeta(qbeta(u, ${shape(a)}), ${shape(b)}), 0, 1, rel.tol = 1e-10, subdivisions = 5000)$value)`,
      tolerance: 1e-7,
    };
  },
  (c) => {
    const [target, n] = [between(c, 0.01, 0.5), many(3, () => whole(c, 5, 400))];
    const limit = (tail: number): string => `sapply(${vector(n)}, function(n) { r <- qbinom(${tail}, n, ${target}); max(0, min(1, (r - (pbinom(r, n, ${target}) - ${tail}) / dbinom(r, n, ${target})) / n)) })`;
    return { fn: 'funnelLimits', input: { target, n }, r: `list(l025 = ${limit(0.025)}, u975 = ${limit(0.975)}, l001 = ${limit(0.001)}, u999 = ${limit(0.999)})`, tolerance: 1e-9 };
  },
];

const freedom: readonly Draw[] = [
  (c) => {
    const [n, confidence] = [whole(c, 1, 5000), oneOf(c, [0.8, 0.95, 0.99])];
    return { fn: 'zeroEventsUpper', input: { n, confidence }, r: `list(oneSided = qbeta(${confidence}, 1, ${n}))`, tolerance: 1e-12 };
  },
  (c) => {
    const [n, prevalence, sens] = [whole(c, 0, 500), between(c, 0.001, 0.4), between(c, 0.2, 1)];
    return { fn: 'detectProbBinomial', input: { n, prevalence, sens }, r: `list(p = 1 - dbinom(0, ${n}, ${prevalence} * ${sens}))`, tolerance: 1e-12 };
  },
  (c) => {
    const [N, sens, confidence] = [whole(c, 5, 120), between(c, 0.4, 1), oneOf(c, [0.8, 0.95])];
    const n = whole(c, 1, N);
    return {
      fn: 'maxInfectedConsistent',
      input: { N, n, sens, confidence },
      r: `{d <- 0:${N}; s <- sapply(d, function(D) { k <- 0:min(D, ${n}); 1 - sum(dhyper(k, D, ${N} - D, ${n}) * (1 - ${sens})^k) }); list(exactMaxD = max(d[s < ${confidence}]))}`,
      tolerance: 0,
    };
  },
  (c) => {
    const [N, sens, confidence] = [whole(c, 5, 120), between(c, 0.8, 1), oneOf(c, [0.8, 0.9])];
    const D = whole(c, 3, N);
    return {
      fn: 'sampleSizeExact',
      input: { N, D, sens, confidence },
      r: `{s <- sapply(1:${N}, function(n) { k <- 0:min(${D}, n); 1 - sum(dhyper(k, ${D}, ${N} - ${D}, n) * (1 - ${sens})^k) }); list(n = which(s >= ${confidence})[1])}`,
      tolerance: 0,
    };
  },
  (c) => {
    const post = many(whole(c, 1, 12), () => oneOf(c, [0, 1, between(c, 0, 1), 10 ** -between(c, 1, 5)]));
    return { fn: 'numberInfectedDistribution', input: { post }, r: `list(pmf = Reduce(function(f, q) c(f * (1 - q), 0) + c(0, f * q), ${vector(post)}, 1))`, tolerance: 1e-13 };
  },
  (c) => {
    const prior = many(whole(c, 1, 12), () => between(c, 0, 0.4));
    const sensByPerson = prior.map(() => oneOf(c, [0, between(c, 0.3, 1)]));
    const spec = between(c, 0.9, 1);
    return {
      fn: 'homeClearIndependent',
      input: { prior, sensByPerson, spec },
      r: `{p <- ${vector(prior)}; s <- ${vector(sensByPerson)}; q <- ifelse(s == 0, p, p * (1 - s) / (p * (1 - s) + (1 - p) * ${spec})); list(post = q, pClear = prod(1 - q), expectedInfected = sum(q))}`,
      tolerance: 1e-12,
    };
  },
  (c) => {
    const N = whole(c, 6, 40);
    const [n, sens] = [whole(c, 0, N), between(c, 0.3, 1)];
    const d = [0, 1, 2, 3, 5];
    const p = d.map(() => between(c, 0.01, 1));
    return {
      fn: 'homeClearClusterPrior',
      input: { N, n, sens, priorD: { d, p } },
      r: `{d <- ${vector(d)}; w <- ${vector(p)} * sapply(d, function(D) { k <- 0:min(D, ${n}); sum(dhyper(k, D, ${N} - D, ${n}) * (1 - ${sens})^k) }); list(posteriorD = w / sum(w), pClear = w[1] / sum(w))}`,
      tolerance: 1e-11,
    };
  },
];

/** Reed-Frost and Greenwood by carrying (susceptible, infective) from generation to generation. */
const generations = (m: number, a: number, risk: string): string =>
  `{m <- ${m}; w <- array(0, c(m + 1, m + ${a} + 1)); w[m + 1, ${a} + 1] <- 1; f <- numeric(m + 1); repeat { n <- array(0, dim(w)); for (s in 0:m) for (i in 0:(m + ${a})) { x <- w[s + 1, i + 1]; if (x == 0) next; if (i == 0) { f[m - s + 1] <- f[m - s + 1] + x; next }; r <- ${risk}; for (k in 0:s) n[s - k + 1, k + 1] <- n[s - k + 1, k + 1] + x * dbinom(k, s, r) }; w <- n; if (sum(w) == 0) break }; list(pmf = f)}`;

const outbreaks: readonly Draw[] = [
  (c) => {
    const [m, a, p] = [whole(c, 0, 8), whole(c, 1, 3), between(c, 0.02, 0.9)];
    return { fn: 'reedFrostFinalSize', input: { susceptible: m, introductions: a, p }, r: generations(m, a, `1 - (1 - ${p})^i`), tolerance: 1e-11 };
  },
  (c) => {
    const [m, a, p] = [whole(c, 0, 8), whole(c, 1, 3), between(c, 0.02, 0.9)];
    return { fn: 'greenwoodFinalSize', input: { susceptible: m, introductions: a, p }, r: generations(m, a, `${p}`), tolerance: 1e-11 };
  },
  // Ball (1986): the triangular equations, small enough to lose no figures.
  (c) => {
    const [m, a, pairRate] = [whole(c, 1, 9), whole(c, 1, 3), between(c, 0.02, 0.6)];
    const [infectiousPeriod, phi] = oneOf(c, [['exponential mean 1', '1 / (1 + s)'], ['fixed 1', 'exp(-s)'], ['gamma shape 3 mean 1', '(1 + s / 3)^-3']] as const);
    return {
      fn: 'stochasticFinalSize',
      input: { susceptible: m, introductions: a, pairRate, infectiousPeriod },
      r: `{m <- ${m}; phi <- function(s) ${phi}; P <- numeric(m + 1); for (k in 0:m) { f <- phi(${pairRate} * (m - k)); s <- 0; if (k > 0) for (j in 0:(k - 1)) s <- s + choose(m - j, k - j) * P[j + 1] / f^(j + ${a}); P[k + 1] <- (choose(m, k) - s) * f^(k + ${a}) }; list(pmf = P)}`,
      tolerance: 1e-9,
    };
  },
  (c) => {
    const R0 = many(4, () => logBetween(c, 0.2, 8));
    return { fn: 'finalSizeKM', input: { R0 }, r: `list(z = sapply(${vector(R0)}, function(r) if (r <= 1) 0 else uniroot(function(z) z - 1 + exp(-r * z), c(1e-9, 1), tol = 1e-14)$root))`, tolerance: 1e-9 };
  },
  (c) => {
    const [r, gtMean, gtSd, latentMean, infectiousMean] = [between(c, -0.08, 0.4), between(c, 2, 8), between(c, 0.5, 4), between(c, 0.5, 5), between(c, 1, 7)];
    return {
      fn: 'RfromGrowth',
      input: { r, gtMean, gtSd, latentMean, infectiousMean },
      r: `{M <- integrate(function(t) exp(-${r} * t + dgamma(t, (${gtMean} / ${gtSd})^2, ${gtMean} / ${gtSd}^2, log = TRUE)), 0, Inf, rel.tol = 1e-11)$value; list(gamma = 1 / M, delta = exp(${r} * ${gtMean}), seir_exp = (1 + ${r} * ${latentMean}) * (1 + ${r} * ${infectiousMean}))}`,
      tolerance: 1e-7,
    };
  },
  (c) => {
    const [n, B, Q] = [whole(c, 1, 12), between(c, 0.4, 1), between(c, 0.4, 1)];
    return {
      fn: 'longiniKoopman',
      input: { n, escapeCommunity: B, escapePerInfective: Q },
      r: `{n <- ${n}; m <- matrix(0, n + 1, n + 1); m[1, 1] <- 1; for (k in 1:n) { for (j in 0:(k - 1)) m[j + 1, k + 1] <- choose(k, j) * m[j + 1, j + 1] * ${B}^(k - j) * ${Q}^(j * (k - j)); m[k + 1, k + 1] <- 1 - sum(m[1:k, k + 1]) }; list(pmf = m[, n + 1])}`,
      tolerance: 1e-9,
    };
  },
];

const letters = (c: Chance): string => many(whole(c, 1, 9), () => oneOf(c, ['A', 'B', 'C', '1'])).join('');
const codesAndPlans: readonly Draw[] = [
  (c) => {
    const [n, space] = [whole(c, 0, 400), whole(c, 500, 2_000_000)];
    return { fn: 'birthdayExact', input: { n, space }, r: `list(probAnyDuplicate = -expm1(sum(log1p(-(seq_len(${n}) - 1) / ${space}))))`, tolerance: 1e-11 };
  },
  (c) => {
    const [n, length, alphabet] = [whole(c, 2, 300), whole(c, 2, 8), oneOf(c, [10, 36])];
    return {
      fn: 'nearDuplicateRandom',
      input: { n, length, alphabet },
      r: `{p <- dbinom(1, ${length}, 1 - 1 / ${alphabet}); e <- choose(${n}, 2) * p; list(pairProb = p, expectedPairs = e, probAnyPoisson = ppois(0, e, lower.tail = FALSE))}`,
      tolerance: 1e-10,
    };
  },
  (c) => {
    const pairs = many(6, () => [letters(c), letters(c)] as const);
    return { fn: 'editDistance', input: { pairs }, r: `list(levenshtein = mapply(function(a, b) drop(adist(a, b)), c(${pairs.map(([a]) => `"${a}"`).join(',')}), c(${pairs.map(([, b]) => `"${b}"`).join(',')})))`, tolerance: 0 };
  },
  // Every order of six jobs on one machine.
  (c) => {
    const jobs = { r: many(6, () => whole(c, 0, 25)), p: many(6, () => whole(c, 1, 9)), q: many(6, () => whole(c, 0, 25)) };
    return {
      fn: 'oneMachineHeadsTails',
      input: jobs,
      r: `{r <- ${vector(jobs.r)}; p <- ${vector(jobs.p)}; q <- ${vector(jobs.q)}; all <- function(v) if (length(v) < 2) list(v) else do.call(c, lapply(seq_along(v), function(i) lapply(all(v[-i]), function(w) c(v[i], w)))); ends <- sapply(all(1:6), function(o) { t <- 0; e <- 0; for (j in o) { t <- max(t, r[j]) + p[j]; e <- max(e, t + q[j]) }; e }); list(optimum = min(ends))}`,
      tolerance: 0,
    };
  },
  (c) => {
    const [m, p] = [whole(c, 1, 3), many(7, () => whole(c, 1, 20))];
    return {
      fn: 'lptWorstCase',
      input: { instances: [{ m, p }] },
      r: `{p <- ${vector(p)}; a <- as.matrix(expand.grid(rep(list(1:${m}), 7))); opt <- min(apply(a, 1, function(x) max(tapply(p, factor(x, 1:${m}), sum), na.rm = TRUE))); l <- numeric(${m}); for (v in sort(p, decreasing = TRUE)) { k <- which.min(l); l[k] <- l[k] + v }; list(lpt = max(l), opt = opt)}`,
      tolerance: 0,
    };
  },
  (c) => {
    const [swapChance, ifSwapped, ifRight] = [10 ** -between(c, 1, 4), between(c, 0, 1), between(c, 1e-4, 1)];
    return { fn: 'swapOdds', input: { swapChance, ifSwapped, ifRight }, r: `list(odds = exp(qlogis(${swapChance}) + log(${ifSwapped}) - log(${ifRight})))`, tolerance: 1e-10, relative: true };
  },
  // A round of visits that each take an exponential time: Erlang's law where all are alike.
  (c) => {
    const [n, mean] = [whole(c, 1, 8), between(c, 3, 12)];
    const by = n * mean * between(c, 0.7, 1.6);
    return { fn: 'finishChance', input: { means: many(n, () => mean), by }, r: `list(byThen = pgamma(${by}, ${n}, scale = ${mean}))`, tolerance: 0.006 };
  },
  // Steps of practice with nobody falling back: the beta negative binomial, by R's integrate.
  (c) => {
    const [up, stay, steps, most] = [whole(c, 0, 12), whole(c, 0, 12), whole(c, 1, 6), 12];
    return {
      fn: 'ladderForecast',
      input: { up, stay, down: -1, at: 0, steps, most },
      r: `list(reached = sapply(1:${most}, function(n) if (n < ${steps}) 0 else integrate(function(p) pbinom(${steps} - 1, n, p, lower.tail = FALSE) * dbeta(p, ${up} + 1, ${stay} + 1), 0, 1, rel.tol = 1e-11)$value))`,
      tolerance: 1e-8,
    };
  },
  // Weighed finishing time alone, on equal lanes: every way of giving seven jobs out.
  (c) => {
    const [k, durations] = [whole(c, 1, 3), many(7, () => whole(c, 2, 15))];
    return {
      fn: 'lanes',
      input: { lanes: many(k, () => 0), durations },
      r: `{p <- ${vector(durations)}; a <- as.matrix(expand.grid(rep(list(1:${k}), 7))); best <- min(apply(a, 1, function(x) max(tapply(p, factor(x, 1:${k}), sum), na.rm = TRUE))); list(cost = best, evaluated = best)}`,
      tolerance: 1e-9,
    };
  },
];

export const more: readonly Draw[] = [...proportions, ...freedom, ...outbreaks, ...codesAndPlans];
