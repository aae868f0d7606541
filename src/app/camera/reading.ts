/** One symbol that the reader found in a picture, whole or not. */
export interface Symbol {
  readonly text: string;
  /** As zxing names it: Code128, Code39, ITF, EAN13, QRCode, DataMatrix… */
  readonly format: string;
  /** False where the symbol was found and could not be read to its end. */
  readonly whole: boolean;
}

/** A picture for the worker; its buffer is handed over, not copied. */
export interface Ask {
  readonly id: number;
  readonly data: ArrayBuffer;
  readonly width: number;
  readonly height: number;
}

export interface Answer {
  readonly id: number;
  readonly symbols: readonly Symbol[];
  /** Milliseconds that the reader itself took. */
  readonly took: number;
  readonly failed?: true;
}

/** The kinds of symbol on kits and boxes. */
const FORMATS = ['Code128', 'Code39', 'ITF', 'EANUPC', 'QRCode', 'DataMatrix'] as const;

/**
 * How the reader looks. White on black is not tried (no kit is printed so) and at most three symbols
 * are sought: one, and enough to see that there are two.
 */
export const OPTIONS = {
  formats: [...FORMATS],
  tryHarder: true,
  tryRotate: true,
  tryInvert: false,
  tryDownscale: true,
  maxNumberOfSymbols: 3,
  returnErrors: true,
  textMode: 'Plain' as const,
};

/** The shape of a result, as far as this program reads it. */
export const symbolOf = (found: {
  readonly text: string;
  readonly format: string;
  readonly isValid: boolean;
}): Symbol => ({ text: found.text, format: found.format, whole: found.isValid });
