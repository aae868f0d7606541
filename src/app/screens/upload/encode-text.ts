import type { Encoding } from '../../../care/results/facts.ts';

/** A text as bytes, or the signs that this encoding has no place for. */
export type Encoded =
  | { readonly ok: true; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly ok: false; readonly signs: readonly string[] };

export function encodeText(text: string, encoding: Encoding): Encoded {
  switch (encoding) {
    case 'utf-8':
      return { ok: true, bytes: new TextEncoder().encode(text) };
    case 'utf-8-bom':
      // The mark by which spreadsheet programs know that it is UTF-8.
      return { ok: true, bytes: new TextEncoder().encode(`\uFEFF${text}`) };
    case 'windows-1252':
      return toWindows1252(text);
  }
}

/**
 * Where windows-1252 parts from Unicode: bytes 80 to 9F, as the WHATWG Encoding Standard has them
 * (81, 8D, 8F, 90 and 9D stand for themselves). Node's own decoder takes it for Latin-1.
 */
const FROM_80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

const byteOf = new Map<string, number>(
  Array.from({ length: 256 }, (_, byte) => [
    (byte >= 0x80 && byte < 0xa0 ? FROM_80[byte - 0x80] : undefined) ?? String.fromCharCode(byte),
    byte,
  ]),
);

/** Nothing is put in place of a sign that does not fit: a wrong name is worse than no file. */
function toWindows1252(text: string): Encoded {
  const signs = Array.from(text.normalize('NFC'));
  const strange = [...new Set(signs.filter((sign) => !byteOf.has(sign)))];
  if (strange.length > 0) return { ok: false, signs: strange };
  return { ok: true, bytes: Uint8Array.from(signs.map((sign) => byteOf.get(sign) ?? 0)) };
}
