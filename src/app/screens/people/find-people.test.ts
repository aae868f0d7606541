import { expect, it } from 'vitest';
import type { Person } from '../../../care/people/person.ts';
import { findPeople } from './find-people.ts';

const person = (name: string, room = '', called = '') => ({ name, room, called }) as Person;
const people = [
  person('Corwen Vale', '3', 'Cor'),
  person('Rowan Vale', '8'),
  person('Zoë Lund-Grey', '13'),
];
const found = (typed: string) =>
  findPeople(people, typed, ({ room }) => (room === '8' ? 'Hill side' : '')).map(
    ({ name }) => name.split(' ')[0],
  );

it.each([
  ['', ['Corwen', 'Rowan', 'Zoë']],
  ['vale', ['Corwen', 'Rowan']],
  ['va ro', ['Rowan']],
  ['ZOE', ['Zoë']],
  ['grey', ['Zoë']],
  ['3', ['Corwen']],
  ['hill', ['Rowan']],
  ['ale', []],
])('"%s" finds %j', (typed, names) => {
  expect(found(typed)).toEqual(names);
});
