import type { Samples } from './shape.ts';

const day = '2026-11-26';

export const importSamples: Samples['importing'] = {
  map: {
    from: ['people.csv'],
    unsureWhy: ['Windows-1252'],
    column: [2],
    option: [2, 'Name'],
    dateAsk: ['03/04/1951'],
    dateClue: ['25/04/1951'],
    asDay: ['Day first', day],
    nameAsk: ['Vale, Corwen'],
    nameTurned: ['Corwen Vale'],
    roleAsk: ['night lead'],
    roleNeeded: ['night lead'],
  },
  check: {
    good: [12],
    bad: [3],
    likely: [2],
    empty: [2],
    broken: [7],
    beyond: [3],
    row: [7],
    pick: ['Corwen Vale', 7],
    press: [12],
  },
  done: { title: [12] },
  likeness: {
    'same-name-and-birth': ['Corwen Vale'],
    'same-identifier': ['Corwen Vale'],
    'same-name': ['Corwen Vale'],
  },
  problems: {
    tooManyCells: [2],
    unreadableSign: ['Full name'],
    tooLong: ['Note', 2000],
    notADate: ['Birth date', 'soon'],
    twoDigitYear: ['Birth date', '14/03/51'],
    noSuchDay: ['Birth date', '31/02/1970'],
    askForm: ['Birth date', '03/04/1951'],
    inTheFuture: ['Birth date', '03/04/2099'],
    tooLongAgo: ['Birth date', '03/04/1851'],
    numberMalformed: ['Home number', '12'],
    numberCheckFailed: ['Home number', '0000971'],
    roleUnknown: ['night lead'],
    sameAsRow: [4],
  },
};
