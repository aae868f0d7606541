import { normalCdf, normalDensity } from '../distributions/normal.ts';
import { finite, firstRefusal, positive } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkLambda } from './ewma.ts';
import { averageRunLength } from './normal-run-length.ts';

export interface EwmaRunQuestion {
  readonly lambda: number;
  /** Limits at so many standard deviations of the average, in the long run. */
  readonly width: number;
  readonly shift: number;
  readonly sides: 'one' | 'two';
  /** One-sided: the average is held at or above this many of its standard deviations; 0. */
  readonly barrier?: number;
}

/**
 * The average run length of an EWMA chart of normal values, started at the target.
 * Source: Crowder (1987), Technometrics 29:401-407; one-sided with a reflecting barrier as in
 * R's spc.
 */
export function ewmaAverageRunLength({
  lambda,
  width,
  shift,
  sides,
  barrier = 0,
}: EwmaRunQuestion): Outcome<number> {
  const refused = firstRefusal(
    checkLambda(lambda),
    positive('width', width),
    finite('shift', shift),
    finite('barrier', barrier),
  );
  if (refused) return refused;
  if (sides === 'one' && barrier >= width)
    return refuse('out-of-range', 'The barrier has to lie below the limit.');
  const unit = Math.sqrt(lambda / (2 - lambda));
  const high = width * unit;
  const low = sides === 'two' ? -high : barrier * unit;
  const step = (x: number, u: number): number => (x - (1 - lambda) * u) / lambda - shift;
  const question = {
    low,
    high,
    density: (x: number, u: number) => normalDensity(step(x, u)) / lambda,
    start: Math.max(0, low),
    // The kernel is lambda wide: a small lambda needs more nodes across the interval.
    nodes: Math.min(400, 60 + Math.ceil((6 * (high - low)) / lambda)),
  };
  return given(
    averageRunLength(
      sides === 'two' ? question : { ...question, held: (u) => normalCdf(step(low, u)) },
    ),
  );
}
