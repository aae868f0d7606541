import type { Samples } from './shape.ts';

const day = '2026-11-26';

export const staffSamples: Samples['staffing'] = {
  count: [8],
  left: [2],
  chips: {
    ended: ['May swab', day],
    soon: ['May swab', day],
    until: ['May swab', day],
    none: ['May swab'],
  },
  leftOn: [day],
  names: [['Cor', 'Tamsin']],
  until: [day],
  ended: [day],
  endsSoon: [day],
  form: { editTitle: ['Pia'] },
  knowsForm: { title: ['Pia'] },
  leftForm: { leftTitle: ['Pia'], backTitle: ['Pia'] },
};
