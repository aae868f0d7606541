import canonicalize from 'canonicalize';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonical, canonicalText, readCanonical } from './canonical.ts';
import { plainlyCanonical } from './canonical-scan.ts';
import { chainValue } from './chain.ts';
import { pureHash } from './hash.ts';
import { base64url, CHAIN_START, type DeviceId, type FactId, type Instant } from './ids.ts';

const key = fc.stringMatching(/^[a-z][A-Za-z0-9]{0,6}$/);
const text = fc.string({ unit: 'grapheme', maxLength: 12 });
const { value } = fc.letrec((tie) => ({
  value: fc.oneof(
    { maxDepth: 5 },
    fc.constant(null),
    fc.boolean(),
    fc.maxSafeInteger().map((n) => (n === 0 ? 0 : n)),
    text,
    fc.array(tie('value'), { maxLength: 4 }),
    fc.dictionary(key, tie('value'), { maxKeys: 4, noNullPrototype: true }),
  ),
}));

describe('canonical text', () => {
  test('agrees with the RFC 8785 reference package on everything in the subset', () => {
    fc.assert(
      fc.property(value, (v) => {
        expect(canonicalText(v)).toBe(canonicalize(v));
      }),
    );
  });

  test("RFC 8785 section 3.2.2's string, byte for byte as section 3.2.4 prints it", () => {
    const text = canonicalText({ string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/' });
    const hex = Buffer.from(text.slice('{"string":'.length, -1)).toString('hex');
    expect(hex).toBe('22e282ac245c75303030665c6e4127425c225c5c5c5c5c222f22');
  });

  test('reading back and writing again is the same text, whatever the order of keys', () => {
    fc.assert(
      fc.property(value, (v) => {
        const written = canonicalText(v);
        expect(readCanonical(written)).toMatchObject({ ok: true });
        expect(canonicalText(JSON.parse(written))).toBe(written);
      }),
    );
  });

  test('a text that is plainly canonical is canonical, whatever was done to it', () => {
    const plain = fc.string({
      unit: fc.constantFrom('a', 'B', '7', '-', '_', ' ', ':', '{', '}', '[', ']', ','),
      maxLength: 9,
    });
    const { any } = fc.letrec((tie) => ({
      any: fc.oneof(
        { maxDepth: 9 },
        fc.constantFrom(null, true, false, 0, -7, 123456789012345),
        plain,
        fc.array(tie('any'), { maxLength: 3 }),
        fc.dictionary(key, tie('any'), { maxKeys: 3, noNullPrototype: true }),
      ),
    }));
    const slip = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      cut: fc.integer({ min: 0, max: 2 }),
      put: fc.constantFrom(
        '',
        ' ',
        '0',
        '-',
        '1.0',
        'e',
        '"',
        ',',
        '{',
        '}',
        '[',
        'null',
        '\\u0041',
        'é',
        '"a":1,',
      ),
    });
    const canonicalAfterAll = (text: string): boolean => {
      try {
        const again = canonical(JSON.parse(text));
        return again.ok && again.text === text;
      } catch {
        return false;
      }
    };
    let plainly = 0;
    let refused = 0;
    fc.assert(
      fc.property(any, fc.option(slip), (v, change) => {
        const made = canonical(v);
        const text = made.ok ? made.text : JSON.stringify(v);
        const at = Math.floor((change?.at ?? 0) * text.length);
        const slipped = change
          ? text.slice(0, at) + change.put + text.slice(at + change.cut)
          : text;
        const plain = plainlyCanonical(slipped);
        if (plain) expect([slipped, canonicalAfterAll(slipped)]).toEqual([slipped, true]);
        else if (!canonicalAfterAll(slipped)) refused += 1;
        if (plain) plainly += 1;
        if (change === null && made.ok) expect([text, plain]).toEqual([text, true]);
      }),
      { numRuns: 3000 },
    );
    expect(plainly).toBeGreaterThan(500);
    expect(refused).toBeGreaterThan(500);
  });

  test('what has no place in the subset is refused by name', () => {
    const reason = (v: unknown) => {
      const made = canonical(v);
      return made.ok ? made.text : made.reason;
    };
    expect(reason(0.5)).toBe('bad-number');
    expect(reason(-0)).toBe('bad-number');
    expect(reason(Number.NaN)).toBe('bad-number');
    expect(reason('\udc00')).toBe('bad-string');
    expect(reason({ 'a b': 1 })).toBe('bad-key');
    expect(reason({ A: 1 })).toBe('bad-key');
    expect(reason({ a: undefined })).toBe('bad-value');
    expect(reason(() => 1)).toBe('bad-value');
    expect(reason('e\u0301')).toBe('"e\u0301"'); // never normalised here
  });
});

describe('hashes', () => {
  test("FIPS 180-4's example: SHA-256 of abc", () => {
    const hex = Buffer.from(pureHash('abc'), 'base64url').toString('hex');
    expect(hex).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  test('base64url is what the platform writes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 70 }), (bytes) => {
        expect(base64url(bytes)).toBe(Buffer.from(bytes).toString('base64url'));
      }),
    );
  });

  test('a link of the service chain is the hash of its canonical text', () => {
    const link = {
      fact: pureHash('x') as FactId,
      prev: CHAIN_START,
      position: 12,
      arrived: '2026-11-25T08:00:00.000Z' as Instant,
      via: 'T0000001' as DeviceId,
      skew: -40,
    };
    expect(chainValue(link, pureHash)).toBe(pureHash(canonicalize(link) ?? ''));
  });
});
