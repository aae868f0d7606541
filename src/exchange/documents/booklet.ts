import type { PictureName } from '../../care/easy-read/pictures.ts';
import { pictures } from '../../care/easy-read/pictures.ts';
import type { Shape, Tint } from '../../care/easy-read/shapes.ts';
import type { ForWhom } from '../../care/easy-read/strip.ts';
import { stripFor } from '../../care/easy-read/strip.ts';
import type { EasyWords } from '../../care/easy-read/words.ts';
import { bytesOf, MM, openPaper } from './paper.ts';

/** Colours on white paper; the lines carry the meaning, so a grey printer will do. */
const INKS: Record<Tint, string> = {
  ...{ ink: '#1e2a30', paper: '#ffffff', skin: '#e3b58c', hair: '#6b4a2f' },
  ...{ cloth: '#cfd8d3', calm: '#7fb3b0', warm: '#e0b15a', stop: '#b5476f' },
};
const A4 = [210, 297] as const;
const MARGIN = 20;
/** Points. Easy-read guidance asks for 14 and more; this is for those who do not see well. */
const LARGE = 28;

export interface BookletOf {
  readonly called: string;
  readonly whom: ForWhom;
  readonly words: EasyWords;
  readonly made: Date;
}

/**
 * The booklet: one picture and its sentences a page, A4, large print. Tagged: each page is a section with a
 * figure that has its sentence as alternative text, and a paragraph; the language is the booklet's own.
 */
export function bookletPdf({ called, whom, words, made }: BookletOf): Promise<Buffer> {
  const title = words.title(called);
  const document = openPaper({ title, language: words.code, size: A4, made });
  const root = document.struct('Document');
  document.addStructure(root);
  stripFor(whom).forEach(({ card, picture }, i) => {
    document.addPage();
    const section = document.struct('Sect');
    root.add(section);
    const text = words.cards[card](whom);
    if (i === 0) section.add(document.struct('H1', {}, () => write(document, title, 16, 34)));
    section.add(
      document.struct('Figure', { alt: text }, () =>
        draw(document, picture, { x: 45, y: i === 0 ? 45 : 30, size: 120 }),
      ),
    );
    section.add(document.struct('P', {}, () => write(document, text, i === 0 ? 175 : 160, LARGE)));
    if (!words.checked)
      section.add(document.struct('P', {}, () => write(document, words.needsReader, 282, 10)));
    section.end();
  });
  root.end();
  return bytesOf(document);
}

/** The same story on one sheet, three pictures a row: for a wall or a pocket. */
export function storyPdf({ called, whom, words, made }: BookletOf): Promise<Buffer> {
  const title = words.title(called);
  const document = openPaper({ title, language: words.code, size: A4, made });
  document.addPage();
  const root = document.struct('Document');
  document.addStructure(root);
  root.add(document.struct('H1', {}, () => write(document, title, 8, 20)));
  const list = document.struct('L');
  root.add(list);
  stripFor(whom).forEach(({ card, picture }, i) => {
    const text = words.cards[card](whom);
    const [x, y] = [12 + (i % 3) * 63, 22 + Math.floor(i / 3) * 44];
    const item = document.struct('LI');
    list.add(item);
    item.add(
      document.struct('Figure', { alt: text }, () =>
        draw(document, picture, { x: x + 18, y, size: 23 }),
      ),
    );
    item.add(
      document.struct('LBody', {}, () => {
        document.font('text').fontSize(10.5).fillColor(INKS.ink);
        document.text(text, x * MM, (y + 24) * MM, { width: 60 * MM, align: 'center' });
      }),
    );
    item.end();
  });
  list.end();
  if (!words.checked) {
    root.add(document.struct('P', {}, () => write(document, words.needsReader, 286, 10)));
  }
  root.end();
  return bytesOf(document);
}

function write(document: PDFKit.PDFDocument, text: string, y: number, size: number): void {
  document
    .font(size > 18 ? 'bold' : 'text')
    .fontSize(size)
    .fillColor(INKS.ink);
  document.text(text, MARGIN * MM, y * MM, {
    width: (A4[0] - 2 * MARGIN) * MM,
    align: 'center',
    lineGap: size / 4,
  });
}

/** Millimetres from the top left corner; pictures are squares of 100. */
function draw(
  document: PDFKit.PDFDocument,
  picture: PictureName,
  { x, y, size }: { x: number; y: number; size: number },
): void {
  const shapes: readonly Shape[] = pictures[picture];
  document.save();
  document.translate(x * MM, y * MM).scale((size * MM) / 100);
  for (const { d, fill, line, wide = 0 } of shapes) {
    document.path(d).lineCap('round').lineJoin('round').lineWidth(wide);
    if (fill !== undefined && line !== undefined) document.fillAndStroke(INKS[fill], INKS[line]);
    else if (fill !== undefined) document.fill(INKS[fill]);
    else if (line !== undefined) document.stroke(INKS[line]);
  }
  document.restore();
}
