/**
 * Facts of the GS1 General Specifications (release 25) and the GS1 Barcode Syntax Dictionary, as data.
 * An application identifier (AI) says what the characters after it mean.
 */
export interface Identifier {
  readonly title: string;
  /** Exact length, or longest where `variable`. */
  readonly length: number;
  readonly variable: boolean;
  readonly holds: 'digits' | 'gtin' | 'date' | 'text';
}

const fixed = (title: string, length: number, holds: Identifier['holds']): Identifier => ({
  ...{ title, length, holds },
  variable: false,
});
const text = (title: string, length: number): Identifier => ({
  ...{ title, length },
  variable: true,
  holds: 'text',
});

/** The identifiers this program gives a meaning to. Others are stepped over by their length. */
export const identifiers: Readonly<Record<string, Identifier>> = {
  '01': fixed('GTIN', 14, 'gtin'),
  '02': fixed('CONTENT', 14, 'gtin'),
  '10': text('BATCH/LOT', 20),
  '11': fixed('PROD DATE', 6, 'date'),
  '13': fixed('PACK DATE', 6, 'date'),
  '15': fixed('BEST BEFORE', 6, 'date'),
  '17': fixed('USE BY or EXPIRY', 6, 'date'),
  '20': fixed('VARIANT', 2, 'digits'),
  '21': text('SERIAL', 20),
  '22': text('CPV', 20),
  '30': { title: 'VAR COUNT', length: 8, variable: true, holds: 'digits' },
  '37': { title: 'COUNT', length: 8, variable: true, holds: 'digits' },
  '240': text('ADDITIONAL ID', 30),
  '241': text('CUST. PART NO.', 30),
};

/**
 * Element strings with a predefined length, by their first two digits, the AI included (General
 * Specifications, figure 7.8.5-2): after these no separator is needed.
 */
export const predefinedLength: Readonly<Record<string, number>> = {
  ...{ '00': 20, '01': 16, '02': 16, '03': 16, '04': 18 },
  ...{ '11': 8, '12': 8, '13': 8, '14': 8, '15': 8, '16': 8, '17': 8, '18': 8, '19': 8, '20': 4 },
  ...{ '31': 10, '32': 10, '33': 10, '34': 10, '35': 10, '36': 10, '41': 16 },
};

const FOUR = new Set([
  '31',
  '32',
  '33',
  '34',
  '35',
  '36',
  '39',
  '43',
  '70',
  '72',
  '80',
  '81',
  '82',
]);
const THREE = new Set(['23', '24', '25', '40', '41', '42', '71']);
const TWO = /^(?:0[0-4]|1[0-9]|2[0-2]|3[07]|9[0-9])$/;

/** How many digits an AI has, told by its first two; undefined where none begins so. */
export function identifierLength(firstTwo: string): number | undefined {
  if (FOUR.has(firstTwo)) return 4;
  if (THREE.has(firstTwo)) return 3;
  return TWO.test(firstTwo) ? 2 : undefined;
}

/** Letters, digits and signs that text may hold: GS1 AI encodable character set 82. */
export const SET_82 = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]*$/;

/** What ends an element without a predefined length: FNC1 in the symbol, this in what a scanner sends. */
export const GS = '\u001d';

/**
 * How a scanner may say what kind of symbol it read (ISO/IEC 15424): GS1-128, DataMatrix, QR, DataBar,
 * EAN/UPC. The first four carry element strings.
 */
export const SYMBOLOGY = /^\](?:C1|d2|Q3|e0|E[0-4]|J1)/;
