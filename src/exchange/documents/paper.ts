import PDFDocument from 'pdfkit';

export const MM = 72 / 25.4;
export const A4 = [210, 297] as const;

/** Every typeface that our paper uses, as the bytes of its file. `ext` has the letters beyond Western Europe. */
export const faces = ['text', 'text-ext', 'bold', 'bold-ext', 'code'] as const;
export type Face = (typeof faces)[number];
export type Fonts = Readonly<Record<Face, Uint8Array>>;

export interface Paper {
  readonly title: string;
  readonly language: string;
  /** In millimetres. */
  readonly size: readonly [width: number, height: number];
  /** Shown in the file's details; not the clock of the machine, so that one input gives one file. */
  readonly made: Date;
}

/** Opens a tagged document (PDF 1.7, structure tree, language, title shown) with the app's typefaces. */
export function openPaper(
  { title, language, size, made }: Paper,
  fonts: Fonts,
): PDFKit.PDFDocument {
  const document = new PDFDocument({
    ...{ size: size.map((each) => each * MM) as [number, number], margin: 0 },
    ...{ pdfVersion: '1.7', tagged: true, displayTitle: true, lang: language },
    info: { Title: title, CreationDate: made },
    autoFirstPage: false,
    // None to begin with: its own first choice is a file that no tablet has.
    font: null as unknown as string,
  });
  for (const face of faces) {
    document.registerFont(face, fonts[face]);
  }
  return document;
}

/** Whether a typeface has a letter. Asked of the open font itself, since a face is a part of its family. */
export function hasLetter(document: PDFKit.PDFDocument, face: Face, letter: string): boolean {
  document.font(face);
  const { _font: open } = document as unknown as {
    readonly _font: { readonly font: { hasGlyphForCodePoint: (point: number) => boolean } };
  };
  return open.font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0);
}

/** Ends the document and gives its bytes. */
export function bytesOf(document: PDFKit.PDFDocument): Promise<Uint8Array<ArrayBuffer>> {
  return new Promise((done, fail) => {
    const parts: Uint8Array[] = [];
    document.on('data', (part: Uint8Array) => parts.push(part));
    document.on('end', () => done(joined(parts)));
    document.on('error', fail);
    document.end();
  });
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}
