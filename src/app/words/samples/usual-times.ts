import type { Samples } from './shape.ts';

const span = { from: '09:00', until: '12:30' };
const breaks = [span, { from: '13:00', until: '13:30' }];

export const usualSamples: Samples['usual'] = {
  weekday: [2],
  span: [span],
  spans: [breaks],
  seen: [breaks],
  out: [[1, 3], span],
  here: [[1, 2, 3], span],
  breaks: [breaks],
  apart: [['Pia', 'Jonah']],
  apartNow: ['Pia', 'Jonah'],
  apartNoMore: ['Pia', 'Jonah'],
  row: { from: ['Break', 1], until: ['Break', 1], add: ['Break'] },
  staff: { title: ['Pia'] },
};
