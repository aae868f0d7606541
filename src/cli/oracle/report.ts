import { passed, type Verdict } from './run-checks.ts';

const short = (value: unknown, most = 300): string => {
  const text = value === undefined ? 'nothing' : JSON.stringify(value);
  return text.length > most ? `${text.slice(0, most)}…` : text;
};

const difference = (expected: unknown, got: unknown): string =>
  typeof expected === 'number' && typeof got === 'number' ? `, difference ${got - expected}` : '';

/** One line for each failure, naming input, expected, got and difference; then the tally. */
export function report(verdicts: readonly Verdict[]): readonly string[] {
  const lines: string[] = [];
  for (const { check, differences, problem } of verdicts) {
    const head = `FAILED ${check.id} ${check.fn}`;
    if (problem !== undefined) lines.push(`${head}: ${problem}; input ${short(check.input)}`);
    for (const { path, expected, got } of differences) {
      lines.push(
        `${head} at ${path}: expected ${short(expected)}, got ${short(got)}${difference(expected, got)}; input ${short(check.input)}`,
      );
    }
  }
  const good = verdicts.filter(passed).length;
  lines.push(`${good} passed, ${verdicts.length - good} failed`);
  return lines;
}
