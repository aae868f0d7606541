import bwipjs from 'bwip-js/node';

/** Quiet zone on each side in modules (ISO/IEC 18004 section 6.3.8 asks for four). */
const QUIET = 4;

/** A QR code as SVG, dark on white. */
export const qrSvg = (text: string): string =>
  bwipjs.toSVG({ bcid: 'qrcode', text, padding: QUIET, backgroundcolor: 'ffffff' });

/** A QR code for a terminal, two modules to a character, dark on white whatever the terminal's colours. */
export function qrText(text: string): string {
  const [symbol] = bwipjs.raw('qrcode', text) as unknown as readonly Matrix[];
  if (!symbol) return '';
  const side = symbol.pixx + 2 * QUIET;
  const lines: string[] = [];
  for (let y = 0; y < side; y += 2) {
    let line = '';
    for (let x = 0; x < side; x++) line += glyph(dark(symbol, x, y), dark(symbol, x, y + 1));
    lines.push(`\u001b[30;107m${line}\u001b[0m`);
  }
  return lines.join('\n');
}

interface Matrix {
  readonly pixs: readonly number[];
  readonly pixx: number;
  readonly pixy: number;
}

function dark({ pixs, pixx, pixy }: Matrix, x: number, y: number): boolean {
  const [column, row] = [x - QUIET, y - QUIET];
  if (column < 0 || row < 0 || column >= pixx || row >= pixy) return false;
  return pixs[row * pixx + column] === 1;
}

const glyph = (upper: boolean, lower: boolean): string =>
  upper ? (lower ? '█' : '▀') : lower ? '▄' : ' ';
