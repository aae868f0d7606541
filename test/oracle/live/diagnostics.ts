import type { Chance } from '../../../src/statistics/random/chance.ts';
import { between, type Draw, many, oneOf, vector, whole } from './case.ts';

const share = (c: Chance): number => oneOf(c, [between(c, 0.001, 0.999), 10 ** -between(c, 1, 6)]);
const accuracy = (c: Chance) => ({ sens: between(c, 0.3, 1), spec: between(c, 0.7, 1) });
const result = (c: Chance) => oneOf(c, ['positive', 'negative'] as const);
/** P(result | infected) / P(result | not), in R's words. */
const ratio = (t: { sens: number; spec: number; result: string }): string =>
  t.result === 'positive' ? `(${t.sens} / (1 - ${t.spec}))` : `((1 - ${t.sens}) / ${t.spec})`;
const study = (c: Chance): readonly [number, number] => [whole(c, 2, 120), whole(c, 1, 40)];

/** Equally likely values of a Beta variable, many enough for a quantile to three places. */
const spread = ([a, b]: readonly [number, number], n = 700): string => `qbeta((seq_len(${n}) - .5) / ${n}, ${a}, ${b})`;
const PROBS = [0.025, 0.5, 0.975];

export const diagnostics: readonly Draw[] = [
  (c) => {
    const [pre, t] = [share(c), { ...accuracy(c), result: result(c) }];
    return { fn: 'postTest', input: { pre, ...t }, r: `{o <- ${pre} / (1 - ${pre}) * ${ratio(t)}; list(post = if (is.infinite(o)) 1 else o / (1 + o))}`, tolerance: 1e-13 };
  },
  (c) => {
    const t = accuracy(c);
    return { fn: 'likelihoodRatios', input: t, r: `list(lrPos = ${t.sens} / (1 - ${t.spec}), lrNeg = (1 - ${t.sens}) / ${t.spec})`, tolerance: 1e-12, relative: true };
  },
  (c) => {
    const pre = share(c);
    const tests = many(whole(c, 1, 5), () => ({ ...accuracy(c), result: result(c) }));
    return { fn: 'postTestSequence', input: { pre, tests }, r: `{o <- ${pre} / (1 - ${pre}) * ${tests.map(ratio).join(' * ')}; list(post = o / (1 + o))}`, tolerance: 1e-12 };
  },
  (c) => {
    const pre = share(c);
    const [one, two] = [accuracy(c), accuracy(c)];
    // A covariance keeps all four chances from 0 to 1.
    const most = (a: number, b: number): number => Math.min(a, b) - a * b;
    const covSens = between(c, 0, most(one.sens, two.sens));
    const covSpec = between(c, 0, most(one.spec, two.spec));
    return {
      fn: 'postTestTwoCorrelatedNegatives',
      input: { pre, sens1: one.sens, spec1: one.spec, sens2: two.sens, spec2: two.spec, covSens, covSpec },
      r: `{d <- ${pre} * ((1 - ${one.sens}) * (1 - ${two.sens}) + ${covSens}); n <- (1 - ${pre}) * (${one.spec} * ${two.spec} + ${covSpec}); list(post = d / (d + n))}`,
      tolerance: 1e-12,
    };
  },
  (c) => {
    const [successes, failures] = [whole(c, 0, 300), whole(c, 0, 300)];
    const prior = [oneOf(c, [0.5, 1, 3]), oneOf(c, [0.5, 1, 2])] as const;
    const probs = many(4, () => between(c, 0.0001, 0.9999));
    return {
      fn: 'betaPosterior',
      input: { successes, failures, prior, probs },
      r: `{a <- ${successes} + ${prior[0]}; b <- ${failures} + ${prior[1]}; list(quantiles = qbeta(${vector(probs)}, a, b), mean = a / (a + b), sd = sqrt(a * b / (a + b)^2 / (a + b + 1)))}`,
      tolerance: 1e-11,
    };
  },
  (c) => {
    const [pre, sensBeta, specBeta] = [between(c, 0.005, 0.95), study(c), study(c)];
    const r = result(c);
    const [hit, other] = r === 'positive' ? ['se', '1 - sp'] : ['1 - se', 'sp'];
    return {
      fn: 'postTestUncertain',
      input: { pre, sensBeta, specBeta, result: r },
      r: `{g <- expand.grid(se = ${spread(sensBeta)}, sp = ${spread(specBeta)}); p <- with(g, ${pre} * (${hit}) / (${pre} * (${hit}) + (1 - ${pre}) * (${other}))); q <- quantile(p, ${vector(PROBS)}, type = 1); list(mean = mean(p), q025 = q[1], median = q[2], q975 = q[3])}`,
      tolerance: 0.002,
    };
  },
  // Several swabs of one person, drawn; R goes through equally likely pairs of accuracies instead.
  (c) => {
    const [pre, sensBeta, specBeta, correlation] = [between(c, 0.02, 0.6), study(c), study(c), between(c, 0, 1)];
    const tests = many(whole(c, 1, 3), () => ({ share: between(c, 0.3, 1), result: result(c) }));
    const hit = (share: number): string => `se * ${share}`;
    const missed = tests.filter((t) => t.result === 'negative').map((t) => `1 - ${hit(t.share)}`);
    const found = tests.filter((t) => t.result === 'positive').map((t) => hit(t.share));
    const misses = missed.length === 0 ? '1' : `(${correlation} * pmin(${missed.join(', ')}) + (1 - ${correlation}) * ${missed.map((m) => `(${m})`).join(' * ')})`;
    const others = tests.map((t) => (t.result === 'positive' ? '(1 - sp)' : 'sp')).join(' * ');
    return {
      fn: 'postTestDraws',
      input: { pre, sensBeta, specBeta, tests, correlation, probs: PROBS },
      r: `{g <- expand.grid(se = ${spread(sensBeta)}, sp = ${spread(specBeta)}); p <- with(g, {d <- ${pre} * ${[...found, misses].join(' * ')}; d / (d + (1 - ${pre}) * ${others})}); list(mean = mean(p), quantiles = quantile(p, ${vector(PROBS)}, type = 1))}`,
      tolerance: 0.008,
    };
  },
  (c) => {
    const n = whole(c, 10, 400);
    const positives = whole(c, 0, n);
    const [t, nSens, nSpec] = [accuracy(c), whole(c, 20, 400), whole(c, 20, 400)];
    return {
      fn: 'trueprevalenceDelta',
      input: { positives, n, ...t, nSens, nSpec },
      r: `{p <- ${positives} / ${n}; j <- ${t.sens} + ${t.spec} - 1; e <- (p + ${t.spec} - 1) / j; v <- (p * (1 - p) / ${n} + e^2 * ${t.sens} * (1 - ${t.sens}) / ${nSens} + (1 - e)^2 * ${t.spec} * (1 - ${t.spec}) / ${nSpec}) / j^2; list(est = e, se = sqrt(v), lower = e - qnorm(.975) * sqrt(v), upper = e + qnorm(.975) * sqrt(v))}`,
      tolerance: 1e-11,
    };
  },
  (c) => {
    const [pre, spec] = [share(c), between(c, 0.8, 1)];
    const fnr = many(5, () => between(c, 0, 1));
    return { fn: 'falseOmissionByDay', input: { pre, spec, days: [4, 5, 6, 8, 9], fnr }, r: `{f <- ${vector(fnr)}; list(computed = ${pre} * f / (${pre} * f + (1 - ${pre}) * ${spec}))}`, tolerance: 1e-12 };
  },
];
