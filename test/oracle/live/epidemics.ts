import { between, type Draw, many, vector, whole } from './case.ts';

export const epidemics: readonly Draw[] = [
  (c) => {
    const incidence = many(whole(c, 20, 60), () => whole(c, 0, 12));
    incidence[0] = 1;
    const raw = many(whole(c, 4, 12), () => between(c, 0.05, 1));
    const total = raw.reduce((a, b) => a + b, 0);
    const siDistr = [0, ...raw.map((w) => w / total)];
    const window = whole(c, 3, 10);
    return {
      fn: 'estimateR',
      input: { incidence, siDistr, window, priorMean: 5, priorSd: 5 },
      r: `{i <- ${vector(incidence)}; t <- 2:(length(i) - ${window - 1}); f <- suppressMessages(suppressWarnings(estimate_R(i, method = "non_parametric_si", config = make_config(list(si_distr = ${vector(siDistr)}, t_start = t, t_end = t + ${window - 1})))))$R; list(tEnd = f$t_end, mean = f[["Mean(R)"]], sd = f[["Std(R)"]], q025 = f[["Quantile.0.025(R)"]], median = f[["Median(R)"]], q975 = f[["Quantile.0.975(R)"]])}`,
      tolerance: 1e-8,
    };
  },
  (c) => {
    const [mean, sd] = [between(c, 1.5, 9), between(c, 0.5, 5)];
    const k = many(20, () => whole(c, 0, 25));
    return { fn: 'discreteSerialInterval', input: { mean, sd, k }, r: `list(p = discr_si(${vector(k)}, ${mean}, ${sd}))`, tolerance: 1e-10 };
  },
  (c) => {
    const counts = many(whole(c, 4, 20), () => whole(c, 0, 15));
    counts.splice(0, 2, 2, 3);
    return {
      fn: 'growthRate',
      input: { counts },
      r: `{y <- ${vector(counts)}; t <- seq_along(y); f <- summary(glm(y ~ t, family = poisson, control = list(epsilon = 1e-14, maxit = 100)))$coefficients; list(r = f[2, 1], se = f[2, 2])}`,
      tolerance: 1e-8,
    };
  },
  (c) => {
    const [mu, k10, h10] = [between(c, 0.3, 3), whole(c, 4, 40), whole(c, 10, 60)];
    return { fn: 'poissonCusumArl', input: { mu, k: k10 / 10, h: h10 / 10 }, r: `list(arl = arlCusum(h = ${h10 / 10}, k = ${k10 / 10}, theta = ${mu})$ARL)`, tolerance: 1e-6, relative: true };
  },
  (c) => {
    const n = whole(c, 5, 30);
    const day = many(n, () => whole(c, 0, 40));
    const unit = many(n, () => whole(c, 1, 4));
    return {
      fn: 'knoxTest',
      input: { day, unit, windowDays: 5 },
      r: `{d <- ${vector(day)}; u <- ${vector(unit)}; i <- which(lower.tri(diag(${n})), arr.ind = TRUE); k <- knox(abs(d[i[, 1]] - d[i[, 2]]), as.numeric(u[i[, 1]] != u[i[, 2]]), eps.t = 5, eps.s = 0, simulate.p.value = FALSE); list(statistic = k$statistic, lambda = k$parameter, pPoisson = k$p.value)}`,
      tolerance: 1e-10,
    };
  },
];
