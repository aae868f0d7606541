import { hmac } from '@noble/hashes/hmac.js';
import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalText } from './canonical.ts';
import type { Body } from './fact.ts';
import type { Hash } from './hash.ts';
import { base64url } from './ids.ts';

/**
 * Tells a fact that this service's server wrote from one that somebody wrote in its name. Only
 * servers have the key: a tablet takes what its server sends, and the server takes nothing unsealed.
 */
export interface ServerSeal {
  /** 43 characters for a body without its seal. */
  of(body: Omit<Body, 'seal'>): string;
}

/** HMAC-SHA-256 (RFC 2104) of the body's canonical text. `key`: 32 random bytes. */
export const serverSeal = (key: Uint8Array): ServerSeal => ({
  of: (body) => base64url(hmac(sha256, key, utf8ToBytes(canonicalText(body)))),
});

/** Whether a body bears this seal. Hashes are compared, so that no time taken tells a byte. */
export function isSealedBy(seal: ServerSeal, body: Body, hash: Hash): boolean {
  const { seal: borne, ...rest } = body;
  return borne !== undefined && hash(borne) === hash(seal.of(rest));
}
