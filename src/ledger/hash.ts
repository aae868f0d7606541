import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { base64url } from './ids.ts';

/** SHA-256 (FIPS 180-4) of a text's UTF-8, as base64url without padding (43 characters). */
export type Hash = (text: string) => string;

/**
 * Runs anywhere and synchronously, which IndexedDB needs: a transaction that awaits a digest
 * commits by itself. The server passes its platform's own (see bench/ledger).
 */
export const pureHash: Hash = (text) => base64url(sha256(utf8ToBytes(text)));
