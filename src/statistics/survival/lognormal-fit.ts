import { normalCdf, normalDensity } from '../distributions/normal.ts';
import { each, positive } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkWaitingTimes, type WaitingTimes } from './waiting-times.ts';

export interface LognormalFit {
  /** Mean and standard deviation of the logarithm of the time. */
  readonly meanLog: number;
  readonly sdLog: number;
  readonly logLikelihood: number;
}

interface Logs {
  readonly logs: Float64Array;
  readonly isEvent: readonly boolean[];
}

const HALF_LOG_TWO_PI = 0.9189385332046728;

/** The normal hazard; far out it is the distance itself, nearly. */
function hazard(z: number): number {
  const tail = normalCdf(-z);
  return tail > 0 ? normalDensity(z) / tail : z + 1 / z;
}

/** ln P(Z > z), far out by its leading term. */
function logTail(z: number): number {
  const tail = normalCdf(-z);
  return tail > 0 ? Math.log(tail) : -0.5 * z * z - HALF_LOG_TWO_PI - Math.log(z);
}

interface Slopes {
  readonly value: number;
  readonly gradient: readonly [number, number];
  /** Second derivatives: delta delta, delta theta, theta theta. */
  readonly curvature: readonly [number, number, number];
}

/** Log-likelihood in theta = 1 / sigma, delta = mu / sigma, where it has one top (Olsen 1978). */
function likelihood({ logs, isEvent }: Logs, delta: number, theta: number): Slopes {
  let [value, gd, gt, dd, dt, tt] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < logs.length; i++) {
    const y = logs[i] as number;
    const z = theta * y - delta;
    const event = isEvent[i] === true;
    value += event ? Math.log(theta) - 0.5 * z * z - HALF_LOG_TWO_PI - y : logTail(z);
    const slope = event ? z : hazard(z);
    const bend = event ? 1 : slope * (slope - z);
    gd += slope;
    gt -= slope * y - (event ? 1 / theta : 0);
    dd -= bend;
    dt += bend * y;
    tt -= bend * y * y + (event ? 1 / (theta * theta) : 0);
  }
  return { value, gradient: [gd, gt], curvature: [dd, dt, tt] };
}

/** One Newton step, halved until the likelihood rises. */
function climb(
  data: Logs,
  delta: number,
  theta: number,
  here: Slopes,
): readonly [number, number, Slopes] {
  const [dd, dt, tt] = here.curvature;
  const [gd, gt] = here.gradient;
  const determinant = dd * tt - dt * dt;
  const stepDelta = -(tt * gd - dt * gt) / determinant;
  const stepTheta = -(dd * gt - dt * gd) / determinant;
  for (let share = 1; share > 1e-12; share /= 2) {
    const nextTheta = theta + share * stepTheta;
    if (nextTheta <= 0) continue;
    const next = likelihood(data, delta + share * stepDelta, nextTheta);
    if (next.value >= here.value) return [delta + share * stepDelta, nextTheta, next];
  }
  return [delta, theta, here];
}

/** Starts from the plain mean and spread of all logarithms. */
function start(logs: Float64Array): readonly [number, number] {
  const mean = logs.reduce((sum, y) => sum + y, 0) / logs.length;
  const variance = logs.reduce((sum, y) => sum + (y - mean) ** 2, 0) / logs.length;
  return [mean, Math.sqrt(variance)];
}

/**
 * A lognormal distribution fitted to waiting times by maximum likelihood, censored ones included.
 * Times must be above 0. No event, or all times the same: refused. Figures as R's survreg.
 */
export function lognormalFit(waits: WaitingTimes): Outcome<LognormalFit> {
  const refused = checkWaitingTimes(waits) ?? each('time', waits.time, positive);
  if (refused) return refused;
  const data = {
    logs: Float64Array.from(waits.time, Math.log),
    isEvent: Array.from(waits.event, (e) => Number(e) === 1),
  };
  if (!data.isEvent.includes(true))
    return refuse('undefined', 'Nothing has arrived yet, so no distribution can be fitted.');
  const [mean, sd] = start(data.logs);
  if (!(sd > 1e-9))
    return refuse('undefined', 'The times are all the same, so no spread can be fitted.');
  let [delta, theta] = [mean / sd, 1 / sd];
  let here = likelihood(data, delta, theta);
  for (let step = 0; step < 200; step++) {
    const [nextDelta, nextTheta, next] = climb(data, delta, theta, here);
    const moved = Math.abs(nextDelta - delta) + Math.abs(nextTheta - theta);
    [delta, theta, here] = [nextDelta, nextTheta, next];
    if (theta > 1e8)
      return refuse(
        'not-converged',
        'The events all fall at one time before everything else, so no spread fits.',
      );
    if (moved <= 1e-13 * (Math.abs(delta) + theta)) break;
  }
  return given({ meanLog: delta / theta, sdLog: 1 / theta, logLikelihood: here.value });
}
