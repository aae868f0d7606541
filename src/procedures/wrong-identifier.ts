import { codeFault } from '../care/custody/code-rules.ts';
import type { Home } from '../care/home.ts';
import { policyOn } from '../care/policy/in-force.ts';
import type { Refusal } from '../care/refusal.ts';
import type { Day } from '../care/time.ts';

/**
 * Whether a person's number cannot be right, where policy says how such a number is made. Spaces and
 * hyphens are how people group it on paper and are not looked at. Empty is no number, and is right.
 */
export function wrongIdentifier(
  home: Home,
  given: string | undefined,
  on: Day,
): Refusal | undefined {
  const rule = policyOn(home, on).policy.identifier;
  const number = (given ?? '').replaceAll(/[\s-]/g, '').toUpperCase();
  if (rule === undefined || number === '') return undefined;
  const { name, pattern, scheme } = rule;
  const fault = codeFault({ pattern: pattern.value, scheme }, number);
  if (fault === undefined) return undefined;
  return {
    reason: fault === 'malformed' ? 'identifier-malformed' : 'identifier-check-failed',
    name,
  };
}
