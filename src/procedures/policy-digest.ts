import { canonical } from '../ledger/canonical.ts';
import type { Hash } from '../ledger/hash.ts';

/** The digest under which a policy is confirmed: SHA-256 of its canonical text, base64url. */
export function policyDigest(policy: unknown, hash: Hash): string {
  const text = canonical(policy);
  if (!text.ok) throw new Error(`a policy has to be plain data: ${text.reason} ${text.detail}`);
  return hash(text.text);
}
