import type { CodeFault } from '../custody/code-rules.ts';
import { codeFault } from '../custody/code-rules.ts';
import type { Policy } from '../policy/policy.ts';

/**
 * What cannot be right about a person's number, by the way that policy says it is made. Spaces and
 * hyphens are how people group it on paper and are not looked at. Empty is no number, and is right.
 */
export function identifierFault(
  { pattern, scheme }: NonNullable<Policy['identifier']>,
  given: string,
): CodeFault | undefined {
  const number = given.replaceAll(/[\s-]/g, '').toUpperCase();
  return number === '' ? undefined : codeFault({ pattern: pattern.value, scheme }, number);
}
