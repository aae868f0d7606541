import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import bwip from 'bwip-js/node';
import { beforeAll, describe, expect, it } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { OPTIONS } from '../../src/app/camera/reading.ts';
import { codeFault } from '../../src/care/custody/code-rules.ts';
import { roundOf } from '../../src/care/rounds/round.ts';
import { ownCode, ownCodeRule } from '../../src/exchange/barcodes/own-codes.ts';
import { labelSheet } from '../../src/exchange/documents/label-sheet.ts';
import { labelStocks } from '../../src/exchange/documents/label-stocks.ts';
import {
  englishListWords,
  registerRows,
  roundListPdf,
  runSheetRows,
} from '../../src/exchange/documents/round-list.ts';
import { Trial } from '../trial/home.ts';
import { kitCode, plan, swab } from '../trial/round.ts';
import { have, inFolder, pageOf, pdfinfo, pdfText, run, zbarReads } from './tools.ts';

const made = new Date('2026-11-25T09:00:00Z');
/** Eight bytes that differ for every number: a stand-in for chance. */
const own = (n: number) => ownCode('WH', sha256(utf8ToBytes(String(n))));
const [stock24, stock65, stock21] = labelStocks;
if (stock24 === undefined || stock65 === undefined || stock21 === undefined)
  throw new Error('no label stock');

const sheet = async (more: Partial<Parameters<typeof labelSheet>[0]> = {}) => {
  const order = {
    codes: [own(1), own(2)],
    copies: 3,
    stock: stock24,
    startAt: 1,
    title: 'Labels',
    made,
  };
  const made_ = await labelSheet({ ...order, ...more });
  if (!made_.ok) throw new Error(made_.reason);
  return made_;
};

describe.skipIf(!have('pdftoppm', 'zbarimg', 'pdfinfo', 'pdftotext'))(
  'what we print, zbar reads',
  () => {
    // zbar tells the same code on one page once, so a sheet of different codes is read as well.
    it.each([stock24, stock21])('labels of our own codes on $id', async (stock) => {
      const codes = Array.from({ length: 21 }, (_, i) => own(i));
      const { pdf } = await sheet({ stock, codes, copies: 1 });
      const read = inFolder((folder) => zbarReads(pageOf(pdf, folder, 300)));
      expect(read.sort()).toEqual(codes.map((code) => `CODE-128:${code}`).sort());
    });

    it('starts at the first free label and goes on to a second sheet', async () => {
      const codes = Array.from({ length: 6 }, (_, i) => own(i));
      const { pdf, pages } = await sheet({ startAt: 23, codes, copies: 1 });
      expect(pages).toBe(2);
      inFolder((folder) => {
        expect(zbarReads(pageOf(pdf, folder, 200))).toHaveLength(2);
        expect(zbarReads(pageOf(pdf, folder, 200, 2))).toHaveLength(4);
      });
    });

    it('labels are tagged, titled, and say nothing but codes', async () => {
      const { pdf } = await sheet();
      expect(pdfinfo(pdf)).toMatch(/Tagged:\s+yes/);
      expect(pdfinfo(pdf)).toMatch(/Title:\s+Labels/);
      const words = pdfText(pdf).replaceAll(/\s+/g, '');
      expect(words).toBe([own(1), own(2)].flatMap((code) => [code, code, code]).join(''));
    });

    it('is refused where there is nothing to print or no such label', async () => {
      const order = { codes: [own(1)], copies: 3, stock: stock65, startAt: 66, title: '', made };
      expect(await labelSheet(order)).toEqual({ ok: false, reason: 'start-off-sheet' });
      expect(await labelSheet({ ...order, codes: [] })).toEqual({ ok: false, reason: 'no-codes' });
      const long = { ...order, startAt: 1, codes: ['Ab'.repeat(200)] };
      expect(await labelSheet(long)).toEqual({ ok: false, reason: 'code-too-long' });
    });

    it('the run sheet and the register list have a scannable code beside each person who has one', async () => {
      const trial = new Trial();
      for (const name of ['Pia', 'Jonah']) trial.staff(name);
      const people = ['Orla Vale', 'Bram Hollow', 'Lin Ferrow'].map((name) =>
        trial.person(name, '1951-03-03', { room: '4' }),
      );
      const id = plan(trial, people);
      const [first, second] = people;
      if (first === undefined || second === undefined) throw new Error('nobody');
      swab(trial, id, first, kitCode(7));
      swab(trial, id, second, kitCode(8));
      const round = roundOf(trial.home, id);
      if (round === undefined) throw new Error('no round');
      const words = englishListWords('Round of 3 March');
      const run_ = await roundListPdf(runSheetRows(trial.home, round), words, made);
      const register = await roundListPdf(registerRows(trial.home, round), words, made);
      for (const pdf of [run_, register]) {
        const read = inFolder((folder) => zbarReads(pageOf(pdf, folder, 200)));
        expect(read.sort()).toEqual([`CODE-128:${kitCode(7)}`, `CODE-128:${kitCode(8)}`]);
        expect(pdfinfo(pdf)).toMatch(/Tagged:\s+yes/);
      }
      expect(pdfText(run_)).toMatch(/Lin Ferrow/);
      expect(pdfText(run_)).toMatch(/Stick the spare label here/);
      expect(pdfText(register)).not.toMatch(/Lin Ferrow/);
      const far = runSheetRows(trial.home, round).map((row) => ({ ...row, name: 'Łucja Dvořák' }));
      expect(pdfText(await roundListPdf(far, words, made))).toContain('Łucja Dvořák');
    });
  },
);

