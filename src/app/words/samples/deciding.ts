import type { Samples } from './shape.ts';

const day = '2026-11-26';

export const decidingSamples: Samples['deciding'] = {
  forTest: ['Cor', 'Respiratory virus swab'],
  law: ['The law of the land', 1],
  section: ['s.3(1)(a)'],
  policy: { version: ['The law of the land', 1] },
  stepOf: [3, 9],
  now: ['Decides for themselves. Ask each time.', day],
  looked: ['Jonah', '2026-11-26T06:41:00Z'],
  reviewOn: [day],
  reviewLate: [day],
  toldAll: [['what is done', 'why it is done']],
};
