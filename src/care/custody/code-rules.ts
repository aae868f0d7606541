import { passesCheck } from '../../statistics/identity/check-characters.ts';
import { findScheme } from '../../statistics/identity/find-scheme.ts';
import type { CodeRule, CheckScheme as SchemeName } from '../policy/policy.ts';

/** A code that cannot be one of its kind, or whose check character says that a sign is wrong. */
export type CodeFault = 'malformed' | 'check-failed';

/**
 * What a code breaks of the rule that policy gives it; undefined where it may well be right. The check
 * covers the part of the pattern in a group named `checked`, check characters at its end; without such
 * a group it covers the whole code. A right check never says whose tube it is.
 */
export function codeFault(rule: CodeRule, code: string): CodeFault | undefined {
  const match = new RegExp(`^(?:${rule.pattern})$`, 'u').exec(code.trim());
  if (match === null) return 'malformed';
  if (rule.scheme === 'none') return undefined;
  return passesScheme(rule.scheme, match.groups?.['checked'] ?? match[0])
    ? undefined
    : 'check-failed';
}

/** Whether a string, check characters included, is right by a scheme. */
export function passesScheme(scheme: Exclude<SchemeName, 'none'>, checked: string): boolean {
  const found = findScheme(scheme);
  if (!found.ok) throw new Error(`policy names a scheme nobody has written: ${scheme}`);
  return passesCheck(found.value, checked);
}
