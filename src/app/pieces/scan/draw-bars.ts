import { code128, drawingSVG } from 'bwip-js/browser';
import type { Drawing } from '../../../exchange/barcodes/svg-paths.ts';
import { drawingOf } from '../../../exchange/barcodes/svg-paths.ts';

/** The bars of a code as Code 128. Only this symbology's part of the library is taken in. */
export const drawBars = (text: string): Drawing =>
  drawingOf(code128<string>({ bcid: 'code128', text, scale: 1, height: 8 }, drawingSVG()));
