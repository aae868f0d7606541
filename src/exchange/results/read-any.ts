import type { Zone } from '../../care/time.ts';
import { readFhir } from './fhir/read-fhir.ts';
import { readHl7 } from './hl7v2/read-hl7.ts';
import type { OwnWords } from './meaning-of-words.ts';
import type { ReadReports } from './reported.ts';
import { unread } from './reported.ts';

export const resultFormats = ['csv', 'xlsx', 'fhir', 'hl7'] as const;
export type ResultFormat = (typeof resultFormats)[number];

const startsWith = (bytes: Uint8Array, mark: readonly number[]): boolean =>
  mark.every((byte, i) => bytes[i] === byte);

/** Which form a file has, by how it begins. A list is what nothing else is. */
export function formatOf(bytes: Uint8Array): ResultFormat {
  if (startsWith(bytes, [0x50, 0x4b, 0x03, 0x04])) return 'xlsx';
  const head = new TextDecoder('utf-8')
    .decode(bytes.subarray(0, 64))
    .replace(/^[\uFEFF\u000b\s]+/, '');
  if (/^(?:MSH|FHS|BHS)[^\p{L}\p{N}\s]/u.test(head)) return 'hl7';
  return /^[{[]/.test(head) ? 'fhir' : 'csv';
}

/** An old workbook (OLE): nothing here reads it. */
export const isOldWorkbook = (bytes: Uint8Array): boolean =>
  startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0]);

/** Greater files are for the command line, which reads lists row by row. */
export const MOST_MESSAGE_BYTES = 64 * 1024 * 1024;

/** A file whose form says by itself what stands where. */
export function readCoded(
  bytes: Uint8Array,
  format: 'fhir' | 'hl7',
  settings: { readonly zone: Zone; readonly words?: OwnWords },
): ReadReports {
  if (bytes.length > MOST_MESSAGE_BYTES) return unread('too-large', 'The file is over 64 MB.');
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    if (format === 'fhir') return unread('not-utf8', 'FHIR is always UTF-8, and this file is not.');
    return unread('not-utf8', charsetDetail(bytes));
  }
  if (text.includes('\0')) return unread('not-text', 'The file is not text, or is in UTF-16.');
  return format === 'fhir' ? readFhir(text, settings) : readHl7(text, settings);
}

const charsetDetail = (bytes: Uint8Array): string => {
  const msh = new TextDecoder('latin1').decode(bytes.subarray(0, 400)).split('\r')[0] ?? '';
  const named = msh.split(msh[3] ?? '|')[17] ?? '';
  return `The file is not UTF-8${named === '' ? '' : `; its MSH-18 says ${named.slice(0, 20)}`}. Ask for UNICODE UTF-8.`;
};
