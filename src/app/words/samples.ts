import { afterPositiveSamples } from './samples/after-positive.ts';
import {
  doorSamples,
  findingSamples,
  nowSamples,
  roundSamples,
  tabletSamples,
  turnSamples,
} from './samples/bedside-round.ts';
import { callSamples } from './samples/calls.ts';
import { decidingSamples } from './samples/deciding.ts';
import { factSamples } from './samples/facts.ts';
import { fitSamples } from './samples/fit.ts';
import { helperSamples, wishSamples } from './samples/helpers.ts';
import { identitySamples } from './samples/identity.ts';
import { importSamples } from './samples/importing.ts';
import { labelSamples } from './samples/labels.ts';
import { meaningSamples } from './samples/meaning.ts';
import { plannerSamples } from './samples/planner.ts';
import { moreSamples, policySamples } from './samples/policy.ts';
import { practisingSamples } from './samples/practising.ts';
import {
  historySamples,
  keepingSamples,
  peopleSamples,
  recordSamples,
  reminderSamples,
  supportSamples,
} from './samples/records.ts';
import { refusalSamples } from './samples/refusals.ts';
import { roundWorkSamples } from './samples/round-work.ts';
import type { Samples } from './samples/shape.ts';
import { staffSamples } from './samples/staff.ts';
import { supplySamples } from './samples/supplies.ts';
import { takingInSamples } from './samples/taking-in.ts';
import { testPageSamples } from './samples/test-page.ts';
import { usualSamples } from './samples/usual-times.ts';

const at = '2026-11-26T06:41:00Z';

export const samples: Samples = {
  person: {},
  frame: {
    wireOf: ['Cor'],
    bead: [{ step: 'label', state: 'in hand' }],
    beadOf: [{ name: 'Cor', step: 'label', state: 'in hand' }],
    wireSaid: [{ name: 'Cor', said: '4 of 9 done.' }],
    now: ['label'],
    next: ['swab'],
    lookAt: [['label', 'seal']],
    doneOf: [{ done: 4, of: 9 }],
    tallied: [{ done: 2, of: 6 }],
  },
  bedside: {
    turnOf: ['Cor'],
    stopFor: ['Cor'],
    sayingStopWhen: ['Cor'],
    likesToBeCalled: ['Cor'],
    face: [2],
    choiceKeys: [5],
    secondsToGo: [7],
    secondsSoFar: [12],
    pastTarget: [15],
    target: [{ from: 10, to: 15 }],
    dial: ['10 seconds'],
  },
  scan: {
    tooShort: [4],
    differAt: [7],

    read: ['K, X, 4, T'],
    spell: ['KX4T'],
  },
  camera: {},
  identity: identitySamples,
  labels: labelSamples,
  fit: fitSamples,
  form: { problems: [3] },
  list: {
    sort: ['hours'],
    stepOf: [{ step: 2, of: 4 }],
    page: [{ page: 1, of: 2 }],
  },
  turn: turnSamples,
  rounds: roundSamples,
  ...roundWorkSamples,
  planner: plannerSamples,
  usual: usualSamples,
  helpers: helperSamples,
  wishes: wishSamples,
  now: nowSamples,
  findings: findingSamples,
  testPage: testPageSamples,
  facts: factSamples,
  refusals: refusalSamples,
  keeping: keepingSamples,
  people: peopleSamples,
  record: recordSamples,
  reminders: reminderSamples,
  support: supportSamples,
  deciding: decidingSamples,
  easyRead: {
    stripOf: ['Cor'],
    made: [at, 'Jonah'],
    pdf: { letters: [['Ŵ']] },
    photoMissing: [['Pia']],
    letter: {
      title: ['Cor'],
      doctorBorn: ['1951-03-14'],
      taken: [at],
      sites: [['nose']],
      made: ['doctor', '2026-11-26'],
    },
    change: ['What helps', 'Sing.'],
  },
  practising: practisingSamples,
  staffing: staffSamples,
  importing: importSamples,
  takingIn: takingInSamples,
  calls: callSamples,
  meaning: meaningSamples,
  afterPositive: afterPositiveSamples,
  supplies: supplySamples,
  policy: policySamples,
  more: moreSamples,
  history: historySamples,
  nav: {},
  door: doorSamples,
  tablets: tabletSamples,
  cautions: {},
  outcomes: {},
  rules: {},
  roles: {},
  page: {
    sync: { sent: [14], kept: [14], sending: [14], lastMet: [at] },
  },
};
