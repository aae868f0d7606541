import type { Samples } from './shape.ts';

const at = '2026-11-26T06:41:00Z';
const day = '2026-11-26';

export const takingInSamples: Samples['takingIn'] = {
  where: ['row 7, column 3'],
  wordTitle: ['Fnd'],
  wordNeeded: ['Fnd'],
  formulas: [3],
  sheets: ['Results'],
  fits: [12],
  held: [2],
  knownBefore: [4],
  row: ['row 7'],
  line: ['Cor', 'negative', day],
  codeLine: ['KQT00000019', 'negative'],
  keep: [14],
  doneTitle: [14],
  trayCount: [2],
  came: ['in a list', at],
  belongs: ['Cor'],
  testOption: ['Cor', 'KQT00000019', day],
};
