import { describe, expect, it } from 'vitest';
import { guessColumns, guessHeadings } from './guess-columns.ts';
import { personHeadings } from './people-list.ts';
import { staffHeadings } from './staff-list.ts';

describe('which heading means what', () => {
  it.each([
    ['Name,D.O.B.,Room No,Wing', { name: 0, born: 1, room: 2, unit: 3 }],
    ['Surname,First Name,Date of Birth', { family: 0, given: 1, born: 2 }],
    ["Resident's full name,Date of birth (dd/mm/yyyy)", { name: 0, born: 1 }],
    ['NHS Number,NAME,known as', { identifier: 0, name: 1, called: 2 }],
    ['Préférence,Residence card', {}],
  ])('%s', (line, columns) => {
    expect(guessColumns(line.split(','), personHeadings)).toEqual(columns);
  });

  it('gives a column to one meaning only', () => {
    expect(guessColumns(['Name', 'Name'], personHeadings)).toEqual({ name: 0 });
  });

  it('knows the headings of a staff list', () => {
    const line = ['Employee', 'Job title', 'Mobile', 'May swab until', 'Record training ends'];
    expect(guessColumns(line, staffHeadings)).toEqual({
      name: 0,
      role: 1,
      phone: 2,
      swab: 3,
      record: 4,
    });
  });
});

it('finds the headings under a title', () => {
  const rows = [
    { row: 1, cells: ['Everybody at the house', '', ''] },
    { row: 2, cells: ['Written on 3 March'] },
    { row: 4, cells: ['Name', 'Born', 'Room'] },
    { row: 5, cells: ['Corwen Vale', '1951-03-14', '3'] },
  ];
  expect(guessHeadings(rows, personHeadings)?.row).toBe(4);
  expect(guessHeadings([], personHeadings)).toBeUndefined();
  // Nobody's names for columns: still below the title, and never a row of what is listed.
  const unknown = [
    { row: 1, cells: ['Week 48', '', '', ''] },
    { row: 3, cells: ['Tube', 'Finding', 'When', ''] },
    { row: 4, cells: ['KQT1', 'Fnd', '2026-03-04', 'late'] },
  ];
  expect(guessHeadings(unknown, personHeadings)?.row).toBe(3);
});
