import type { Samples } from './shape.ts';

export const identitySamples: Samples['identity'] = {
  codeNear: [2],
  codeElsewhere: [['Aldermere']],
  twoMustKnow: ['Tamsin'],
  identifierMalformed: ['Home number'],
  identifierCheckFailed: ['Home number'],
  secondReads: ['Pia'],
  nearPair: ['WSK56045137', 'WSK56045131'],
  readings: { both: ['Jonah', ['Pia']] },
};
