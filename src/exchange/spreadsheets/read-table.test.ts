import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAX_ROWS, readTable } from './read-table.ts';
import { guessSeparator, separators } from './separator.ts';

const cells = (text: string, separator: ',' | ';' | '\t' = ',') =>
  readTable(text, separator).rows.map((row) => row.cells);

describe('the rows of a file', () => {
  // RFC 4180, section 2, rules 5 to 7: quotes, separators, line ends and doubled quotes in a cell.
  it('quotes hold separators, line ends and quotes', () => {
    expect(cells('"aaa","b, bb","c\r\ncc"\r\n"d ""dd"""')).toEqual([
      ['aaa', 'b, bb', 'c\r\ncc'],
      ['d "dd"'],
    ]);
  });

  it('a quote inside a plain cell is a sign like any other', () => {
    expect(cells('Oriel "Ori" Finch,3')).toEqual([['Oriel "Ori" Finch', '3']]);
  });

  it('any line end will do, mixed too', () => {
    expect(cells('a\rb\nc\r\nd')).toEqual([['a'], ['b'], ['c'], ['d']]);
  });

  it('rows are counted as a spreadsheet counts them, empty ones and those of two lines included', () => {
    const table = readTable('name\n\n"Cor\nVale"\n,\nRowan\n', ',');
    expect(table.rows.map(({ row }) => row)).toEqual([1, 3, 5]);
    expect(table.empty).toBe(2);
  });

  it('a quote that is never closed is told with its row; the rows before it are read', () => {
    const table = readTable('name,room\nCor,3\n"Rowan,8\nOriel,1\n', ',');
    expect(table.brokenAt).toBe(3);
    expect(table.rows).toHaveLength(2);
  });

  it('says how many rows it did not look at', () => {
    const table = readTable('a\n'.repeat(MAX_ROWS + 3), ',');
    expect(table.rows).toHaveLength(MAX_ROWS);
    expect(table.beyond).toBe(3);
  });
});

describe('which sign parts the cells', () => {
  it.each([
    ['name,born\nCor,1951-03-14\n', ','],
    ['name;born\n"Vale, Corwen";1951-03-14\n', ';'],
    ['name\tborn, if known\nCor\t1951-03-14\n', '\t'],
    ['name\nCor\n', ','],
    ['"a;b;c;d",x\n"e;f;g;h",y\n', ','],
  ])('%j', (text, separator) => {
    expect(guessSeparator(text)).toBe(separator);
  });
});

// csv-stringify is written by others than we are, and writes what this reads.
it('reads back what another program wrote, whatever is in the cells', () => {
  const cell = fc.string({ unit: 'grapheme', maxLength: 12 }).map((text) => text.trim());
  const row = fc.array(cell, { minLength: 2, maxLength: 5 }).filter((each) => each.some(Boolean));
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1, maxLength: 8 }),
      fc.constantFrom(...separators),
      (rows, delimiter) => {
        const text = stringify(rows, { delimiter, quoted: true });
        expect(cells(text, delimiter)).toEqual(rows);
      },
    ),
  );
});

it('never throws, whatever the text, and counts every row once', () => {
  const text = fc.string({ unit: fc.constantFrom('a', '"', ',', ';', '\t', '\n', '\r', ' ', 'é') });
  fc.assert(
    fc.property(text, fc.constantFrom(...separators), (given, separator) => {
      const { rows, brokenAt } = readTable(given, separator);
      const numbers = rows.map(({ row }) => row);
      expect(numbers).toEqual([...new Set(numbers)].sort((a, b) => a - b));
      for (const row of numbers) expect(row).toBeLessThan(brokenAt ?? Infinity);
      guessSeparator(given);
    }),
  );
});
