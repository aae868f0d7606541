import { describe, expect, it } from 'vitest';
import { outcomes } from '../../care/results/facts.ts';
import { passesCheck } from '../../statistics/identity/check-characters.ts';
import { findScheme } from '../../statistics/identity/find-scheme.ts';
import { outcomeMeant, testMeant } from './meaning-of-words.ts';
import tests from './tests.json' with { type: 'json' };
import words from './words.json' with { type: 'json' };

/** SNOMED CT codes end in a Verhoeff digit (SNOMED CT TIG, 6.3); LOINC codes in a Luhn digit (User's Guide, App. C). */
function verhoeff(code: string): boolean {
  const times = (a: number, b: number): number =>
    a < 5
      ? b < 5
        ? (a + b) % 5
        : 5 + ((a + b) % 5)
      : b < 5
        ? 5 + ((a - b + 5) % 5)
        : (a - b + 5) % 5;
  const turn = [1, 5, 7, 6, 2, 8, 3, 0, 9, 4];
  const turned = (digit: number, times_: number): number => {
    let now = digit;
    for (let n = 0; n < times_ % 8; n += 1) now = turn[now] ?? 0;
    return now;
  };
  return (
    Array.from(code)
      .reverse()
      .reduce((sum, digit, at) => times(sum, turned(Number(digit), at)), 0) === 0
  );
}
const luhn = findScheme('luhn');

describe('the codes of tests and results', () => {
  it('each has a source that is told, and what is from memory is used by nobody', () => {
    for (const { code, finds, source } of tests.tests) {
      expect(Object.keys(tests.sources), code).toContain(source);
      expect(testMeant(code)).toBe(source === 'memory' ? undefined : finds);
    }
    for (const { says, means, source } of words.words) {
      expect(Object.keys(words.sources), says).toContain(source);
      expect(outcomes as readonly string[]).toContain(means);
      expect(outcomeMeant(says)).toBe(source === 'memory' ? undefined : means);
    }
    expect(outcomeMeant('LA6577-6')).toBeUndefined();
    expect(words.words.filter(({ source }) => source === 'memory')).toHaveLength(2);
  });

  it('no code is mistyped: the check digits of LOINC and SNOMED CT agree', () => {
    if (!luhn.ok) throw new Error('no Luhn');
    for (const { code } of tests.tests)
      expect([code, passesCheck(luhn.value, code.replace('-', ''))]).toEqual([code, true]);
    const snomed = words.words.map(({ says }) => says).filter((says) => /^\d{6,}$/.test(says));
    expect(snomed).toHaveLength(6);
    for (const code of snomed) expect([code, verhoeff(code)]).toEqual([code, true]);
    expect(verhoeff('260385008')).toBe(false);
  });

  it('a test that says which virus was found has no outcome of its own to guess', () => {
    expect(testMeant('95423-0')).toContain('Which of');
    expect(outcomeMeant('Influenza A virus')).toBeUndefined();
  });
});
