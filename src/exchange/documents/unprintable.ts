import type { Fonts } from './paper.ts';
import { A4, openPaper } from './paper.ts';
import { lettersMissing } from './text-box.ts';

/** The letters of a text that our typefaces do not have, each once; where there are any, no PDF is made. */
export function unprintable(fonts: Fonts, text: string): readonly string[] {
  const paper = { title: '', language: 'en-GB', size: A4, made: new Date(0) };
  const document = openPaper(paper, fonts);
  return lettersMissing(document, text.normalize('NFC'));
}
