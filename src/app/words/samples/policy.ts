import type { Samples } from './shape.ts';

const day = '2026-11-26';
const at = '2026-11-26T06:41:00Z';

export const policySamples: Samples['policy'] = {
  days: [7],
  minutes: [30],
  hours: [72],
  name: ['Swab rounds', 1],
  forWhere: ['England.'],
  issued: [day],
  confirmedBy: ['Maren Holt', at, day],
  gone: ['house', 2],
  source: ['The kit.', day],
  sourceUntil: ['The kit.', day, day],
  confirmation: ['Swab rounds', 1, day],
  groups: { test: ['Virus swab'], kit: ['Single swab kit'] },
  amend: {
    stepOf: [2, 7],
    titleOf: [2],
    minutesOf: [2],
    up: ['Hold a swab'],
    down: ['Hold a swab'],
    removeOf: ['Hold a swab'],
    movedTo: ['Hold a swab', 2],
    removed: ['Hold a swab'],
    packLate: [day],
  },
  rows: {
    laboratoryIs: ['The laboratory', '01632 960 101', '08:00', '18:00'],
    openDays: [['Monday', 'Tuesday']],
    registrarIs: ['The reporting body', '01632 960 102'],
    storageIs: [72, 2, 8],
    seconds: [10],
    secondsRange: [10, 15],
    every: [7],
    within: [0],
    onDays: [[0, 5]],
    metres: [2],
    percent: [10],
    action: ['senior', 4],
    actionNow: ['senior'],
  },
};

export const moreSamples: Samples['more'] = { version: ['0.1.0'] };
