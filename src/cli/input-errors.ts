import type * as v from 'valibot';

/** Where a fault lies, as a JSON Pointer (RFC 6901). */
const pointer = (path: readonly unknown[]): string =>
  path.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('') || '/';

const pathOf = (issue: v.BaseIssue<unknown>): string =>
  pointer((issue.path ?? []).map((item) => (item as { readonly key: unknown }).key));

/** One line for each fault: where, and what. */
export function inputErrors(issues: readonly v.BaseIssue<unknown>[]): readonly string[] {
  return issues.map((issue) => `  ${pathOf(issue)}: ${issue.message}`);
}
