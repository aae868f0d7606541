import type { CheckScheme } from './scheme.ts';
import { ALPHANUMERIC } from './weighted-schemes.ts';

const DIGITS = ALPHANUMERIC.slice(0, 10);
const LETTERS = ALPHANUMERIC.slice(10);

interface Pure {
  readonly modulus: number;
  readonly radix: number;
  readonly alphabet: string;
  readonly checkAlphabet: string;
  readonly checkLength: number;
}

/** ISO/IEC 7064 pure system: the code, read in the radix, leaves 1 modulo the modulus. */
const pure = ({ modulus, radix, ...rest }: Pure): CheckScheme => ({
  ...rest,
  name: `iso7064-mod${modulus}-${radix}`,
  source: `ISO/IEC 7064:2003, pure system MOD ${modulus}-${radix}`,
  oneIn: modulus,
  states: modulus,
  start: 0,
  accept: 1,
  step: (state, value) => (state * radix + value) % modulus,
  reversible: true,
});

/** ISO/IEC 7064 hybrid system MOD M+1, M. States are the running product 1..M; 0 is not used. */
const hybrid = (modulus: number, alphabet: string): CheckScheme => ({
  name: `iso7064-mod${modulus + 1}-${modulus}`,
  source: `ISO/IEC 7064:2003, hybrid system MOD ${modulus + 1},${modulus}`,
  alphabet,
  checkAlphabet: alphabet,
  checkLength: 1,
  oneIn: modulus,
  states: modulus + 1,
  start: modulus,
  accept: 1,
  step: (state, value, place) => {
    const sum = (state + value) % modulus;
    if (place === 0) return sum;
    return ((sum === 0 ? modulus : sum) * 2) % (modulus + 1);
  },
  reversible: true,
});

export const mod11and2 = pure({
  modulus: 11,
  radix: 2,
  alphabet: DIGITS,
  checkAlphabet: `${DIGITS}X`,
  checkLength: 1,
});
export const mod37and2 = pure({
  modulus: 37,
  radix: 2,
  alphabet: ALPHANUMERIC,
  checkAlphabet: `${ALPHANUMERIC}*`,
  checkLength: 1,
});
export const mod97and10 = pure({
  modulus: 97,
  radix: 10,
  alphabet: DIGITS,
  checkAlphabet: DIGITS,
  checkLength: 2,
});
export const mod661and26 = pure({
  modulus: 661,
  radix: 26,
  alphabet: LETTERS,
  checkAlphabet: LETTERS,
  checkLength: 2,
});
export const mod1271and36 = pure({
  modulus: 1271,
  radix: 36,
  alphabet: ALPHANUMERIC,
  checkAlphabet: ALPHANUMERIC,
  checkLength: 2,
});
export const mod11and10 = hybrid(10, DIGITS);
export const mod27and26 = hybrid(26, LETTERS);
export const mod37and36 = hybrid(36, ALPHANUMERIC);
