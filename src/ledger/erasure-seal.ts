import { hmac } from '@noble/hashes/hmac.js';
import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalText } from './canonical.ts';
import { base64url, type FactId } from './ids.ts';

/** What an erasure says, without its seal. */
export interface Erasure {
  readonly targets: readonly FactId[];
  /** A closed word. */
  readonly reason: string;
}

/**
 * Tells an erasure that this service's server wrote from one that somebody wrote in its name. Only
 * servers have the key: a tablet takes what its server sends, and the server takes nothing unsealed.
 */
export interface ErasureSeal {
  /** 43 characters, the same for the same erasure. */
  of(erasure: Erasure): string;
}

/** HMAC-SHA-256 (RFC 2104) of the erasure's canonical text. `key`: 32 random bytes. */
export const erasureSeal = (key: Uint8Array): ErasureSeal => ({
  of: ({ targets, reason }) =>
    base64url(hmac(sha256, key, utf8ToBytes(canonicalText({ reason, targets })))),
});
