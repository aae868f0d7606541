import { bernoulliCusumDesign } from '../../src/statistics/charts/bernoulli-cusum-design.ts';
import { reproductionNumber } from '../../src/statistics/epidemics/reproduction-number.ts';
import { screeningEffects } from '../../src/statistics/epidemics/screening-effect.ts';
import { twoTypeFinalSize } from '../../src/statistics/epidemics/two-type-final-size.ts';
import { seededChance, uniform } from '../../src/statistics/random/chance.ts';
import { drawExponential } from '../../src/statistics/random/draw-exponential.ts';
import { searchRound } from '../../src/statistics/scheduling/search-round.ts';
import { solveRound } from '../../src/statistics/scheduling/solve-round.ts';
import { compareGroups } from '../../src/statistics/survival/compare-groups.ts';
import { kaplanMeier } from '../../src/statistics/survival/kaplan-meier.ts';
import { roundOf24 } from './round-of-24.ts';

/** One task at several sizes, here and in R. The R code finds `n`, and `time`, `event`, `group` read from a file. */
export interface Task {
  readonly name: string;
  readonly sizes: readonly number[];
  readonly runs: number;
  readonly ours: (n: number) => () => unknown;
  /** R code of a function of no arguments; undefined where R has nothing to compare with. */
  readonly r?: string;
  /** True where R's part is not itself compiled code. */
  readonly interpreted: boolean;
}

/** Waits on a grid of tenths, a fifth censored; the same for R. */
export function waits(n: number): { time: Float64Array; event: Uint8Array } {
  const chance = seededChance(n);
  return {
    time: Float64Array.from({ length: n }, () => Math.ceil(drawExponential(chance) * 300) / 10),
    event: Uint8Array.from({ length: n }, () => (uniform(chance) < 0.8 ? 1 : 0)),
  };
}

export const cases = (n: number): readonly number[] =>
  Array.from({ length: n }, (_, t) => Math.round(10 + 8 * Math.sin(t / 20) + (t % 3)));
const interval = [0, 0.233, 0.359, 0.198, 0.103, 0.053, 0.027, 0.014, 0.007, 0.003, 0.002, 0.001];

/** Half the waits against the other half. */
function halves(n: number) {
  const { time, event } = waits(n);
  const middle = n >> 1;
  return [
    { time: time.subarray(0, middle), event: event.subarray(0, middle) },
    { time: time.subarray(middle), event: event.subarray(middle) },
  ];
}

const rates = {
  residentToResident: 0.02,
  residentToStaff: 0.01,
  staffToResident: 0.015,
  staffToStaff: 0.01,
};

