import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { code128Bars, QUIET } from './code128.ts';

beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  const overrides = { wasmBinary: new Uint8Array(readFileSync(wasm)).buffer };
  await prepareZXingModule({ overrides, fireImmediately: true });
});

const MODULE = 3;
const HEIGHT = 40;

/** The symbol as a scanner sees it: black on white, quiet zones and all. */
function picture(text: string) {
  const { modules, bars } = code128Bars(text);
  const width = (modules + 2 * QUIET) * MODULE;
  const data = new Uint8ClampedArray(width * HEIGHT * 4).fill(255);
  for (const { at, wide } of bars) {
    for (let x = (at + QUIET) * MODULE; x < (at + QUIET + wide) * MODULE; x += 1) {
      for (let y = 0; y < HEIGHT; y += 1)
        data.fill(0, (y * width + x) * 4, (y * width + x) * 4 + 3);
    }
  }
  return { data, width, height: HEIGHT } as never;
}

const read = async (text: string) => {
  const found = await readBarcodes(picture(text), { formats: ['Code128'] });
  return found.map(({ text: said, format }) => [format, said]);
};

describe('the code on the screen', () => {
  // ZXing-C++, which shares no line with the library that draws it.
  it('is read by an independent reader as the code of the kit', async () => {
    expect(await read('WSK56045137')).toEqual([['Code128', 'WSK56045137']]);
  });

  it('so is any code that a kit may carry', async () => {
    const code = fc.stringMatching(/^[\x21-\x7e]{4,30}$/);
    await fc.assert(
      fc.asyncProperty(code, async (text) => {
        expect(await read(text)).toEqual([['Code128', text]]);
      }),
      { numRuns: 60 },
    );
  });

  it('starts and stops as ISO/IEC 15417 says: start B, and the stop of thirteen modules', () => {
    const { bars, modules } = code128Bars('WSK5');
    expect(bars.slice(0, 3)).toEqual([
      { at: 0, wide: 2 },
      { at: 3, wide: 1 },
      { at: 6, wide: 1 },
    ]);
    const stop = bars.slice(-4).map(({ at, wide }) => [at - modules + 13, wide]);
    expect(stop).toEqual([
      [0, 2],
      [5, 3],
      [9, 1],
      [11, 2],
    ]);
  });

  it('a text it cannot draw is a bug and throws', () => {
    expect(() => code128Bars('')).toThrow();
  });
});
