import { createHmac, hkdfSync } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { StartFault } from '../start/faults.ts';

/** What a secret drawn by `tallyround group-secret` holds, in bytes. */
export const SECRET_BYTES = 32;

/** Two keys for two uses, so that neither use can be turned against the other (RFC 5869). */
export interface GroupKeys {
  /** Of the hashes of codes. */
  readonly codes: Uint8Array;
  /** By which homes of the group know each other's calls. */
  readonly calls: Uint8Array;
}

/** The keys made from the secret in a file. Throws a StartFault that says what is wrong with the file. */
export function readGroupKeys(file: string): GroupKeys {
  let text: string;
  try {
    // Windows knows no such bits; its files are narrowed by the folder they lie in.
    const others = process.platform === 'win32' ? 0 : statSync(file).mode & 0o077;
    if (others !== 0) throw new StartFault('secret-open', file);
    text = readFileSync(file, 'utf8').trim();
  } catch (cause) {
    if (cause instanceof StartFault) throw cause;
    throw new StartFault('secret-unreadable', file, { cause });
  }
  if (!/^[A-Za-z0-9_-]{43}$/.test(text)) throw new StartFault('secret-weak', file);
  return groupKeys(Buffer.from(text, 'base64url'));
}

export function groupKeys(secret: Uint8Array): GroupKeys {
  const key = (use: string) =>
    new Uint8Array(hkdfSync('sha256', secret, '', `tallyround group ${use}`, 32));
  return { codes: key('codes'), calls: key('calls') };
}

/** HMAC-SHA-256 (RFC 2104) as base64url, 43 signs. */
export const keyed = (key: Uint8Array, text: string): string =>
  createHmac('sha256', key).update(text, 'utf8').digest('base64url');
