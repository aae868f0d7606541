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

export const prepareSamples: Samples['prepare'] = {
  minutes: [20],
  packBy: [at],
  whoMayNot: [2],
  chosen: [12, 13],
  by: ['routine round', day],
  openOf: ['Cor'],
  whyOff: ['Cor'],
  sayWhy: ['Cor'],
  resting: { away: [day], 'recent-positive': [day], 'awaiting-result': [day] },
  up: ['Cor'],
  down: ['Cor'],
  nowAt: ['Cor', 3, 12],
  room: ['3'],
  ahead: [40],
  goesBack: ['Rowan', 'Jory'],
  summary: ['Pia', 'Jonah'],
  decisionUntil: [day],
  reviewDue: [day],
  preparation: ['numbing cream or spray', 40],
  preparationDone: ['numbing cream or spray'],
  photoOld: [day],
  kitsTaken: [12, 'WS-0417', day],
  kitsMissing: [3],
  kitsSpare: [2],
  ppeShort: [['Gloves', 'Aprons']],
  leftOffLine: ['Cor', 'Too unwell'],
};

export const runSheetSamples: Samples['runSheet'] = {
  title: [day],
  made: [at, 'Sorrel'],
  due: ['symptoms'],
  kits: [['WS-0417', 'WS-0622']],
};
