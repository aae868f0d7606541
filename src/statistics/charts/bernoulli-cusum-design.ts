import { firstRefusal, positive, properProbability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { testsToSignal } from './bernoulli-cusum-chain.ts';

export interface CusumReference {
  /** The step down for a good test, r1 / r2. */
  readonly gamma: number;
  /** 1 / gamma; the chart is used with the nearest whole number. */
  readonly m: number;
}

export interface CusumDesign extends CusumReference {
  readonly wholeM: number;
  /** The least limit, a multiple of 1/wholeM, with at least the tests between false alarms asked for. */
  readonly limit: number;
  /** Tests to a signal while all is well, and after the rise. */
  readonly testsIfWell: number;
  readonly testsIfRisen: number;
}

function checkShares(p0: number, p1: number) {
  return (
    firstRefusal(properProbability('p0', p0), properProbability('p1', p1)) ??
    (p1 > p0 ? undefined : refuse('out-of-range', `p1 must be above p0: ${p1} against ${p0}.`))
  );
}

const reference = (p0: number, p1: number): CusumReference => {
  const r1 = Math.log1p(-p0) - Math.log1p(-p1);
  const r2 = Math.log(p1) - Math.log(p0) + r1;
  return { gamma: r1 / r2, m: r2 / r1 };
};

/**
 * The reference value of a Bernoulli CUSUM that is best at telling p1 from p0.
 * Source: Reynolds & Stoumbos (1999): gamma = r1 / r2, r1 = -ln((1-p1)/(1-p0)),
 * r2 = ln(p1 (1-p0) / (p0 (1-p1))).
 */
export function bernoulliCusumReference(p0: number, p1: number): Outcome<CusumReference> {
  return checkShares(p0, p1) ?? given(reference(p0, p1));
}

/** The whole design: the limit by halving on the exact chain. */
export function bernoulliCusumDesign(
  p0: number,
  p1: number,
  testsBetweenFalseAlarms: number,
): Outcome<CusumDesign> {
  const refused =
    checkShares(p0, p1) ?? positive('testsBetweenFalseAlarms', testsBetweenFalseAlarms);
  if (refused) return refused;
  const { gamma, m } = reference(p0, p1);
  const wholeM = Math.max(2, Math.round(m));
  const tests = (states: number, p: number): number =>
    testsToSignal(states, wholeM, p)[0] as number;
  let high = wholeM;
  while (tests(high, p0) < testsBetweenFalseAlarms) {
    high *= 2;
    if (high > 4e6)
      return refuse('too-large', 'No limit of usable size gives so few false alarms.');
  }
  let low = 0;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (tests(middle, p0) >= testsBetweenFalseAlarms) high = middle;
    else low = middle;
  }
  return given({
    gamma,
    m,
    wholeM,
    limit: high / wholeM,
    testsIfWell: tests(high, p0),
    testsIfRisen: tests(high, p1),
  });
}
