import { describe, expect, it } from 'vitest';
import { encodeText } from './encode-text.ts';

const bytes = (text: string, encoding: Parameters<typeof encodeText>[1]) => {
  const encoded = encodeText(text, encoding);
  if (!encoded.ok) throw new Error(encoded.signs.join(''));
  return [...encoded.bytes];
};

describe('a file in the encoding that was asked for', () => {
  it('UTF-8, with and without the mark', () => {
    expect(bytes('é', 'utf-8')).toEqual([0xc3, 0xa9]);
    expect(bytes('é', 'utf-8-bom')).toEqual([0xef, 0xbb, 0xbf, 0xc3, 0xa9]);
  });

  // Values of the WHATWG Encoding Standard's index for windows-1252.
  it('windows-1252 has é at E9, € at 80 and Š at 8A; a letter in two parts counts as one', () => {
    expect(bytes('é€Š', 'windows-1252')).toEqual([0xe9, 0x80, 0x8a]);
    expect(bytes('e\u0301', 'windows-1252')).toEqual([0xe9]);
  });

  it('says which signs do not fit, and gives no file', () => {
    expect(encodeText('Łukasz Ngũgĩ', 'windows-1252')).toEqual({
      ok: false,
      signs: ['Ł', 'ũ', 'ĩ'],
    });
  });
});
