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
  policy: {
    of: [57, 82],
    share: [95],
    sites: ['97 of 100', '86 of 100', '68 of 100'],
    way: [72, '90 of 100'],
    befores: [
      ['1 of 100', '15 of 100', '35 of 100'],
      ['8 of 100', '30 of 100', '60 of 100'],
    ],
    waited: [20, [20, 24, 28]],
  },
};
