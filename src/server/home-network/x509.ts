// The library reads its own decorators through this, so it has to come first.
import 'reflect-metadata';
import { createHash, type webcrypto } from 'node:crypto';
import * as x509 from '@peculiar/x509';

export { x509 };

/** ECDSA on P-256: every tablet in use takes it (RFC 5480, and CA/Browser Forum requirements 6.1.5). */
export const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;

/** A certificate and its private key, both PEM. */
export interface KeyedCertificate {
  readonly certificate: string;
  readonly key: string;
}

export async function newKeys(): Promise<CryptoKeyPair> {
  return await crypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
}
export type CryptoKeyPair = webcrypto.CryptoKeyPair;

export async function keyToPem({ privateKey }: CryptoKeyPair): Promise<string> {
  const der = await crypto.subtle.exportKey('pkcs8', privateKey);
  return `${x509.PemConverter.encode(der, 'PRIVATE KEY')}\n`;
}

export function keyFromPem(pem: string): Promise<webcrypto.CryptoKey> {
  const [der] = x509.PemConverter.decode(pem);
  if (!der) throw new Error('no private key in the file');
  return crypto.subtle.importKey('pkcs8', der, ALGORITHM, false, ['sign']);
}

/** A positive serial number of 127 random bits (RFC 5280 section 4.1.2.2 allows 20 bytes). */
export function drawSerial(random: (bytes: number) => Uint8Array): string {
  const bytes = Buffer.from(random(16));
  bytes[0] = ((bytes[0] ?? 0) & 0x7f) | 0x40;
  return bytes.toString('hex');
}

/** SHA-256 of the whole certificate in pairs, as tablets show it. */
export function fingerprint(pem: string): string {
  const raw = new Uint8Array(new x509.X509Certificate(pem).rawData);
  const hex = createHash('sha256').update(raw).digest('hex').toUpperCase();
  return (hex.match(/../g) ?? []).join(':');
}
