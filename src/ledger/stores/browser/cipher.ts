/** Seals what rests in the browser. `place` is bound in: a sealed block fits nowhere else. */
export interface Cipher {
  seal(plain: Uint8Array<ArrayBuffer>, place: string): Promise<Uint8Array<ArrayBuffer>>;
  /** Rejects when the bytes were changed, moved, or sealed with another key. */
  open(sealed: Uint8Array<ArrayBuffer>, place: string): Promise<Uint8Array<ArrayBuffer>>;
}

const NONCE_BYTES = 12;

/**
 * AES-GCM (NIST SP 800-38D) by WebCrypto, a fresh random 96-bit nonce in front of each box. Random
 * nonces are safe for 2^32 boxes under one key; a tablet seals some thousands a day.
 */
export function aesCipher(key: CryptoKey, owner: string): Cipher {
  const encoder = new TextEncoder();
  const algorithm = (iv: Uint8Array<ArrayBuffer>, place: string): AesGcmParams => ({
    name: 'AES-GCM',
    iv,
    additionalData: encoder.encode(`${owner}/${place}`),
  });
  return {
    async seal(plain, place) {
      const nonce = crypto.getRandomValues(new Uint8Array(NONCE_BYTES));
      const box = await crypto.subtle.encrypt(algorithm(nonce, place), key, plain);
      const sealed = new Uint8Array(NONCE_BYTES + box.byteLength);
      sealed.set(nonce);
      sealed.set(new Uint8Array(box), NONCE_BYTES);
      return sealed;
    },
    async open(sealed, place) {
      const how = algorithm(sealed.slice(0, NONCE_BYTES), place);
      return new Uint8Array(await crypto.subtle.decrypt(how, key, sealed.subarray(NONCE_BYTES)));
    },
  };
}

/** The tablet key's 32 bytes, for this session only: it is never stored. */
export const importTabletKey = (bytes: Uint8Array<ArrayBuffer>): Promise<CryptoKey> =>
  crypto.subtle.importKey('raw', bytes, 'AES-GCM', false, ['encrypt', 'decrypt']);
