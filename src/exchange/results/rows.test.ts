import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowReader } from './rows.ts';
import type { ToldOfResults } from './told.ts';

const columns = { code: 0, outcome: 1, reported: 2, born: 3, name: 4, status: 5, test: 6 };
const told: ToldOfResults = { columns, dateForm: undefined, words: new Map() };
const read = (cells: string[], more: Partial<ToldOfResults> = {}) =>
  rowReader({ ...told, ...more })(cells, 2);

describe('a row of a list of results', () => {
  it('says whose code, what, when, and who it is about', () => {
    expect(
      read(['KQT00000019', 'Not detected', '2026-03-04', '1941-06-02', 'Finch, Oriel']),
    ).toMatchObject({
      codes: ['KQT00000019'],
      outcome: 'negative',
      status: 'final',
      reported: '2026-03-04',
      born: '1941-06-02',
      name: 'Oriel Finch',
      asks: [],
    });
  });
  it('a date that can be read two ways is asked about, never guessed', () => {
    const row = read(['KQT00000019', 'negative', '03/04/2026', '13/06/1941']);
    expect(row?.reported).toBeUndefined();
    expect(row?.born).toBe('1941-06-13');
    expect(row?.asks).toEqual([
      { ask: 'day-unclear', about: 'reported', given: '03/04/2026', why: 'ask-form' },
    ]);
    expect(read(['KQT1', 'neg', '03/04/2026'], { dateForm: 'day-first' })?.reported).toBe(
      '2026-04-03',
    );
  });
  it('a word it does not know is asked about; once told, it is known', () => {
    expect(read(['KQT1', 'Fnd', '2026-03-04'])?.asks).toContainEqual({
      ask: 'words-unknown',
      given: 'Fnd',
    });
    expect(
      read(['KQT1', 'Fnd', '2026-03-04'], { words: new Map([['fnd', 'positive']]) })?.outcome,
    ).toBe('positive');
  });
  it('"not detected" is never read as "detected", nor anything by a part of it', () => {
    for (const said of ['Not Detected', 'NOT-DETECTED', ' not  detected. '])
      expect(read(['KQT1', said, '2026-03-04'])?.outcome).toBe('negative');
    for (const said of ['undetected', 'negative?', 'positive control', 'nondetected'])
      expect(read(['KQT1', said, '2026-03-04'])?.outcome).toBeUndefined();
  });
  it('a withdrawn report has no outcome but that', () => {
    expect(read(['KQT1', 'positive', '2026-03-04', '', '', 'Withdrawn'])).toMatchObject({
      outcome: 'withdrawn',
      status: 'withdrawn',
    });
  });
  it('a LOINC code that is not known here is kept and asked about', () => {
    expect(read(['KQT1', 'neg', '2026-03-04', '', '', '', '2345-7'])?.asks).toEqual([
      { ask: 'test-unknown', given: '2345-7' },
    ]);
  });
  it('never throws, whatever stands in the cells', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'binary', maxLength: 300 }), { maxLength: 9 }),
        (cells) => {
          const row = read(cells);
          return (
            row === undefined ||
            (row.name.length <= 401 && row.codes.every((code) => code.length <= 200))
          );
        },
      ),
    );
  });
});
