import { type Chance, uniform } from './chance.ts';

/** A standard normal draw. Source: Marsaglia's polar method (Marsaglia & Bray 1964). */
export function drawNormal(chance: Chance): number {
  for (;;) {
    const u = 2 * uniform(chance) - 1;
    const v = 2 * uniform(chance) - 1;
    const s = u * u + v * v;
    if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s);
  }
}
