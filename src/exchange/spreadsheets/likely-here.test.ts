import { expect, it } from 'vitest';
import { likelyHere } from './likely-here.ts';

const known = [
  { name: 'Corwen Vale', born: '1951-03-14', identifier: '943 476 5919' },
  { name: 'Zoë Lund' },
];

it.each([
  [{ name: 'VALE, Corwen', born: '1951-03-14' }, 'same-name-and-birth'],
  [{ name: 'Somebody Else', identifier: '9434765919' }, 'same-identifier'],
  [{ name: 'zoe  lund', born: '1960-01-01' }, 'same-name'],
  [{ name: 'Corwen Vale' }, 'same-name'],
])('%j is most likely here already: %s', (one, why) => {
  expect(likelyHere(known, one)?.why).toBe(why);
});

it.each([
  { name: 'Corwen Vale', born: '1957-03-14' },
  { name: 'Rowan Vale', born: '1951-03-14' },
  { name: 'Rowan Vale', identifier: '' },
])('%j is somebody else', (one) => {
  expect(likelyHere(known, one)).toBeUndefined();
});
