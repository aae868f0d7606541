import type { CheckScheme } from './scheme.ts';

const DIGITS = '0123456789';
export const ALPHANUMERIC = `${DIGITS}ABCDEFGHIJKLMNOPQRSTUVWXYZ`;

interface WeightedSum {
  readonly name: string;
  readonly source: string;
  readonly modulus: number;
  readonly weigh: (value: number, place: number) => number;
  readonly alphabet?: string;
  readonly checkAlphabet?: string;
  readonly payloadLength?: number;
}

/** A code passes when its weighted sum is a multiple of the modulus. */
const weightedSum = ({
  modulus,
  weigh,
  alphabet = DIGITS,
  checkAlphabet = alphabet,
  ...rest
}: WeightedSum): CheckScheme => ({
  ...rest,
  alphabet,
  checkAlphabet,
  checkLength: 1,
  oneIn: modulus,
  states: modulus,
  start: 0,
  accept: 0,
  step: (state, value, place) => (state + weigh(value, place)) % modulus,
  reversible: true,
});

/** Doubles, and adds the digits of a two-figure double. */
const doubled = (value: number): number => (value > 4 ? value * 2 - 9 : value * 2);

export const luhn = weightedSum({
  name: 'luhn',
  source: 'Luhn, US patent 2,950,048 (1960); ISO/IEC 7812-1 annex B',
  modulus: 10,
  weigh: (value, place) => (place % 2 === 1 ? doubled(value) : value),
});

export const gs1Mod10 = weightedSum({
  name: 'gs1-mod10',
  source: 'GS1 General Specifications, section 7.9: weights 3 and 1 from the right',
  modulus: 10,
  weigh: (value, place) => (place % 2 === 1 ? 3 * value : value),
});

export const isbn10 = weightedSum({
  name: 'isbn10',
  source: 'ISO 2108:1992: weights 10 to 1, X for 10',
  modulus: 11,
  weigh: (value, place) => (place + 1) * value,
  checkAlphabet: `${DIGITS}X`,
  payloadLength: 9,
});

export const nhsNumber = weightedSum({
  name: 'nhs-mod11',
  source:
    'NHS Data Dictionary, NHS number: weights 10 to 2; a remainder that asks for 10 is not issued',
  modulus: 11,
  weigh: (value, place) => (place + 1) * value,
  payloadLength: 9,
});

/** Weights 2, 3, ..., 10, 2, ... from the right; X for 10. The weights that are common practice. */
export const mod11 = weightedSum({
  name: 'mod11',
  source: 'common practice: weights 2 to 10 from the right, repeated; X for 10',
  modulus: 11,
  weigh: (value, place) => (place === 0 ? value : (((place - 1) % 9) + 2) * value),
  checkAlphabet: `${DIGITS}X`,
});

export const code39Mod43 = weightedSum({
  name: 'code39-mod43',
  source: 'ISO/IEC 16388 annex A: the sum of the values modulo 43',
  modulus: 43,
  // The check character equals the sum of the others, so it counts against it.
  weigh: (value, place) => (place === 0 ? 43 - value : value),
  alphabet: `${ALPHANUMERIC}-. $/+%`,
});