describe.skipIf(!have('dmtxread'))('what we draw, dmtx reads', () => {
  it('a Data Matrix', async () => {
    const code = kitCode(1187);
    const png = await bwip.toBuffer({
      ...{ bcid: 'datamatrix', text: code, scale: 6, paddingwidth: 6, paddingheight: 6 },
      backgroundcolor: 'FFFFFF',
    });
    const read = inFolder((folder) => {
      const path = join(folder, 'a.png');
      writeFileSync(path, png);
      return run('dmtxread', ['-N1', '-m2000', path]).toString();
    });
    expect(read).toBe(code);
  });

  it.skipIf(!have('pdftoppm'))(
    'small labels, on which a line of bars would be too thin',
    async () => {
      const codes = [own(1), own(2), own(3)];
      const { pdf } = await sheet({ stock: stock65, codes, copies: 1 });
      const read = inFolder((folder) =>
        run('dmtxread', ['-N3', '-m5000', '-n', pageOf(pdf, folder, 300)]).toString(),
      );
      expect(read.trim().split('\n').sort()).toEqual(codes.sort());
    },
  );
});

/** Numbers of zint's symbologies (`zint -t`). */
const ZINT = [
  ['Code 128', 20, 'WSK56045137', 'WSK56045137'],
  ['Code 39', 8, 'WSK56045137', 'WSK56045137'],
  ['Interleaved 2 of 5', 3, '00123456', '00123456'],
  ['EAN-13', 13, '950600013435', '9506000134352'],
  ['UPC-A', 34, '03600029145', '0036000291452'],
  ['QR Code', 58, 'WSK56045137', 'WSK56045137'],
  ['Data Matrix', 71, 'WSK56045137', 'WSK56045137'],
  ['GS1-128', 16, '[01]09506000134352[10]WS-0622[21]A7', '010950600013435210WS-0622\u001d21A7'],
] as const;

describe.skipIf(!have('zint'))('what zint draws, our reader reads', () => {
  beforeAll(async () => {
    const path = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
    await prepareZXingModule({
      overrides: { wasmBinary: new Uint8Array(readFileSync(path)).buffer },
      fireImmediately: true,
    });
  });

  it.each(ZINT)('%s', async (_, kind, text, expected) => {
    const gs1 = kind === 16 ? ['--gs1'] : [];
    const args = [
      '-b',
      String(kind),
      ...gs1,
      '-d',
      text,
      '--scale=3',
      '--whitesp=10',
      '--vwhitesp=5',
    ];
    const png = inFolder((folder) => {
      const path = join(folder, 'a.png');
      run('zint', [...args, '-o', path]);
      return readFileSync(path);
    });
    const found = await readBarcodes(new Blob([new Uint8Array(png)]), OPTIONS);
    const texts = found.filter((each) => each.isValid).map((each) => each.text);
    expect(texts.map((each) => (kind === 34 ? each.padStart(13, '0') : each))).toEqual([expected]);
  });
});

describe("codes of a service's own", () => {
  it('fit their rule, differ, and those of another service do not fit', () => {
    const codes = Array.from({ length: 200 }, (_, i) => own(i));
    expect(new Set(codes).size).toBe(200);
    for (const code of codes) {
      expect(codeFault(ownCodeRule('WH'), code), code).toBeUndefined();
      expect(codeFault(ownCodeRule('GB'), code)).toBe('malformed');
    }
  });

  it('have every single wrong sign told', () => {
    const code = own(5);
    for (let i = 2; i < code.length; i += 1) {
      for (const sign of '0123456789ABCDEFGHJKMNPQRSTVWXYZ') {
        const typed = code.slice(0, i) + sign + code.slice(i + 1);
        if (typed !== code) expect(codeFault(ownCodeRule('WH'), typed), typed).toBeDefined();
      }
    }
  });
});
