import type { Samples } from './shape.ts';

const at = '2026-11-26T06:41:00Z';

export const callSamples: Samples['calls'] = {
  since: [80],
  due: [at],
  nextCall: [at],
  lastCall: ['Pia', at],
  tonight: [0.4, true],
  byLimit: [72, 0.6, true],
  ever: [0.9],
  range: [0.2, 0.7],
  basis: [12, 3],
  made: [10],
  half: [31],
  hours: [31],
  changed: [31, 44],
  p: [0.012],
};
