import type { Samples } from './shape.ts';

const at = '2026-11-26T14:30:00Z';
const day = '2026-11-26';

const roundList: Samples['roundList'] = {
  title: [day],
  courier: [at],
  people: [12],
  pair: ['Pia', 'Jonah'],
  tally: [10, 9, 1],
  offBy: [2],
  notRegistered: [3],
  noResult: [9],
};

const fromPaper: Samples['fromPaper'] = { of: ['Cor'], nameIs: ['Corwen Vale'] };

const prepare: Samples['prepare'] = {
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
  preparation: ['numbing cream or spray', 40],
  preparationDone: ['numbing cream or spray'],
  kitsTaken: [12, 'WS-0417', day],
  kitsMissing: [3],
  kitsSpare: [2],
  ppeShort: [['Gloves', 'Aprons']],
  leftOffLine: ['Cor', 'Too unwell'],
};

const runSheet: Samples['runSheet'] = {
  title: [day],
  made: [at, 'Sorrel'],
  due: ['symptoms'],
  kits: [['WS-0417', 'WS-0622']],
};

const packing: Samples['packing'] = {
  isIn: ['Cor'],
  count: [4, 9],
  leaked: ['Ismay'],
  lastSeen: ['sealed', at, 'Jonah'],
  onTablet: ['this tablet'],
  goOnWith: ['Cor'],
  notSwabbed: [['Sabra']],
  boxShut: [9, at],
  boxChanged: [3],
  goesNow: [4],
  moves: [['Cor', 'Rowan']],
  scanFirst: [['Tamsin']],
  staysOpen: [['Hesper']],
};

const handing: Samples['handing'] = {
  due: [at],
  bookedBy: ['Pia'],
  apart: [2],
  handed: [9, at, 'the morning van', 'S12'],
  oldest: [at],
  keeps: [at, 68, 72],
  where: ['2 to 8 °C'],
  tooOld: [at],
  dueAgain: [['Cor', 'Oriel']],
  missedAt: [at],
};

const parts: Samples['parts'] = { about: ['Open', 'Cor'], degrees: [2, 8] };

const registering: Samples['registering'] = {
  lead: ['the reporting body'],
  ring: ['01632 960 102'],
  progress: [3, 9],
  bag: [3, 9],
  bead: [{ at: 3, name: 'Cor', state: 'to do' }],
  copyWhat: ['Name'],
  copied: ['Name'],
  bars: ['WSK56045137'],
  rightBag: ['Cor'],
  otherBag: ['Oriel'],
  all: [5],
  failed: ['Their site is down', at, 'Pia'],
  registered: ['R-2201', day],
  late: [day],
  listTitle: [day],
};

const uploading: Samples['uploading'] = {
  lead: ['the reporting body'],
  preview: [9],
  empty: [['DOB', 'Number']],
  noFit: [['Ł']],
  saved: ['tests-2026-11-26.csv'],
  fileName: [day],
  lines: [8, 1],
  keepGood: [8],
  kept: [8],
  column: [2],
  remove: [2],
  up: [2],
  down: [2],
  wrongTitle: [2],
  wrongText: [2],
};

const results: Samples['results'] = {
  hours: [68],
  since: [93],
  dueBy: [at],
  rang: ['Pia', at],
  again: [at],
  todo: [3],
  on: ['Negative', day],
  laboratory: {
    open: ['The laboratory', at],
    opens: ['The laboratory', at],
    never: ['The laboratory'],
    phone: ['01632 960 101'],
  },
  entry: {
    closed: [at],
    says: ['Corwen Vale', 'Negative'],
    saysCode: ['Negative'],
    dated: [day],
    beforeSays: ['Negative', at, 'Pia'],
    actedOn: ['Tell the doctor', 'Pia', at],
  },
  chase: {
    words: ['WSK56045137', day],
    since: ['Jory', 93],
    late: [at],
    notLate: [at],
    logLine: ['Pia', at, 'the front desk'],
    said: ['In the morning.'],
  },
  list: [['Cor', 'Oriel']],
};

const acting: Samples['acting'] = {
  title: ['Oriel', 'Positive'],
  swabbed: [day, day],
  entered: ['Sorrel', at],
  died: ['Oriel', day],
  moved: ['Oriel', day],
  changedFrom: ['positive', at, 'Sorrel'],
  isolation: [day, day],
  isolationWhy: ['5 days, by local rule.'],
  due: [at],
  late: [at],
  forRole: ['Due now', 'senior'],
  named: ['Pia'],
  before: ['Start isolation', 'Pia', at],
  done: ['Pia', at],
  notNeeded: ['Pia', at],
  policy: ['Set by the home.'],
  giveWhat: ['Tell the doctor'],
  doneWhat: ['Tell the doctor'],
  notWhat: ['Tell the doctor'],
  left: [3],
};

export const roundWorkSamples = {
  fromPaper,
  acting,
  results,
  uploading,
  roundList,
  prepare,
  runSheet,
  packing,
  handing,
  registering,
  parts,
};
