import type { Check } from './check.ts';
import { passed, type Verdict } from './run-checks.ts';

const short = (value: unknown, most = 300): string => {
  const text = value === undefined ? 'nothing' : JSON.stringify(value);
  return text.length > most ? `${text.slice(0, most)}…` : text;
};

const difference = (expected: unknown, got: unknown): string =>
  typeof expected === 'number' && typeof got === 'number' ? `, difference ${got - expected}` : '';

/** A check may lack its function's name: then it is called by its id alone. */
const headOf = ({ id, fn }: Partial<Check>): string =>
  ['FAILED', id, fn].filter((part) => part !== undefined).join(' ');

/**
 * One line for each failure, naming input, expected, got and difference; then the tally, in which a
 * file that could not be read counts as one failure.
 */
export function report(verdicts: readonly Verdict[], unread = 0): readonly string[] {
  const lines: string[] = [];
  for (const { check, differences, problem } of verdicts) {
    const head = headOf(check);
    if (problem !== undefined) lines.push(`${head}: ${problem}; input ${short(check.input)}`);
    for (const { path, expected, got } of differences) {
      lines.push(
        `${head}${path === '' ? '' : ` at ${path}`}: expected ${short(expected)}, got ${short(got)}${difference(expected, got)}; input ${short(check.input)}`,
      );
    }
  }
  const good = verdicts.filter(passed).length;
  lines.push(`${good} passed, ${verdicts.length - good + unread} failed`);
  return lines;
}
