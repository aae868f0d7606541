import type { BookletOf } from '../../exchange/documents/booklet.ts';
import { bookletPdf, storyPdf } from '../../exchange/documents/booklet.ts';
import type { LetterOf } from '../../exchange/documents/letter.ts';
import { letterPdf } from '../../exchange/documents/letter.ts';
import { unprintable } from '../../exchange/documents/unprintable.ts';
import { fetchFonts } from './fonts.ts';

/** A document for the person, in words that are settled. */
export type PaperOf =
  | ({ readonly paper: 'booklet' | 'story' } & Omit<BookletOf, 'fonts'>)
  | ({ readonly paper: 'letter' } & Omit<LetterOf, 'fonts'>);

export type Paper =
  | { readonly ok: true; readonly pdf: Uint8Array<ArrayBuffer> }
  /** Letters that our typefaces do not have: the browser's own printing has more. */
  | { readonly ok: false; readonly letters: readonly string[] };

/** Makes a PDF on the tablet. With the library and typefaces it is a script of its own, fetched when asked for. */
export async function makePaper(of: PaperOf): Promise<Paper> {
  const fonts = await fetchFonts();
  const letters = unprintable(fonts, textsOf(of));
  if (letters.length > 0) return { ok: false, letters };
  switch (of.paper) {
    case 'booklet':
      return { ok: true, pdf: await bookletPdf({ ...of, fonts }) };
    case 'story':
      return { ok: true, pdf: await storyPdf({ ...of, fonts }) };
    case 'letter':
      return { ok: true, pdf: await letterPdf({ ...of, fonts }) };
  }
}

/** What of the document was typed by somebody. Our own words are known to have their letters. */
const textsOf = (of: PaperOf): string =>
  of.paper === 'letter'
    ? [of.title, of.service, of.madeLine, ...of.lines.map(({ value }) => value)].join(' ')
    : [of.called, of.whom.reward, of.whom.helps, ...of.whom.staff].join(' ');
