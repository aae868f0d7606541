import { criticalValue } from '../distributions/normal.ts';
import type { Interval } from '../proportions/interval.ts';
import { properProbability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { KaplanMeier } from './kaplan-meier.ts';

/** The scale on which the interval is symmetric, named as in R's survfit. */
export type IntervalScale = 'plain' | 'log' | 'log-log' | 'logit' | 'arcsin';

export interface LimitCurves {
  /** NaN-free: undefined where S is 0 and the scale gives no limit. */
  readonly lower: readonly (number | undefined)[];
  readonly upper: readonly (number | undefined)[];
}

type Limits = (survival: number, spread: number) => readonly [number, number];

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/** `spread` is z times the standard error of ln S. */
const SCALES: Readonly<Record<IntervalScale, Limits>> = {
  plain: (s, spread) => [Math.max(0, s - spread * s), Math.min(1, s + spread * s)],
  log: (s, spread) => [s * Math.exp(-spread), Math.min(1, s * Math.exp(spread))],
  'log-log': (s, spread) => {
    const width = spread / Math.log(s);
    const centre = Math.log(-Math.log(s));
    return [Math.exp(-Math.exp(centre - width)), Math.exp(-Math.exp(centre + width))];
  },
  logit: (s, spread) => {
    const centre = Math.log(s / (1 - s));
    return [logistic(centre - spread / (1 - s)), logistic(centre + spread / (1 - s))];
  },
  arcsin: (s, spread) => {
    const centre = Math.asin(Math.sqrt(s));
    const width = 0.5 * spread * Math.sqrt(s / (1 - s));
    return [
      Math.sin(Math.max(0, centre - width)) ** 2,
      Math.sin(Math.min(Math.PI / 2, centre + width)) ** 2,
    ];
  },
};

/** The interval of S at one row. None once S is 0, where nobody is left to judge by. */
function survivalInterval(
  { survival, greenwood }: { readonly survival: number; readonly greenwood: number },
  scale: IntervalScale,
  z: number,
): Interval | undefined {
  if (survival === 0) return undefined;
  const [lower, upper] = SCALES[scale](survival, z * Math.sqrt(greenwood));
  return { lower, upper };
}

/** Limits for every row of a curve. */
export function limitCurves(
  curve: KaplanMeier,
  scale: IntervalScale = 'log',
  confidence = 0.95,
): Outcome<LimitCurves> {
  const refused = properProbability('confidence', confidence);
  if (refused) return refused;
  const z = criticalValue(confidence);
  const rows = Array.from(curve.survival, (survival, i) =>
    survivalInterval({ survival, greenwood: curve.greenwood[i] as number }, scale, z),
  );
  return given({ lower: rows.map((r) => r?.lower), upper: rows.map((r) => r?.upper) });
}
