import { describe, expect, it } from 'vitest';
import type { Role } from '../../care/staff/facts.ts';
import { guessColumns, guessHeadings } from './guess-columns.ts';
import { readTable } from './read-table.ts';
import { jobWords, readStaff, staffHeadings } from './staff-list.ts';

function read(text: string, roles: ReadonlyMap<string, Role> = new Map()) {
  const { rows } = readTable(text, ',');
  const headings = guessHeadings(rows, staffHeadings)!;
  const columns = guessColumns(headings.cells, staffHeadings);
  const below = rows.filter(({ row }) => row > headings.row);
  return {
    ...readStaff({ rows, headings }, { columns, roles }),
    words: jobWords(below, columns.role),
  };
}

const text = [
  'Name,Job title,May swab until',
  'Pia Dell,Worker,1 May 2027',
  'Sorrel Wade,Night lead,2027-01-31',
  'Wren Adair,,soon',
].join('\n');

describe('a list of staff', () => {
  it('asks what the service’s own words for a job mean', () => {
    expect(read(text).words).toEqual(['worker', 'night lead']);
    expect(read(text).bad.map(({ row, problems }) => [row, problems[0]?.problem])).toEqual([
      [3, 'role-unknown'],
      [4, 'not-a-date'],
    ]);
  });

  it('takes the meaning somebody gave', () => {
    const { good } = read(text, new Map([['night lead', 'senior']]));
    expect(good.map(({ value }) => [value.name, value.role, value.competence])).toEqual([
      ['Pia Dell', 'worker', { swab: '2027-05-01' }],
      ['Sorrel Wade', 'senior', { swab: '2027-01-31' }],
    ]);
  });

  it('gives nobody more than a worker may do unless the list says so', () => {
    expect(read('Name\nPia Dell\n').good[0]?.value.role).toBe('worker');
  });
});
