import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { got } from '../testing.ts';
import { anyDuplicateChance } from './birthday.ts';
import { checkCharacters, passesCheck } from './check-characters.ts';
import { consecutiveNearDuplicates } from './consecutive-near-duplicates.ts';
import { damerauLevenshtein, levenshtein, optimalStringAlignment } from './edit-distance.ts';
import { findNearDuplicates } from './find-near-duplicates.ts';
import { CHECK_SCHEMES, findScheme } from './find-scheme.ts';
import { mod11and10, mod97and10 } from './iso7064-schemes.ts';
import type { CheckScheme } from './scheme.ts';
import { damm, upuS10, verhoeff } from './table-schemes.ts';
import { undetectedErrorRates } from './undetected-error-rates.ts';
import { gs1Mod10, isbn10, luhn, mod11, nhsNumber } from './weighted-schemes.ts';

const payloadOf = (scheme: CheckScheme) =>
  fc
    .array(fc.constantFrom(...Array.from(scheme.alphabet)), {
      minLength: scheme.payloadLength ?? 1,
      maxLength: scheme.payloadLength ?? 12,
    })
    .map((c) => c.join(''));

describe.each(CHECK_SCHEMES.map((s) => [s.name, s] as const))('%s', (name, scheme) => {
  it('passes what it made, and catches every single wrong character if it is reversible', () => {
    fc.assert(
      fc.property(payloadOf(scheme), fc.nat(), fc.nat(), (payload, where, what) => {
        const check = checkCharacters(scheme, payload);
        if (!check.ok) {
          expect(check.reason).toBe('undefined');
          return;
        }
        expect(check.value).toHaveLength(scheme.checkLength);
        const code = payload + check.value;
        expect(passesCheck(scheme, code)).toBe(true);
        const at = where % payload.length;
        const other = scheme.alphabet.charAt(what % scheme.alphabet.length);
        const wrong = code.slice(0, at) + other + code.slice(at + 1);
        if (scheme.reversible && other !== code.charAt(at))
          expect(passesCheck(scheme, wrong)).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  it('is found by its name, however spelt', () => {
    for (const spelt of [
      name,
      name.toUpperCase(),
      name.replaceAll('-', ' '),
      name.replaceAll('-', '_'),
    ])
      expect(got(findScheme(spelt))).toBe(scheme);
  });

  it('does not pass foreign characters or nothing', () => {
    expect(passesCheck(scheme, '')).toBe(false);
    expect(passesCheck(scheme, '?'.repeat((scheme.payloadLength ?? 5) + scheme.checkLength))).toBe(
      false,
    );
    expect(
      passesCheck(
        scheme,
        scheme.alphabet.charAt(0).repeat(scheme.payloadLength ?? 5) +
          '?'.repeat(scheme.checkLength),
      ),
    ).toBe(false);
  });
});

describe('known codes', () => {
  it.each([
    ['luhn', '4539148803436467'],
    ['gs1-mod10', '4006381333931'],
    ['verhoeff', '2363'],
    ['damm', '5724'],
    ['isbn10', '0306406152'],
    ['nhs number', '9434765919'],
    ['mod97-10', '79444'],
    ['iso7064-mod11-2', '079X'],
    ['iso7064-mod11-10', '07945'],
    ['iso7064-mod37-36', 'A12425GABC1234002M'],
    ['upu s10', '473124829'],
    ['code 39 mod 43', 'CODE39W'],
    ['orcid', '0000000218250097'],
    ['mod 11', '132'],
  ])('%s: %s passes', (name, code) => expect(passesCheck(got(findScheme(name)), code)).toBe(true));

  it('two check digits run from 02 to 98, and letters count as two digits', () => {
    expect(got(checkCharacters(mod97and10, '0'))).toBe('98');
    expect(got(checkCharacters(mod97and10, '97'))).toBe('98');
    expect(got(checkCharacters(mod97and10, 'A'))).toBe(got(checkCharacters(mod97and10, '10')));
    expect(passesCheck(mod97and10, '3214282912345698765432161182')).toBe(true);
  });

  it('ten is X or is not issued', () => {
    expect(got(checkCharacters(isbn10, '080442957'))).toBe('X');
    expect(checkCharacters(nhsNumber, '000000006').ok).toBe(false);
    expect(['0', '6', '9'].map((d) => got(checkCharacters(mod11, `000${d}`)))).toEqual([
      '0',
      'X',
      '4',
    ]);
  });
});

/** By listing every code: slow, and nothing in common with counting states. */
function listed(
  scheme: CheckScheme,
  payloadLength: number,
  kind: 'substitution' | 'adjacentTransposition' | 'jumpTransposition' | 'twin' | 'jumpTwin',
): number {
  const codes: string[] = [];
  for (let k = 0; k < 10 ** payloadLength; k++) {
    const payload = String(k).padStart(payloadLength, '0');
    const check = checkCharacters(scheme, payload);
    if (check.ok) codes.push(payload + check.value);
  }
  const put = (code: string, at: number, text: string): string =>
    code.slice(0, at) + text + code.slice(at + text.length);
  const digits = Array.from('0123456789');
  const wrongs = (code: string, i: number): readonly string[] => {
    const [a, b, c] = [code.charAt(i), code.charAt(i + 1), code.charAt(i + 2)];
    switch (kind) {
      case 'substitution':
        return digits.filter((d) => d !== a).map((d) => put(code, i, d));
      case 'adjacentTransposition':
        return b !== '' && a !== b ? [put(code, i, b + a)] : [];
      case 'jumpTransposition':
        return c !== '' && a !== c ? [put(code, i, c + b + a)] : [];
      case 'twin':
        return b !== '' && a === b
          ? digits.filter((d) => d !== a).map((d) => put(code, i, d + d))
          : [];
      case 'jumpTwin':
        return c !== '' && a === c
          ? digits.filter((d) => d !== a).map((d) => put(code, i, d + b + d))
          : [];
    }
  };
  let [hit, passed] = [0, 0];
  for (const code of codes) {
    for (let i = 0; i < code.length; i++) {
      for (const wrong of wrongs(code, i)) {
        hit++;
        if (passesCheck(scheme, wrong)) passed++;
      }
    }
  }
  return passed / hit;
}

describe('errors that get through', () => {
  const kinds = [
    'substitution',
    'adjacentTransposition',
    'jumpTransposition',
    'twin',
    'jumpTwin',
  ] as const;
  it.each([luhn, gs1Mod10, verhoeff, damm, mod11and10].map((s) => [s.name, s] as const))(
    '%s: as counted by listing every code of four digits',
    (_, scheme) => {
      const rates = got(undetectedErrorRates(scheme, 4));
      for (const kind of kinds) expect(rates[kind]).toBeCloseTo(listed(scheme, 3, kind), 12);
    },
  );

  it('fifty for fifteen: a0 and 1a', () => {
    // Luhn, five digits: passes where doubling gives the same for (a, 0) and (1, a).
    const codes = Array.from({ length: 1e4 }, (_, k) => String(k).padStart(4, '0')).map(
      (p) => p + got(checkCharacters(luhn, p)),
    );
    let [hit, passed] = [0, 0];
    for (const code of codes) {
      for (let i = 0; i < 4; i++) {
        const [a, b] = [Number(code[i]), Number(code[i + 1])];
        const other = a >= 2 && b === 0 ? `1${a}` : a === 1 && b >= 2 ? `${b}0` : undefined;
        if (other === undefined) continue;
        hit++;
        if (passesCheck(luhn, code.slice(0, i) + other + code.slice(i + 2))) passed++;
      }
    }
    expect(got(undetectedErrorRates(luhn, 5)).phonetic).toBeCloseTo(passed / hit, 12);
  });

  it('of S10 come from two remainders that share a 5', () => {
    const rates = got(undetectedErrorRates(upuS10, 9));
    expect(rates.substitution).toBeGreaterThan(0.01);
    expect(rates.substitution).toBeLessThan(0.03);
  });
});

describe('edit distances', () => {
  const word = fc.string({ minLength: 0, maxLength: 8, unit: fc.constantFrom('a', 'b', 'c', 'd') });
  it('are symmetric, 0 for the same, ordered among each other, and two of them are metrics', () => {
    fc.assert(
      fc.property(word, word, word, (a, b, c) => {
        for (const d of [levenshtein, optimalStringAlignment, damerauLevenshtein]) {
          expect(d(a, b)).toBe(d(b, a));
          expect(d(a, a)).toBe(0);
          expect(d(a, b) > 0).toBe(a !== b);
          expect(d(a, '')).toBe(a.length);
        }
        expect(damerauLevenshtein(a, b)).toBeLessThanOrEqual(optimalStringAlignment(a, b));
        expect(optimalStringAlignment(a, b)).toBeLessThanOrEqual(levenshtein(a, b));
        for (const d of [levenshtein, damerauLevenshtein])
          expect(d(a, c)).toBeLessThanOrEqual(d(a, b) + d(b, c));
      }),
    );
  });

  it('count characters, not halves of them', () => expect(levenshtein('a😀b', 'ab')).toBe(1));
});

describe('near duplicates', () => {
  it('are all pairs one slip apart, and no others', () => {
    const code = fc.string({ minLength: 1, maxLength: 4, unit: fc.constantFrom('0', '1', '2') });
    fc.assert(
      fc.property(fc.array(code, { maxLength: 12 }), (codes) => {
        const distinct = [...new Set(codes)];
        const pairs = distinct.flatMap((a, i) =>
          distinct
            .slice(i + 1)
            .flatMap((b) => (optimalStringAlignment(a, b) === 1 ? [[a, b].sort().join('|')] : [])),
        );
        const found = findNearDuplicates(codes).map(({ first, second }) =>
          [first, second].sort().join('|'),
        );
        expect([...found].sort()).toEqual(pairs.sort());
      }),
    );
  });

  it('of serial numbers are counted by pairs', () => {
    const run = got(consecutiveNearDuplicates({ start: 8, n: 5, width: 2 }));
    // 08 09 10 11 12
    expect(run.pairsByHamming).toEqual([0, 4, 6]);
    expect(run.pairsAdjacentTransposition).toBe(0);
    expect(
      got(consecutiveNearDuplicates({ start: 12, n: 10, width: 2 })).pairsAdjacentTransposition,
    ).toBe(1);
    expect(got(consecutiveNearDuplicates({ start: 1, n: 0, width: 3 })).pairsByHamming).toEqual([
      0, 0, 0, 0,
    ]);
    // A number that is not issued is left out.
    const all = got(consecutiveNearDuplicates({ start: 0, n: 20, width: 9, scheme: nhsNumber }));
    expect(all.pairsByHamming.reduce((a, b) => a + b, 0)).toBeLessThan(190);
  });

  it('two of 23 share a birthday more often than not', () => {
    expect(got(anyDuplicateChance(23, 365))).toBeCloseTo(0.5072972, 6);
    expect([
      got(anyDuplicateChance(0, 5)),
      got(anyDuplicateChance(1, 5)),
      got(anyDuplicateChance(6, 5)),
    ]).toEqual([0, 0, 1]);
    expect(got(anyDuplicateChance(2, 1e12))).toBeCloseTo(1e-12, 24);
    expect(got(anyDuplicateChance(5e5, 1e6))).toBe(1);
  });
});
