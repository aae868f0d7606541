import type { FileProblem } from '../reported.ts';
import { unread } from '../reported.ts';
import { tally } from './refused.ts';
import type { Sheet } from './sheet.ts';
import { readSheet, walk, XmlProblem } from './sheet.ts';
import type { ZipLimits } from './unzip.ts';
import { piecesOf, unzip } from './unzip.ts';

export type ReadWorkbook =
  | ({ readonly ok: true; readonly sheetName: string; readonly sheets: number } & Sheet)
  | ({ readonly ok: false } & FileProblem);

/**
 * The first sheet of an Office Open XML workbook (ECMA-376), with strict limits: no document types, no
 * formulas worked out, nothing unpacked beyond `limits`. Macros, links and pictures are never opened.
 */
export function readXlsx(bytes: Uint8Array, limits?: ZipLimits): ReadWorkbook {
  // Sheets are looked through to their end, but none is kept: the first is read piece by piece.
  const opened = unzip(
    bytes,
    (name) => (small.test(name) ? true : sheets.test(name) ? false : undefined),
    limits,
  );
  if (!opened.ok) return opened;
  const { parts, names } = opened;
  const book = parts.get('xl/workbook.xml');
  if (book === undefined) return unread('not-results', 'This is a zip file, but no workbook.');
  try {
    const sheet = (name: string) =>
      names.has(name) && sheets.test(name) ? piecesOf(bytes, name, limits) : undefined;
    return firstSheet(parts, book, sheet);
  } catch (error) {
    if (!(error instanceof XmlProblem)) throw error;
    return unread(error.problem, error.message, {
      at: 'line',
      line: error.line,
      column: error.column + 1,
    });
  }
}

const small = /^xl\/(?:workbook|styles|sharedStrings)\.xml$|^xl\/_rels\/workbook\.xml\.rels$/;
const sheets = /^xl\/worksheets\/[^/]+\.xml$/;

/** Sheets, links and formats are few: this many cannot be a workbook's own. */
const MOST_NAMED = 100_000;
/** Texts that cells share: as many as there may be cells. */
const MOST_STRINGS = 8 * 1_048_576;

function firstSheet(
  parts: ReadonlyMap<string, Uint8Array>,
  book: Uint8Array,
  sheetPieces: (name: string) => Iterable<Uint8Array> | undefined,
): ReadWorkbook {
  const named = tally(MOST_NAMED, 'The workbook names too many sheets.');
  const sheets: { name: string; rel: string }[] = [];
  let from1904 = false;
  walk([book], {
    open: {
      workbookPr: (a) => (from1904 = a['date1904'] === '1' || a['date1904'] === 'true'),
      sheet: (a) => {
        named(1);
        if (a['state'] === undefined || a['state'] === 'visible')
          sheets.push({ name: a['name'] ?? '', rel: a['r:id'] ?? '' });
      },
    },
  });
  const [first] = sheets;
  const targets = new Map<string, string>();
  const rels = parts.get('xl/_rels/workbook.xml.rels');
  if (rels !== undefined)
    walk([rels], {
      open: {
        Relationship: (a) => {
          named(1);
          targets.set(a['Id'] ?? '', a['Target'] ?? '');
        },
      },
    });
  const target = targets.get(first?.rel ?? '') ?? 'worksheets/sheet1.xml';
  const sheet = sheetPieces(target.startsWith('/') ? target.slice(1) : `xl/${target}`);
  if (sheet === undefined || first === undefined)
    return unread('empty', 'The workbook has no sheet to read.');
  const found = readSheet(sheet, {
    strings: stringsIn(parts.get('xl/sharedStrings.xml')),
    dates: dateStyles(parts.get('xl/styles.xml')),
    from1904,
  });
  if (found.rows.length === 0) return unread('empty', 'The first sheet is empty.');
  return { ok: true, ...found, sheetName: first.name, sheets: sheets.length };
}

function stringsIn(xml: Uint8Array | undefined): string[] {
  const strings: string[] = [];
  if (xml === undefined) return strings;
  let current = '';
  let taking = false;
  let phonetic = false;
  const take = tally(MOST_STRINGS, 'The workbook holds too many texts. Save it as CSV.');
  walk([xml], {
    open: { si: () => (current = ''), t: () => (taking = !phonetic), rPh: () => (phonetic = true) },
    close: {
      t: () => (taking = false),
      rPh: () => (phonetic = false),
      si: () => {
        take(1);
        strings.push(current);
      },
    },
    text: (text) => {
      if (taking) current += text;
    },
  });
  return strings;
}

/** Built-in number formats that are dates (ECMA-376 part 1, 18.8.30). Times alone are none. */
const BUILT_IN = new Set([14, 15, 16, 17, 22]);

function dateStyles(xml: Uint8Array | undefined): Set<number> {
  const dates = new Set<number>();
  if (xml === undefined) return dates;
  const own = new Set<number>();
  let inCells = false;
  let style = 0;
  const named = tally(MOST_NAMED, 'The workbook names too many formats.');
  walk([xml], {
    open: {
      numFmt: (a) => {
        named(1);
        // Without what is quoted, escaped or in brackets, a date format has a day or a year in it.
        const code = (a['formatCode'] ?? '').replaceAll(/"[^"]*"|\\.|\[[^\]]*\]/g, '');
        if (/[dy]/i.test(code)) own.add(Number(a['numFmtId']));
      },
      cellXfs: () => (inCells = true),
      xf: (a) => {
        if (!inCells) return;
        named(1);
        const format = Number(a['numFmtId'] ?? 0);
        if (BUILT_IN.has(format) || own.has(format)) dates.add(style);
        style += 1;
      },
    },
    close: { cellXfs: () => (inCells = false) },
  });
  return dates;
}
