import { type Chance, uniform } from './chance.ts';

/** An exponential draw with mean 1, by inversion. */
export const drawExponential = (chance: Chance): number => -Math.log1p(-uniform(chance));
