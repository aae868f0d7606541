import type { Face } from './paper.ts';
import { hasLetter, MM } from './paper.ts';

/** Where words stand, in millimetres from the left top corner, and how large they may be, in points. */
export interface TextBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly size: number;
  /** Words that do not fit at `size` are set smaller, down to this, and then go on below the box. */
  readonly least: number;
  readonly align?: 'left' | 'center';
  readonly bold?: boolean;
}

/** Letters that stand next to each other and come from one typeface. */
interface Run {
  readonly face: Face;
  readonly text: string;
}
type Line = readonly Run[];

const LEADING = 1.35;

/**
 * Writes words into a box: wrapped between words, a new line for each line break, as large as fits. A letter
 * that the first face lacks comes from the second, so that no name loses one. Gives the height used in mm.
 */
export function writeIn(document: PDFKit.PDFDocument, text: string, box: TextBox): number {
  const { x, y, width, height, align = 'left', bold = false } = box;
  let size = box.size;
  let lines = wrapped(document, text, { size, width, bold });
  while (size > box.least && !fits(document, lines, { size, width, height })) {
    size = Math.max(box.least, size - 0.5);
    lines = wrapped(document, text, { size, width, bold });
  }
  const step = size * LEADING;
  if (align === 'center') lines = balanced(document, text, { size, width, bold });
  document.fillColor('#1e2a30').fontSize(size);
  lines.forEach((line, i) => {
    const indent = align === 'center' ? (width * MM - wide(document, line, size)) / 2 : 0;
    let at = x * MM + indent;
    line.forEach(({ face, text: run }, j) => {
      document.font(face).fontSize(size);
      // Whoever reads the words out of the file reads on over the end of a line.
      const ends = j === line.length - 1 && i < lines.length - 1;
      document.text(ends ? `${run} ` : run, at, y * MM + i * step, { lineBreak: false });
      at += document.widthOfString(run);
    });
  });
  return (lines.length * step) / MM;
}

/** Letters that neither face has: with any of them, a PDF would show a box where a letter was. */
export function lettersMissing(document: PDFKit.PDFDocument, text: string): readonly string[] {
  const lacks = (letter: string) =>
    /\S/u.test(letter) &&
    !hasLetter(document, 'text', letter) &&
    !hasLetter(document, 'text-ext', letter);
  return [...new Set(text)].filter(lacks);
}

interface Setting {
  readonly size: number;
  readonly width: number;
  readonly bold: boolean;
}

function wrapped(document: PDFKit.PDFDocument, text: string, setting: Setting): Line[] {
  return text.split('\n').flatMap((paragraph) => {
    const lines: string[] = [];
    let line = '';
    for (const word of paragraph.split(/\s+/u).filter(Boolean)) {
      const longer = line === '' ? word : `${line} ${word}`;
      const runs = runsOf(document, longer, setting.bold);
      if (line !== '' && wide(document, runs, setting.size) > setting.width * MM) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    return [...lines, line].map((each) => runsOf(document, each, setting.bold));
  });
}

/** As many lines as are needed anyway, all about as long as each other: no last word stands alone. */
function balanced(document: PDFKit.PDFDocument, text: string, setting: Setting): Line[] {
  return text.split('\n').flatMap((paragraph) => {
    let lines = wrapped(document, paragraph, setting);
    for (let width = setting.width; width > setting.width / 2; width -= 2) {
      const narrower = wrapped(document, paragraph, { ...setting, width });
      if (narrower.length > lines.length) break;
      lines = narrower;
    }
    return lines;
  });
}

const fits = (
  document: PDFKit.PDFDocument,
  lines: readonly Line[],
  { size, width, height }: Omit<Setting, 'bold'> & { readonly height: number },
): boolean =>
  lines.length * size * LEADING <= height * MM &&
  lines.every((line) => wide(document, line, size) <= width * MM);

function wide(document: PDFKit.PDFDocument, line: Line, size: number): number {
  return line.reduce(
    (sum, { face, text }) => sum + document.font(face).fontSize(size).widthOfString(text),
    0,
  );
}

function runsOf(document: PDFKit.PDFDocument, text: string, bold: boolean): Line {
  const [first, second] = bold ? (['bold', 'bold-ext'] as const) : (['text', 'text-ext'] as const);
  const runs: { face: Face; text: string }[] = [];
  for (const letter of text.normalize('NFC')) {
    const other = !hasLetter(document, first, letter) && hasLetter(document, second, letter);
    const face = other ? second : first;
    const last = runs.at(-1);
    if (last?.face === face) last.text += letter;
    else runs.push({ face, text: letter });
  }
  return runs;
}
