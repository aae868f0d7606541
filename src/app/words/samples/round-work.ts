import type { Samples } from './shape.ts';

const at = '2026-11-26T14:30:00Z';
const day = '2026-11-26';

export const roundListSamples: Samples['roundList'] = {
  title: [day],
  courier: [at],
  people: [12],
  pair: ['Pia', 'Jonah'],
  tally: [10, 9, 1],
  offBy: [2],
  notRegistered: [3],
  noResult: [9],
};
