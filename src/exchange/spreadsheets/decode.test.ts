import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decode, encodings, MAX_BYTES } from './decode.ts';

const bytes = (...values: number[]) => Uint8Array.from(values);
const utf8 = (text: string) => new TextEncoder().encode(text);

describe('which encoding a file is in', () => {
  it('sound UTF-8 is sure, with a byte order mark or without', () => {
    expect(decode(utf8('Zoë'))).toEqual({ ok: true, text: 'Zoë', encoding: 'utf-8', sure: true });
    expect(decode(bytes(0xef, 0xbb, 0xbf, ...utf8('Zoë')))).toMatchObject({
      text: 'Zoë',
      sure: true,
    });
  });

  // Bytes by the WHATWG Encoding Standard's index for windows-1252: 0xEB is ë, 0x92 is ’.
  it('other bytes are most likely Windows-1252, and it says so', () => {
    expect(decode(bytes(0x5a, 0x6f, 0xeb, 0x92, 0x73))).toEqual({
      ok: true,
      text: 'Zoë’s',
      encoding: 'windows-1252',
      sure: false,
    });
  });

  it('what a spreadsheet calls Unicode text is read by its mark', () => {
    expect(decode(bytes(0xff, 0xfe, 0x41, 0x00))).toMatchObject({ text: 'A', sure: true });
    expect(decode(bytes(0xfe, 0xff, 0x00, 0x41))).toMatchObject({ text: 'A', sure: true });
  });

  it('somebody may pick another', () => {
    expect(decode(utf8('Zoë'), 'windows-1252')).toMatchObject({ text: 'ZoÃ«', sure: true });
  });
});

describe('a file that is no list', () => {
  it.each([
    ['empty', utf8('')],
    ['empty', utf8(' \r\n\r\n')],
    ['workbook', bytes(0x50, 0x4b, 0x03, 0x04, 0x14)],
    ['workbook', bytes(0xd0, 0xcf, 0x11, 0xe0, 0xa1)],
    ['not-text', bytes(0x41, 0x00, 0x42)],
    ['too-large', new Uint8Array(MAX_BYTES + 1).fill(0x41)],
  ])('is told: %s', (reason, file) => {
    expect(decode(file)).toEqual({ ok: false, reason });
  });
});

it('never throws, whatever the bytes', () => {
  const as = fc.option(fc.constantFrom(...encodings), { nil: undefined });
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), as, (file, encoding) => {
      const read = decode(file, encoding);
      if (read.ok) expect(read.text.includes('\0')).toBe(false);
    }),
  );
});
