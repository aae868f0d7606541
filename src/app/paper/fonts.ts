import text from '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-400-normal.woff?url';
import bold from '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-700-normal.woff?url';
import textExt from '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-ext-400-normal.woff?url';
import boldExt from '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-ext-700-normal.woff?url';
import code from '@fontsource/atkinson-hyperlegible-mono/files/atkinson-hyperlegible-mono-latin-400-normal.woff?url';
import type { Face, Fonts } from '../../exchange/documents/paper.ts';
import { faces } from '../../exchange/documents/paper.ts';

const files: Readonly<Record<Face, string>> = {
  ...{ text, bold, code, 'text-ext': textExt, 'bold-ext': boldExt },
};

/** The typefaces that paper is set in, from the tablet's own store: there is no need of a signal. */
export async function fetchFonts(): Promise<Fonts> {
  const bytes = await Promise.all(
    faces.map(async (face) => {
      const answer = await fetch(files[face]);
      if (!answer.ok) throw new Error(`no typeface: ${face}`);
      return [face, new Uint8Array(await answer.arrayBuffer())] as const;
    }),
  );
  return Object.fromEntries(bytes) as Fonts;
}
