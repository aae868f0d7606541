import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readXlsx } from './read-xlsx.ts';
import { readSheet, serialDay } from './sheet.ts';
import { usualLimits } from './unzip.ts';

const ns = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const parts = (sheet: string, more: Record<string, string> = {}) => ({
  'xl/workbook.xml': `<workbook ${ns} xmlns:r="urn:r"><sheets><sheet name="Results" sheetId="1" r:id="rId1"/></sheets></workbook>`,
  'xl/_rels/workbook.xml.rels':
    '<Relationships><Relationship Id="rId1" Target="worksheets/sheet1.xml"/></Relationships>',
  'xl/sharedStrings.xml': `<sst ${ns}><si><t>Barcode</t></si><si><r><t>Not </t></r><r><t>detected</t></r></si></sst>`,
  'xl/styles.xml': `<styleSheet ${ns}><numFmts><numFmt numFmtId="170" formatCode="dd&quot;y&quot;/mm/yyyy"/><numFmt numFmtId="171" formatCode="0 &quot;days&quot;"/></numFmts><cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="170"/><xf numFmtId="171"/></cellXfs></styleSheet>`,
  'xl/worksheets/sheet1.xml': `<worksheet ${ns}><sheetData>${sheet}</sheetData></worksheet>`,
  ...more,
});
const book = (sheet: string, more?: Record<string, string>) =>
  zipSync(
    Object.fromEntries(
      Object.entries(parts(sheet, more)).map(([name, text]) => [name, strToU8(text)]),
    ),
  );

const rows =
  '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="C1" t="inlineStr"><is><t>Born</t></is></c></row>' +
  '<row r="3"><c r="A3" t="str"><f>A1&amp;"x"</f><v>KQT1</v></c><c r="B3" t="s"><v>1</v></c><c r="C3" s="1"><v>46085</v></c><c r="D3" s="2"><v>46085.5</v></c><c r="E3" s="3"><v>5</v></c><c r="F3"><v>1.234567890123E12</v></c></row>';

/** Rows of one cell each in that column, no two alike. */
const numbered = (count: number, column: string): string =>
  Array.from(
    { length: count },
    (_, i) => `<row><c r="${column}1"><v>${(i * 7919) % 1_000_003}</v></c></row>`,
  ).join('');
const varied = (tag: string, count: number): string =>
  Array.from({ length: count }, (_, i) => `<${tag} numFmtId="${(i * 7919) % 1_000_003}"/>`).join(
    '',
  );
/** Signs that do not pack. */
const noise = (count: number): string => {
  let seed = 1;
  return Array.from({ length: count }, () => {
    seed = (seed * 48_271) % 2_147_483_647;
    return String.fromCharCode(33 + (seed % 94));
  }).join('');
};

