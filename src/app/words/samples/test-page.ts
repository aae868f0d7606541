import type { Samples } from './shape.ts';

const at = '2026-11-26T06:41:00Z';
const day = '2026-11-26';

export const testPageSamples: Samples['testPage'] = {
  title: ['Cor', day],
  turnTitle: ['Cor', day],
  whose: ['Corwen Vale', 'Flu swab'],
  why: ['routine'],
  policy: ['our rules', 2],
  policyBy: ['Maren', at],
  settledAll: [2],
  onTablet: ['tablet T1'],
  reached: [at],
  fromPaper: ['Pia', at],
  carriedBy: ['tablet T1'],
  how: ['scanned'],
  secondRead: ['Pia'],
  signedAt: ['Jonah, with Pia', at],
  openFindingWhat: ['Two tubes for one person'],
  toPerson: ['Cor'],
  spoiledWhy: ['it leaks'],
  evidence: {
    made: [at, 'Pia'],
    check: {
      whole: [120],
      odd: [120],
      broken: [17],
      head: [120],
      waiting: [2],
      oddities: [2],
      missing: [2],
    },
  },
};
