import type { Home } from '../care/home.ts';
import { identifierFault } from '../care/people/identifier.ts';
import { policyOn } from '../care/policy/in-force.ts';
import type { Refusal } from '../care/refusal.ts';
import type { Day } from '../care/time.ts';

/** Whether a person's number cannot be right, where policy says how such a number is made. */
export function wrongIdentifier(
  home: Home,
  given: string | undefined,
  on: Day,
): Refusal | undefined {
  const rule = policyOn(home, on).policy.identifier;
  const fault = rule && identifierFault(rule, given ?? '');
  if (rule === undefined || fault === undefined) return undefined;
  return {
    reason: fault === 'malformed' ? 'identifier-malformed' : 'identifier-check-failed',
    name: rule.name,
  };
}
