import type { ReadElements } from './element-string.ts';
import { readElements } from './element-string.ts';
import { GS, identifiers } from './gs1-identifiers.ts';

/** Whether a scan is a web address: then it may be a GS1 Digital Link. Nothing is ever fetched. */
export const isAddress = (scan: string): boolean => /^https?:\/\//i.test(scan.trim());

/**
 * Reads a GS1 Digital Link (URI syntax 1.6): `/01/GTIN`, qualifiers `/22`, `/10`, `/21` after it, other
 * identifiers in the query. Whatever host it names is not looked at. Compressed links are not read.
 */
export function readDigitalLink(scan: string): ReadElements {
  const notGs1 = { ok: false, reason: 'not-gs1', at: 0 } as const;
  const match = /^https?:\/\/[^/?#]+(\/[^?#]*)?(?:\?([^#]*))?/i.exec(scan.trim().slice(0, 2000));
  const path = (match?.[1] ?? '').split('/').filter((part) => part !== '');
  const start = path.findIndex((part, i) => part === '01' && /^\d{8,14}$/.test(path[i + 1] ?? ''));
  if (match === null || start < 0) return notGs1;
  const pairs: [string, string][] = [];
  for (let i = start; i < path.length; i += 2) pairs.push([path[i] ?? '', path[i + 1] ?? '']);
  for (const part of (match[2] ?? '').split(/[&;]/)) {
    const [key = '', value = ''] = part.split('=', 2);
    // A query may carry keys of the web shop: only identifiers this program knows are read.
    if (Object.hasOwn(identifiers, key)) pairs.push([key, value]);
  }
  const raw = pairs.map(([ai, value]) => `${ai}${ai === '01' ? pad(value) : plain(value)}${GS}`);
  return readElements(raw.join(''));
}

/** GTINs of 8, 12 and 13 digits are the same number with zeros in front. */
const pad = (gtin: string): string => gtin.padStart(14, '0');

function plain(value: string): string {
  try {
    return decodeURIComponent(value);
  } catch {
    return value;
  }
}
