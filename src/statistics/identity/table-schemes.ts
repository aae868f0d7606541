import type { CheckScheme } from './scheme.ts';

const DIGITS = '0123456789';

/** Multiplication in the dihedral group of the pentagon: 0-4 turn it, 5-9 turn it over. */
function dihedral(a: number, b: number): number {
  if (a < 5) return b < 5 ? (a + b) % 5 : ((a + b) % 5) + 5;
  return b < 5 ? ((a - b) % 5) + 5 : (a - b + 5) % 5;
}

/** Verhoeff's permutation applied 0 to 7 times; the eighth time is the first again. */
const PERMUTATIONS: readonly (readonly number[])[] = (() => {
  const base = [1, 5, 7, 6, 2, 8, 3, 0, 9, 4];
  const rows = [Array.from(DIGITS, Number)];
  while (rows.length < 8)
    rows.push((rows[rows.length - 1] as number[]).map((d) => base[d] as number));
  return rows;
})();

export const verhoeff: CheckScheme = {
  name: 'verhoeff',
  source: 'Verhoeff (1969), Error detecting decimal codes, Mathematical Centre Tract 29',
  alphabet: DIGITS,
  checkAlphabet: DIGITS,
  checkLength: 1,
  oneIn: 10,
  states: 10,
  start: 0,
  accept: 0,
  step: (state, value, place) =>
    dihedral((PERMUTATIONS[place % 8] as readonly number[])[value] as number, state),
  reversible: true,
};

/** Damm's totally anti-symmetric quasigroup of order 10. */
const QUASIGROUP = [
  '0317598642',
  '7092154863',
  '4206871359',
  '1750983426',
  '6123045978',
  '3674209581',
  '5869720134',
  '8945362017',
  '9438617205',
  '2581436790',
].map((row) => Array.from(row, Number));

export const damm: CheckScheme = {
  name: 'damm',
  source: 'Damm (2004), Total anti-symmetrische Quasigruppen, thesis, Marburg',
  alphabet: DIGITS,
  checkAlphabet: DIGITS,
  checkLength: 1,
  oneIn: 10,
  states: 10,
  start: 0,
  accept: 0,
  step: (state, value) => (QUASIGROUP[state] as number[])[value] as number,
  reversible: true,
};

const S10_WEIGHTS = [8, 6, 4, 2, 3, 5, 9, 7];
const S10_PASS = 11;
const S10_FAIL = 12;

/** The check digit for a weighted sum: 11 less the remainder, 10 written as 0 and 11 as 5. */
const s10Check = (sum: number): number => (sum === 0 ? 5 : sum === 1 ? 0 : 11 - sum);

/** Not reversible: remainders 0 and 6 both ask for a 5, so some wrong digits pass. */
export const upuS10: CheckScheme = {
  name: 'upu-s10',
  source: 'Universal Postal Union standard S10 (weights from memory)',
  alphabet: DIGITS,
  checkAlphabet: DIGITS,
  checkLength: 1,
  oneIn: 10,
  payloadLength: 8,
  states: 13,
  start: 0,
  accept: S10_PASS,
  step: (state, value, place) => {
    if (place > 0) return (state + value * (S10_WEIGHTS[8 - place] as number)) % 11;
    return s10Check(state) === value ? S10_PASS : S10_FAIL;
  },
  reversible: false,
};
