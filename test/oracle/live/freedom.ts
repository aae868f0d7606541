import { between, type Draw, many, vector, whole } from './case.ts';

const survey = (c: Parameters<Draw>[0]) => {
  const N = whole(c, 5, 80);
  return { N, D: whole(c, 1, N), n: whole(c, 1, N), sens: between(c, 0.3, 1) };
};

export const freedom: readonly Draw[] = [
  (c) => {
    const { N, D, n, sens } = survey(c);
    return { fn: 'detectProbExact', input: { N, D, n, sens }, r: `{k <- 0:${Math.min(D, n)}; list(p = 1 - sum(dhyper(k, ${D}, ${N - D}, ${n}) * (1 - ${sens})^k))}`, tolerance: 1e-11 };
  },
  (c) => {
    const { N, D, n, sens } = survey(c);
    return { fn: 'detectProbApprox', input: { N, D, n, sens }, r: `list(p = rsu.sep.rs(N = ${N}, n = ${n}, pstar = ${D}, se.u = ${sens}))`, tolerance: 1e-10 };
  },
  (c) => {
    const N = whole(c, 20, 80);
    const [D, n] = [whole(c, 2, 8), whole(c, 10, 20)];
    const [sens, spec, cut] = [between(c, 0.5, 1), between(c, 0.9, 1), whole(c, 1, 3)];
    return {
      fn: 'atLeastCPositives',
      input: { N, D, n, c: cut, sens, spec },
      r: `list(p = rsu.sep.rsfreecalc(N = ${N}, n = ${n}, c = ${cut}, pstar = ${D}/${N}, se.u = ${sens}, sp.u = ${spec}))`,
      tolerance: 1e-9,
    };
  },
  (c) => {
    const [N, D, sens] = [whole(c, 50, 400), whole(c, 5, 20), between(c, 0.7, 1)];
    return { fn: 'sampleSizeApprox', input: { N, D, sens, confidence: 0.95 }, r: `list(epiR = rsu.sssep.rs(N = ${N}, pstar = ${D}, se.p = .95, se.u = ${sens}))`, tolerance: 0 };
  },
  (c) => {
    const sep = many(6, () => between(c, 0.3, 0.99));
    const [pIntro, prior] = [between(c, 0.001, 0.1), between(c, 0.2, 0.9)];
    return {
      fn: 'probFreedomSeries',
      input: { sep, pIntro, prior },
      r: `{f <- rsu.pfree.rs(se.p = ${vector(sep)}, p.intro = ${pIntro}, prior = ${prior}); list(pFree = f$PFree[1, ], discountedPrior = f[["Discounted prior"]][1, ])}`,
      tolerance: 1e-11,
    };
  },
];