describe('a workbook', () => {
  it('gives rows as they are numbered, dates that can be read one way only, and tells of formulas', () => {
    const read = readXlsx(book(rows));
    expect(read).toMatchObject({ ok: true, sheetName: 'Results', sheets: 1 });
    if (!read.ok) return;
    expect(read.rows).toEqual([
      { row: 1, cells: ['Barcode', '', 'Born'] },
      { row: 3, cells: ['KQT1', 'Not detected', '2026-03-04', '2026-03-04', '5', '1234567890123'] },
    ]);
    expect([...read.formulas]).toEqual(['A3']);
  });
  // ECMA-376 part 1, 18.17.4.3: day 1 is 1 January 1900, day 61 is 1 March 1900; 1904's day 0 is 1 January 1904.
  it('counts days in both date systems', () => {
    expect(serialDay(1, false)).toBe('1900-01-01');
    expect(serialDay(59, false)).toBe('1900-02-28');
    expect(serialDay(60, false)).toBeUndefined();
    expect(serialDay(61, false)).toBe('1900-03-01');
    expect(serialDay(0, true)).toBe('1904-01-01');
    expect(serialDay(44623, true)).toBe(serialDay(46085, false));
    for (const [last, from1904] of [
      [2_958_465, false],
      [2_957_003, true],
    ] as const) {
      expect(serialDay(last, from1904)).toBe('9999-12-31');
      expect(serialDay(last + 1, from1904)).toBeUndefined();
    }
  });
  it('refuses a document type, where entity bombs come from', () => {
    const bomb = '<!DOCTYPE x [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]>';
    const read = readXlsx(
      book(rows, { 'xl/sharedStrings.xml': `${bomb}<sst ${ns}><si><t>&b;</t></si></sst>` }),
    );
    expect(read).toMatchObject({ ok: false, problem: 'unsafe', place: { at: 'line', line: 1 } });
  });
  it('refuses a zip bomb before it is unpacked', () => {
    const bomb = zipSync({
      ...Object.fromEntries(Object.entries(parts(rows)).map(([n, t]) => [n, strToU8(t)])),
      'xl/worksheets/sheet2.xml': new Uint8Array(40 * 1024 * 1024),
    });
    // Bytes held by arrays alone: the process as a whole also grows by what ran before.
    const before = process.memoryUsage().arrayBuffers;
    expect(readXlsx(bomb)).toMatchObject({ ok: false, problem: 'unsafe' });
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(40 * 1024 * 1024);
    expect(readXlsx(book(rows), { ...usualLimits, mostBytes: 100 })).toMatchObject({
      ok: false,
      problem: 'unsafe',
    });
  });
  it('holds each part against its own packed size: other parts cannot pay for it', () => {
    const row = '<row><c r="A1"><v>1</v></c></row>';
    const bomb = book(row.repeat(60_000), { 'xl/media/picture.bin': noise(60_000) });
    expect(readXlsx(bomb)).toMatchObject({ ok: false, problem: 'unsafe' });
    // What is stored unpacked is as large as it is.
    const plain = Object.entries(parts(numbered(40_000, 'A')));
    const stored = zipSync(Object.fromEntries(plain.map(([n, t]) => [n, strToU8(t)])), {
      level: 0,
    });
    expect(readXlsx(stored)).toMatchObject({ ok: true });
  });
  it('counts the places that a far cell makes it fill up, and says what to do when they are too many', () => {
    // Column GR is the 200th: 8,388,608 places are 41,943 such rows.
    expect(readXlsx(book(numbered(41_900, 'GR')))).toMatchObject({ ok: true });
    const read = readXlsx(book(numbered(42_000, 'GR')));
    expect(read).toMatchObject({ ok: false, problem: 'too-many', place: { at: 'line' } });
    expect(read.ok || read.detail).toBe('The first sheet has too many cells. Save it as CSV.');
    // The same cell over and over keeps nothing, and is counted all the same.
    const sheet = (text: string) => [strToU8(`<sheetData>${text}</sheetData>`)];
    const plain = { strings: [], dates: new Set<number>(), from1904: false };
    const again = `<row>${'<c r="A1"><v>1</v></c>'.repeat(5)}</row>`;
    expect(readSheet(sheet(again), plain, 5).rows).toHaveLength(1);
    expect(() => readSheet(sheet(again), plain, 4)).toThrow('too many cells');
    const beyond = `<row>${'<c r="ZZ1"><f>1</f></c>'.repeat(5)}</row>`;
    expect(() => readSheet(sheet(beyond), plain, 4)).toThrow('too many cells');
  });
  it('a list of ordinary width is read whole, each text in its place', () => {
    const cells = (i: number) =>
      ['KQT', 'Not detected', '2026-03-04', 'Finch', 'L-']
        .map((text, at) => `<c t="str"><v>${at % 4 === 0 ? `${text}${i}` : text}</v></c>`)
        .join('');
    const many = Array.from({ length: 50_000 }, (_, i) => `<row>${cells(i)}</row>`).join('');
    const read = readXlsx(book(many));
    expect(read.ok && read.rows.length).toBe(50_000);
    expect(read.ok && read.rows[49_999]).toEqual({
      row: 50_000,
      cells: ['KQT49999', 'Not detected', '2026-03-04', 'Finch', 'L-49999'],
    });
  });
  it('stops at more formats than any workbook has', () => {
    const many = {
      'xl/styles.xml': `<styleSheet><cellXfs>${varied('xf', 100_001)}</cellXfs></styleSheet>`,
    };
    expect(readXlsx(book(rows, many))).toMatchObject({ ok: false, problem: 'too-many' });
  });
  it('a workbook cut off anywhere is told, not half read', () => {
    const whole = book(rows);
    for (let end = 4; end < whole.length; end += 17)
      expect(readXlsx(whole.slice(0, end))).toMatchObject({ ok: false });
  });
  it('never throws, whatever the sheet or the bytes', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 200 }),
        (text) => typeof readXlsx(book(text)).ok === 'boolean',
      ),
    );
    const whole = book(rows);
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(255), (at, byte) => {
        const changed = whole.slice();
        changed[at] = byte;
        return typeof readXlsx(changed).ok === 'boolean';
      }),
    );
  });
});
