import { createHash, createHmac, timingSafeEqual } from 'node:crypto';

/** Fills with that many random bytes; only a main.ts brings the real one. */
export type Random = (bytes: number) => Uint8Array;

const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64url');

/** A secret of 256 bits, base64url, 43 characters. */
export const drawSecret = (random: Random): string => text(random(32));

/** What is kept of a secret. It holds 256 random bits, so a plain SHA-256 cannot be guessed. */
export const digestOf = (secret: string): string =>
  createHash('sha256').update(secret).digest('base64url');

/** Whether this is the secret a digest was made of, in constant time. */
export function isSecretOf(secret: string, digest: string): boolean {
  const [a, b] = [Buffer.from(digestOf(secret)), Buffer.from(digest)];
  return a.length === b.length && timingSafeEqual(a, b);
}

/** A name for something that must not stand in the file in clear, such as an address. */
export const blind = (salt: string, text: string): string =>
  createHmac('sha256', salt).update(text).digest('base64url');
