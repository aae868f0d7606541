import {
  bernoulliCusumDesign,
  bernoulliCusumReference,
} from '../../../statistics/charts/bernoulli-cusum-design.ts';
import { bernoulliCusumPath } from '../../../statistics/charts/bernoulli-cusum-path.ts';
import { bernoulliCusumRunLength } from '../../../statistics/charts/bernoulli-cusum-run.ts';
import { binomialSignal } from '../../../statistics/charts/binomial-signal.ts';
import { cusumAverageRunLength } from '../../../statistics/charts/cusum-run-length.ts';
import { ewma } from '../../../statistics/charts/ewma.ts';
import { ewmaProportion } from '../../../statistics/charts/ewma-proportion.ts';
import { ewmaAverageRunLength } from '../../../statistics/charts/ewma-run-length.ts';
import { gChart } from '../../../statistics/charts/g-chart.ts';
import { kGapQuantile, shortestGapSignal } from '../../../statistics/charts/gap-signals.ts';
import { laneyPChart } from '../../../statistics/charts/laney-p-chart.ts';
import { npChart } from '../../../statistics/charts/np-chart.ts';
import { pChart } from '../../../statistics/charts/p-chart.ts';
import { pChartFalseAlarm } from '../../../statistics/charts/p-chart-false-alarm.ts';
import { poissonCusumRunLength } from '../../../statistics/charts/poisson-cusum.ts';
import type { Samples } from '../../../statistics/charts/samples.ts';
import { tChart } from '../../../statistics/charts/t-chart.ts';
import { answer, InUse, valueOrNull } from '../answer.ts';
import type { Adapter, Adapters } from '../check.ts';
import type { Input } from '../input.ts';

const samples = (i: Input): Samples => ({
  counts: i.numbers('counts'),
  sizes: Array.isArray(i.get('n')) ? i.numbers('n') : i.number('n'),
});
const sides = (i: Input): 'one' | 'two' =>
  i.textOr('two', 'sided', 'sides').startsWith('one') ? 'one' : 'two';

/** One limit for all samples as a number, several as a list. */
const oneOrAll = (i: Input, limits: readonly number[]): number | readonly number[] =>
  Array.isArray(i.get('n')) ? limits : (limits[0] as number);

const chart: Adapter = (i) =>
  answer(pChart(samples(i), i.numberOr(3, 'sigma')), (c) => ({
    pbar: c.centre,
    ucl: oneOrAll(i, c.upper),
    lcl: oneOrAll(i, c.lower),
    z: c.z,
    outside: c.outside,
  }));

/** Several values of one parameter give a list; one value a list of one. */
const overEach = (i: Input, name: string, f: (value: number) => number | null): unknown =>
  i.numbers(name).map(f);

const cusumArlNormal: Adapter = (i) => {
  const arl = (limit: number, shift: number): number | null =>
    valueOrNull(
      cusumAverageRunLength({
        reference: i.number('k'),
        limit,
        shift,
        sides: sides(i),
        headStart: i.numberOr(0, 'hs', 'headStart'),
      }),
    );
  const found = Array.isArray(i.get('h'))
    ? overEach(i, 'h', (h) => arl(h, i.numberOr(0, 'shift', 'mu')))
    : overEach(i, i.has('shift') ? 'shift' : 'mu', (shift) => arl(i.number('h'), shift));
  return { arl: found, publishedMontgomery: found, spc: found, published: found };
};

const ewmaArlNormal: Adapter = (i) => {
  const found = overEach(i, i.has('shift') ? 'shift' : 'mu', (shift) =>
    valueOrNull(
      ewmaAverageRunLength({
        lambda: i.number('lambda'),
        width: i.number('L', 'c'),
        shift,
        sides: sides(i),
        barrier: i.numberOr(0, 'zr'),
      }),
    ),
  );
  return { arl: found, spc: found, published: found };
};

// Whether the start counts as the first average. What qcc does is from memory.
const NIST = 'NIST/SEMATECH e-Handbook 6.3.2.4: the table begins with the target';
const QCC = 'R package qcc, ewma(): the first average is that of the first sample';
// From memory: Montgomery, Introduction to Statistical Quality Control, gives limits for equal
// samples; qcc puts each sample's own size into them.
const QCC_LIMITS = 'R package qcc, ewma(): limits with the newest size for all samples so far';

const ewmaOf: Adapter = (i) =>
  answer(
    ewma({
      values: i.numbers('x'),
      target: i.number('target'),
      sigma: i.number('s', 'sigma'),
      lambda: i.number('lambda'),
      width: i.numberOr(3, 'L'),
    }),
    (e) => ({
      z: new InUse(e.averages, { [QCC]: e.averages.slice(1) }),
      published2dp: new InUse(e.averages, { [QCC]: e.averages.slice(1) }),
      ucl: e.upper,
      lcl: e.lower,
      publishedUcl: e.upper,
      publishedLcl: e.lower,
      outside: e.outside,
    }),
  );

