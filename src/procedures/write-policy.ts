import type { Home } from '../care/home.ts';
import { factsIn, ofKind } from '../care/home.ts';
import { POLICY_TEXT_MOST } from '../care/policy/facts.ts';
import { policiesKnown } from '../care/policy/in-force.ts';
import { readPolicy } from '../care/policy/policy.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import { canonical } from '../ledger/canonical.ts';
import type { Hash } from '../ledger/hash.ts';
import type { Doing, Outcome } from './doing.ts';

/**
 * Takes in the service's own policy file. It is checked against the schema, value by value; a version
 * once written is never another text. It comes into force only when a manager confirms it.
 */
export function writePolicy(
  home: Home,
  { file, hash }: { readonly file: string; readonly hash: Hash },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'manager')) return refuse({ reason: 'needs-manager' });
  let data: unknown;
  try {
    data = JSON.parse(file);
  } catch (error) {
    return refuse({ reason: 'policy-unreadable', where: '/', what: (error as Error).message });
  }
  const read = readPolicy(data);
  if (!read.ok) return refuse({ reason: 'policy-unreadable', where: read.where, what: read.what });
  const text = canonical(data);
  if (!text.ok) return refuse({ reason: 'policy-unreadable', where: '/', what: text.detail });
  if (text.text.length > POLICY_TEXT_MOST) {
    return refuse({ reason: 'too-long', field: 'file', most: POLICY_TEXT_MOST });
  }
  const { policy, version } = read.policy;
  const digest = hash(text.text);
  const same = ofKind(factsIn(home, 'policy', 'written'), 'policy.written').find(
    (fact) => fact.data.policy === policy && fact.data.version === version,
  );
  if (same?.data.digest === digest) return allow([]);
  if (policiesKnown(home).some((each) => each.policy === policy && each.version === version)) {
    return refuse({ reason: 'policy-version-taken', policy, version });
  }
  return allow([{ kind: 'policy.written', data: { policy, version, digest, text: text.text } }]);
}
