import { describe, expect, it } from 'vitest';
import { ADAPTERS } from '../../src/cli/oracle/registry.ts';
import { report } from '../../src/cli/oracle/report.ts';
import { passed, runChecks } from '../../src/cli/oracle/run-checks.ts';
import { askR } from './live/ask.ts';
import { missing } from './live/run-r.ts';

// Another seed asks other questions: SEED=7 npx vitest run test/oracle.
const seed = Number(process.env['SEED'] ?? 20261125);
const without = missing();

describe(`the same questions to R, seed ${seed}`, () => {
  if (without !== undefined) {
    it.skip(`skipped: ${without}`, () => undefined);
    return;
  }
  it('R gives the same figures', { timeout: 400_000 }, () => {
    const verdicts = runChecks(askR({ seed, tables: 2, others: 4 }), ADAPTERS);
    expect(verdicts.length).toBeGreaterThan(300);
    expect(verdicts.every(passed), report(verdicts).slice(0, 12).join('\n')).toBe(true);
  });
});
