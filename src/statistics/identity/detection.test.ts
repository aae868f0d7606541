import { describe, expect, it } from 'vitest';
import { checkCharacters, passesCheck } from './check-characters.ts';
import { mod11and2, mod37and2 } from './iso7064-schemes.ts';
import type { CheckScheme } from './scheme.ts';
import { gs1Mod10, luhn, mod11, nhsNumber } from './weighted-schemes.ts';

/** Every error of one kind on a code: what it becomes, and which two signs were exchanged. */
type Errors = (code: string, scheme: CheckScheme) => Generator<readonly [string, string]>;

const signsAt = (scheme: CheckScheme, code: string, at: number): string =>
  at >= code.length - scheme.checkLength ? scheme.checkAlphabet : scheme.alphabet;

const substitutions: Errors = function* (code, scheme) {
  for (let i = 0; i < code.length; i += 1) {
    for (const sign of signsAt(scheme, code, i)) {
      if (sign !== code[i])
        yield [code.slice(0, i) + sign + code.slice(i + 1), `${code[i] ?? ''}${sign}`];
    }
  }
};

const swaps = (apart: number): Errors =>
  function* (code) {
    for (let i = 0; i + apart < code.length; i += 1) {
      const [a = '', b = ''] = [code[i], code[i + apart]];
      if (a === b) continue;
      const between = code.slice(i + 1, i + apart);
      yield [
        code.slice(0, i) + b + between + a + code.slice(i + apart + 1),
        [a, b].sort().join(''),
      ];
    }
  };

/** Counts the errors that a scheme lets pass, over every payload given, with the signs of those. */
function count(scheme: CheckScheme, payloads: Iterable<string>, errors: Errors) {
  let [made, passed] = [0, 0];
  const signs = new Set<string>();
  for (const payload of payloads) {
    const check = checkCharacters(scheme, payload);
    if (!check.ok) continue;
    for (const [wrong, exchanged] of errors(payload + check.value, scheme)) {
      made += 1;
      if (!passesCheck(scheme, wrong)) continue;
      passed += 1;
      signs.add(exchanged);
    }
  }
  return { made, passed, signs: [...signs].sort() };
}

function* everyNumber(digits: number): Generator<string> {
  for (let n = 0; n < 10 ** digits; n += 1) yield String(n).padStart(digits, '0');
}
/** Every payload of two letters or digits. */
function* everyPair(): Generator<string> {
  for (let n = 0; n < 36 ** 2; n += 1) yield n.toString(36).toUpperCase().padStart(2, '0');
}
/** Numbers of nine digits, one in 9,973 of all: the scheme allows no shorter ones. */
function* someNines(): Generator<string> {
  for (let n = 0; n < 1e9; n += 999_983) yield String(n).padStart(9, '0');
}

// The theory: a weighted sum or a pure system modulo a prime larger than the alphabet tells every
// substitution, and every swap where the two weights differ modulo it (ISO/IEC 7064, annex; Verhoeff
// 1969). Luhn misses 09 for 90 only (2 of 90). GS1 weighs 3 and 1, so it misses neighbours 5 apart
// (10 of 90) and, its weights repeating, every swap over one sign.
describe('every single slip, counted one by one', () => {
  it.each([
    ['ISO/IEC 7064 MOD 11-2', mod11and2, everyNumber],
    ['modulus 11 with weights 2 to 10', mod11, everyNumber],
  ] as const)(
    '%s tells all substitutions and all swaps, neighbours or over one sign',
    (_, scheme, all) => {
      for (const errors of [substitutions, swaps(1), swaps(2)]) {
        const { made, passed } = count(scheme, all(4), errors);
        expect(made).toBeGreaterThan(10_000);
        expect(passed).toBe(0);
      }
    },
  );

  it('modulus 11 of the NHS number tells them all', () => {
    for (const errors of [substitutions, swaps(1), swaps(2)]) {
      expect(count(nhsNumber, someNines(), errors).passed).toBe(0);
    }
  });

  it('ISO/IEC 7064 MOD 37-2 tells all substitutions and swaps of letters and digits', () => {
    for (const errors of [substitutions, swaps(1), swaps(2)]) {
      expect(count(mod37and2, everyPair(), errors).passed).toBe(0);
    }
  });

  it('Luhn tells all substitutions, misses 09 for 90 and every swap over one sign', () => {
    expect(count(luhn, everyNumber(4), substitutions).passed).toBe(0);
    const neighbours = count(luhn, everyNumber(4), swaps(1));
    expect(neighbours.signs).toEqual(['09']);
    expect(neighbours.passed / neighbours.made).toBeCloseTo(2 / 90, 12);
    const jumps = count(luhn, everyNumber(4), swaps(2));
    expect(jumps.passed).toBe(jumps.made);
  });

  it('GS1 tells all substitutions, misses neighbours 5 apart and every swap over one sign', () => {
    expect(count(gs1Mod10, everyNumber(4), substitutions).passed).toBe(0);
    const neighbours = count(gs1Mod10, everyNumber(4), swaps(1));
    expect(neighbours.signs).toEqual(['05', '16', '27', '38', '49']);
    expect(neighbours.passed / neighbours.made).toBeCloseTo(10 / 90, 12);
    const jumps = count(gs1Mod10, everyNumber(4), swaps(2));
    expect(jumps.passed).toBe(jumps.made);
  });
});
