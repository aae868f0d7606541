import type { PictureName } from '../../care/easy-read/pictures.ts';
import type { Fonts } from './paper.ts';
import { A4, bytesOf, openPaper } from './paper.ts';
import { drawPicture } from './picture.ts';
import { writeIn } from './text-box.ts';

/** A letter in words that are settled: this file only sets them on paper. */
export interface LetterOf {
  readonly service: string;
  readonly title: string;
  /** When it was made and by whom. */
  readonly madeLine: string;
  readonly foot: string;
  /** Easy-read: one picture, and sentences in large print. */
  readonly picture?: PictureName | undefined;
  readonly sentences: readonly string[];
  /** For the doctor: what the record says, line by line. */
  readonly lines: readonly { readonly label: string; readonly value: string }[];
  readonly language: string;
  readonly made: Date;
  readonly fonts: Fonts;
}

const LEFT = 20;
const WIDTH = A4[0] - 2 * LEFT;

/** One A4 page, tagged: heading, a figure if there is one, a paragraph a sentence, a table of the record. */
export function letterPdf(letter: LetterOf): Promise<Uint8Array<ArrayBuffer>> {
  const { title, language, made, fonts, picture } = letter;
  const document = openPaper({ title, language, size: A4, made }, fonts);
  document.addPage();
  const root = document.struct('Document');
  document.addStructure(root);
  const put = (tag: 'H1' | 'P', text: string, box: Parameters<typeof writeIn>[2]): number => {
    let used = 0;
    const draw = () => void (used = writeIn(document, text, box));
    const element = document.struct(tag, {}, draw);
    root.add(element);
    // Drawn when its element is ended, and its height is wanted now.
    element.end();
    return used;
  };
  const line = { x: LEFT, width: WIDTH } as const;
  put('P', letter.service, { ...line, y: 15, height: 7, size: 12, least: 9 });
  put('P', letter.madeLine, { ...line, y: 22, height: 6, size: 10, least: 8 });
  let y = 36;
  y += put('H1', title, { ...line, y, height: 22, size: 24, least: 14, bold: true }) + 6;
  if (picture !== undefined) {
    const size = 60;
    const drawn = () => drawPicture(document, picture, { x: LEFT, y, size });
    // The sentences beside it say the same, so it is decoration to whoever does not see it.
    const figure = document.struct('Figure', { alt: letter.sentences[0] ?? title }, drawn);
    root.add(figure);
    figure.end();
    y += size + 8;
  }
  const large = picture !== undefined;
  for (const sentence of letter.sentences) {
    const size = large ? 20 : 13;
    y += put('P', sentence, { ...line, y, height: 60, size, least: size }) + (large ? 4 : 3);
  }
  if (letter.lines.length > 0) addTable(document, root, { lines: letter.lines, y: y + 4 });
  put('P', letter.foot, { ...line, y: 270, height: 16, size: 11, least: 8 });
  root.end();
  return bytesOf(document);
}

const LABEL = 45;

function addTable(
  document: PDFKit.PDFDocument,
  root: PDFKit.PDFStructureElement,
  { lines, y: top }: { readonly lines: LetterOf['lines']; readonly y: number },
): void {
  const table = document.struct('Table');
  root.add(table);
  let y = top;
  for (const { label, value } of lines) {
    const row = document.struct('TR');
    table.add(row);
    let used = 0;
    const cell = (tag: 'TH' | 'TD', draw: () => number) => {
      const element = document.struct(tag, {}, () => void (used = Math.max(used, draw())));
      row.add(element);
      element.end();
    };
    const box = { y, height: 40, size: 13, least: 9 } as const;
    cell('TH', () => writeIn(document, label, { ...box, x: LEFT, width: LABEL, bold: true }));
    cell('TD', () =>
      writeIn(document, value, { ...box, x: LEFT + LABEL + 5, width: WIDTH - LABEL - 5 }),
    );
    row.end();
    y += used + 3;
  }
  table.end();
}
