import type { Samples } from './shape.ts';

const day = '2026-11-26';

export const afterPositiveSamples: Samples['afterPositive'] = {
  ringNow: [12],
  windowSince: { signs: [day], contact: [day], swab: [day] },
  dayNumber: [3],
  dayName: [day],
  ends: ['2026-11-26T06:41:00Z'],
  nearLine: ['Cor', 'same room'],
  staffLine: ['Pia', day],
};
