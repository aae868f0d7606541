import type { Samples } from './shape.ts';

const day = '2026-11-26';

export const practisingSamples: Samples['practising'] = {
  sessionTitle: ['Cor'],
  step: [3, 7],
  minutes: [5],
  soFar: [3, 7],
  nextStep: ['A soft tip touches the cheek'],
  drawing: [5, 3, 7],
  tooFew: [4, 10],
  range: [3, 9],
  days: [day, day],
  byRound: [42, day],
  model: [14],
  policy: { step: ['A soft tip touches the cheek', 5] },
};
