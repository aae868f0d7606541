import type { ForWhom } from '../../care/easy-read/strip.ts';
import { stripFor } from '../../care/easy-read/strip.ts';
import type { EasyWords } from '../../care/easy-read/words.ts';
import type { Fonts } from './paper.ts';
import { A4, bytesOf, openPaper } from './paper.ts';
import { drawPicture } from './picture.ts';
import { aLineEach } from './sentences.ts';
import { writeIn } from './text-box.ts';

const [WIDTH, HEIGHT] = A4;
const MARGIN = 15;
const FULL = { x: MARGIN, width: WIDTH - 2 * MARGIN, align: 'center' } as const;
/** Points. Large print begins at 16 to 18 (common practice, no source); the booklet is for those who see little. */
const LARGE = { size: 34, least: 18 } as const;
const SMALL = { size: 10, least: 8 } as const;

export interface BookletOf {
  readonly called: string;
  readonly whom: ForWhom;
  readonly words: EasyWords;
  readonly made: Date;
  readonly fonts: Fonts;
}

/**
 * The booklet: one picture and its sentences a page, A4, large print. Tagged: each page is a section with a
 * figure that has its sentence as alternative text, and a paragraph; the language is the booklet's own.
 */
export function bookletPdf(given: BookletOf): Promise<Uint8Array<ArrayBuffer>> {
  const { called, whom, words, made, fonts } = given;
  const title = words.title(called);
  const document = openPaper({ title, language: words.code, size: A4, made }, fonts);
  const root = document.struct('Document');
  document.addStructure(root);
  const cards = stripFor(whom);
  cards.forEach(({ card, picture }, i) => {
    document.addPage();
    const section = document.struct('Sect');
    root.add(section);
    const text = words.cards[card](whom);
    const head = () =>
      void writeIn(document, title, {
        ...FULL,
        y: 14,
        height: 24,
        size: 34,
        least: 18,
        bold: true,
      });
    if (i === 0) section.add(document.struct('H1', {}, head));
    const figure = () => drawPicture(document, picture, { x: 37.5, y: 40, size: 135 });
    section.add(document.struct('Figure', { alt: text }, figure));
    const said = () =>
      void writeIn(document, aLineEach(text), {
        ...FULL,
        ...LARGE,
        y: 185,
        height: 88,
        bold: true,
      });
    section.add(document.struct('P', {}, said));
    const foot = words.checked ? '' : `${words.needsReader} `;
    const number = () =>
      void writeIn(document, `${foot}${i + 1} / ${cards.length}`, {
        ...{ ...FULL, ...SMALL, y: HEIGHT - 14, height: 8 },
      });
    section.add(document.struct('P', {}, number));
    section.end();
  });
  root.end();
  return bytesOf(document);
}

/** Cards in a row of the story, and how high one is, so that twenty fit on a page. */
const COLUMNS = 3;
const CELL = { width: 62, gap: 3 } as const;
const TOP = 26;

/** The same story on one sheet, three pictures a row: for a wall or a pocket. */
export function storyPdf(given: BookletOf): Promise<Uint8Array<ArrayBuffer>> {
  const { called, whom, words, made, fonts } = given;
  const title = words.title(called);
  const document = openPaper({ title, language: words.code, size: A4, made }, fonts);
  document.addPage();
  const root = document.struct('Document');
  document.addStructure(root);
  const head = () =>
    void writeIn(document, title, { ...FULL, y: 9, height: 12, size: 22, least: 12, bold: true });
  root.add(document.struct('H1', {}, head));
  const cards = stripFor(whom);
  const rows = Math.ceil(cards.length / COLUMNS);
  const foot = words.checked ? 0 : 8;
  const high = (HEIGHT - TOP - 8 - foot) / rows;
  // What is left under a picture holds three lines.
  const picture = Math.min(high * 0.55, 40);
  const list = document.struct('L');
  root.add(list);
  cards.forEach(({ card, picture: name }, i) => {
    const text = words.cards[card](whom);
    const x = (WIDTH - COLUMNS * CELL.width - (COLUMNS - 1) * CELL.gap) / 2;
    const left = x + (i % COLUMNS) * (CELL.width + CELL.gap);
    const y = TOP + Math.floor(i / COLUMNS) * high;
    const item = document.struct('LI');
    list.add(item);
    const figure = () =>
      drawPicture(document, name, { x: left + (CELL.width - picture) / 2, y, size: picture });
    item.add(document.struct('Figure', { alt: text }, figure));
    const said = () =>
      void writeIn(document, text, {
        ...{ x: left, y: y + picture + 1, width: CELL.width, height: high - picture - 2 },
        ...{ size: 11.5, least: 8, align: 'center' },
      });
    item.add(document.struct('LBody', {}, said));
    item.end();
  });
  list.end();
  if (!words.checked) {
    const said = () =>
      void writeIn(document, words.needsReader, { ...FULL, ...SMALL, y: HEIGHT - 12, height: 8 });
    root.add(document.struct('P', {}, said));
  }
  root.end();
  return bytesOf(document);
}
