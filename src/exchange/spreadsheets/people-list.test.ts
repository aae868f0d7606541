import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Day } from '../../care/time.ts';
import { guessColumns, guessHeadings } from './guess-columns.ts';
import type { ReadAs } from './people-list.ts';
import { personHeadings, readPeople } from './people-list.ts';
import { readTable } from './read-table.ts';
import { guessSeparator } from './separator.ts';

const today = '2026-03-03' as Day;

function read(text: string, as: Omit<ReadAs, 'columns'> = {}) {
  const { rows } = readTable(text, guessSeparator(text));
  const headings = guessHeadings(rows, personHeadings);
  if (headings === undefined) return undefined;
  const columns = guessColumns(headings.cells, personHeadings);
  return { rows, ...readPeople({ rows, headings }, { columns, ...as }, today) };
}

const problems = (text: string, as?: Omit<ReadAs, 'columns'>) =>
  read(text, as)?.bad.map(({ row, problems: found }) => [
    row,
    ...found.map((each) => each.problem),
  ]);

/** The check character by the pure system itself: double, add, mod 11; 12 minus it. */
function mod112(digits: string): string {
  const sum = Array.from(digits).reduce((p, digit) => ((p + Number(digit)) * 2) % 11, 0);
  const check = (12 - sum) % 11;
  return check === 10 ? 'X' : String(check);
}

describe('a list of people', () => {
  it('is read row by row', () => {
    const list = read('Name,DOB,Room,Wing\nCorwen Vale,14 March 1951,3,Garden side\n');
    expect(list?.good).toEqual([
      {
        row: 2,
        value: {
          ...{ name: 'Corwen Vale', called: '', born: '1951-03-14', room: '3' },
          ...{ unit: 'Garden side', identifier: '', note: '' },
        },
      },
    ]);
  });

  it('tells a number that cannot be right, where policy says how it is made', () => {
    const identifier = {
      name: 'Home number',
      pattern: { value: '(?<checked>[0-9]{6}[0-9X])', source: 'Invented.' },
      scheme: 'iso7064-mod11-2',
    } as const;
    // MOD 11-2 tells every swap of two neighbours that differ.
    const right = `000079${mod112('000079')}`;
    const swapped = right.replace('79', '97');
    const list = `Name,DOB,Number\nA,1 May 1950,${right}\nB,2 May 1950,${swapped}\nC,3 May 1950,12\nD,4 May 1950,\n`;
    expect(problems(list, { identifier })).toEqual([
      [3, 'number-check-failed'],
      [4, 'number-malformed'],
    ]);
    expect(problems(list)).toEqual([]);
  });

  it('joins a first name and a surname', () => {
    const list = read('Surname;First name\nVale;Corwen\n');
    expect(list?.good[0]?.value.name).toBe('Corwen Vale');
  });

  it('turns "Vale, Corwen" round only when somebody says so', () => {
    const text = 'Name;Room\nVale, Corwen;3\n';
    expect(read(text)?.good[0]?.value.name).toBe('Vale, Corwen');
    const turned = read(text, { nameForm: 'family-first' });
    expect(turned?.good[0]?.value.name).toBe('Corwen Vale');
  });

  it('tells every bad row with its number and all its reasons', () => {
    const text = [
      'Name,DOB,Room',
      'Corwen Vale,14/03/1951,3',
      ',03/04/1951,4',
      'Bram Hollow,31/02/1970,5',
      'Oriel Finch,2/6/48,1',
      'Odile Marsh,23/10/2026,13',
      'Vale, Rowan,14/03/1957,8',
      'Corwen Vale,14/03/1951,9',
      'Jory \uFFFDell,31/01/1963,14',
      'Lin,27/04/1866,7',
    ].join('\n');
    expect(problems(text)).toEqual([
      [3, 'name-missing', 'ask-form'],
      [4, 'no-such-day'],
      [5, 'two-digit-year'],
      [6, 'in-the-future'],
      [7, 'not-a-date', 'too-many-cells'],
      [8, 'same-as-row'],
      [9, 'unreadable-sign'],
      [10, 'too-long-ago'],
    ]);
  });

  it('a cell too long for its place is told, not cut', () => {
    expect(problems(`Name,Room\nCorwen Vale,${'x'.repeat(201)}\n`)).toEqual([[2, 'too-long']]);
  });

  it('accounts for every row: good, bad, empty or the headings, and never throws', () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.constantFrom('Corwen Vale', '03/04/1951', '', '1951-03-14', 'Name', '"', ';'),
    );
    const text = fc
      .array(fc.array(cell, { maxLength: 5 }), { maxLength: 9 })
      .map((rows) => ['Name,DOB,Room', ...rows.map((row) => row.join(','))].join('\n'));
    fc.assert(
      fc.property(text, (given) => {
        const list = read(given)!;
        const told = [...list.good, ...list.bad].map(({ row }) => row);
        const headings = guessHeadings(list.rows, personHeadings)!.row;
        const below = list.rows.map(({ row }) => row).filter((row) => row > headings);
        expect(told.sort((a, b) => a - b)).toEqual(below);
        for (const { value } of list.good) expect(value.name).not.toBe('');
      }),
    );
  });
});
