import type { Samples } from './shape.ts';

export const meaningSamples: Samples['meaning'] = {
  sentence: [0.24, 'negative'],
  range: [0.1, 0.4],
  picture: [0.24],
  of100: [0.24],
  counted: [2],
  houseSentence: [0.12],
  tested: [10, 14],
  positives: [2],
  findOne: [0.64],
  wantedOption: [95],
  more: [3],
  inAll: [12],
  checked: [0.12],
};
