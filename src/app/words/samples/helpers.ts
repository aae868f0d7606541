import type { Samples } from './shape.ts';

export const helperSamples: Samples['helpers'] = {
  wants: [['Pia', 'Jonah']],
  unwanted: [['Wystan']],
  swabber: ['a woman'],
  told: ['Family said it'],
  worksAs: { answered: ['A woman'] },
  day: { unwanted: ['Bram', 'Wystan'], swabber: ['Hesper', 'a woman'] },
  policy: { casesIs: [2] },
};

export const wishSamples: Samples['wishes'] = {
  unwanted: ['Bram', 'Wystan'],
  swabber: ['Hesper', 'a woman'],
  ask: ['Hesper', 'Jonah'],
  wanted: ['Fenn', ['Pia', 'Jonah']],
};
