import bwipjs from 'bwip-js/node';
import type { Drawing } from '../barcodes/svg-paths.ts';
import { drawingOf } from '../barcodes/svg-paths.ts';

/** Symbols we print: Code 128 where a line fits, Data Matrix where only a small square does. */
export type Symbology = 'code128' | 'datamatrix';

export interface Place {
  /** In points, from the page's left and top edge. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const shape = (symbology: Symbology, text: string): Drawing =>
  drawingOf(
    bwipjs.toSVG({
      bcid: symbology,
      text,
      scale: 1,
      ...(symbology === 'code128' && { height: 8 }),
    }),
  );

/** Quiet zone that the standards ask for, in modules: ISO/IEC 15417 ten, ISO/IEC 16022 one (two here). */
const QUIET = { code128: 10, datamatrix: 2 } as const;

interface Fit {
  readonly drawing: Drawing;
  readonly sx: number;
  readonly sy: number;
  /** How wide the narrowest bar or square comes out. */
  readonly moduleMm: number;
}

/** bwip-js draws two units a module in a square symbol and one in a line. */
const UNITS = { code128: 1, datamatrix: 2 } as const;

/** How a symbol comes out in a place, its quiet zone inside it. Squares stay square. */
export function fitSymbol(symbology: Symbology, text: string, place: Place): Fit {
  const drawing = shape(symbology, text);
  const quiet = 2 * QUIET[symbology] * UNITS[symbology];
  const across = place.width / (drawing.width + quiet);
  const square = Math.min(across, place.height / (drawing.height + quiet));
  const [sx, sy] =
    symbology === 'datamatrix' ? [square, square] : [across, place.height / drawing.height];
  return { drawing, sx, sy, moduleMm: (sx * UNITS[symbology] * 25.4) / 72 };
}

/** Draws a symbol centred in a place. */
export function drawSymbol(
  document: PDFKit.PDFDocument,
  { symbology, text }: { readonly symbology: Symbology; readonly text: string },
  place: Place,
): void {
  const { drawing, sx, sy } = fitSymbol(symbology, text, place);
  document.save();
  document.translate(
    place.x + (place.width - drawing.width * sx) / 2,
    place.y + (place.height - drawing.height * sy) / 2,
  );
  document.scale(sx, sy);
  for (const { d, stroke } of drawing.paths) {
    if (stroke === undefined) document.path(d).fill('#000');
    else document.path(d).lineWidth(stroke).stroke('#000');
  }
  document.restore();
}
