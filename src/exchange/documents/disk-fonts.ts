import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Fonts } from './paper.ts';

const require = createRequire(import.meta.url);
const read = (family: string, file: string): Uint8Array =>
  readFileSync(require.resolve(`@fontsource/${family}/files/${family}-${file}.woff`));

// WOFF and not WOFF2: cut down to the letters in use, the latter comes out of pdfkit's font reader empty.
let fonts: Fonts | undefined;

/** The typefaces from the packages on the disk. A tablet fetches the same files from its own store. */
export function diskFonts(): Fonts {
  fonts ??= {
    text: read('atkinson-hyperlegible', 'latin-400-normal'),
    'text-ext': read('atkinson-hyperlegible', 'latin-ext-400-normal'),
    bold: read('atkinson-hyperlegible', 'latin-700-normal'),
    'bold-ext': read('atkinson-hyperlegible', 'latin-ext-700-normal'),
    code: read('atkinson-hyperlegible-mono', 'latin-400-normal'),
  };
  return fonts;
}
