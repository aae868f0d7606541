import { between, type Draw, oneOf, vector, whole } from './case.ts';

const table = (c: Parameters<Draw>[0]): readonly number[] => Array.from({ length: 4 }, () => whole(c, 0, 40));
const asInput = ([a, b, d, e]: readonly number[]): object => ({ table: [[a, b], [d, e]] });
const asMatrix = (t: readonly number[]): string => `matrix(${vector(t)}, 2, byrow = TRUE)`;

const tally = (c: Parameters<Draw>[0]) => {
  const n = whole(c, 1, oneOf(c, [6, 60, 600]));
  return { x: whole(c, 0, n), n, conf: oneOf(c, [0.8, 0.9, 0.95, 0.99]) };
};

export const proportions: readonly Draw[] = [
  (c) => {
    const { x, n, conf } = tally(c);
    return { fn: 'wilson', input: { x, n, conf }, r: `list(ci = prop.test(${x}, ${n}, conf.level = ${conf}, correct = FALSE)$conf.int)`, tolerance: 1e-9 };
  },
  (c) => {
    const { x, n, conf } = tally(c);
    return { fn: 'clopperPearson', input: { x, n, conf }, r: `list(ci = binom.test(${x}, ${n}, conf.level = ${conf})$conf.int)`, tolerance: 1e-10 };
  },
  (c) => {
    const { x, n, conf } = tally(c);
    const a = (1 - conf) / 2;
    return {
      fn: 'jeffreys',
      input: { x, n, conf },
      r: `list(ci = c(${x === 0 ? 0 : `qbeta(${a}, ${x} + .5, ${n - x} + .5)`}, ${x === n ? 1 : `qbeta(1 - ${a}, ${x} + .5, ${n - x} + .5)`}))`,
      tolerance: 1e-10,
    };
  },
  (c) => {
    const { x, n } = tally(c);
    const p0 = between(c, 0.01, 0.99);
    return { fn: 'binomTest', input: { x, n, p0 }, r: `list(p = binom.test(${x}, ${n}, ${p0})$p.value, pGreater = binom.test(${x}, ${n}, ${p0}, "greater")$p.value)`, tolerance: 1e-10 };
  },
  (c) => {
    const t = table(c);
    return {
      fn: 'fisherExact',
      input: asInput(t),
      r: `{m <- ${asMatrix(t)}; list(p = fisher.test(m)$p.value, pGreater = fisher.test(m, alternative = "greater")$p.value, pLess = fisher.test(m, alternative = "less")$p.value)}`,
      tolerance: 1e-9,
    };
  },
  (c) => {
    const t = table(c).map((x) => x + 1);
    const correct = oneOf(c, [true, false]);
    return {
      fn: 'chiSquare2x2',
      input: { ...asInput(t), correct },
      r: `{s <- suppressWarnings(chisq.test(${asMatrix(t)}, correct = ${correct ? 'TRUE' : 'FALSE'})); list(x2 = s$statistic, p = s$p.value)}`,
      tolerance: 1e-9,
    };
  },
  (c) => {
    const [a, b, d, e] = table(c).map((x) => x + 1) as [number, number, number, number];
    return {
      fn: 'attackRates',
      input: { exposed: { ill: a, total: a + b }, unexposed: { ill: d, total: d + e } },
      r: `{m <- epi.2by2(${asMatrix([a, b, d, e])}, "cohort.count")$massoc.detail; list(rr = m$RR.strata.wald$est, rrLower = m$RR.strata.wald$lower, rrUpper = m$RR.strata.wald$upper, or = m$OR.strata.wald$est, orLower = m$OR.strata.wald$lower, orUpper = m$OR.strata.wald$upper)}`,
      tolerance: 1e-8,
      relative: true,
    };
  },
  (c) => {
    // epiR changes Wilson's limits at one positive and at one negative, so neither is drawn.
    const n = whole(c, 10, 200);
    const x = whole(c, 2, n - 2);
    const [sens, spec] = [between(c, 0.6, 1), between(c, 0.9, 1)];
    const method = oneOf(c, ['wilson', 'c-p']);
    return {
      fn: 'trueprevalence',
      input: { positives: x, n, sens, spec, method },
      r: `{e <- suppressWarnings(epi.prev(${x}, ${n}, se = ${sens}, sp = ${spec}, method = "${method}", units = 1)); list(ap = unlist(e$ap[1, ]), tpUnclamped = unlist(e$tp[1, ]))}`,
      tolerance: 1e-9,
    };
  },
  (c) => {
    const n = whole(c, 10, 60);
    const x = whole(c, 2, n - 2);
    const method = oneOf(c, ['blaker', 'sterne']);
    return {
      fn: 'trueprevalence',
      input: { positives: x, n, sens: 0.9, spec: 0.99, method },
      // epiR walks in steps of 1e-4 and searches on the logit to 1e-5.
      r: `{e <- suppressWarnings(epi.prev(${x}, ${n}, se = .9, sp = .99, method = "${method}", units = 1)); list(ap = unlist(e$ap[1, ]))}`,
      tolerance: 2e-4,
    };
  },
];
