import type { Samples } from './shape.ts';

const at = '2026-11-26T06:41:00Z';
const day = '2026-11-26';

export const turnSamples: Samples['turn'] = {
  pair: ['Pia', 'Jonah'],
  kitOf: [2, 12],
  namesake: ['Vale'],
  next: { title: ['Cor'], why: ['symptoms'], start: ['Cor'], minutes: [40], changedMind: ['Cor'] },
  notThem: { title: ['Cor'] },
  willing: { question: ['Cor'] },
  declined: { title: ['Cor'] },
  notNow: { title: ['Cor'], body: [at] },
  kit: { first: ['WS-0417', day] },
  ready: { self: ['Cor'], nothingByMouth: [30] },
  lid: { peace: ['Cor'] },
  settled: { title: ['Cor'], nextHelps: ['Oriel'] },
  stopped: { title: ['Cor', at], again: [at] },
  interrupted: { title: ['Cor'], left: [at] },
};

export const roundSamples: Samples['rounds'] = {
  of: [day],
  line: ['Pia', 'Jonah', 12],
  courier: [at, at],
  tally: [2, 6],
  frame: [day],
  so: { 'in-turn': ['Pia, Jonah'] },
  goOn: ['Cor'],
  start: ['Cor'],
  closedOn: [at],
  spoiled: [2],
  counts: [12, 10, 2],
  notYet: [['Tamsin']],
  people: [12],
};

export const nowSamples: Samples['now'] = {
  about: ['Register', 'Cor'],
  fine: [['14 people live here', '31 kits in date']],
  here: [14],
  stock: [31],
  waiting: [3],
  hoursLeft: [31],
  by: [at],
  byDay: [day],
  since: [day],
  actOn: ['Oriel', 'positive', 'Tell the doctor'],
  turnOpen: ['Cor'],
  notCollected: [2, true],
  registerWhat: ['Tamsin'],
  registerMany: [3],
  nextTry: [at],
  chaseWhat: ['Tamsin', 74],
  resultRule: [72],
  storageRule: [72],
  roundWhat: [3, 12],
  dueWhat: [12],
  due: [['Cor', 'Oriel']],
  kitsEnd: [14, 'WS-0417', day],
  kitsEnded: [3, 'WS-0417'],
  trayWaits: [2],
  practise: ['Cor', 'A soft tip touches the cheek'],
  practiseHow: [3, 7, 5],
};

export const findingSamples: Samples['findings'] = {
  settledOn: [at, 'Sorrel'],
  records: [3],
  chainWhere: ['tablet T0000002', '3 records'],
  whose: [['Bram', 'Hesper']],
  openWhat: ['One barcode is on two tests', 'Bram and Hesper'],
  held: [['Bram', 'Hesper']],
  side: [1, 2],
  testOf: ['Bram', at],
  onlySenior: [['Idris', 'Maren']],
  oneStands: ['Bram', 'Kit opened, spare label WSK56045137.'],
  thisStands: ['Registered. Reference R-2201.'],
  namedSaid: ['Idris'],
};

export const doorSamples: Samples['door'] = {
  tablet: ['blue tablet'],
  wait: [90_000],
  clock: { ask: [at] },
};

export const tabletSamples: Samples['tablets'] = {
  at: [at],
  lostTitle: ['blue tablet'],
  retireTitle: ['blue tablet'],
  setTitle: ['Pia'],
};
