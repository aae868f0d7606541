import { diskFonts } from './disk-fonts.ts';
import type { LabelStock } from './label-stocks.ts';
import { labelsOn } from './label-stocks.ts';
import { bytesOf, MM, openPaper } from './paper.ts';
import type { Place, Symbology } from './symbol.ts';
import { drawSymbol, fitSymbol } from './symbol.ts';

export interface LabelOrder {
  readonly codes: readonly string[];
  /** Labels of each code, side by side: tube, bag and spare. */
  readonly copies: number;
  readonly stock: LabelStock;
  /** The first free label of the first sheet, counted from 1 along the rows. */
  readonly startAt: number;
  readonly title: string;
  readonly made: Date;
}

export type LabelSheet =
  | { readonly ok: true; readonly pdf: Uint8Array; readonly pages: number }
  | { readonly ok: false; readonly reason: 'no-codes' | 'start-off-sheet' | 'code-too-long' };

/** Thinnest bar that office printers and hand scanners manage with ease (common practice, no source). */
const THINNEST_MM = 0.25;

/** Sheets of labels: the code as bars and in groups of four, and nothing about anybody. */
export async function labelSheet(order: LabelOrder): Promise<LabelSheet> {
  const { stock, startAt, codes, copies } = order;
  const each = labelsOn(stock);
  if (codes.length === 0 || copies < 1) return { ok: false, reason: 'no-codes' };
  if (!Number.isInteger(startAt) || startAt < 1 || startAt > each) {
    return { ok: false, reason: 'start-off-sheet' };
  }
  const document = openPaper({ ...order, language: 'en-GB', size: stock.paper }, diskFonts());
  const labels = codes.flatMap((code) => Array.from({ length: copies }, () => code));
  let pages = 0;
  for (const [i, code] of labels.entries()) {
    const at = startAt - 1 + i;
    if (i === 0 || at % each === 0) {
      document.addPage();
      pages += 1;
    }
    if (!drawLabel(document, stock, { code, at: at % each }))
      return { ok: false, reason: 'code-too-long' };
  }
  return { ok: true, pdf: await bytesOf(document), pages };
}

/** A line of bars where they come out wide enough, or a square; false where neither does. */
function symbologyFor(code: string, place: Place): Symbology | undefined {
  return (['code128', 'datamatrix'] as const).find(
    (each) => fitSymbol(each, code, place).moduleMm >= THINNEST_MM,
  );
}

function drawLabel(
  document: PDFKit.PDFDocument,
  { label, origin, pitch, columns }: LabelStock,
  { code, at }: { code: string; at: number },
): boolean {
  const [width, height] = label.map((side) => side * MM) as [number, number];
  const x = (origin[0] + (at % columns) * pitch[0]) * MM;
  const y = (origin[1] + Math.floor(at / columns) * pitch[1]) * MM;
  const text = Math.min(11, height / 6);
  const inset = 2 * MM;
  const place = {
    ...{ x: x + inset, y: y + inset, width: width - 2 * inset },
    height: height - 3 * inset - text,
  };
  const symbology = symbologyFor(code, place);
  if (symbology === undefined) return false;
  const figure = document.struct('Figure', { alt: code }, () => {
    drawSymbol(document, { symbology, text: code }, place);
  });
  document.addStructure(figure);
  const words = document.struct('P', {}, () => {
    document.font('code').fontSize(text).fillColor('#000');
    document.text(inFours(code), x + inset, y + height - inset - text * 1.1, {
      ...{ width: width - 2 * inset, align: 'center', lineBreak: false },
    });
  });
  document.addStructure(words);
  figure.end();
  words.end();
  return true;
}

/** Groups of four, as the screens show them. */
export const inFours = (code: string): string => code.match(/.{1,4}/gu)?.join(' ') ?? '';
