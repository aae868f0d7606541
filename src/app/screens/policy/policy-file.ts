import type { Policy } from '../../../care/policy/policy.ts';
import { canonical } from '../../../ledger/canonical.ts';
import { pureHash } from '../../../ledger/hash.ts';
import { policyDigest } from '../../../procedures/policy-digest.ts';

/** The digest of a policy, or undefined for a file that has none, such as one with a fraction in it. */
export const digestOf = (policy: Policy): string | undefined =>
  canonical(policy).ok ? policyDigest(policy, pureHash) : undefined;

/** What one policy is called in an address or a form: its name and version. */
export const policyKey = ({ policy, version }: Pick<Policy, 'policy' | 'version'>): string =>
  `${policy} ${version}`;
