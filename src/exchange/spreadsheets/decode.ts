/** Every engine we run on has the Encoding Standard's decoder; the language's own library has no type for it. */
declare const TextDecoder: new (
  label: string,
  options?: { readonly fatal?: boolean },
) => { decode(bytes: Uint8Array): string };

/** Encodings in which spreadsheets write CSV, named as the Encoding Standard names them. */
export const encodings = ['utf-8', 'windows-1252', 'utf-16le', 'utf-16be'] as const;
export type Encoding = (typeof encodings)[number];

export const MAX_BYTES = 10 * 1024 * 1024;

export type Decoded =
  | {
      readonly ok: true;
      readonly text: string;
      readonly encoding: Encoding;
      /** False where the bytes do not say: the screen then asks somebody to look at the names. */
      readonly sure: boolean;
    }
  | { readonly ok: false; readonly reason: 'empty' | 'too-large' | 'workbook' | 'not-text' };

/**
 * The text of a CSV file. A byte order mark says which encoding; without one, bytes that are sound
 * UTF-8 are read as such; anything else is most likely Windows-1252, and that is told as a likelihood.
 * `as` is what somebody picked instead.
 */
export function decode(bytes: Uint8Array, as?: Encoding): Decoded {
  if (bytes.length > MAX_BYTES) return { ok: false, reason: 'too-large' };
  if (isWorkbook(bytes)) return { ok: false, reason: 'workbook' };
  const found = as === undefined ? detect(bytes) : { encoding: as, sure: true };
  const text = textIn(bytes, found.encoding);
  if (text.trim() === '') return { ok: false, reason: 'empty' };
  return text.includes('\0') ? { ok: false, reason: 'not-text' } : { ok: true, text, ...found };
}

/** Bytes 0x80 to 0x9F by the Encoding Standard's index for windows-1252. */
const WINDOWS_1252 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ';

function textIn(bytes: Uint8Array, encoding: Encoding): string {
  const text = new TextDecoder(encoding).decode(bytes);
  // Node 20 takes windows-1252 for ISO 8859-1 and leaves these bytes as they are; browsers do not.
  return encoding === 'windows-1252'
    ? text.replaceAll(/[\u0080-\u009F]/g, (sign) => WINDOWS_1252[sign.charCodeAt(0) - 0x80] ?? sign)
    : text;
}

function detect(bytes: Uint8Array): { encoding: Encoding; sure: boolean } {
  const starts = (...mark: number[]) => mark.every((byte, i) => bytes[i] === byte);
  if (starts(0xef, 0xbb, 0xbf)) return { encoding: 'utf-8', sure: true };
  if (starts(0xff, 0xfe)) return { encoding: 'utf-16le', sure: true };
  if (starts(0xfe, 0xff)) return { encoding: 'utf-16be', sure: true };
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return { encoding: 'utf-8', sure: true };
  } catch {
    return { encoding: 'windows-1252', sure: false };
  }
}

/** A zip (xlsx, ods) or an OLE file (xls): a whole workbook, not a list saved as CSV. */
function isWorkbook(bytes: Uint8Array): boolean {
  const marks = [
    [0x50, 0x4b, 0x03, 0x04],
    [0xd0, 0xcf, 0x11, 0xe0],
  ];
  return marks.some((mark) => mark.every((byte, i) => bytes[i] === byte));
}
