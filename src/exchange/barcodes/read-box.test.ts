import { describe, expect, it } from 'vitest';
import { neverThrowsNorHangs } from '../../../test/fuzz/fuzz.ts';
import { demoPolicy } from '../../../test/trial/home.ts';
import type { Day } from '../../care/time.ts';
import { readDigitalLink } from './digital-link.ts';
import { readElements } from './element-string.ts';
import { gs1Day } from './gs1-date.ts';
import { readBox } from './read-box.ts';

const policy = demoPolicy();
const today = '2026-11-25' as Day;
const GTIN = '09506000134352';
const read = (scan: string) => readBox(policy, scan, today);

describe('one scan of a box', () => {
  // The GTIN is the one that the GS1 General Specifications use in their own examples.
  const whole = {
    ok: true,
    box: {
      gtin: GTIN,
      kit: { id: 'single-swab' },
      lot: 'WS-0622',
      expires: '2027-02-28',
      serial: 'A7',
    },
  };

  it.each([
    ['as a scanner sends it', `01${GTIN}1727020010WS-0622\u001d21A7`],
    ['with FNC1 sent in front', `\u001d01${GTIN}1727020010WS-0622\u001d21A7`],
    ['with the symbology told', `]d201${GTIN}1727020010WS-0622\u001d21A7`],
    ['in another order', `21A7\u001d10WS-0622\u001d17270200` + `01${GTIN}`],
    ['as printed for people', `(01)${GTIN}(17)270200(10)WS-0622(21)A7`],
    ['as a Digital Link', `https://id.example/01/${GTIN}/10/WS-0622/21/A7?17=270200&utm=x`],
    [
      'as a Digital Link of 13 digits',
      `https://id.example/p/01/9506000134352/10/WS%2D0622/21/A7?17=270200`,
    ],
  ])('fills product, lot, expiry and serial: %s', (_, scan) => {
    expect(read(scan)).toMatchObject(whole);
  });

  it('takes the product alone from an EAN symbol', () => {
    expect(read('9506000134352')).toMatchObject({
      ok: true,
      box: { gtin: GTIN, kit: { id: 'single-swab' }, lot: undefined, expires: undefined },
    });
  });

  it('steps over identifiers it gives no meaning to', () => {
    expect(read(`3102000500` + `01${GTIN}` + `4109506000134376` + `91abc\u001d10L1`)).toMatchObject(
      {
        ok: true,
        box: { lot: 'L1' },
      },
    );
  });

  it('names no kind of kit for a product that policy does not know', () => {
    expect(read('0100036000291452')).toMatchObject({ ok: true, box: { kit: undefined } });
  });
});

describe('bad scans are told apart', () => {
  it.each([
    ['', 'empty'],
    ['   \u001d ', 'empty'],
    ['KQT00000012', 'not-gs1'],
    ['https://example/shop?id=1', 'not-gs1'],
    [`01${GTIN.slice(0, 9)}`, 'cut-short'],
    [`01${GTIN}1726`, 'cut-short'],
    [`01${GTIN}10`, 'cut-short'],
    [`01${GTIN.slice(0, 13)}3`, 'check-digit'],
    [`01${GTIN}10${'x'.repeat(21)}`, 'value-too-long'],
    [`01${GTIN}01${GTIN}`, 'read-twice'],
    [`01${GTIN}172611AA`, 'wrong-characters'],
    [`01${GTIN}10a~b`, 'wrong-characters'],
    [`01${GTIN}10a\u0000b`, 'control-character'],
    [`01${GTIN}10é`, 'control-character'],
    [`01${GTIN}17261301`, 'not-a-day'],
    [`01${GTIN}17260231`, 'not-a-day'],
    ['10LOT7', 'no-product'],
    ['9'.repeat(500), 'too-long'],
    [`01${GTIN}5x`, 'unknown-identifier'],
  ])('%j: %s', (scan, reason) => {
    expect(read(scan)).toMatchObject({ ok: false, reason });
  });
});

// GS1 General Specifications 7.12, the rule for the century; day 00 in 3.4.
describe('dates of two figures', () => {
  it.each([
    ['270200', '2026-11-25', '2027-02-28'],
    ['280200', '2026-11-25', '2028-02-29'],
    ['760101', '2026-11-25', '2076-01-01'],
    ['770101', '2026-11-25', '1977-01-01'],
    ['991231', '2026-11-25', '1999-12-31'],
    ['010101', '2049-06-01', '2001-01-01'],
    ['000101', '2050-06-01', '2100-01-01'],
    ['500101', '2000-06-01', '2050-01-01'],
    ['510101', '2000-06-01', '1951-01-01'],
    ['990101', '2101-01-01', '2099-01-01'],
  ])('%s read on %s is %s', (digits, on, day) => {
    expect(gs1Day(digits, on as Day)).toBe(day);
  });

  it('are refused where the calendar has no such day', () => {
    for (const digits of ['260229', '261301', '260100x', '2601', '260431']) {
      expect(gs1Day(digits, today), digits).toBeUndefined();
    }
  });
});

describe('whatever is scanned', () => {
  it('elements are read or refused', () => neverThrowsNorHangs(readElements));
  it('links are read or refused', () => neverThrowsNorHangs(readDigitalLink));
  it('boxes are read or refused', () => neverThrowsNorHangs(read));
});
