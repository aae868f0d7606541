import { type CanonicalRefusal, canonical, type Json } from './canonical.ts';
import { base64url } from './ids.ts';

/** 16 random bytes. Without them a hash of a name or a birth date could be guessed. */
const SALT_BYTES = 16;
export const isSalt = (text: unknown): boolean =>
  typeof text === 'string' && /^[A-Za-z0-9_-]{22}$/.test(text);

/** The private record of a value: the canonical text of `{salt, value}`. */
export function privateRecord(
  value: Json,
  salt: Uint8Array,
): { readonly ok: true; readonly text: string } | CanonicalRefusal {
  if (salt.length !== SALT_BYTES) throw new RangeError(`a salt has ${SALT_BYTES} bytes`);
  return canonical({ salt: base64url(salt), value });
}
