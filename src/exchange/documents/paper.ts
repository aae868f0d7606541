import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';

export const MM = 72 / 25.4;

const require = createRequire(import.meta.url);
const font = (family: string, file: string): string =>
  require.resolve(`@fontsource/${family}/files/${family}-latin-${file}.woff`);

export interface Paper {
  readonly title: string;
  readonly language: string;
  /** In millimetres. */
  readonly size: readonly [width: number, height: number];
  /** Shown in the file's details; not the clock of the machine, so that one input gives one file. */
  readonly made: Date;
}

/** Opens a tagged document (PDF 1.7, structure tree, language, title shown) with the app's typefaces. */
export function openPaper({ title, language, size, made }: Paper): PDFKit.PDFDocument {
  const document = new PDFDocument({
    ...{ size: size.map((each) => each * MM) as [number, number], margin: 0 },
    ...{ pdfVersion: '1.7', tagged: true, displayTitle: true, lang: language },
    info: { Title: title, CreationDate: made },
    autoFirstPage: false,
  });
  document.registerFont('text', font('atkinson-hyperlegible', '400-normal'));
  document.registerFont('bold', font('atkinson-hyperlegible', '700-normal'));
  document.registerFont('code', font('atkinson-hyperlegible-mono', '400-normal'));
  return document;
}

/** Ends the document and gives its bytes. */
export function bytesOf(document: PDFKit.PDFDocument): Promise<Buffer> {
  return new Promise((done, fail) => {
    const parts: Buffer[] = [];
    document.on('data', (part: Buffer) => parts.push(part));
    document.on('end', () => done(Buffer.concat(parts)));
    document.on('error', fail);
    document.end();
  });
}
