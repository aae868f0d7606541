import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalText, type JsonObject } from './canonical.ts';
import { checkForm, checkForms, MAX_BODY, MAX_PRIVATE } from './form.ts';
import { pureHash } from './hash.ts';
import { NO_FACT, type ServiceId } from './ids.ts';
import { privateRecord } from './private.ts';

const service = 'fern-house' as ServiceId;
const context = { service, hash: pureHash };
const sound: JsonObject = {
  service,
  device: 'T0000001',
  seq: 1,
  prev: NO_FACT,
  seen: NO_FACT,
  at: '2026-11-25T08:00:00.000Z',
  off: -1200,
  by: 'staff-1',
  kind: 'swab.taken',
  v: 1,
  data: { code: '01H', person: 'p1' },
};
const salt = new Uint8Array(16).fill(7);
const record = privateRecord({ name: 'Ada' }, salt);
const recordText = record.ok ? record.text : '';

const reasonFor = (body: unknown, secret?: unknown) => {
  const checked = checkForm({ body, private: secret }, context);
  return checked.ok ? 'ok' : checked.reason;
};
const withFields = (fields: JsonObject) => canonicalText({ ...sound, ...fields });

describe('the form of a fact', () => {
  test('a sound fact passes, and its id is the SHA-256 of its bytes as the platform counts it', () => {
    const body = canonicalText(sound);
    const checked = checkForm({ body }, context);
    expect(checked.ok && checked.written.id).toBe(
      createHash('sha256').update(body).digest('base64url'),
    );
  });

  test.each<[string, JsonObject]>([
    ['unknown-key', { extra: 1 }],
    ['other-service', { service: 'elsewhere' }],
    ['bad-device', { device: 'X0000001' }],
    ['bad-seq', { seq: 0 }],
    ['bad-link', { prev: 'short' }],
    ['bad-link', { seen: null }],
    ['bad-instant', { at: '2026-02-30T08:00:00.000Z' }],
    ['bad-instant', { at: '2026-11-25T08:00:00Z' }],
    ['bad-offset', { off: '0' }],
    ['bad-staff', { by: '' }],
    ['bad-staff', { with: [] }],
    ['bad-staff', { with: ['a', 'a'] }],
    ['bad-kind', { kind: 'Swab taken' }],
    ['bad-version', { v: 0 }],
    ['bad-data', { data: [] }],
    ['bad-private-hash', { private: 'no' }],
    [
      'erasure-not-by-server',
      { kind: 'erased', data: { targets: [NO_FACT], reason: 'retention' } },
    ],
    ['bad-erasure', { device: 'S0000001', kind: 'erased', data: { targets: [], reason: 'x' } }],
    [
      'ok',
      { device: 'S0000001', kind: 'erased', data: { targets: [NO_FACT], reason: 'retention' } },
    ],
  ])('%s: %j', (reason, fields) => {
    expect(reasonFor(withFields(fields))).toBe(reason);
  });

  test('text that is not the canonical text of what it says is refused', () => {
    const text = canonicalText(sound);
    expect(reasonFor(text.replace('"seq":1', '"seq":1.0'))).toBe('not-canonical');
    expect(reasonFor(text.replace('"v":1', '"v":1,"v":1'))).toBe('not-canonical');
    expect(reasonFor(text.replace('"kind"', '"\\u006bind"'))).toBe('not-canonical');
    expect(reasonFor(` ${text}`)).toBe('not-canonical');
    expect(reasonFor(text.replace('"seq":1', '"seq":1.5'))).toBe('bad-number');
    expect(reasonFor(text.replace('"seq":1', '"seq":-0'))).toBe('bad-number');
    expect(reasonFor(text.replace('"seq":1', '"seq":9007199254740993'))).toBe('bad-number');
    expect(reasonFor(text.replace('staff-1', '\\ud800'))).toBe('bad-string');
    expect(reasonFor(text.slice(1))).toBe('not-json');
    expect(reasonFor(undefined)).toBe('not-text');
    expect(reasonFor('null')).toBe('bad-body');
    expect(reasonFor('{}')).toBe('missing-key');
  });

  test('depth 8 passes and depth 9 does not', () => {
    const nested = (depth: number): JsonObject => (depth === 0 ? {} : { a: nested(depth - 1) });
    expect(reasonFor(withFields({ data: nested(6) }))).toBe('ok');
    const tooDeep = canonicalText({ ...sound, data: {} }).replace(
      '"data":{}',
      `"data":${JSON.stringify(nested(7))}`,
    );
    expect(reasonFor(tooDeep)).toBe('too-deep');
  });

  test('sizes count bytes, not characters', () => {
    const room = MAX_BODY - canonicalText({ ...sound, data: { t: '' } }).length;
    expect(reasonFor(withFields({ data: { t: 'a'.repeat(room) } }))).toBe('ok');
    expect(reasonFor(withFields({ data: { t: `${'a'.repeat(room - 1)}é` } }))).toBe(
      'body-too-large',
    );
  });

  test('a private record must be asked for by the body, and match its hash', () => {
    const body = withFields({ private: pureHash(recordText) });
    expect(reasonFor(body, recordText)).toBe('ok');
    expect(reasonFor(body)).toBe('ok'); // erased, or withheld
    expect(reasonFor(withFields({}), recordText)).toBe('private-unasked');
    expect(reasonFor(body, recordText.replace('Ada', 'Ida'))).toBe('private-mismatch');
    expect(reasonFor(body, `${recordText} `)).toBe('private-not-canonical');
    expect(reasonFor(body, '{"salt":"x","value":1}')).toBe('private-shape');
    expect(reasonFor(body, 7)).toBe('private-not-text');
    expect(reasonFor(body, 'a'.repeat(MAX_PRIVATE + 1))).toBe('private-too-large');
  });

  test('a refusal never repeats what is private', () => {
    const body = withFields({ private: pureHash(recordText) });
    for (const secret of [recordText.replace('Ada', 'Ida'), `${recordText}x`, '{"salt":"Ada"}']) {
      const checked = checkForm({ body, private: secret }, context);
      expect(checked.ok ? '' : checked.detail).not.toMatch(/Ada|Ida/);
    }
  });

  test('a batch names the first fact that is refused', () => {
    const good = { body: canonicalText(sound) };
    const checked = checkForms([good, { body: withFields({ v: 0 }) }, { body: '' }], context);
    expect(checked).toMatchObject({ ok: false, index: 1, reason: 'bad-version' });
  });

  test('no text whatever makes the check throw', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.json(), fc.anything()),
        fc.anything(),
        (body, secret) => {
          checkForm({ body, private: secret }, context);
        },
      ),
    );
  });
});
