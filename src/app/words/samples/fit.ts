import type { Samples } from './shape.ts';

const day = '2026-11-26';

export const fitSamples: Samples['fit'] = {
  why: {
    'positive-again': ['Cor', day],
    'negative-between': ['Cor', day, day],
    crossed: ['Cor', 'Oriel'],
  },
  odds: [0.0125],
  policy: { inTenThousand: [5], known: [2], days: [14] },
};
