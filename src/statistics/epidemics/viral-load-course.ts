import { type Chance, uniform } from '../random/chance.ts';
import { drawGamma } from '../random/draw-gamma.ts';

/** Days 0 to 27 since exposure. */
export const COURSE_DAYS = 28;

/** One person's course, reused from draw to draw. */
export interface Course {
  /** log10 of the viral load on each whole day. */
  readonly load: Float64Array;
  /** The day symptoms begin; beyond the last day for someone without. */
  symptomDay: number;
}

export const emptyCourse = (): Course => ({
  load: new Float64Array(COURSE_DAYS),
  symptomDay: COURSE_DAYS,
});

/**
 * Draws a course: the load rises from 10^3 at t3 to its peak and falls through 10^6 later, in
 * straight lines on the log scale; 0 before t3 and never below 0.
 * t3 ~ U(2.5, 3.5); peak height U(7, 11), 0.5 + Gamma(1.5, 1) days on (at most 3);
 * 10^6 again U(4, 9) days after the peak, and with symptoms as much later as they lag, U(0, 3).
 * Source: Larremore et al. (2021), Science Advances 7:eabd5393, and its published code.
 */
export function drawCourse(chance: Chance, symptomatic: boolean, into: Course): void {
  let rise = 0.5 + drawGamma(chance, 1.5);
  while (rise > 3) rise = 0.5 + drawGamma(chance, 1.5);
  const height = 7 + 4 * uniform(chance);
  const fall = 4 + 5 * uniform(chance);
  const t3 = 2.5 + uniform(chance);
  const lag = symptomatic ? 3 * uniform(chance) : 0;
  const peak = t3 + rise;
  into.symptomDay = symptomatic ? Math.round(peak + lag) : COURSE_DAYS;
  const up = (height - 3) / rise;
  const down = (6 - height) / (fall + lag);
  for (let t = 0; t < COURSE_DAYS; t++) {
    into.load[t] =
      t < t3 ? 0 : t < peak ? 3 + (t - t3) * up : Math.max(0, height + (t - peak) * down);
  }
}
