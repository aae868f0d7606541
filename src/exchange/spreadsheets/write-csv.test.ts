import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeCsv } from './write-csv.ts';

describe('a file for another program', () => {
  it('ends its lines and quotes its cells as RFC 4180 says', () => {
    const sheet = { titles: ['Name', 'Code'], rows: [['Finch, "Oriel"', 'WSK1']] };
    expect(writeCsv(sheet, 'comma')).toBe('Name,Code\r\n"Finch, ""Oriel""",WSK1\r\n');
    expect(writeCsv({ titles: ['A', 'B'], rows: [['1', '2;3']] }, 'semicolon')).toBe(
      'A;B\r\n1;"2;3"\r\n',
    );
  });

  // The characters that OWASP names under "CSV Injection".
  it.each(['=', '+', '-', '@', '\t', '\r'])('a cell that begins with %j cannot run', (sign) => {
    const text = writeCsv({ titles: ['Name'], rows: [[`${sign}1+1`]] }, 'comma');
    expect(text.split('\r\n').slice(1).join('\r\n')).toMatch(/^"?'/);
  });

  it('is read back by another parser as it was written', () => {
    const plain = fc
      .string({ unit: 'grapheme' })
      .filter((text) => !/^[=+\-@\t\r＝＋－＠]/u.test(text));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(plain, plain), { minLength: 1 }),
        fc.constantFrom('comma', 'semicolon', 'tab'),
        (rows, separator) => {
          const text = writeCsv({ titles: ['a', 'b'], rows }, separator);
          const delimiter = { comma: ',', semicolon: ';', tab: '\t' }[separator];
          const read: unknown = parse(text, {
            delimiter,
            record_delimiter: '\r\n',
            relax_quotes: false,
          });
          expect(read).toEqual([['a', 'b'], ...rows]);
        },
      ),
    );
  });
});
