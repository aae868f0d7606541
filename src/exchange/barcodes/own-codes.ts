import type { CodeRule } from '../../care/policy/policy.ts';
import { checkCharacters } from '../../statistics/identity/check-characters.ts';
import { mod37and36 } from '../../statistics/identity/iso7064-schemes.ts';

/** Letters and figures without I, L, O and U, which eyes and hands take for others. */
const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** 32 to the 8th is 1.1 million million: ten thousand codes clash with a chance of 0.00005. */
const LENGTH = 8;

/**
 * A code of the service's own: its prefix, eight signs drawn by chance, and the check character of
 * ISO/IEC 7064 MOD 37,36 over all of them. Drawn, not counted, so that two tablets with no signal never
 * make the same one; it says nothing of any person. `bytes`: eight, from a good source of chance.
 */
export function ownCode(prefix: string, bytes: Uint8Array): string {
  if (bytes.length < LENGTH) throw new RangeError(`eight bytes are needed, not ${bytes.length}`);
  const drawn = Array.from(bytes.subarray(0, LENGTH), (byte) => SIGNS.charAt(byte & 31)).join('');
  const payload = prefix + drawn;
  const check = checkCharacters(mod37and36, payload);
  if (!check.ok) throw new RangeError(check.detail);
  return payload + check.value;
}

/** The rule by which a policy recognises these codes; those of another service do not fit it. */
export const ownCodeRule = (prefix: string): CodeRule => ({
  pattern: `${prefix}[0-9A-HJKMNP-TV-Z]{${String(LENGTH)}}[0-9A-Z]`,
  scheme: 'iso7064-mod37-36',
});
