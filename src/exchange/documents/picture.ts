import type { PictureName } from '../../care/easy-read/pictures.ts';
import { pictures } from '../../care/easy-read/pictures.ts';
import type { Shape, Tint } from '../../care/easy-read/shapes.ts';
import { MM } from './paper.ts';

/** Colours on white paper; the lines carry the meaning, so a grey printer will do. */
const INKS: Record<Tint, string> = {
  ...{ ink: '#1e2a30', paper: '#ffffff', skin: '#e3b58c', hair: '#6b4a2f' },
  ...{ cloth: '#cfd8d3', calm: '#7fb3b0', warm: '#e0b15a', stop: '#b5476f' },
};

/** Draws a picture in a square of so many millimetres, from its left top corner. */
export function drawPicture(
  document: PDFKit.PDFDocument,
  picture: PictureName,
  { x, y, size }: { readonly x: number; readonly y: number; readonly size: number },
): void {
  const shapes: readonly Shape[] = pictures[picture];
  document.save();
  document.translate(x * MM, y * MM).scale((size * MM) / 100);
  for (const { d, fill, line, wide = 0 } of shapes) {
    document.path(d).lineCap('round').lineJoin('round').lineWidth(wide);
    if (fill !== undefined && line !== undefined) document.fillAndStroke(INKS[fill], INKS[line]);
    else if (fill !== undefined) document.fill(INKS[fill]);
    else if (line !== undefined) document.stroke(INKS[line]);
  }
  document.restore();
}
