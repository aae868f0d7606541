import { criticalValue } from '../../../statistics/distributions/normal.ts';
import type { Outcome } from '../../../statistics/refusal/refusal.ts';
import { compareGroups } from '../../../statistics/survival/compare-groups.ts';
import { conditionalArrival } from '../../../statistics/survival/conditional-arrival.ts';
import { cumulativeIncidence } from '../../../statistics/survival/cumulative-incidence.ts';
import {
  type KaplanMeier,
  kaplanMeier,
  standardError,
  survivalAt,
} from '../../../statistics/survival/kaplan-meier.ts';
import { lognormalFit } from '../../../statistics/survival/lognormal-fit.ts';
import { survivalQuantiles } from '../../../statistics/survival/quantiles.ts';
import { restrictedMean } from '../../../statistics/survival/restricted-mean.ts';
import { type IntervalScale, limitCurves } from '../../../statistics/survival/survival-interval.ts';
import type { WaitingTimes } from '../../../statistics/survival/waiting-times.ts';
import { weibullFit } from '../../../statistics/survival/weibull-fit.ts';
import { answer, InUse, type Refused } from '../answer.ts';
import type { Adapter, Adapters, Context } from '../check.ts';
import { Input, InputError } from '../input.ts';

const waits = (i: Input): WaitingTimes => ({
  time: i.numbers('time'),
  event: i.numbers('event', 'status'),
});

/** Goes on with a curve, or hands its refusal on. */
const withCurve = <T>(i: Input, next: (curve: KaplanMeier) => Outcome<T>): Outcome<T> => {
  const curve = kaplanMeier(waits(i));
  return curve.ok ? next(curve.value) : curve;
};

const SCALES: readonly IntervalScale[] = ['plain', 'log', 'log-log', 'logit', 'arcsin'];

const scaleOf = (i: Input): IntervalScale => {
  const name = i.textOr('log', 'confType', 'scale').toLowerCase().replace('_', '-');
  const scale = SCALES.find((s) => s === (name === 'loglog' ? 'log-log' : name));
  if (!scale) throw new InputError(`there is no scale "${name}" for intervals`);
  return scale;
};

const columns = (curve: KaplanMeier) => ({
  time: curve.time,
  nRisk: curve.atRisk,
  nEvent: curve.events,
  surv: curve.survival,
  se: Array.from(curve.survival, (_, row) => standardError(curve, row)),
});

const kaplanMeierCI: Adapter = (i) => {
  const confidence = i.numberOr(0.95, 'conf', 'confidence');
  const scale = scaleOf(i);
  return answer(
    withCurve(i, (curve) => {
      const limits = limitCurves(curve, scale, confidence);
      if (!limits.ok) return limits;
      const quantiles = survivalQuantiles(curve, [0.25, 0.5, 0.75], { scale, confidence });
      return quantiles.ok
        ? { ok: true, value: { curve, limits: limits.value, quantiles: quantiles.value } }
        : quantiles;
    }),
    ({ curve, limits, quantiles }) => {
      const [q25, median, q75] = quantiles.map((q) => [q.estimate, q.lower, q.upper]);
      return { ...columns(curve), ...limits, q25, median, q75 };
    },
  );
};

const groupsOf = (i: Input): readonly WaitingTimes[] => {
  if (i.has('groups')) return i.list('groups').map(waits);
  return ['groupA', 'groupB', 'groupC', 'groupD']
    .filter((g) => i.has(g))
    .map((g) => waits(i.child(g)));
};

/** The groups themselves, or those of another check named in `as`. */
function groupsByReference(i: Input, { lookup }: Context): readonly WaitingTimes[] {
  if (!i.has('as')) return groupsOf(i);
  const id = /[A-Z]+-\d+[\w-]*/.exec(i.text('as'))?.[0] ?? 'SURV-03';
  const other = lookup(id);
  if (!other) throw new InputError(`there is no check ${id}`);
  return groupsOf(new Input(other.input));
}

const compared =
  (rhoFallback: number): Adapter =>
  (i, context) =>
    answer(compareGroups(groupsByReference(i, context), i.numberOr(rhoFallback, 'rho')), (c) => ({
      observed: c.observed,
      expected: c.expected,
      varA: c.variance[0]?.[0],
      chi2: c.chiSquared,
      df: c.degreesOfFreedom,
      p: c.p,
    }));

const kmQuantiles: Adapter = (i) =>
  answer(
    withCurve(i, (curve) =>
      survivalQuantiles(curve, i.numbers('probs'), {
        scale: scaleOf(i),
        confidence: i.numberOr(0.95, 'conf'),
      }),
    ),
    (q) => ({
      q: q.map((x) => x.estimate),
      lower: q.map((x) => x.lower),
      upper: q.map((x) => x.upper),
    }),
  );

const CARRIED_ON =
  'R package survival, summary(survfit(start.time =), extend = TRUE): carries the last step on';

interface Arrival {
  readonly error?: string;
  readonly p: unknown;
  readonly lower: unknown;
  readonly upper: unknown;
  readonly seLog: unknown;
}

/**
 * The figures of an arrival. Own: no upper limit where the figure is only a floor, and nothing at an
 * age at which nothing was watched any longer, though the curve did not reach 0.
 */
function arrival(i: Input, age: number): Refused | Arrival {
  const by = i.number('by');
  const confidence = i.numberOr(0.95, 'conf', 'confidence');
  const curve = kaplanMeier(waits(i));
  const found = withCurve(i, (made) => conditionalArrival(made, { age, by, confidence }));
  if (found.ok) {
    const { probability, lower, upper, standardErrorLog: seLog } = found.value;
    const carried =
      upper === undefined && seLog !== undefined
        ? 1 - (1 - probability) / Math.exp(criticalValue(confidence) * seLog)
        : upper;
    const top = upper === carried ? upper : new InUse(upper, { [CARRIED_ON]: carried });
    return { p: probability, lower, upper: top, seLog };
  }
  const flat = curve.ok && age >= curve.value.lastTime && survivalAt(curve.value, age) > 0;
  if (!flat) return { error: found.detail };
  const none = new InUse(undefined, { [CARRIED_ON]: 0 });
  return { error: found.detail, p: none, lower: none, upper: none, seLog: none };
}

export const survival: Adapters = {
  kaplanMeier: (i) => answer(kaplanMeier(waits(i)), columns),
  kaplanMeierCI,
  kmQuantiles,
  logRank: compared(0),
  petoWilcoxon: compared(1),
  conditionalArrival: (i) => {
    const each = i.numbers('ageNow').map((age) => arrival(i, age));
    return { p: each.map((found) => ('p' in found ? found.p : undefined)) };
  },
  conditionalArrivalCI: (i) => arrival(i, i.number('ageNow')),
  weibullFit: (i) =>
    answer(weibullFit(waits(i)), (w) => ({
      shape: w.shape,
      scale: w.scale,
      logLik: w.logLikelihood,
    })),
  lognormalFit: (i) =>
    answer(lognormalFit(waits(i)), (l) => ({
      meanlog: l.meanLog,
      sdlog: l.sdLog,
      logLik: l.logLikelihood,
    })),
  restrictedMean: (i) =>
    answer(
      withCurve(i, (curve) => restrictedMean(curve, i.number('tau'))),
      (r) => ({ rmst: r.mean, se: r.standardError }),
    ),
  cumulativeIncidence: (i) =>
    answer(
      cumulativeIncidence(
        { time: i.numbers('time'), state: i.numbers('state') },
        i.numbers('times'),
      ),
      (c) => c,
    ),
};