export const TASKS: readonly Task[] = [
  {
    name: 'Kaplan–Meier, rows',
    sizes: [1e3, 1e4, 1e5, 1e6],
    runs: 3,
    ours: (n) => {
      const data = waits(n);
      return () => kaplanMeier(data);
    },
    r: 'function() survfit(Surv(time, event) ~ 1)',
    interpreted: false,
  },
  {
    name: 'log-rank, rows',
    sizes: [1e3, 1e4, 1e5, 1e6],
    runs: 3,
    ours: (n) => {
      const groups = halves(n);
      return () => compareGroups(groups);
    },
    r: 'function() survdiff(Surv(time, event) ~ group)',
    interpreted: false,
  },
  {
    name: 'Cori, days',
    sizes: [100, 1000, 10_000],
    runs: 2,
    ours: (n) => {
      const question = { incidence: cases(n), serialInterval: interval };
      return () => reproductionNumber(question);
    },
    r: `function() suppressMessages(suppressWarnings(estimate_R(cases, method = "non_parametric_si", config = make_config(list(si_distr = c(${interval.join(',')}), t_start = 2:(n - 6), t_end = 8:n)))))`,
    interpreted: true,
  },
  {
    name: 'exact final size, two groups, people',
    sizes: [35, 70, 140],
    runs: 2,
    ours: (n) => () =>
      twoTypeFinalSize({
        residents: Math.round((n * 60) / 140),
        staff: Math.round((n * 80) / 140),
        introductions: { residents: 0, staff: 1 },
        rates,
        period: { law: 'exponential', mean: 1 },
      }),
    // The same chain in R, a whole row of states at a time.
    r: `function() { m <- round(n * 60 / 140); k <- round(n * 80 / 140); joint <- matrix(0, m + 1, k + 1)
      here <- lapply(0:k, function(s) matrix(0, 1, k - s + 2)); here[[k + 1]][1, 2] <- 1
      for (r in m:0) { below <- if (r > 0) lapply(0:k, function(s) matrix(0, m - r + 2, k - s + 2))
        for (s in k:0) { g <- here[[s + 1]]; h <- nrow(g); w <- ncol(g)
          all <- 1 + .02 * r + .01 * s; e <- 1 / all; a <- .02 * r / all; b <- .01 * s / all
          if (h > 1) for (v in h:2) { x <- g[v, ]; g[v - 1, ] <- g[v - 1, ] + x * e; if (r > 0) below[[s + 1]][v + 1, ] <- below[[s + 1]][v + 1, ] + x * a; if (s > 0) here[[s]][v, 2:(w + 1)] <- here[[s]][v, 2:(w + 1)] + x * b }
          all <- 1 + .015 * r + .01 * s; e <- 1 / all; a <- .015 * r / all; b <- .01 * s / all
          if (w > 1) for (v in w:2) { x <- g[1, v]; g[1, v - 1] <- g[1, v - 1] + x * e; if (r > 0) below[[s + 1]][2, v] <- below[[s + 1]][2, v] + x * a; if (s > 0) here[[s]][1, v + 1] <- here[[s]][1, v + 1] + x * b }
          joint[r + 1, s + 1] <- g[1, 1] }
        here <- below }
      joint }`,
    interpreted: true,
  },
  {
    name: 'Bernoulli CUSUM design, 1/share',
    sizes: [25, 50, 100],
    runs: 3,
    ours: (n) => () => bernoulliCusumDesign(1 / n, 3 / n, 40 * n),
    r: `function() { p0 <- 1 / n; p1 <- 3 / n; r1 <- -log((1 - p1) / (1 - p0)); m <- round(log(p1 * (1 - p0) / (p0 * (1 - p1))) / r1)
      anos <- function(k, p) { a <- diag(k); for (i in 0:(k - 1)) { d <- max(0, i - 1) + 1; a[i + 1, d] <- a[i + 1, d] - (1 - p); u <- i + m; if (u <= k) a[i + 1, u] <- a[i + 1, u] - p }; solve(a, rep(1, k))[1] }
      hi <- m; while (anos(hi, p0) < 40 * n) hi <- 2 * hi; lo <- 0
      while (hi - lo > 1) { mid <- (hi + lo) %/% 2; if (anos(mid, p0) >= 40 * n) hi <- mid else lo <- mid }
      c(hi / m, anos(hi, p0), anos(hi, p1)) }`,
    interpreted: false,
  },
  {
    name: 'test-frequency model, courses',
    sizes: [1e4, 1e5, 1e6],
    runs: 1,
    ours: (n) => () =>
      screeningEffects([{ detectionLimit: 3, everyDays: 7, delayDays: 1 }], seededChance(1), {
        courses: n,
      }),
    // All courses at once, a matrix of days.
    r: `function() { rise <- .5 + rgamma(n, 1.5); while (any(b <- rise > 3)) rise[b] <- .5 + rgamma(sum(b), 1.5)
      h <- runif(n, 7, 11); t3 <- runif(n, 2.5, 3.5); sym <- runif(n) < .35; lag <- ifelse(sym, runif(n, 0, 3), 0); fall <- runif(n, 4, 9) + lag
      peak <- t3 + rise; day <- ifelse(sym, round(peak + lag), 28); ph <- sample(0:6, n, TRUE)
      i <- matrix(0, n, 28); pos <- rep(28, n)
      for (d in 27:0) { v <- ifelse(d < t3, 0, ifelse(d < peak, 3 + (d - t3) * (h - 3) / rise, pmax(0, h + (d - peak) * (6 - h) / fall))); i[, d + 1] <- pmax(0, v - 6); pos[v > 3 & (d - ph) %% 7 == 0] <- d }
      iso <- pmin(28, pos + ifelse(pos < 28, 1, 0)); first <- pmin(iso, day); left <- 0
      for (d in 0:27) left <- left + sum(i[first > d, d + 1]); left / sum(i) }`,
    interpreted: false,
  },
  {
    name: 'order search at 24 people, iterations',
    sizes: [100, 400, 1600],
    runs: 2,
    ours: (n) => () => searchRound(roundOf24, { chance: seededChance(1), iterations: n }),
    // Ruin and recreate in R: take six out at random, put each back where it costs least.
    r: `function() { set.seed(1); J <- jobs; cost <- function(s) { f <- c(0, 0); w <- c(0, 0); p <- 0
        for (k in 1:2) { now <- 0; c0 <- -1; for (j in s[[k]]) { if (J$c[j] < c0 || !is.finite(J$price[j, k])) return(Inf); now <- max(J$rel[j], now + if (c0 >= 0 && c0 != J$c[j]) 2 else 0) + J$d[j]; if (now > J$due[j]) return(Inf); c0 <- J$c[j]; w[k] <- w[k] + J$d[j]; p <- p + J$price[j, k] }; f[k] <- now }
        p + 200 * (24 - length(unlist(s))) + 10 * max(f) + abs(w[1] - w[2]) }
      place <- function(s, j) { best <- s; least <- cost(s); for (k in 1:2) for (i in 0:length(s[[k]])) { t <- s; t[[k]] <- append(s[[k]], j, i); v <- cost(t); if (v < least) { least <- v; best <- t } }; best }
      s <- list(integer(0), integer(0)); for (j in 1:24) s <- place(s, j); best <- cost(s)
      for (it in 1:n) { out <- sample(24, 6); t <- lapply(s, setdiff, out); for (j in sample(setdiff(1:24, unlist(t)))) t <- place(t, j); v <- cost(t); if (v <= best) { s <- t; best <- v } }
      best }`,
    interpreted: true,
  },
  {
    name: 'proof of the best order at 24 people',
    sizes: [24],
    runs: 3,
    ours: () => () => solveRound(roundOf24),
    interpreted: true,
  },
];
