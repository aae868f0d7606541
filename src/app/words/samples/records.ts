import type { Samples } from './shape.ts';

const day = '2026-11-26';

export const keepingSamples: Samples['keeping'] = {
  movedOn: ['Sing.'],
  goOnWith: ['Amend: Cor'],
  dropThat: ['Amend: Cor'],
};

export const peopleSamples: Samples['people'] = {
  found: [3],
  count: [13, 1],
  left: [2],
  room: ['3'],
  where: { hospital: [day], leave: [day], moved: [day], died: [day] },
  flags: { decisionEnded: [day], decisionStarts: [day], caution: ['nosebleed lately'] },
  wholeHome: { before: [day, 'the manager'], callOffThis: [day], calledOff: ['Jonah', 'a slip'] },
  form: {
    editTitle: ['Cor'],
    already: ['Corwen Vale', '1951-03-14'],
    alreadyNoBirth: ['Corwen Vale'],
    namesakeOf: ['Rowan Vale'],
  },
};

export const recordSamples: Samples['record'] = {
  called: ['Cor'],
  bornAge: ['1951-03-14', 75],
  namesake: [['Rowan Vale']],
  hasDied: ['Cor'],
  hasMoved: ['Cor'],
  due: {
    by: ['symptoms', day],
    away: [day],
    recentPositive: [day],
    awaitingResult: [day],
  },
  amendPart: ['Who'],
  reviewBy: [day],
  reviewLate: [day],
  fromUntil: [day, day],
  ended: [day],
  notYet: [day],
  answerFor: ['Write the answer', 'nosebleed lately'],
  answered: ['Go ahead', 'the duty doctor'],
  answerUntil: [day],
  answerOver: [day],
  ahead: [30],
  saidBy: ['the duty doctor'],
  until: [day],
  over: [day],
  sinceHere: [day],
  noticed: [day],
  signs: [['cough', 'fever']],
  names: [['Pia', 'Jonah']],
  contactWith: ['Oriel'],
  wireOn: [day],
  otherKit: ['it leaks'],
  wireOf: ['Cor', day],
  historyCount: [24],
};

export const historySamples: Samples['history'] = {
  byAt: ['Pia', '2026-11-26T06:41:00Z'],
  device: ['T0000001'],
  insteadOf: ['room 3'],
  insteadUnseen: [1],
  untilDay: [day],
  came: { admission: [day], hospital: [day], leave: [day] },
  went: { hospital: [day], leave: [day], moved: [day], died: [day] },
  on: [day],
  noted: [day, ['cough', 'fever']],
  knows: ['Pia'],
  knowsNot: ['Pia'],
  knowsPerson: ['Cor'],
  knowsPersonNot: ['Cor'],
  training: ['to swab', day],
  pair: ['Pia', 'Jonah'],
  roundOf: [day],
  strikeThis: ['Symptoms noticed'],
};

export const supportSamples: Samples['support'] = {
  about: ['Cor'],
  answer: { lead: ['nosebleed lately'] },
  knownBy: { title: ['Tamsin'] },
};

export const reminderSamples: Samples['reminders'] = {
  reviewDue: [day],
  photoOld: [day],
  decisionReview: [day],
  practice: [3, 7],
  preparation: ['A visit first', 30],
};
