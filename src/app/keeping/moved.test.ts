import { expect, it } from 'vitest';
import { changed, moved } from './moved.ts';

const start = { helps: 'Sing.', place: 'Chair.' };

it('only what was changed here is amended', () => {
  expect(changed(start, { helps: 'Sing.', place: 'Window.' })).toEqual({ place: 'Window.' });
});

it('a change made elsewhere meanwhile is told, if the same field was changed here', () => {
  const now = { helps: 'Count.', place: 'Bed.' };
  expect(moved({ start, value: { helps: 'Sing.', place: 'Window.' } }, now)).toEqual(['place']);
});

it('nothing is told where both came to the same words', () => {
  const now = { ...start, place: 'Window.' };
  expect(moved({ start, value: { ...start, place: 'Window.' } }, now)).toEqual([]);
});