/** The textbook's limits, which take every sample so far to have had the newest one's size. */
function textbookUpper(i: Input): readonly number[] {
  const [lambda, p0, width] = [i.number('lambda'), i.number('p0'), i.number('L')];
  const s = samples(i);
  return s.counts.map((_, t) => {
    const n = typeof s.sizes === 'number' ? s.sizes : (s.sizes[t] as number);
    const settled = (lambda / (2 - lambda)) * (1 - (1 - lambda) ** (2 * (t + 1)));
    return Math.min(1, p0 + width * Math.sqrt(((p0 * (1 - p0)) / n) * settled));
  });
}

const ewmaTrend: Adapter = (i) => {
  const p0 = i.number('p0');
  return answer(
    ewmaProportion({ ...samples(i), lambda: i.number('lambda'), target: p0, width: i.number('L') }),
    (e) => ({
      z: new InUse(e.averages, { [NIST]: [p0, ...e.averages] }),
      ucl: new InUse(e.upper, { [QCC_LIMITS]: textbookUpper(i) }),
      lcl: e.lower,
      outside: e.outside,
    }),
  );
};

export const charts: Adapters = {
  pChart: chart,
  pChartVariable: chart,
  npChart: (i) =>
    answer(npChart(i.numbers('counts'), i.number('n'), i.numberOr(3, 'sigma')), (c) => ({
      pbar: c.share,
      center: c.centre,
      ucl: c.upper,
      lcl: c.lower,
      outside: c.outside,
    })),
  laneyP: (i) =>
    answer(laneyPChart(samples(i)), (c) => ({
      pbar: c.centre,
      mrBar: c.meanMovingRange,
      sigmaZ: c.sigmaZ,
      ucl: oneOrAll(i, c.upper),
      lcl: oneOrAll(i, c.lower),
      outside: c.outside,
    })),
  ewma: ewmaOf,
  ewmaProportion: ewmaTrend,
  cusumArlNormal,
  ewmaArlNormal,
  pChartFalseAlarmExact: (i) => {
    const shares = i.numbers('p');
    const rows = i
      .numbers('n')
      .map((n, k) =>
        valueOrNull(
          pChartFalseAlarm(n, (shares[k] ?? shares[0]) as number, i.numberOr(3, 'sigma')),
        ),
      );
    return { prob: rows.map((r) => r?.probability), arl: rows.map((r) => r?.runLength) };
  },
  gChart: (i) =>
    answer(gChart(i.numbers('conformingBetween')), (g) => ({
      mean: g.mean,
      ucl3: g.upperSigma,
      lcl: g.lowerSigma,
      pHat: g.share,
      lowerProb005: g.lower,
      upperProb995: g.upper,
      medianCL: g.median,
    })),
  gChartLowerSignal: (i) =>
    answer(shortestGapSignal(i.number('p'), i.number('alpha')), (gap) => ({
      maxGapSignal: gap,
    })),
  kGapLower: (i) =>
    answer(kGapQuantile(i.number('p'), i.number('k'), i.number('alpha')), (k) => ({
      q: k.quantile,
      cdf: k.cdf,
    })),
  binomialSignalCount: (i) => {
    const rows = i
      .numbers('n')
      .map((n) => valueOrNull(binomialSignal(n, i.number('p'), i.number('alpha'))));
    return {
      signalAtOrAbove: rows.map((r) => r?.signalAtOrAbove),
      prob: rows.map((r) => r?.probability),
    };
  },
  tChart: (i) =>
    answer(
      tChart(i.numbers('times'), {
        ...(i.has('power') && { power: i.number('power') }),
        ...(i.has('mrFactor') && { rangeFactor: i.number('mrFactor') }),
      }),
      (t) => ({
        mean: t.mean,
        mrBar: t.meanMovingRange,
        ucl: t.upper,
        lcl: t.lower,
        uclTime: t.upperTime,
        clTime: t.centreTime,
        lclTime: t.lowerTime,
      }),
    ),
  bernoulliCusumAnos: (i) => ({
    anos: overEach(i, 'p', (share) =>
      valueOrNull(
        bernoulliCusumRunLength({
          m: i.number('m'),
          limit: i.number('h'),
          share,
          headStart: i.numberOr(0, 'start', 'headStart'),
        }),
      ),
    ),
  }),
  bernoulliCusumDesign: (i) =>
    i.has('anos0')
      ? answer(bernoulliCusumDesign(i.number('p0'), i.number('p1'), i.number('anos0')), (d) => ({
          ...d,
          h: d.limit,
          anos0: d.testsIfWell,
          anos1: d.testsIfRisen,
        }))
      : answer(bernoulliCusumReference(i.number('p0'), i.number('p1')), (d) => d),
  bernoulliCusumPath: (i) =>
    answer(
      bernoulliCusumPath(i.numbers('x'), i.number('m'), {
        limit: i.numberOr(Infinity, 'h'),
        start: i.numberOr(0, 'start'),
      }),
      (b) => ({
        S: b.sums,
        signals: b.signals,
        signalAt: b.signals[0],
      }),
    ),
  poissonCusumArl: (i) =>
    answer(
      poissonCusumRunLength({
        mean: i.number('mu', 'theta'),
        reference: i.number('k'),
        limit: i.number('h'),
        headStart: i.numberOr(0, 'hs', 'headStart'),
      }),
      (arl) => ({ arl }),
    ),
};
