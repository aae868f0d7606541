import {
  hypergeometricPmf,
  type Urn,
  urnRange,
} from '../../../statistics/distributions/hypergeometric.ts';
import type { TwoByTwo } from '../../../statistics/proportions/two-by-two.ts';

// R's fisher.test stops its searches for odds ratios at 1.2e-4, so the figures it prints are off in
// the fifth place. To judge figures copied from R, its search is repeated here as R makes it.

interface Bracket {
  readonly low: number;
  readonly high: number;
}

/** Brent's root search (1973) to a coarse tolerance, step for step as R's uniroot with defaults. */
function coarseRoot(f: (x: number) => number, { low, high }: Bracket): number {
  const tolerance = Number.EPSILON ** 0.25;
  let [a, b, c] = [low, high, low];
  let [fa, fb] = [f(a), f(b)];
  let fc = fa;
  if (fa === 0) return a;
  if (fb === 0) return b;
  for (let i = 0; i < 1000; i++) {
    const previous = b - a;
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    let step = (c - b) / 2;
    if (Math.abs(step) <= least || fb === 0) return b;
    if (Math.abs(previous) >= least && Math.abs(fa) > Math.abs(fb)) {
      step = interpolate({ a, b, c, fa, fb, fc, previous, least }) ?? step;
    }
    if (Math.abs(step) < least) step = step > 0 ? least : -least;
    [a, fa] = [b, fb];
    b += step;
    fb = f(b);
    if (fb > 0 === fc > 0 && fb !== 0) [c, fc] = [a, fa];
  }
  return b;
}

interface Points {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly fa: number;
  readonly fb: number;
  readonly fc: number;
  readonly previous: number;
  readonly least: number;
}

/** A secant or inverse quadratic step, where it is short enough to be trusted. */
function interpolate({ a, b, c, fa, fb, fc, previous, least }: Points): number | undefined {
  const gap = c - b;
  const t = fb / fa;
  let [p, q] = [gap * t, 1 - t];
  if (a !== c) {
    const [u, v] = [fa / fc, fb / fc];
    p = t * (gap * u * (u - v) - (b - a) * (v - 1));
    q = (u - 1) * (v - 1) * (t - 1);
  }
  if (p > 0) q = -q;
  else p = -p;
  return p < 0.75 * gap * q - Math.abs(least * q) / 2 && p < Math.abs((previous * q) / 2)
    ? p / q
    : undefined;
}

const UNIT = { low: 0, high: 1 };
const INVERTED = { low: Number.EPSILON, high: 1 };

/** A rising function of the odds ratio, searched below 1 or, turned over, above it. */
function oddsAt(f: (odds: number) => number): number {
  const atOne = f(1);
  if (atOne === 0) return 1;
  return atOne > 0 ? coarseRoot(f, UNIT) : 1 / coarseRoot((t) => f(1 / t), INVERTED);
}

export interface RFisher {
  readonly oddsRatio: number;
  readonly lower: number;
  readonly upper: number;
}

/** The conditional odds ratio and its interval with the figures that R prints. */
export function rFisher([[a, b], [c, d]]: TwoByTwo, confidence: number): RFisher {
  const urn: Urn = { marked: a + c, others: b + d, drawn: a + b };
  const [least, most] = urnRange(urn);
  const cells = Array.from({ length: most - least + 1 }, (_, i) => least + i);
  const logs = cells.map((k) => Math.log(hypergeometricPmf(k, urn)));
  const chances = (odds: number): readonly number[] => {
    if (odds === 0) return cells.map((k) => (k === least ? 1 : 0));
    const raw = cells.map((k, i) => (logs[i] as number) + k * Math.log(odds));
    const top = Math.max(...raw);
    const weights = raw.map((w) => Math.exp(w - top));
    const total = weights.reduce((s, w) => s + w, 0);
    return weights.map((w) => w / total);
  };
  const sum = (odds: number, f: (k: number, p: number) => number): number =>
    chances(odds).reduce((s, p, i) => s + f(cells[i] as number, p), 0);
  const alpha = (1 - confidence) / 2;
  return {
    oddsRatio: a === least ? 0 : a === most ? Infinity : oddsAt((o) => sum(o, (k, p) => k * p) - a),
    lower: a === least ? 0 : oddsAt((o) => sum(o, (k, p) => (k >= a ? p : 0)) - alpha),
    // Falling in the odds ratio: R searches below 1 when the tail at 1 is under alpha.
    upper: a === most ? Infinity : oddsAt((o) => alpha - sum(o, (k, p) => (k <= a ? p : 0))),
  };
}
