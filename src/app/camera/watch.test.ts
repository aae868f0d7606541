import { describe, expect, it } from 'vitest';
import { lightOf } from './light.ts';
import type { Symbol } from './reading.ts';
import type { WatchFinding } from './watch.ts';
import { watch, watching } from './watch.ts';

const whole = (text: string, format = 'Code128'): Symbol => ({ text, format, whole: true });
const half: Symbol = { text: '', format: 'Code128', whole: false };

/** Shows frames 100 ms apart and tells what each was taken for. */
function show(frames: readonly (readonly Symbol[])[], every = 100, expected?: 'box') {
  let state = watching;
  return frames.map((symbols, i): WatchFinding => {
    const step = watch(state, symbols, { at: i * every, expect: expected ?? 'label' });
    ({ state } = step);
    return step.finding;
  });
}
const kinds = (...given: Parameters<typeof show>) => show(...given).map(({ kind }) => kind);

describe('what the camera sees', () => {
  it('takes one code once, however long it stays in view', () => {
    const long = Array.from({ length: 40 }, () => [whole('KQT00000012')]);
    expect(kinds(long).filter((kind) => kind === 'code')).toHaveLength(1);
  });

  it('takes the same code again only after it was out of view for a second', () => {
    const code = [whole('KQT00000012')];
    expect(kinds([code, [], [], code])).toEqual(['code', 'looking', 'looking', 'repeat']);
    expect(kinds([code, ...Array.from({ length: 11 }, () => []), code]).at(-1)).toBe('code');
  });

  it('takes another code at once', () => {
    expect(show([[whole('KQT00000012')], [whole('KQT00000023')]]).at(-1)).toEqual({
      kind: 'code',
      code: 'KQT00000023',
    });
  });

  it('takes neither of two codes in view, and one that stands there three times', () => {
    expect(kinds([[whole('KQT00000012'), whole('KQT00000023')]])).toEqual(['two']);
    const same = whole('KQT00000012');
    expect(kinds([[same, same, same]])).toEqual(['code']);
  });

  it('says so when only half of a code can be seen for a while', () => {
    const found = kinds(Array.from({ length: 7 }, () => [half]));
    expect(found).toEqual([...Array.from({ length: 5 }, () => 'looking'), 'half', 'half']);
  });

  it('wants symbols without a check of their own twice in a row', () => {
    const itf = (text: string) => [whole(text, 'ITF')];
    expect(kinds([itf('1234'), itf('123456'), itf('123456')])).toEqual([
      'looking',
      'looking',
      'code',
    ]);
    const code39 = [whole('AB12', 'Code39')];
    expect(kinds([code39, [], code39, code39])).toEqual(['looking', 'looking', 'looking', 'code']);
  });

  it("tells the product's code from the kit's label, and wants it on a box", () => {
    const ean = whole('9506000134352', 'EAN13');
    expect(kinds([[ean]])).toEqual(['product']);
    expect(kinds([[ean, whole('KQT00000012')]])).toEqual(['code']);
    expect(kinds([[ean]], 100, 'box')).toEqual(['code']);
  });

  it('shows nothing for an empty code', () => {
    expect(kinds([[whole('  ')]])).toEqual(['looking']);
  });
});

describe('the light', () => {
  const picture = (paint: (i: number) => number) => {
    const [width, height] = [120, 80];
    const data = new Uint8ClampedArray(width * height * 4);
    for (let i = 0; i < width * height; i += 1) data.fill(paint(i), i * 4, i * 4 + 3);
    return { data, width };
  };
  it('is good on a label, dark in a dark room, and glare where a patch is burnt out', () => {
    expect(lightOf(picture((i) => (i % 3 === 0 ? 40 : 230)))).toBe('good');
    expect(lightOf(picture(() => 255))).toBe('good');
    expect(lightOf(picture(() => 20))).toBe('dark');
    expect(lightOf(picture((i) => (i < 1200 ? 255 : 120)))).toBe('glare');
    expect(lightOf({ data: new Uint8ClampedArray(0), width: 0 })).toBe('good');
  });
});
