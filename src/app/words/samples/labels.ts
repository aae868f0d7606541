import type { Samples } from './shape.ts';

export const labelSamples: Samples['labels'] = {
  stockOf: [24, 64, 34],
  kitsWrong: [200],
  startWrong: [24],
};
