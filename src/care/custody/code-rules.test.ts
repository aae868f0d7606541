import { describe, expect, it } from 'vitest';
import { neverThrowsNorHangs } from '../../../test/fuzz/fuzz.ts';
import { demoPolicy } from '../../../test/trial/home.ts';
import { kitCode } from '../../../test/trial/round.ts';
import { checkSchemes, readPolicy } from '../policy/policy.ts';
import { codeFault, passesScheme } from './code-rules.ts';

const [kit] = demoPolicy().kits;
const rule = { pattern: kit?.codePattern.value ?? '', scheme: kit?.codeScheme ?? 'none' } as const;

describe('the code of a kit', () => {
  it('is right when pattern and check character agree', () => {
    expect(codeFault(rule, kitCode(1187))).toBeUndefined();
    expect(codeFault(rule, ` ${kitCode(1187)} `)).toBeUndefined();
  });

  it('is told apart: not of this kind, or one sign wrong', () => {
    expect(codeFault(rule, '9506000134352')).toBe('malformed');
    expect(codeFault(rule, '')).toBe('malformed');
    const right = kitCode(1187);
    const wrong = right.replace(/.$/, (last) => (last === '1' ? '2' : '1'));
    expect(codeFault(rule, wrong)).toBe('check-failed');
  });

  it('checks only the marked part: the letters in front do not count', () => {
    const code = kitCode(42);
    expect(codeFault(rule, `ABC${code.slice(3)}`)).toBeUndefined();
  });

  it('has every single slip and every swap of neighbours in the digits told, for a thousand codes', () => {
    for (let n = 0; n < 1000; n += 1) {
      const code = kitCode(n * 7919);
      for (let i = 3; i < code.length; i += 1) {
        for (const sign of '0123456789') {
          const slip = code.slice(0, i) + sign + code.slice(i + 1);
          if (slip !== code) expect(codeFault(rule, slip), slip).toBeDefined();
        }
        const swap = code.slice(0, i) + code.charAt(i + 1) + code.charAt(i) + code.slice(i + 2);
        if (swap !== code) expect(codeFault(rule, swap), swap).toBeDefined();
      }
    }
  });
});

// Examples that the standards and registries themselves publish; see docs/identity.md for each.
it.each([
  ['gs1-mod10', '036000291452'],
  ['luhn', '79927398713'],
  ['iso7064-mod11-2', '000000012103268' + '3'],
  ['iso7064-mod37-2', 'G123498654321' + 'H'],
  ['iso7064-mod97-10', '99991234567890121414' + '90'],
  ['iso7064-mod11-10', '07945'],
  ['iso7064-mod37-36', 'A12425GABC1234002' + 'M'],
  ['nhs-mod11', '9434765919'],
  ['code39-mod43', '159AZ' + 'H'],
] as const)('knows a published example of %s', (scheme, code) => {
  expect(passesScheme(scheme, code)).toBe(true);
});

it('a policy with a pattern nobody can read is refused, and says where', () => {
  const policy = demoPolicy((each) => {
    const [first] = each.kits;
    if (first !== undefined) first.codePattern.value = '[A-Z';
  });
  expect(readPolicy(policy)).toMatchObject({ ok: false, where: '/kits/0/codePattern/value' });
});

describe('whatever is typed or scanned', () => {
  it('a kit rule answers', () => neverThrowsNorHangs((code) => codeFault(rule, code)));
  it.each(checkSchemes.filter((each) => each !== 'none'))('%s answers', (scheme) => {
    neverThrowsNorHangs((code) => passesScheme(scheme, code));
  });
});
