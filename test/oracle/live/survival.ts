import type { Chance } from '../../../src/statistics/random/chance.ts';
import { between, type Draw, many, oneOf, vector, whole } from './case.ts';

/** Waits on a coarse grid, so that ties of every kind occur. */
function waits(c: Chance, n = whole(c, 8, 60)): { time: number[]; event: number[] } {
  const grid = oneOf(c, [20, 200]);
  const share = between(c, 0.4, 0.95);
  const time = many(n, () => whole(c, 1, grid));
  const event = many(n, () => (between(c, 0, 1) < share ? 1 : 0));
  event[0] = 1;
  return { time, event };
}
const surv = ({ time, event }: { time: number[]; event: number[] }): string => `Surv(${vector(time)}, ${vector(event)})`;
const rows = 'k <- f$n.event > 0';

export const survival: readonly Draw[] = [
  (c) => {
    const w = waits(c);
    return {
      fn: 'kaplanMeier',
      input: w,
      r: `{f <- survfit(${surv(w)} ~ 1); ${rows}; list(time = f$time[k], nRisk = f$n.risk[k], nEvent = f$n.event[k], surv = f$surv[k], se = (f$std.err * f$surv)[k])}`,
      tolerance: 1e-11,
    };
  },
  (c) => {
    const w = waits(c);
    const [confType, conf] = [oneOf(c, ['plain', 'log', 'log-log', 'logit', 'arcsin']), oneOf(c, [0.8, 0.95, 0.99])];
    return {
      fn: 'kaplanMeierCI',
      input: { ...w, confType, conf },
      r: `{f <- survfit(${surv(w)} ~ 1, conf.type = "${confType}", conf.int = ${conf}); ${rows}; q <- quantile(f, c(.25, .5, .75)); list(lower = f$lower[k], upper = f$upper[k], q25 = sapply(q, "[", 1), median = sapply(q, "[", 2), q75 = sapply(q, "[", 3))}`,
      tolerance: 1e-8,
    };
  },
  (c) => {
    const w = waits(c);
    const probs = many(4, () => between(c, 0.05, 0.95));
    return { fn: 'kmQuantiles', input: { ...w, probs }, r: `{q <- quantile(survfit(${surv(w)} ~ 1), ${vector(probs)}); list(q = q$quantile, lower = q$lower, upper = q$upper)}`, tolerance: 1e-9 };
  },
  (c) => {
    const groups = many(whole(c, 2, 4), () => waits(c));
    const rho = oneOf(c, [0, 0, 0.5, 1]);
    const time = groups.flatMap((g) => g.time);
    const event = groups.flatMap((g) => g.event);
    const label = groups.flatMap((g, k) => g.time.map(() => k));
    return {
      fn: 'logRank',
      input: { groups, rho },
      r: `{f <- survdiff(${surv({ time, event })} ~ g, data = data.frame(g = ${vector(label)}), rho = ${rho}); list(observed = f$obs, expected = f$exp, chi2 = f$chisq)}`,
      tolerance: 1e-8,
    };
  },
  (c) => {
    const w = waits(c, 40);
    const tau = oneOf(c, [5, 12, 60, 250]);
    return { fn: 'restrictedMean', input: { ...w, tau }, r: `{m <- survival:::survmean(survfit(${surv(w)} ~ 1), rmean = ${tau})$matrix; list(rmst = m["rmean"], se = m["se(rmean)"])}`, tolerance: 1e-9 };
  },
  (c) => {
    const w = waits(c, 50);
    const dist = oneOf(c, ['weibull', 'lognormal']);
    const fit = `f <- survreg(${surv(w)} ~ 1, dist = "${dist}", control = survreg.control(rel.tolerance = 1e-13, maxiter = 200))`;
    const figures = dist === 'weibull' ? 'shape = 1 / f$scale, scale = exp(coef(f))' : 'meanlog = coef(f), sdlog = f$scale';
    return { fn: `${dist}Fit`, input: w, r: `{${fit}; list(${figures}, logLik = f$loglik[1])}`, tolerance: 1e-6, relative: true };
  },
  (c) => {
    const n = whole(c, 10, 60);
    const time = many(n, () => whole(c, 1, 30));
    const state = many(n, () => whole(c, 0, 2));
    state.splice(0, 3, 0, 1, 2);
    const times = [3, 9, 15, 31];
    return {
      fn: 'cumulativeIncidence',
      input: { time, state, times },
      r: `{s <- summary(survfit(Surv(${vector(time)}, factor(${vector(state)}, 0:2)) ~ 1), times = ${vector(times)}, extend = TRUE)$pstate; list(result = s[, 2], void = s[, 3], pending = s[, 1])}`,
      tolerance: 1e-11,
    };
  },
];
