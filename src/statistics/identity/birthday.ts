import { count, firstRefusal, positiveCount } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

/**
 * The chance that among n codes drawn at random from a space two are the same, exactly.
 * More codes than the space holds: 1. Computed in logarithms, so a tiny chance keeps its figures.
 */
export function anyDuplicateChance(n: number, space: number): Outcome<number> {
  const refused = firstRefusal(count('n', n), positiveCount('space', space));
  if (refused) return refused;
  if (n > space) return given(1);
  let logNone = 0;
  // Below e^-750 the chance of no duplicate is no double any more.
  for (let i = 1; i < n && logNone > -750; i++) logNone += Math.log1p(-i / space);
  return given(0 - Math.expm1(logNone));
}
