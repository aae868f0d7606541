import { SaxesParser } from 'saxes';
import type { Day } from '../../../care/time.ts';
import { addDays } from '../../../care/time.ts';
import type { FileProblem } from '../reported.ts';
import { Refused, tally } from './refused.ts';

type Tags = Readonly<Record<string, (attributes: Readonly<Record<string, string>>) => void>>;

export class XmlProblem extends Error {
  constructor(
    readonly problem: FileProblem['problem'],
    detail: string,
    readonly line: number,
    readonly column: number,
  ) {
    super(detail);
  }
}

interface Handlers {
  readonly open?: Tags;
  readonly close?: Readonly<Record<string, () => void>>;
  readonly text?: (text: string) => void;
}

/** Parts are fed to the parser in steps, so that a great sheet is never one text in memory. */
const STEP = 256 * 1024;

/**
 * Walks through XML, piece by piece. A document type is refused outright: it is where entity bombs and
 * outside files come from, and no workbook has one.
 */
export function walk(
  pieces: Iterable<Uint8Array>,
  { open = {}, close = {}, text }: Handlers,
): void {
  const parser = new SaxesParser({ xmlns: false });
  const stop = (problem: FileProblem['problem'], detail: string): never => {
    throw new XmlProblem(problem, detail, parser.line, parser.column);
  };
  const local = (name: string): string => name.slice(name.indexOf(':') + 1);
  parser.on('doctype', () =>
    stop('unsafe', 'The workbook declares a document type, which no workbook needs.'),
  );
  parser.on('error', () => stop('broken', 'The workbook holds XML that is not well formed.'));
  parser.on('opentag', ({ name, attributes }) =>
    open[local(name)]?.(attributes as Record<string, string>),
  );
  parser.on('closetag', ({ name }) => close[local(name)]?.());
  if (text !== undefined) parser.on('text', text);
  const decoder = new TextDecoder('utf-8', { fatal: true });
  try {
    for (const step of inSteps(pieces)) parser.write(decoder.decode(step, { stream: true }));
  } catch (error) {
    if (error instanceof XmlProblem) throw error;
    if (error instanceof Refused) return stop(error.problem, error.message);
    return stop('not-utf8', 'The workbook is not written in UTF-8.');
  }
  parser.close();
}

function* inSteps(pieces: Iterable<Uint8Array>): Generator<Uint8Array> {
  for (const piece of pieces)
    for (let at = 0; at < piece.length; at += STEP) yield piece.subarray(at, at + STEP);
}

/** Excel's own most. */
const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 200;
/** Places of all rows, those that are only filled up as well: eight in each row that a sheet can have. */
const MOST_PLACES = 8 * MOST_ROWS;

const MOST_SHARED = 4096;

export interface Sheet {
  readonly rows: readonly { readonly row: number; readonly cells: readonly string[] }[];
  /** Cells whose value is worked out by a formula, such as `B7`. What is shown may be old or wrong. */
  readonly formulas: ReadonlySet<string>;
}

interface Styled {
  readonly strings: readonly string[];
  /** Style numbers that show a number as a date. */
  readonly dates: ReadonlySet<number>;
  /** 1904 date system (ECMA-376 part 1, 18.17.4.1). */
  readonly from1904: boolean;
}

/** The rows of one sheet as text; a date as `YYYY-MM-DD`, which can be read one way only. */
export function readSheet(
  xml: Iterable<Uint8Array>,
  styled: Styled,
  mostPlaces = MOST_PLACES,
): Sheet {
  const takeRow = tally(MOST_ROWS, 'The first sheet has over 1,048,576 rows.');
  const takePlaces = tally(mostPlaces, 'The first sheet has too many cells. Save it as CSV.');
  const rows: { row: number; cells: string[] }[] = [];
  const formulas = new Set<string>();
  const share = sharing();
  let cells: string[] = [];
  let row = 0;
  let at = { ref: '', type: '', style: 0, column: 0 };
  let value = '';
  let taking = false;
  walk(xml, {
    open: {
      row: ({ r }) => {
        row = r === undefined ? row + 1 : Number(r);
        cells = [];
      },
      c: ({ r = '', t = '', s = '0' }) => {
        const column = r === '' ? cells.length : columnOf(r);
        at = { ref: r, type: t, style: Number(s), column };
        value = '';
      },
      v: () => (taking = true),
      t: () => (taking = true),
      f: () => formulas.add(at.ref),
    },
    close: {
      v: () => (taking = false),
      t: () => (taking = false),
      c: () => {
        // One that replaces another, or lies too far out to be kept, counts like any.
        takePlaces(at.column < MOST_COLUMNS ? Math.max(1, at.column + 1 - cells.length) : 1);
        if (at.column >= MOST_COLUMNS) return;
        while (cells.length < at.column) cells.push('');
        cells[at.column] = share(cellText(value, at, styled));
      },
      row: () => {
        if (cells.length === 0) return;
        takeRow(1);
        rows.push({ row, cells });
      },
    },
    text: (text) => {
      if (taking) value += text;
    },
  });
  return { rows, formulas };
}

/** Results and days are the same few texts in every row: each is kept once, as long as they are few. */
function sharing(): (text: string) => string {
  const kept = new Map<string, string>();
  return (text) => {
    const same = kept.get(text);
    if (same !== undefined) return same;
    if (kept.size < MOST_SHARED) kept.set(text, text);
    return text;
  };
}

/** "BC7" is the 55th column: 54, counted from 0. */
function columnOf(ref: string): number {
  let column = 0;
  for (const sign of /^[A-Z]{1,3}/.exec(ref)?.[0] ?? 'A')
    column = column * 26 + sign.charCodeAt(0) - 64;
  return column - 1;
}

function cellText(
  value: string,
  { type, style }: { type: string; style: number },
  styled: Styled,
): string {
  if (type === 's') return styled.strings[Number(value)] ?? '';
  if (type === 'b') return value === '1' ? 'TRUE' : 'FALSE';
  if (type !== '' && type !== 'n') return value;
  if (value === '' || !styled.dates.has(style)) return plainNumber(value);
  return serialDay(Number(value), styled.from1904) ?? value;
}

/** A long code that a spreadsheet has stored as a number keeps its digits; what has lost some is left as it is. */
function plainNumber(value: string): string {
  if (!/e/i.test(value)) return value;
  const number = Number(value);
  return Number.isSafeInteger(number) ? String(number) : value;
}

/** Day 60 of the 1900 system never was (29 February 1900); before it, days are one off. */
export function serialDay(serial: number, from1904: boolean): string | undefined {
  // The last is 31 December 9999.
  const last = from1904 ? 2_957_003 : 2_958_465;
  if (!Number.isFinite(serial) || serial < 0 || serial >= last + 1) return undefined;
  const whole = Math.floor(serial);
  if (!from1904 && (whole === 60 || whole === 0)) return undefined;
  const start = from1904 ? '1904-01-01' : whole < 60 ? '1899-12-31' : '1899-12-30';
  return addDays(start as Day, whole);
}
