import { testOf } from '../../care/custody/test.ts';
import { turnOf } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import type { PersonId } from '../../care/ids.ts';
import { personOf } from '../../care/people/person.ts';
import { registrationOf } from '../../care/results/outcome.ts';
import type { Round } from '../../care/rounds/round.ts';
import { wallTime } from '../../care/time.ts';
import { diskFonts } from './disk-fonts.ts';
import { inFours } from './label-sheet.ts';
import { bytesOf, MM, openPaper } from './paper.ts';
import { drawSymbol } from './symbol.ts';
import { writeIn } from './text-box.ts';

/** One person on the sheet. A code stands there once a kit was opened for them; before it, a space. */
export interface ListRow {
  readonly name: string;
  readonly room: string;
  readonly code: string | undefined;
  readonly taken: string;
  readonly reference: string;
}

/** The run sheet: everybody on the round, in its order. */
export const runSheetRows = (home: Home, round: Round): ListRow[] =>
  round.people.map(({ person }) => rowOf(home, round, person));

/** The register list: only those with a tube that is sealed, in the order of the box. */
export const registerRows = (home: Home, round: Round): ListRow[] =>
  runSheetRows(home, round).filter((row) => row.code !== undefined && row.taken !== '');

function rowOf(home: Home, round: Round, id: PersonId): ListRow {
  const { name, room } = personOf(home, id);
  const test = round.turns
    .flatMap((turn) => turnOf(home, turn) ?? [])
    .filter((turn) => turn.person === id)
    .flatMap((turn) => turn.tests)
    .map((each) => testOf(home, each))
    .findLast((each) => each.spoiled === undefined);
  const taken = test?.taken === undefined ? '' : wallTime(test.taken.at, home.service.zone);
  const reference = test && registrationOf(home, test.id).registered?.data.reference;
  return { name, room, code: test?.code, taken, reference: reference ?? '' };
}

export interface ListWords {
  readonly title: string;
  readonly name: string;
  readonly room: string;
  readonly code: string;
  readonly taken: string;
  readonly reference: string;
  readonly stickHere: string;
}

export const englishListWords = (title: string): ListWords => ({
  ...{ title, name: 'Name', room: 'Room', code: 'Code', taken: 'Taken', reference: 'Reference' },
  stickHere: 'Stick the spare label here',
});

/** Columns in millimetres from the left edge, and how wide each is. */
const COLUMNS = {
  name: [12, 46],
  room: [60, 16],
  code: [78, 68],
  taken: [149, 14],
  reference: [165, 33],
} as const;
type Column = keyof typeof COLUMNS;
const ROW = 17;
const TOP = 30;
const A4 = [210, 297] as const;
const ROWS = Math.floor((A4[1] - TOP - 12) / ROW);

/** A list on A4 as a real table (tagged), a scannable code beside each person who has one. */
export function roundListPdf(
  rows: readonly ListRow[],
  words: ListWords,
  made: Date,
): Promise<Uint8Array> {
  const paper = { title: words.title, language: 'en-GB', size: A4, made };
  const document = openPaper(paper, diskFonts());
  for (let from = 0; from === 0 || from < rows.length; from += ROWS) {
    document.addPage();
    addPage(document, rows.slice(from, from + ROWS), words);
  }
  return bytesOf(document);
}

function addPage(document: PDFKit.PDFDocument, rows: readonly ListRow[], words: ListWords): void {
  const heading = document.struct('H1', {}, () => {
    writeIn(document, words.title, {
      x: 12,
      y: 10,
      width: 186,
      height: 8,
      size: 16,
      least: 11,
      bold: true,
    });
  });
  document.addStructure(heading);
  heading.end();
  const table = document.struct('Table');
  document.addStructure(table);
  const cell = (row: PDFKit.PDFStructureElement, kind: 'TH' | 'TD', draw: () => void) =>
    row.add(document.struct(kind, {}, draw));
  const head = document.struct('TR');
  table.add(head);
  for (const column of Object.keys(COLUMNS) as Column[]) {
    cell(head, 'TH', () =>
      write(document, column, { y: TOP - 7, text: words[column], bold: true }),
    );
  }
  head.end();
  rows.forEach((each, i) => {
    const y = TOP + i * ROW;
    document.markContent('Artifact', { type: 'Layout' });
    document
      .moveTo(12 * MM, y * MM)
      .lineTo(198 * MM, y * MM)
      .lineWidth(0.5)
      .stroke('#999');
    document.endMarkedContent();
    const row = document.struct('TR');
    table.add(row);
    for (const column of ['name', 'room'] as const) {
      cell(row, 'TD', () => write(document, column, { y: y + 5, text: each[column] }));
    }
    cell(row, 'TD', () => addCode(document, y, each.code, words));
    for (const column of ['taken', 'reference'] as const) {
      cell(row, 'TD', () => write(document, column, { y: y + 5, text: each[column] }));
    }
    row.end();
  });
  table.end();
}

function addCode(
  document: PDFKit.PDFDocument,
  y: number,
  code: string | undefined,
  words: ListWords,
): void {
  const [x, width] = COLUMNS.code;
  if (code === undefined) {
    document
      .rect(x * MM, (y + 1.5) * MM, width * MM, (ROW - 3) * MM)
      .lineWidth(0.5)
      .stroke('#999');
    write(document, 'code', { y: y + 5.5, text: words.stickHere, x: x + 2 });
    return;
  }
  const place = { x: x * MM, y: (y + 2) * MM, width: width * MM, height: (ROW - 8) * MM };
  drawSymbol(document, { symbology: 'code128', text: code }, place);
  document.font('code').fontSize(9).fillColor('#000');
  document.text(inFours(code), x * MM, (y + ROW - 5.2) * MM, {
    ...{ width: width * MM, align: 'center', lineBreak: false },
  });
}

function write(
  document: PDFKit.PDFDocument,
  column: Column,
  { y, text, bold = false, x }: { y: number; text: string; bold?: boolean; x?: number },
): void {
  const [left, width] = COLUMNS[column];
  // Names longer than the column go on below it, and are never cut off.
  writeIn(document, text, { x: x ?? left, y, width, height: 11, size: 11, least: 8, bold });
}
